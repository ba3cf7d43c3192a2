import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { judgeJob } from "../../lib/findings/judge-job.js";
import { judgeLoop } from "../../lib/findings/judge-loop.js";
import type { LoopJudgement, LoopRecord } from "../../lib/findings/loop-record.js";

interface JudgeCase {
  readonly loop: LoopRecord;
  readonly truth: {
    readonly condition: string;
    readonly acceptable: readonly string[];
    readonly acceptableActions: readonly string[] | "*";
  };
}

const cases = JSON.parse(
  readFileSync(new URL("../fixtures/judge-cases/cases.json", import.meta.url), "utf8"),
) as readonly JudgeCase[];

function shares(judgements: readonly LoopJudgement[]) {
  let top = 0;
  let acceptable = 0;
  let action = 0;
  for (const [index, judgement] of judgements.entries()) {
    const truth = cases[index]?.truth;
    if (truth === undefined) continue;
    if (judgement.condition === truth.condition) top += 1;
    if (truth.acceptable.includes("*") || truth.acceptable.includes(judgement.condition)) acceptable += 1;
    if (truth.acceptableActions.includes("*") || truth.acceptableActions.includes(judgement.action)) action += 1;
  }
  const count = judgements.length;
  return { top: top / count, acceptable: acceptable / count, action: action / count };
}

/** Said against was, in tenths of the said probability. */
function reliability(judgements: readonly LoopJudgement[]) {
  const bins = Array.from({ length: 10 }, () => ({ loops: 0, said: 0, was: 0 }));
  for (const [index, judgement] of judgements.entries()) {
    const bin = bins[Math.min(9, Math.floor(judgement.probability * 10))];
    if (bin === undefined) continue;
    bin.loops += 1;
    bin.said += judgement.probability;
    bin.was += judgement.condition === cases[index]?.truth.condition ? 1 : 0;
  }
  return bins.map(({ loops, said, was }) => ({ loops, said: said / loops, was: was / loops }));
}

describe("400 simulated loops of another make with their truth (tests/fixtures/judge-cases)", () => {
  it("fixture holds 400 cases of at least 15 conditions", () => {
    expect(cases.length).toBe(400);
    expect(new Set(cases.map((one) => one.truth.condition)).size).toBeGreaterThanOrEqual(15);
  });

  const pooled = judgeJob(cases.map((one) => one.loop)).loops;

  it("pooled: acceptable in 97 %, top condition in 79 %, action in 74.3 % of them", () => {
    const { top, acceptable, action } = shares(pooled);
    expect(acceptable).toBeGreaterThanOrEqual(0.97);
    expect(top).toBeGreaterThanOrEqual(0.79);
    expect(action).toBeGreaterThanOrEqual(0.743);
  });

  it("pooled: said against was within 0.05 in bins of 40 loops and more", () => {
    const large = reliability(pooled).filter((bin) => bin.loops >= 40);
    expect(large.length).toBeGreaterThanOrEqual(3);
    for (const bin of large) expect(Math.abs(bin.said - bin.was)).toBeLessThanOrEqual(0.05);
  });

  it("one by one, without the job: acceptable in 95 %, top condition in 75 %", () => {
    const { top, acceptable } = shares(cases.map((one) => judgeLoop(one.loop)));
    expect(acceptable).toBeGreaterThanOrEqual(0.95);
    expect(top).toBeGreaterThanOrEqual(0.75);
  });

  it("marked life safety is left alone, with nothing more to read", () => {
    const marked = cases.flatMap((one, index) => (one.loop.markedLifeSafety === true ? [pooled[index]] : []));
    expect(marked.length).toBeGreaterThan(0);
    for (const judgement of marked) {
      expect(judgement).toMatchObject({
        condition: "lifeSafety",
        action: "leaveAlone",
        next: [],
        eol: null,
        run: null,
      });
    }
  });
});
