// Judgements per CPU second: single loops and pooled jobs, on the recorded loops of tests/fixtures/judge-cases.
import { readFileSync } from "node:fs";
import { judgeJob } from "../../dist/findings/judge-job.js";
import { judgeLoop } from "../../dist/findings/judge-loop.js";

/** @param {number} rounds @param {() => number} judge Loops judged in one round. */
function perCpuSecond(rounds, judge) {
  for (let i = 0; i < rounds / 4; i += 1) judge();
  const start = process.cpuUsage();
  let loops = 0;
  for (let i = 0; i < rounds; i += 1) loops += judge();
  const used = process.cpuUsage(start);
  return loops / ((used.user + used.system) / 1e6);
}

export function bench() {
  const file = new URL("../../tests/fixtures/judge-cases/cases.json", import.meta.url);
  /** @type {any[]} */
  const records = JSON.parse(readFileSync(file, "utf8")).map((/** @type {any} */ one) => one.loop);
  const single = perCpuSecond(200, () => {
    for (const record of records) judgeLoop(record);
    return records.length;
  });
  const pooled = perCpuSecond(20, () => judgeJob(records).loops.length);
  return [
    { name: "loops judged one by one", value: single, unit: "per CPU second" },
    { name: "loops judged in their jobs", value: pooled, unit: "per CPU second" },
  ];
}
