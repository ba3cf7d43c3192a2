import type { LoopJudgement } from "../../lib/findings/loop-record.js";
import type { SimulatedLoop } from "./simulate.js";

/** How well judgements meet the truth. */
export interface Score {
  readonly loops: number;
  /** Share whose most probable condition is the true one. [1] */
  readonly top: number;
  /** Mean distance of said and was over tenths of the said probability, weighted by loops. [1] */
  readonly calibrationError: number;
  /** `truth → said → loops`. */
  readonly confusion: ReadonlyMap<string, ReadonlyMap<string, number>>;
}

export function scoreOf(
  judgements: readonly Pick<LoopJudgement, "condition" | "probability">[],
  loops: readonly SimulatedLoop[],
): Score {
  const bins = Array.from({ length: 10 }, () => ({ said: 0, was: 0 }));
  const confusion = new Map<string, Map<string, number>>();
  let hits = 0;
  for (const [index, { condition, probability }] of judgements.entries()) {
    const truth = loops[index]?.truth ?? "";
    const hit = condition === truth ? 1 : 0;
    hits += hit;
    const bin = bins[Math.min(9, Math.floor(probability * 10))];
    if (bin !== undefined) {
      bin.said += probability;
      bin.was += hit;
    }
    const row = confusion.get(truth) ?? new Map<string, number>();
    row.set(condition, (row.get(condition) ?? 0) + 1);
    confusion.set(truth, row);
  }
  const error = bins.reduce((sum, { said, was }) => sum + Math.abs(said - was), 0);
  return { loops: loops.length, top: hits / loops.length, calibrationError: error / loops.length, confusion };
}
