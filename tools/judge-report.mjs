// node tools/judge-report.mjs [seed] [jobs]: judges simulated jobs and prints, per depth of reading and fault rate, how
// often the most probable condition is the true one, the calibration error (jobs together, each job alone), and for the
// deepest the confusion table. With `jobs`, boosted trees learn from so many other simulated jobs, from the readings and
// from the readings with our judge's answer, and are scored on the same loops (2500 jobs: about a minute a line).
import { createServer } from "vite";

const seed = Number(process.argv[2] ?? 1);
const learnFrom = Number(process.argv[3] ?? 0);
const growth = { rounds: 60, depth: 5, step: 0.15, seed: 5 };
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
  const { trainJudge } = await server.ssrLoadModule("/tests/simulator/trained-judge.ts");
  const { judgeJob } = await server.ssrLoadModule("/lib/findings/judge-job.ts");
  for (const depth of ["closed", "opened", "all"]) {
    for (const faultRate of [0.15, 0.4, 0.65]) {
      const loops = simulate({ seed, jobs: 300, depth, faultRate });
      const judged = judgeJob(recordsOf(loops)).loops;
      const score = scoreOf(judged, loops);
      const jobs = Object.values(byJob(loops));
      const alone = scoreOf(
        jobs.flatMap((job) => judgeJob(recordsOf(job)).loops),
        jobs.flat(),
      );
      const figures = `top ${score.top.toFixed(3)}  calibration error ${score.calibrationError.toFixed(3)}`;
      const single = `each job alone ${alone.calibrationError.toFixed(3)}`;
      console.log(`${depth.padEnd(7)} fault rate ${faultRate}  loops ${score.loops}  ${figures}  ${single}`);
      if (learnFrom > 0) {
        const shown = simulate({ seed: seed + 1, jobs: learnFrom, depth, faultRate });
        const readings = scoreOf(trainJudge(shown, growth)(loops), loops);
        const both = scoreOf(trainJudge(shown, growth, judgeJob(recordsOf(shown)).loops)(loops, judged), loops);
        const tops = `readings ${readings.top.toFixed(3)}  readings and our answer ${both.top.toFixed(3)}`;
        console.log(`        trees from ${shown.length} loops, top: ${tops}`);
      }
      if (depth === "all" && faultRate === 0.4) printConfusion(score.confusion);
    }
  }
} finally {
  await server.close();
}

/** @param {readonly any[]} loops */
function recordsOf(loops) {
  return loops.map(({ record }) => record);
}

/** @param {readonly any[]} loops @returns {Record<string, any[]>} */
function byJob(loops) {
  /** @type {Record<string, any[]>} */
  const jobs = {};
  for (const loop of loops) {
    const name = loop.record.job;
    jobs[name] = [...(jobs[name] ?? []), loop];
  }
  return jobs;
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
