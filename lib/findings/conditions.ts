import type { Action, Condition } from "./loop-record.js";

/** Every condition, in the order in which the judge's arrays hold them. */
export const conditions: readonly Condition[] = [
  "soundEolAtEnd",
  "soundNoEol",
  "eolInPanel",
  "shorted",
  "open",
  "highResistance",
  "leakage",
  "wrongEol",
  "normallyOpen",
  "bypassed",
  "foreignVoltage",
  "earthFault",
  "crossed",
  "doubleEol",
  "foil",
  "poweredDevice",
  "lifeSafety",
  "unexplained",
  "parallelContacts",
  "sharedReturn",
  "doubledPair",
  "tamperLoop",
];

/** Every action, in the order in which the judge's arrays hold them. */
export const actions: readonly Action[] = [
  "keep",
  "fitEol",
  "changeEol",
  "repair",
  "landAsNormallyOpen",
  "powerAndRetest",
  "leaveAlone",
  "measureAgain",
];

/** Place of each condition in {@link conditions}. */
export const at = {
  soundEolAtEnd: 0,
  soundNoEol: 1,
  eolInPanel: 2,
  shorted: 3,
  open: 4,
  highResistance: 5,
  leakage: 6,
  wrongEol: 7,
  normallyOpen: 8,
  bypassed: 9,
  foreignVoltage: 10,
  earthFault: 11,
  crossed: 12,
  doubleEol: 13,
  foil: 14,
  poweredDevice: 15,
  lifeSafety: 16,
  unexplained: 17,
  parallelContacts: 18,
  sharedReturn: 19,
  doubledPair: 20,
  tamperLoop: 21,
} as const satisfies Record<Condition, number>;

/** Number of conditions. */
export const conditionCount = conditions.length;
