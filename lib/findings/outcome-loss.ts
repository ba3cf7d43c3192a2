import { actions, conditionCount } from "./conditions.js";
import type { JudgeModel } from "./judge-model.js";
import type { Posterior } from "./posterior.js";
import { zeros } from "./zeros.js";

const actionCount = actions.length;

/** Chances of the outcomes of a reading: `[outcome * conditions + condition]`. */
export interface OutcomeTable {
  readonly count: number;
  readonly chance: readonly number[];
}

/** Conditions that still matter to a posterior, and the actions that are right for them. */
export interface LikelyConditions {
  readonly conditions: readonly number[];
  readonly rights: readonly number[];
}

export function likelyConditions(posterior: Posterior, model: JudgeModel): LikelyConditions {
  const conditions: number[] = [];
  const rights: number[] = [];
  for (let c = 0; c < conditionCount; c += 1) {
    if ((posterior.condition[c] ?? 0) <= 1e-4) continue;
    conditions.push(c);
    const right = model.rightAction[c] ?? 0;
    if (!rights.includes(right)) rights.push(right);
  }
  return { conditions, rights };
}

/** Expected loss after a reading, acting best on each outcome. [money] */
export function lossAfter(
  posterior: Posterior,
  likely: LikelyConditions,
  table: OutcomeTable,
  model: JudgeModel,
): number {
  const { conditions, rights } = likely;
  const { chance } = table;
  const shares = zeros(actionCount);
  let loss = 0;
  for (let o = 0; o < table.count; o += 1) {
    for (let i = 0; i < rights.length; i += 1) shares[rights[i] ?? 0] = 0;
    for (let i = 0; i < conditions.length; i += 1) {
      const c = conditions[i] ?? 0;
      const right = model.rightAction[c] ?? 0;
      shares[right] = (shares[right] ?? 0) + (posterior.condition[c] ?? 0) * (chance[o * conditionCount + c] ?? 0);
    }
    loss += leastOf(shares, rights, model);
  }
  return loss;
}

/** The same for a reading of two outcomes whose chance differs by form: `[condition * 3 + form]` of the first. */
export function lossAfterByForm(
  posterior: Posterior,
  likely: LikelyConditions,
  first: readonly number[],
  model: JudgeModel,
): number {
  const yes = zeros(actionCount);
  const no = zeros(actionCount);
  for (const c of likely.conditions) {
    const right = model.rightAction[c] ?? 0;
    for (let k = c * 3; k < c * 3 + 3; k += 1) {
      const share = posterior.state[k] ?? 0;
      const chance = share * (first[k] ?? 0);
      yes[right] = (yes[right] ?? 0) + chance;
      no[right] = (no[right] ?? 0) + share - chance;
    }
  }
  return leastOf(yes, likely.rights, model) + leastOf(no, likely.rights, model);
}

/** Least expected loss over all actions, summed over the actions that may be right. [money] */
function leastOf(shares: readonly number[], rights: readonly number[], model: JudgeModel): number {
  let least = Number.POSITIVE_INFINITY;
  for (let done = 0; done < actionCount; done += 1) {
    let sum = 0;
    for (let i = 0; i < rights.length; i += 1) {
      const right = rights[i] ?? 0;
      sum += (shares[right] ?? 0) * (model.loss[done * actionCount + right] ?? 0);
    }
    if (sum < least) least = sum;
  }
  return least;
}
