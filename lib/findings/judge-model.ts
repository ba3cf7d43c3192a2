import { InputError } from "../problems/input-error.js";
import { eolWeights } from "../reference/generated/eol-weights.js";
import { judgeConditions } from "../reference/generated/judge-conditions.js";
import { judgeLoss } from "../reference/generated/judge-loss.js";
import { nextReadings } from "../reference/generated/next-readings.js";
import { actions, at, conditionCount, conditions } from "./conditions.js";
import { statePrior } from "./form-share.js";
import { type GradedReadings, gradedReadings } from "./graded-readings.js";
import { type Figures, figuresOf, type JudgeOptions } from "./judge-options.js";
import { type FixedOutcomes, fixedOutcomes } from "./outcome-tables.js";
import { zeros } from "./zeros.js";

/** Everything the judge needs besides the record, as flat arrays. Made once per set of options by {@link judgeModel}. */
export interface JudgeModel {
  readonly figures: Figures;
  /** Share of each condition before any reading; adds to 1. [1] */
  readonly prior: number[];
  /** 1 for the three sound conditions. */
  readonly sound: Uint8Array;
  /** Share of unsound loops. [1] */
  readonly faultRate: number;
  /** `[condition * 3 + form]`: share of each before any reading; adds to 1. [1] */
  readonly statePrior: number[];
  /** Shares of the three forms among sound loops: at the end, none, at the panel. [1] */
  readonly formShare: number[];
  /** `[condition * 3 + form]`: chance that the old panel showed normal at rest. [1] */
  readonly restNormal: number[];
  /** Index into `actions` of what is right for each condition. */
  readonly rightAction: Uint8Array;
  /** `[done * 8 + right]`. [money] */
  readonly loss: Float64Array;
  /** End-of-line values; the last place is kept for what the old panel expects. [Ω] */
  readonly eolOhms: number[];
  readonly eolWeight: number[];
  readonly minutes: Readonly<Record<string, number>>;
  readonly graded: GradedReadings;
  readonly outcomes: FixedOutcomes;
  readonly accountOnTest: boolean;
  /** Further readings are ranked; without, `next` stays empty: for verdicts of many loops. */
  readonly ranksNext: boolean;
}

/**
 * The judge's tables with the caller's changes, ready for use.
 * @throws {@link InputError} when a weight is negative or a rate is outside its range.
 * @example judgeModel({ faultRate: 0.2 }).faultRate; // 0.2
 */
export function judgeModel(options: JudgeOptions): JudgeModel {
  const faultRate = options.faultRate;
  if (faultRate !== undefined && !(faultRate > 0 && faultRate < 1)) {
    throw new InputError({ field: "faultRate", got: String(faultRate), expected: "above 0 and below 1" });
  }
  const { prior, sound } = priorShares(options);
  const soundShare = (prior[0] ?? 0) + (prior[1] ?? 0) + (prior[2] ?? 0);
  const figures = figuresOf(options.figures);
  const graded = gradedReadings();
  const formShare = prior.slice(0, 3).map((share) => share / soundShare);
  const { eolOhms, eolWeight } = eolCandidates(options.eolWeights);
  return {
    figures,
    prior,
    sound,
    faultRate: 1 - soundShare,
    statePrior: statePrior(prior, formShare),
    formShare,
    restNormal: restingTable(),
    rightAction: Uint8Array.from(conditions, (c) => actions.indexOf(conditionRow(c).rightAction as never)),
    loss: lossTable(options),
    eolOhms,
    eolWeight,
    minutes: { ...Object.fromEntries(nextReadings.map((row) => [row.reading, row.minutes])), ...options.minutes },
    graded,
    outcomes: fixedOutcomes(graded, figures),
    accountOnTest: options.accountOnTest === true,
    ranksNext: options.rankNext ?? true,
  };
}

/** The model of no options, made once. */
export const defaultJudgeModel: JudgeModel = judgeModel({});

function conditionRow(condition: string) {
  const row = judgeConditions.find((candidate) => candidate.condition === condition);
  if (row === undefined) throw new InputError({ field: "condition", got: condition, expected: "a row of the table" });
  return row;
}

function priorShares(options: JudgeOptions): { prior: number[]; sound: Uint8Array } {
  const prior = zeros(conditionCount);
  const sound = new Uint8Array(conditionCount);
  for (const [index, condition] of conditions.entries()) {
    const weight = options.priors?.[condition] ?? conditionRow(condition).prior;
    if (!(weight >= 0 && Number.isFinite(weight))) {
      throw new InputError({ field: `priors.${condition}`, got: String(weight), expected: "0 or more" });
    }
    prior[index] = weight;
    sound[index] = index <= at.eolInPanel ? 1 : 0;
  }
  let soundSum = 0;
  let faultSum = 0;
  for (let index = 0; index < conditionCount; index += 1) {
    if (sound[index] === 1) soundSum += prior[index] ?? 0;
    else faultSum += prior[index] ?? 0;
  }
  if (soundSum <= 0 || faultSum <= 0) {
    throw new InputError({ field: "priors", got: "all 0", expected: "weight on a sound and on an unsound condition" });
  }
  const rate = options.faultRate ?? faultSum / (soundSum + faultSum);
  for (let index = 0; index < conditionCount; index += 1) {
    const scale = sound[index] === 1 ? (1 - rate) / soundSum : rate / faultSum;
    prior[index] = (prior[index] ?? 0) * scale;
  }
  return { prior, sound };
}

function eolCandidates(given: JudgeOptions["eolWeights"]): { eolOhms: number[]; eolWeight: number[] } {
  const rows = given ?? eolWeights;
  const total = rows.reduce((sum, row) => sum + row.weight, 0);
  if (!(total > 0) || rows.some((row) => !(row.eolOhms > 0) || !(row.weight >= 0))) {
    throw new InputError({
      field: "eolWeights",
      got: `${rows.length} rows`,
      expected: "values over 0 Ω, weights over 0",
    });
  }
  const eolOhms = zeros(rows.length + 1);
  const eolWeight = zeros(rows.length + 1);
  for (const [index, row] of rows.entries()) {
    eolOhms[index] = row.eolOhms;
    eolWeight[index] = row.weight / total;
  }
  eolOhms[rows.length] = rows[0]?.eolOhms ?? 1000;
  return { eolOhms, eolWeight };
}

function restingTable(): number[] {
  const table = zeros(conditionCount * 3);
  for (const [index, condition] of conditions.entries()) {
    const row = conditionRow(condition);
    table[index * 3] = row.normalIfEolAtEnd;
    table[index * 3 + 1] = row.normalIfNoEol;
    table[index * 3 + 2] = row.normalIfEolAtPanel;
  }
  return table;
}

function lossTable(options: JudgeOptions): Float64Array {
  const table = new Float64Array(actions.length * actions.length);
  for (const row of [...judgeLoss, ...(options.losses ?? [])]) {
    const done = actions.indexOf(row.done as never);
    const right = actions.indexOf(row.right as never);
    if (done < 0 || right < 0 || !(row.loss >= 0)) {
      throw new InputError({
        field: "losses",
        got: `${row.done}/${row.right}`,
        expected: "known actions, loss 0 or more",
      });
    }
    table[done * actions.length + right] = row.loss;
  }
  return table;
}
