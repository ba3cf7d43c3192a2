import { actions, conditionCount } from "./conditions.js";
import type { JudgeModel } from "./judge-model.js";
import { zeros } from "./zeros.js";

const actionCount = actions.length;

/** Chance that each action is the right one, from the chances of the conditions. */
export function rightActionShares(condition: number[], model: JudgeModel): number[] {
  const shares = zeros(actionCount);
  for (let c = 0; c < conditionCount; c += 1) {
    const right = model.rightAction[c] ?? 0;
    shares[right] = (shares[right] ?? 0) + (condition[c] ?? 0);
  }
  return shares;
}

/** The action of least expected loss and that loss. `shares` need not add to 1: the loss scales with them. One action may be left out. */
export function leastLoss(
  shares: readonly number[],
  model: JudgeModel,
  without = -1,
): { readonly action: number; readonly loss: number } {
  let action = 0;
  let loss = Number.POSITIVE_INFINITY;
  for (let done = 0; done < actionCount; done += 1) {
    if (done === without) continue;
    let sum = 0;
    for (let right = 0; right < actionCount; right += 1) {
      sum += (shares[right] ?? 0) * (model.loss[done * actionCount + right] ?? 0);
    }
    if (sum < loss) {
      loss = sum;
      action = done;
    }
  }
  return { action, loss };
}
