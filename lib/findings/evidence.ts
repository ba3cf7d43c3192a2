import { type BaseLoop, baseLoop } from "./base-loop.js";
import { closedDensities } from "./closed-densities.js";
import { conditionCount } from "./conditions.js";
import type { JudgeModel } from "./judge-model.js";
import type { LoopRecord } from "./loop-record.js";
import { openedPatterns } from "./opened-patterns.js";
import { recordFactors } from "./record-factors.js";
import { type TakenReadings, takenReadings } from "./taken-readings.js";
import { zeros } from "./zeros.js";

/** How likely everything written of one loop is under each condition and form. Densities up to one common factor. */
export interface Evidence {
  /** `[row * eols + eol]`: with the part at the far end condition c is `alpha[c] · row[eol] + beta[c]`. */
  readonly rows: number[];
  /** Every row is 0: no end-of-line part explains the shut reading. */
  readonly noEol: boolean;
  readonly alpha: number[];
  readonly beta: number[];
  /** `[condition]`: no end-of-line part. */
  readonly none: number[];
  /** `[condition]`: end-of-line part at the panel. */
  readonly atPanel: number[];
  /** End-of-line values; the last is what the old panel expects. [Ω] */
  readonly eolOhms: number[];
  /** Their weights before the job says more; add to 1. */
  readonly eolWeight: number[];
  readonly base: BaseLoop;
  readonly taken: TakenReadings;
}

/** What the job adds to a record before it is judged. */
export interface JobHints {
  /** Value that other loops of the job say their panel expects. [Ω] */
  readonly expectedEolOhms?: number;
}

/** Likelihood of one record under every condition and form. */
export function evidenceOf(record: LoopRecord, model: JudgeModel, hints: JobHints = {}): Evidence {
  const base = baseLoop(record, model.figures);
  const taken = takenReadings(record, model.figures);
  const { eolOhms, eolWeight } = candidateEols(model, record.oldPanel?.expectedEolOhms ?? hints.expectedEolOhms);
  const task = { taken, base, figures: model.figures, eolOhms, eolWeight, usualWeight: model.eolWeight, record };
  const closed = closedDensities(task);
  const alpha = zeros(conditionCount);
  const beta = zeros(conditionCount);
  const none = zeros(conditionCount);
  const atPanel = zeros(conditionCount);
  openedPatterns({ ...task, closed, alpha, beta, none });
  const factors = recordFactors(record, taken, model);
  for (let c = 0; c < conditionCount; c += 1) {
    const end = factors[c * 3] ?? 1;
    alpha[c] = (alpha[c] ?? 0) * end;
    beta[c] = (beta[c] ?? 0) * end;
    atPanel[c] = (none[c] ?? 0) * (factors[c * 3 + 2] ?? 1);
    none[c] = (none[c] ?? 0) * (factors[c * 3 + 1] ?? 1);
  }
  return { rows: closed.rows, noEol: closed.noEol, alpha, beta, none, atPanel, eolOhms, eolWeight, base, taken };
}

function candidateEols(model: JudgeModel, expected: number | undefined) {
  if (expected === undefined || !(expected > 0)) return model;
  const eolOhms = model.eolOhms.slice();
  const eolWeight = model.eolWeight.slice();
  const known = model.figures.knownEolWeight;
  const last = eolOhms.length - 1;
  for (let e = 0; e < last; e += 1) eolWeight[e] = (eolWeight[e] ?? 0) * (1 - known);
  eolOhms[last] = expected;
  eolWeight[last] = known;
  return { eolOhms, eolWeight };
}
