import { type BaseLoop, baseLoop } from "./base-loop.js";
import { closedDensities } from "./closed-densities.js";
import { at, conditionCount } from "./conditions.js";
import type { JudgeModel } from "./judge-model.js";
import type { LoopRecord } from "./loop-record.js";
import { openedPatterns } from "./opened-patterns.js";
import { recordFactors } from "./record-factors.js";
import { type TakenReadings, takenReadings } from "./taken-readings.js";

/** How likely everything written of one loop is under each condition and form. Densities up to one common factor. */
export interface Evidence {
  /** `[condition * eols + eol]`: end-of-line part at the far end, of that value. */
  readonly atEnd: Float64Array;
  /** `[condition]`: no end-of-line part. */
  readonly none: Float64Array;
  /** `[condition]`: end-of-line part at the panel. */
  readonly atPanel: Float64Array;
  /** End-of-line values; the last is what the old panel expects. [Ω] */
  readonly eolOhms: Float64Array;
  /** Their weights before the job says more; add to 1. */
  readonly eolWeight: Float64Array;
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
  const expected = record.oldPanel?.expectedEolOhms ?? hints.expectedEolOhms;
  const { eolOhms, eolWeight } = candidateEols(model, expected);
  const closed = closedDensities({ taken, base, figures: model.figures, eolOhms, eolWeight, record });
  const count = eolOhms.length;
  const atEnd = new Float64Array(conditionCount * count);
  const none = new Float64Array(conditionCount);
  openedPatterns({ record, taken, base, figures: model.figures, closed, eolOhms, eolWeight, atEnd, none });
  const factors = recordFactors(record, taken, model);
  const atPanel = new Float64Array(conditionCount);
  for (let c = 0; c < conditionCount; c += 1) {
    const noteAtEnd = factors[c * 3] ?? 1;
    for (let e = c * count; e < (c + 1) * count; e += 1) atEnd[e] = (atEnd[e] ?? 0) * noteAtEnd;
    atPanel[c] = (none[c] ?? 0) * (factors[c * 3 + 2] ?? 1);
    none[c] = (none[c] ?? 0) * (factors[c * 3 + 1] ?? 1);
  }
  return { atEnd, none, atPanel, eolOhms, eolWeight, base, taken };
}

function candidateEols(model: JudgeModel, expected: number | undefined) {
  if (expected === undefined || !(expected > 0)) return { eolOhms: model.eolOhms, eolWeight: model.eolWeight };
  const eolOhms = model.eolOhms.slice();
  const eolWeight = model.eolWeight.slice();
  const known = model.figures.knownEolWeight;
  const last = eolOhms.length - 1;
  for (let e = 0; e < last; e += 1) eolWeight[e] = (eolWeight[e] ?? 0) * (1 - known);
  eolOhms[last] = expected;
  eolWeight[last] = known;
  return { eolOhms, eolWeight };
}

/** Conditions whose physics fixes the form: the two sound ones without a part at the end never have one. */
export function formFits(condition: number, form: number): boolean {
  if (condition === at.soundEolAtEnd || condition === at.doubleEol) return form === 0;
  if (condition === at.soundNoEol || condition === at.tamperLoop) return form === 1;
  return condition !== at.eolInPanel || form === 2;
}
