import { at, conditionCount } from "./conditions.js";
import { eolRowCount, rowOfCondition } from "./eol-rows.js";
import type { Evidence } from "./evidence.js";
import type { JudgeModel } from "./judge-model.js";
import { zeros } from "./zeros.js";

/** How probable every condition, form and end-of-line value of one loop is. */
export interface Posterior {
  /** `[condition * 3 + form]`, adds to 1. [1] */
  readonly state: number[];
  /** `[condition]`, adds to 1. [1] */
  readonly condition: number[];
  /** Weights of the end-of-line values given one at the far end; adds to 1 or is all 0. [1] */
  readonly eol: number[];
}

/** Posterior of one loop by itself. */
export function singlePosterior(evidence: Evidence, model: JudgeModel): Posterior {
  const { rows, alpha, beta, none, atPanel, eolWeight } = evidence;
  const prior = model.statePrior;
  const count = eolWeight.length;
  const mean = rowMeans(evidence);
  const state = zeros(conditionCount * 3);
  const byRow = zeros(eolRowCount);
  for (let c = 0; c < conditionCount; c += 1) {
    const end = prior[c * 3] ?? 0;
    const row = rowOfCondition[c] ?? 0;
    const part = end * (alpha[c] ?? 0);
    byRow[row] = (byRow[row] ?? 0) + part;
    state[c * 3] = part * (mean[row] ?? 0) + end * (beta[c] ?? 0);
    state[c * 3 + 1] = (prior[c * 3 + 1] ?? 0) * (none[c] ?? 0);
    state[c * 3 + 2] = (prior[c * 3 + 2] ?? 0) * (atPanel[c] ?? 0);
  }
  const eol = zeros(count);
  for (let row = 0; row < eolRowCount; row += 1) {
    const part = byRow[row] ?? 0;
    if (part === 0 || (mean[row] ?? 0) === 0) continue;
    for (let e = 0; e < count; e += 1)
      eol[e] = (eol[e] ?? 0) + part * (eolWeight[e] ?? 0) * (rows[row * count + e] ?? 0);
  }
  return normalised(state, eol);
}

/** Mean of each row over the end-of-line values. */
export function rowMeans({ rows, eolWeight, noEol }: Evidence): number[] {
  const count = eolWeight.length;
  const mean = zeros(eolRowCount);
  if (noEol) return mean;
  for (let row = 0; row < eolRowCount; row += 1) {
    let sum = 0;
    for (let e = 0; e < count; e += 1) sum += (eolWeight[e] ?? 0) * (rows[row * count + e] ?? 0);
    mean[row] = sum;
  }
  return mean;
}

/** Makes weights into shares. Where nothing explains the readings at all, the loop is unexplained. */
export function normalised(state: number[], eol: number[]): Posterior {
  let total = 0;
  for (let k = 0; k < state.length; k += 1) total += state[k] ?? 0;
  if (!(total > 0) || !Number.isFinite(total)) {
    state.fill(0);
    state[at.unexplained * 3 + 1] = 1;
    total = 1;
  }
  const condition = zeros(conditionCount);
  for (let c = 0; c < conditionCount; c += 1) {
    let sum = 0;
    for (let k = c * 3; k < c * 3 + 3; k += 1) {
      const share = (state[k] ?? 0) / total;
      state[k] = share;
      sum += share;
    }
    condition[c] = sum;
  }
  let eolTotal = 0;
  for (let e = 0; e < eol.length; e += 1) eolTotal += eol[e] ?? 0;
  if (eolTotal > 0) for (let e = 0; e < eol.length; e += 1) eol[e] = (eol[e] ?? 0) / eolTotal;
  return { state, condition, eol };
}
