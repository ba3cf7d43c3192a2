import { conditions } from "../../lib/findings/conditions.js";
import type { Condition, LoopJudgement } from "../../lib/findings/loop-record.js";
import { type Growth, growTrees } from "./boosted-trees.js";
import { featuresOf } from "./features.js";
import type { SimulatedLoop } from "./simulate.js";

/** What a judge says of a loop, as far as it is scored. */
export interface Said {
  readonly condition: Condition;
  readonly probability: number;
}

/** Says of fresh loops what was learned; `judged` are our judge's answers where the learner was given them too. */
export type TrainedJudge = (loops: readonly SimulatedLoop[], judged?: readonly LoopJudgement[]) => readonly Said[];

/**
 * A judge that was only ever shown loops and what was behind them: gradient-boosted trees from raw readings and the
 * job's other loops to the condition. It has no model, no prior, no formula of ours. With `judged` it is also shown
 * what our judge says of each loop, so that it finds whatever our judge leaves lying in the readings.
 */
export function trainJudge(
  loops: readonly SimulatedLoop[],
  growth: Growth,
  judged?: readonly LoopJudgement[],
): TrainedJudge {
  const classes = loops.map(({ truth }) => conditions.indexOf(truth));
  const classifier = growTrees(rowsOf(loops, judged), classes, growth);
  return (fresh, freshJudged) =>
    classifier(rowsOf(fresh, freshJudged)).map((chances) => {
      let best = 0;
      for (let k = 1; k < chances.length; k += 1) if ((chances[k] ?? 0) > (chances[best] ?? 0)) best = k;
      return { condition: conditions[best] ?? "unexplained", probability: chances[best] ?? 0 };
    });
}

function rowsOf(
  loops: readonly SimulatedLoop[],
  judged: readonly LoopJudgement[] | undefined,
): readonly (readonly number[])[] {
  const rows = featuresOf(loops.map(({ record }) => record));
  if (judged === undefined) return rows;
  return rows.map((row, i) => [...row, ...saidOf(judged[i])]);
}

/** Log odds of every condition; those that the judge left out count as one in a thousand. */
function saidOf(judgement: LoopJudgement | undefined): readonly number[] {
  return conditions.map((name) => {
    const share = judgement?.findings.find(({ condition }) => condition === name)?.probability ?? 0.001;
    return Math.log(share / Math.max(1e-3, 1 - share));
  });
}
