import { at, conditionCount } from "./conditions.js";
import { eolRowCount, rowOfCondition } from "./eol-rows.js";
import type { Evidence } from "./evidence.js";
import { formShareOf } from "./form-share.js";
import { rates, rateWeightsByJob } from "./job-rates.js";
import type { JudgeModel } from "./judge-model.js";
import { normalised, type Posterior, rowMeans, singlePosterior } from "./posterior.js";
import { zeros } from "./zeros.js";

/** What a job shows of its installer: where the end-of-line part usually sits, which value, how much is faulty. */
export interface JobHabit {
  /** Chance that the habit is at the end, none, at the panel, or no habit; adds to 1. */
  readonly habit: readonly [number, number, number, number];
  /** Most probable end-of-line value. [Ω] */
  readonly eolOhms: number;
  readonly eolProbability: number;
  /** Expected share of loops that are not sound. [1] */
  readonly faultRate: number;
}

const habits = 4;

/** Posteriors of one job's loops in their order, and its habit. */
export interface JobPosteriors {
  readonly posteriors: readonly Posterior[];
  readonly habit: JobHabit;
}

/**
 * Posteriors of the loops of jobs judged together: in each job the sum over habit × end-of-line value × fault rate,
 * each loop's evidence taken once. Fault rates of the jobs share a mean and a spread ({@link rateWeightsByJob}); the
 * mix of faults among themselves is the table's.
 */
export function jobPosteriors(jobs: readonly (readonly Evidence[])[], model: JudgeModel): readonly JobPosteriors[] {
  const mix = faultMix(model);
  const formByHabit = formsByHabit(model);
  const parts = jobs.map((evidence) => {
    const split = evidence.map((one) => splitEvidence(one, mix, model));
    return { evidence, split, cells: cellChances(evidence, split, formByHabit, model) };
  });
  const weights = rateWeightsByJob(
    parts.map(({ cells }) => byRate(cells)),
    model,
  );
  return parts.map(({ evidence, split, cells }, j) => {
    const weighed = { ...cells, weight: withRates(cells.weight, weights[j] ?? []) };
    const posteriors = evidence.map((one, i) => loopPosterior(one, split[i], weighed, mix, model));
    return { posteriors, habit: habitOf(weighed, evidence[0], model) };
  });
}

/** Shares of the unsound conditions among themselves by the table, 0 for sound ones; adds to 1. */
function faultMix(model: JudgeModel): number[] {
  return model.prior.map((share, c) => (c <= at.eolInPanel ? 0 : share / model.faultRate));
}

/** Likelihood of one loop summed over its conditions: sound and unsound apart, by form and value. */
interface SplitEvidence {
  readonly soundAtEnd: number[];
  readonly unsoundAtEnd: number[];
  readonly soundNone: number;
  readonly unsoundNone: number;
  readonly soundAtPanel: number;
  readonly unsoundAtPanel: number;
  /** Conditions whose form has nothing to do with the installer's habit. */
  readonly apart: number;
}

function splitEvidence(one: Evidence, mix: readonly number[], model: JudgeModel): SplitEvidence {
  const eols = one.eolWeight.length;
  const byRow = zeros(eolRowCount);
  let flat = 0;
  let unsoundNone = 0;
  let unsoundAtPanel = 0;
  let apart = 0;
  const mean = rowMeans(one);
  for (let c = at.shorted; c < conditionCount; c += 1) {
    const prior = mix[c] ?? 0;
    const row = rowOfCondition[c] ?? 0;
    const alpha = one.alpha[c] ?? 0;
    const beta = one.beta[c] ?? 0;
    if (isApart(c)) {
      apart += prior * formShareOf(c, 0, model.formShare) * (alpha * (mean[row] ?? 0) + beta);
      apart += prior * formShareOf(c, 1, model.formShare) * (one.none[c] ?? 0);
      continue;
    }
    const end = prior * formFactor(c, 0, model);
    byRow[row] = (byRow[row] ?? 0) + end * alpha;
    flat += end * beta;
    unsoundNone += prior * formFactor(c, 1, model) * (one.none[c] ?? 0);
    unsoundAtPanel += prior * formFactor(c, 2, model) * (one.atPanel[c] ?? 0);
  }
  const soundAtEnd = zeros(eols);
  const unsoundAtEnd = zeros(eols).fill(flat);
  for (let e = 0; e < eols; e += 1) soundAtEnd[e] = (one.alpha[0] ?? 0) * (one.rows[e] ?? 0);
  for (let row = 0; row < eolRowCount; row += 1) {
    const part = byRow[row] ?? 0;
    if (part === 0) continue;
    for (let e = 0; e < eols; e += 1) unsoundAtEnd[e] = (unsoundAtEnd[e] ?? 0) + part * (one.rows[row * eols + e] ?? 0);
  }
  return {
    soundAtEnd: blend(soundAtEnd, one, model),
    unsoundAtEnd: blend(unsoundAtEnd, one, model),
    soundNone: one.none[at.soundNoEol] ?? 0,
    unsoundNone,
    soundAtPanel: one.atPanel[at.eolInPanel] ?? 0,
    unsoundAtPanel,
    apart,
  };
}

/** A loop carries the job's value, or now and then any. */
function blend(atEnd: number[], one: Evidence, model: JudgeModel): number[] {
  const own = model.figures.jobEolWeight;
  let any = 0;
  for (let e = 0; e < atEnd.length; e += 1) any += (one.eolWeight[e] ?? 0) * (atEnd[e] ?? 0);
  for (let e = 0; e < atEnd.length; e += 1) atEnd[e] = own * (atEnd[e] ?? 0) + (1 - own) * any;
  return atEnd;
}

function isApart(condition: number): boolean {
  return condition === at.lifeSafety || condition === at.tamperLoop || condition === at.doubledPair;
}

/** How much more often a condition meets a form than the form's own share, so that all forms together add up. */
function formFactor(condition: number, form: number, model: JudgeModel): number {
  const usual = model.formShare[form] ?? 0;
  return usual > 0 ? formShareOf(condition, form, model.formShare) / usual : 0;
}

interface CellWeights {
  /** `[(habit * eols + eol) * rates + rate]`, adds to 1. */
  readonly weight: number[];
  /** `[habit * 3 + form]`. */
  readonly formByHabit: number[];
  readonly eols: number;
}

function formsByHabit(model: JudgeModel): number[] {
  const strength = model.figures.habitStrength;
  const table = zeros(habits * 3);
  for (let habit = 0; habit < habits; habit += 1) {
    for (let form = 0; form < 3; form += 1) {
      const usual = model.formShare[form] ?? 0;
      table[habit * 3 + form] = habit === 3 ? usual : (habit === form ? strength : 0) + (1 - strength) * usual;
    }
  }
  return table;
}

/** Chance of the readings of one job in every cell, habit and value weighed, rates not yet; the highest is 1. */
function cellChances(
  evidence: readonly Evidence[],
  split: readonly SplitEvidence[],
  formByHabit: number[],
  model: JudgeModel,
): CellWeights {
  const eols = evidence[0]?.eolWeight.length ?? 0;
  const weight = priorWeights(evidence[0], model, eols);
  for (const one of split) timesLoop(weight, one, formByHabit, eols);
  return { weight, formByHabit, eols };
}

function priorWeights(first: Evidence | undefined, model: JudgeModel, eols: number): number[] {
  const weight = zeros(habits * eols * rates.length);
  const mixed = model.figures.mixedHabitShare;
  for (let habit = 0; habit < habits; habit += 1) {
    const share = habit === 3 ? mixed : (1 - mixed) * (model.formShare[habit] ?? 0);
    for (let e = 0; e < eols; e += 1) {
      const start = (habit * eols + e) * rates.length;
      weight.fill(share * (first?.eolWeight[e] ?? 0), start, start + rates.length);
    }
  }
  return weight;
}

/** Chance of a job's readings at each fault rate. */
function byRate({ weight, eols }: CellWeights): number[] {
  const chance = zeros(rates.length);
  for (let cell = 0; cell < habits * eols; cell += 1) {
    for (let r = 0; r < rates.length; r += 1) chance[r] = (chance[r] ?? 0) + (weight[cell * rates.length + r] ?? 0);
  }
  return chance;
}

/** Cells weighed by their fault rate, adding to 1. */
function withRates(cells: number[], rateWeight: readonly number[]): number[] {
  const weight = cells.slice();
  let total = 0;
  for (let k = 0; k < weight.length; k += 1) {
    const share = (weight[k] ?? 0) * (rateWeight[k % rates.length] ?? 0);
    weight[k] = share;
    total += share;
  }
  for (let k = 0; k < weight.length; k += 1) weight[k] = (weight[k] ?? 0) / total;
  return weight;
}

/** Weighs the cells by one more loop and makes the highest 1 again; a cell that falls out of range no longer counts. */
function timesLoop(weight: number[], one: SplitEvidence, formByHabit: number[], eols: number): void {
  let highest = 0;
  for (let habit = 0; habit < habits; habit += 1) {
    const end = formByHabit[habit * 3] ?? 0;
    const none = formByHabit[habit * 3 + 1] ?? 0;
    const panel = formByHabit[habit * 3 + 2] ?? 0;
    const soundRest = none * one.soundNone + panel * one.soundAtPanel;
    const unsoundRest = none * one.unsoundNone + panel * one.unsoundAtPanel + one.apart;
    for (let e = 0; e < eols; e += 1) {
      const sound = soundRest + end * (one.soundAtEnd[e] ?? 0);
      const unsound = unsoundRest + end * (one.unsoundAtEnd[e] ?? 0);
      const start = (habit * eols + e) * rates.length;
      for (let r = 0; r < rates.length; r += 1) {
        const rate = rates[r] ?? 0;
        const product = (weight[start + r] ?? 0) * ((1 - rate) * sound + rate * unsound + 1e-300);
        weight[start + r] = product;
        if (product > highest) highest = product;
      }
    }
  }
  const scale = 1 / highest;
  for (let k = 0; k < weight.length; k += 1) weight[k] = (weight[k] ?? 0) * scale;
}

/** Share of each sound and unsound form in one loop, given all cells, then spread over the conditions. */
function loopPosterior(
  one: Evidence,
  split: SplitEvidence | undefined,
  cells: CellWeights,
  mix: readonly number[],
  model: JudgeModel,
): Posterior {
  if (split === undefined) return singlePosterior(one, model);
  const { eols } = cells;
  const soundAtEnd = zeros(eols);
  const unsoundAtEnd = zeros(eols);
  const rest = zeros(5);
  for (let habit = 0; habit < habits; habit += 1) {
    const end = cells.formByHabit[habit * 3] ?? 0;
    const none = cells.formByHabit[habit * 3 + 1] ?? 0;
    const panel = cells.formByHabit[habit * 3 + 2] ?? 0;
    const soundRest = none * split.soundNone + panel * split.soundAtPanel;
    const unsoundRest = none * split.unsoundNone + panel * split.unsoundAtPanel + split.apart;
    for (let e = 0; e < eols; e += 1) {
      const sound = soundRest + end * (split.soundAtEnd[e] ?? 0);
      const unsound = unsoundRest + end * (split.unsoundAtEnd[e] ?? 0);
      const start = (habit * eols + e) * rates.length;
      let soundWeight = 0;
      let unsoundWeight = 0;
      for (let r = 0; r < rates.length; r += 1) {
        const rate = rates[r] ?? 0;
        const by = (cells.weight[start + r] ?? 0) / ((1 - rate) * sound + rate * unsound + 1e-300);
        soundWeight += by * (1 - rate);
        unsoundWeight += by * rate;
      }
      soundAtEnd[e] = (soundAtEnd[e] ?? 0) + end * soundWeight;
      unsoundAtEnd[e] = (unsoundAtEnd[e] ?? 0) + end * unsoundWeight;
      rest[0] = (rest[0] ?? 0) + none * soundWeight;
      rest[1] = (rest[1] ?? 0) + none * unsoundWeight;
      rest[2] = (rest[2] ?? 0) + panel * soundWeight;
      rest[3] = (rest[3] ?? 0) + panel * unsoundWeight;
      rest[4] = (rest[4] ?? 0) + unsoundWeight;
    }
  }
  return spread(
    one,
    { soundAtEnd: unblend(soundAtEnd, one, model), unsoundAtEnd: unblend(unsoundAtEnd, one, model), rest },
    mix,
    model,
  );
}

/** Weight on a loop's own value: the job's with its chance, else any by its usual weight. */
function unblend(weights: number[], one: Evidence, model: JudgeModel): number[] {
  const own = model.figures.jobEolWeight;
  let total = 0;
  for (let e = 0; e < weights.length; e += 1) total += weights[e] ?? 0;
  for (let e = 0; e < weights.length; e += 1)
    weights[e] = own * (weights[e] ?? 0) + (1 - own) * total * (one.eolWeight[e] ?? 0);
  return weights;
}

interface LoopWeights {
  readonly soundAtEnd: number[];
  readonly unsoundAtEnd: number[];
  readonly rest: number[];
}

function spread(one: Evidence, weights: LoopWeights, mix: readonly number[], model: JudgeModel): Posterior {
  const eols = one.eolWeight.length;
  const state = zeros(conditionCount * 3);
  const eol = zeros(eols);
  const mean = rowMeans(one);
  const weighted = zeros(eolRowCount);
  let flat = 0;
  for (let e = 0; e < eols; e += 1) {
    const weight = weights.unsoundAtEnd[e] ?? 0;
    flat += weight;
    for (let row = 0; row < eolRowCount; row += 1) {
      weighted[row] = (weighted[row] ?? 0) + weight * (one.rows[row * eols + e] ?? 0);
    }
    const share = (weights.soundAtEnd[e] ?? 0) * (one.alpha[0] ?? 0) * (one.rows[e] ?? 0);
    state[0] = (state[0] ?? 0) + share;
    eol[e] = share;
  }
  state[at.soundNoEol * 3 + 1] = (weights.rest[0] ?? 0) * (one.none[at.soundNoEol] ?? 0);
  state[at.eolInPanel * 3 + 2] = (weights.rest[2] ?? 0) * (one.atPanel[at.eolInPanel] ?? 0);
  const byRow = zeros(eolRowCount);
  for (let c = at.shorted; c < conditionCount; c += 1) {
    const prior = mix[c] ?? 0;
    const row = rowOfCondition[c] ?? 0;
    const alpha = one.alpha[c] ?? 0;
    const beta = one.beta[c] ?? 0;
    if (isApart(c)) {
      const all = prior * (weights.rest[4] ?? 0);
      state[c * 3] = all * formShareOf(c, 0, model.formShare) * (alpha * (mean[row] ?? 0) + beta);
      state[c * 3 + 1] = all * formShareOf(c, 1, model.formShare) * (one.none[c] ?? 0);
      continue;
    }
    const end = prior * formFactor(c, 0, model);
    byRow[row] = (byRow[row] ?? 0) + end * alpha;
    state[c * 3] = end * (alpha * (weighted[row] ?? 0) + beta * flat);
    state[c * 3 + 1] = prior * formFactor(c, 1, model) * (weights.rest[1] ?? 0) * (one.none[c] ?? 0);
    state[c * 3 + 2] = prior * formFactor(c, 2, model) * (weights.rest[3] ?? 0) * (one.atPanel[c] ?? 0);
  }
  for (let row = 0; row < eolRowCount; row += 1) {
    const part = byRow[row] ?? 0;
    if (part === 0) continue;
    for (let e = 0; e < eols; e += 1) {
      eol[e] = (eol[e] ?? 0) + part * (weights.unsoundAtEnd[e] ?? 0) * (one.rows[row * eols + e] ?? 0);
    }
  }
  return normalised(state, eol);
}

function habitOf(cells: CellWeights, first: Evidence | undefined, model: JudgeModel): JobHabit {
  const { eols, weight } = cells;
  const habit: [number, number, number, number] = [0, 0, 0, 0];
  const byEol = zeros(eols);
  let faultRate = 0;
  for (let h = 0; h < habits; h += 1) {
    for (let e = 0; e < eols; e += 1) {
      for (let r = 0; r < rates.length; r += 1) {
        const share = weight[(h * eols + e) * rates.length + r] ?? 0;
        habit[h as 0 | 1 | 2 | 3] += share;
        byEol[e] = (byEol[e] ?? 0) + share;
        faultRate += share * (rates[r] ?? 0);
      }
    }
  }
  let best = 0;
  for (let e = 1; e < eols; e += 1) if ((byEol[e] ?? 0) > (byEol[best] ?? 0)) best = e;
  const eolOhms = (first?.eolOhms ?? model.eolOhms)[best] ?? 0;
  return { habit, eolOhms, eolProbability: byEol[best] ?? 0, faultRate };
}
