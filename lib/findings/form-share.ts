import { at, conditionCount } from "./conditions.js";
import { zeros } from "./zeros.js";

/** Share of a form under an unsound condition: usually that of sound loops, for a few conditions fixed. */
export function formShareOf(condition: number, form: number, formShare: number[]): number {
  if (condition === at.doubleEol || condition === at.lifeSafety) return form === 0 ? 1 : 0;
  if (condition === at.tamperLoop || condition === at.doubledPair) return form === 1 ? 1 : 0;
  return formShare[form] ?? 0;
}

/** Prior share of every condition and form, `[condition * 3 + form]`; adds to 1. */
export function statePrior(prior: number[], formShare: number[]): number[] {
  const shares = zeros(conditionCount * 3);
  for (let c = 0; c < conditionCount; c += 1) {
    for (let form = 0; form < 3; form += 1) {
      const share = c <= at.eolInPanel ? (c === form ? 1 : 0) : formShareOf(c, form, formShare);
      shares[c * 3 + form] = (prior[c] ?? 0) * share;
    }
  }
  return shares;
}
