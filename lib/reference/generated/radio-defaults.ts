// Generated from reference-data/radio-defaults.json by tools/generate-reference.mjs. Do not edit.
/** Defaults of the radio judgement; each can be replaced in a call */
export interface RadioDefaultsRow {
  /** Key [text] */
  readonly setting: string;
  /** Default [as in the column unit] */
  readonly value: number;
  /** Unit of the value [text] */
  readonly unit: string;
  /** What it is [text] */
  readonly words: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const radioDefaults: readonly RadioDefaultsRow[] = [
  {"setting":"neededMarginDb","value":10,"unit":"dB","words":"Least signal over noise","source":"practice"},
  {"setting":"countMessagesUnderDb","value":15,"unit":"dB","words":"Under this margin messages are counted as well","source":"practice"},
  {"setting":"neededMessages","value":50,"unit":"count","words":"Messages to count","source":"practice"},
  {"setting":"neededDelivery","value":0.9,"unit":"probability","words":"Share of messages that the count has to prove","source":"practice"},
  {"setting":"confidence","value":0.95,"unit":"probability","words":"One-sided confidence of what a count proves","source":"practice"},
  {"setting":"estimateMegahertz","value":868,"unit":"MHz","words":"Band an estimate is made for where the price book names none in figures","source":"practice"},
  {"setting":"estimateTransmitDbm","value":10,"unit":"dBm","words":"Transmitter of a small battery device with its antenna, for an estimate","source":"practice"},
  {"setting":"estimateNoiseDbm","value":-102,"unit":"dBm","words":"Background at a receiver where none was read, for an estimate","source":"practice"},
];

export const radioDefaultsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
