// Generated from reference-data/colour-code.json by tools/generate-reference.mjs. Do not edit.
/** Resistor colour code: digits, multipliers and tolerances */
export interface ColourCodeRow {
  /** Colour of the band [text] */
  readonly colour: string;
  /** What it stands for as a digit band [1] */
  readonly digit?: number;
  /** Power of ten it stands for as the multiplier band [1] */
  readonly multiplierExponent?: number;
  /** Tolerance, only where the sources read agree [%] */
  readonly tolerancePercent?: number;
  /** Tolerance of the 2016 edition as quoted, where other pages print something else: shown, never reckoned with [%] */
  readonly disputedTolerancePercent?: number;
  /** What the sources disagree on [text] */
  readonly note?: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const colourCode: readonly ColourCodeRow[] = [
  {"colour":"black","digit":0,"multiplierExponent":0,"source":"iec60062"},
  {"colour":"brown","digit":1,"multiplierExponent":1,"tolerancePercent":1,"source":"iec60062"},
  {"colour":"red","digit":2,"multiplierExponent":2,"tolerancePercent":2,"source":"iec60062"},
  {"colour":"orange","digit":3,"multiplierExponent":3,"disputedTolerancePercent":0.05,"note":"pages print different tolerances","source":"iec60062disputed"},
  {"colour":"yellow","digit":4,"multiplierExponent":4,"disputedTolerancePercent":0.02,"note":"pages print different tolerances","source":"iec60062disputed"},
  {"colour":"green","digit":5,"multiplierExponent":5,"tolerancePercent":0.5,"source":"iec60062"},
  {"colour":"blue","digit":6,"multiplierExponent":6,"tolerancePercent":0.25,"source":"iec60062"},
  {"colour":"violet","digit":7,"multiplierExponent":7,"disputedTolerancePercent":0.1,"note":"pages print different tolerances","source":"iec60062disputed"},
  {"colour":"grey","digit":8,"multiplierExponent":8,"disputedTolerancePercent":0.01,"note":"0.05 in earlier editions; 0.01 from memory","source":"iec60062memory"},
  {"colour":"white","digit":9,"multiplierExponent":9,"source":"iec60062"},
  {"colour":"gold","multiplierExponent":-1,"tolerancePercent":5,"source":"iec60062"},
  {"colour":"silver","multiplierExponent":-2,"tolerancePercent":10,"source":"iec60062"},
  {"colour":"pink","multiplierExponent":-3,"source":"iec60062"},
  {"colour":"none","tolerancePercent":20,"note":"no fourth band","source":"iec60062"},
];

export const colourCodeSources: Readonly<Record<string, string>> = {
  "iec60062": "IEC 60062:2016 as quoted by three pages that agree",
  "iec60062disputed": "IEC 60062:2016 as quoted by three pages; digit and multiplier agree, tolerance does not",
  "iec60062memory": "IEC 60062:2016; digit and multiplier as quoted by three pages that agree, tolerance from memory",
};
