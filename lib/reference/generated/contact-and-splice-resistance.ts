// Generated from reference-data/contact-and-splice-resistance.json by tools/generate-reference.mjs. Do not edit.
/** What the parts of a loop that are neither cable nor resistor add to a reading */
export interface ContactAndSpliceResistanceRow {
  /** Which part [text] */
  readonly part: string;
  /** The part for people [text] */
  readonly words: string;
  /** Low end of what is met [Ω] */
  readonly lowOhms: number;
  /** Usual value [Ω] */
  readonly likelyOhms: number;
  /** High end of what is met [Ω] */
  readonly highOhms: number;
  /** Spread from one to the next; absent = not used [Ω] */
  readonly standardDeviationOhms?: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const contactAndSpliceResistance: readonly ContactAndSpliceResistanceRow[] = [
  {"part":"contact","words":"closed door or window contact","lowOhms":0.05,"likelyOhms":0.16,"highOhms":0.5,"standardDeviationOhms":0.11,"source":"practice"},
  {"part":"agedContact","words":"closed contact after years, over all temperatures","lowOhms":0.1,"likelyOhms":0.3,"highOhms":2,"source":"practice"},
  {"part":"newReed","words":"new reed switch, as makers state it","lowOhms":0.03,"likelyOhms":0.07,"highOhms":0.15,"source":"practice"},
  {"part":"splice","words":"joint in one conductor, made well","lowOhms":0.005,"likelyOhms":0.035,"highOhms":0.1,"source":"practice"},
  {"part":"leads","words":"test leads, not zeroed","lowOhms":0.1,"likelyOhms":0.27,"highOhms":0.5,"standardDeviationOhms":0.13,"source":"leads"},
  {"part":"leadsZeroed","words":"test leads, zeroed by shorting them","lowOhms":0,"likelyOhms":0,"highOhms":0.1,"source":"practice"},
  {"part":"detectorOutput","words":"output of a powered detector, closed","lowOhms":5,"likelyOhms":20,"highOhms":50,"source":"practice"},
];

export const contactAndSpliceResistanceSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
  "leads": "Two meter documents: test leads 0.1–0.2 or 0.2–0.5 Ω, replace above 1 Ω; usual value and spread common practice",
};
