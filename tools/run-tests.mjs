// npm test: look for the outside tools, check types, lint and tables, then run every suite whose tools are there.
// With CI=true a missing tool is a failure. Arguments go to vitest; `npm test -- tests/wiring` runs one folder alone.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ensureOutsideTools } from "./outside-tools.mjs";

const missing = ensureOutsideTools();
if (missing.length > 0 && process.env["CI"] === "true") {
  console.error(`Missing, and CI runs every suite: ${missing.map((tool) => tool.name).join("; ")}`);
  process.exit(1);
}

const chosen = process.argv.slice(2);
if (chosen.length === 0) {
  const check = spawnSync(process.execPath, ["tools/check.mjs"], { stdio: "inherit" });
  if (check.status !== 0) process.exit(check.status ?? 1);
}

const folder = mkdtempSync(join(tmpdir(), "loopwright-tests-"));
const counts = join(folder, "results.json");
const run = spawnSync(
  process.execPath,
  [
    "node_modules/vitest/vitest.mjs",
    "run",
    "--config=tests/vitest.config.ts",
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${counts}`,
    ...missing.map((tool) => `--exclude=**/*.${tool.suffix}{.*,}.test.ts`),
    ...chosen,
  ],
  { stdio: "inherit" },
);
let passed = 0;
let failed = 0;
try {
  const results = JSON.parse(readFileSync(counts, "utf8"));
  passed = results.numPassedTests;
  failed = results.numFailedTests + results.numFailedTestSuites;
} catch {
  failed = 1;
}
rmSync(folder, { recursive: true, force: true });
for (const tool of missing)
  console.log(`Skipped: suites with .${tool.suffix} in their name, because ${tool.name} is missing.`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(run.status ?? 1);
