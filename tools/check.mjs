// npm run check: stale tables, types (library and tests, the pure stages without Node or packages, the add-in), stale descriptions and public names, lint, unused code.
import { spawnSync } from "node:child_process";

const steps = [
  ["reference tables", ["tools/generate-reference.mjs", "--check"]],
  ["types", ["node_modules/typescript/bin/tsc", "-p", "tsconfig.json"]],
  ["types of the pure stages", ["node_modules/typescript/bin/tsc", "-p", "lib/tsconfig.pure.json"]],
  ["types of the add-in", ["node_modules/typescript/bin/tsc", "-p", "addin/tsconfig.json"]],
  ["descriptions of the custom functions", ["tools/build-addin.mjs", "--check"]],
  ["report of the public names", ["tools/api-report.mjs", "--check"]],
  ["page of the survey fields", ["tools/survey-fields.mjs", "--check"]],
  ["lint and format", ["node_modules/@biomejs/biome/bin/biome", "check", "--error-on-warnings", "."]],
  ["unused code", ["node_modules/knip/bin/knip.js", "--no-progress"]],
];

const failed = [];
for (const [name, command] of steps) {
  const run = spawnSync(process.execPath, command, { encoding: "utf8" });
  if (run.status === 0) console.log(`  ${name}: no findings`);
  else {
    failed.push(name);
    console.error(`  ${name}: FAILED\n${run.stdout ?? ""}${run.stderr ?? ""}`);
  }
}
if (failed.length > 0) {
  console.error(`check failed: ${failed.join(", ")}`);
  process.exit(1);
}
