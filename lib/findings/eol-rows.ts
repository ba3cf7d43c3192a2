import { at, conditionCount } from "./conditions.js";

/**
 * Likelihoods that change with the end-of-line value, one row per kind of shut reading. Every condition with the part
 * at the far end is `alpha · row[eol] + beta`, so a row is worked out once for all conditions that share it.
 */
export const eolRow = { eol: 0, joint: 1, foil: 2, leak: 3, other: 4, doubled: 5 } as const;

/** Number of rows. */
export const eolRowCount = 6;

/** Row of each condition. Conditions that do not depend on the value have alpha 0. */
export const rowOfCondition: Uint8Array = rows();

function rows(): Uint8Array {
  const table = new Uint8Array(conditionCount);
  table[at.highResistance] = eolRow.joint;
  table[at.foil] = eolRow.foil;
  table[at.leakage] = eolRow.leak;
  table[at.wrongEol] = eolRow.other;
  table[at.doubleEol] = eolRow.doubled;
  return table;
}
