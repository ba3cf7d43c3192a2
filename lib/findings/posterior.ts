import { at, conditionCount } from "./conditions.js";
import { type Evidence, formFits } from "./evidence.js";
import type { JudgeModel } from "./judge-model.js";

/** How probable every condition, form and end-of-line value of one loop is. */
export interface Posterior {
  /** `[condition * 3 + form]`, adds to 1. [1] */
  readonly state: Float64Array;
  /** `[condition]`, adds to 1. [1] */
  readonly condition: Float64Array;
  /** Weights of the end-of-line values given one at the far end; adds to 1 or is all 0. [1] */
  readonly eol: Float64Array;
}

/** Prior share of every condition and form, `[condition * 3 + form]`; the forms of unsound loops follow the sound ones. */
export function statePrior(model: JudgeModel): Float64Array {
  const shares = new Float64Array(conditionCount * 3);
  for (let c = 0; c < conditionCount; c += 1) {
    const prior = model.prior[c] ?? 0;
    for (let form = 0; form < 3; form += 1) {
      const own = c === at.soundEolAtEnd ? 0 : c === at.soundNoEol ? 1 : c === at.eolInPanel ? 2 : -1;
      shares[c * 3 + form] = own >= 0 ? (own === form ? prior : 0) : prior * formShareOf(c, form, model.formShare);
    }
  }
  return shares;
}

/** Share of a form under an unsound condition. */
export function formShareOf(condition: number, form: number, formShare: Float64Array): number {
  if (condition === at.doubleEol || condition === at.lifeSafety) return form === 0 ? 1 : 0;
  if (condition === at.tamperLoop || condition === at.doubledPair) return form === 1 ? 1 : 0;
  return formFits(condition, form) ? (formShare[form] ?? 0) : 0;
}

/** Posterior of one loop by itself. */
export function singlePosterior(evidence: Evidence, model: JudgeModel): Posterior {
  const eols = evidence.eolWeight.length;
  const state = statePrior(model);
  const eol = new Float64Array(eols);
  for (let c = 0; c < conditionCount; c += 1) {
    const prior = state[c * 3] ?? 0;
    let mixed = 0;
    if (prior > 0) {
      for (let e = 0; e < eols; e += 1) {
        const weight = (evidence.eolWeight[e] ?? 0) * (evidence.atEnd[c * eols + e] ?? 0);
        mixed += weight;
        eol[e] = (eol[e] ?? 0) + (tellsEol(c) ? prior * weight : 0);
      }
    }
    state[c * 3] = prior * mixed;
    state[c * 3 + 1] = (state[c * 3 + 1] ?? 0) * (evidence.none[c] ?? 0);
    state[c * 3 + 2] = (state[c * 3 + 2] ?? 0) * (evidence.atPanel[c] ?? 0);
  }
  return normalised(state, eol);
}

/** Conditions under which the reading says something about the usual end-of-line value. */
export function tellsEol(condition: number): boolean {
  return (
    condition !== at.open &&
    condition !== at.shorted &&
    condition !== at.unexplained &&
    condition !== at.foreignVoltage &&
    condition !== at.lifeSafety
  );
}

/** Makes weights into shares. Where nothing explains the readings at all, the loop is unexplained. */
export function normalised(state: Float64Array, eol: Float64Array): Posterior {
  let total = 0;
  for (let k = 0; k < state.length; k += 1) total += state[k] ?? 0;
  if (!(total > 0) || !Number.isFinite(total)) {
    state.fill(0);
    state[at.unexplained * 3 + 1] = 1;
    total = 1;
  }
  const condition = new Float64Array(conditionCount);
  for (let c = 0; c < conditionCount; c += 1) {
    for (let k = c * 3; k < c * 3 + 3; k += 1) {
      const share = (state[k] ?? 0) / total;
      state[k] = share;
      condition[c] = (condition[c] ?? 0) + share;
    }
  }
  let eolTotal = 0;
  for (let e = 0; e < eol.length; e += 1) eolTotal += eol[e] ?? 0;
  if (eolTotal > 0) for (let e = 0; e < eol.length; e += 1) eol[e] = (eol[e] ?? 0) / eolTotal;
  return { state, condition, eol };
}
