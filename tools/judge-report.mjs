// node tools/judge-report.mjs [seed]: judges simulated jobs and prints, per depth of reading and fault rate, how often
// the most probable condition is the true one, the calibration error, and for the deepest the confusion table.
import { createServer } from "vite";

const seed = Number(process.argv[2] ?? 1);
// The simulator is TypeScript under tests/; vite loads it without a build.
const server = await createServer({
  root: new URL("..", import.meta.url).pathname,
  configFile: false,
  logLevel: "error",
  server: { middlewareMode: true, hmr: false, ws: false },
  optimizeDeps: { noDiscovery: true },
});
try {
  const { simulate } = await server.ssrLoadModule("/tests/simulator/simulate.ts");
  const { scoreOf } = await server.ssrLoadModule("/tests/simulator/score.ts");
  const { judgeJob } = await server.ssrLoadModule("/lib/findings/judge-job.ts");
  for (const depth of ["closed", "opened", "all"]) {
    for (const faultRate of [0.15, 0.4, 0.65]) {
      const loops = simulate({ seed, jobs: 300, depth, faultRate });
      const score = scoreOf(judgeJob(loops.map((/** @type {any} */ one) => one.record)).loops, loops);
      const figures = `top ${score.top.toFixed(3)}  calibration error ${score.calibrationError.toFixed(3)}`;
      console.log(`${depth.padEnd(7)} fault rate ${faultRate}  loops ${score.loops}  ${figures}`);
      if (depth === "all" && faultRate === 0.4) printConfusion(score.confusion);
    }
  }
} finally {
  await server.close();
}

/** @param {Map<string, Map<string, number>>} confusion */
function printConfusion(confusion) {
  const truths = [...confusion.keys()].sort();
  const said = [...new Set(truths.flatMap((truth) => [...(confusion.get(truth)?.keys() ?? [])]))].sort();
  console.log(`\n${"truth \\ said".padEnd(18)}${said.map((name) => name.slice(0, 9).padStart(10)).join("")}`);
  for (const truth of truths) {
    const row = confusion.get(truth);
    console.log(`${truth.padEnd(18)}${said.map((name) => String(row?.get(name) ?? "·").padStart(10)).join("")}`);
  }
  console.log("");
}
