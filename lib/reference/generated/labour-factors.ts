// Generated from reference-data/labour-factors.json by tools/generate-reference.mjs. Do not edit.
/** What makes every hour of work on a loop longer */
export interface LabourFactorsRow {
  /** Stable key [text] */
  readonly factor: string;
  /** The circumstance for people [text] */
  readonly words: string;
  /** Hours are multiplied by this [1] */
  readonly timesHours: number;
  /** What else it brings [text] */
  readonly note?: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const labourFactors: readonly LabourFactorsRow[] = [
  {"factor":"ladder","words":"from a ladder","timesHours":1.1,"source":"practice"},
  {"factor":"lift","words":"from a lift","timesHours":1.3,"note":"hire is a separate line","source":"practice"},
  {"factor":"masonry","words":"in masonry","timesHours":1.25,"source":"practice"},
  {"factor":"occupied","words":"rooms in use","timesHours":1.15,"source":"practice"},
  {"factor":"night","words":"at night","timesHours":1,"note":"a premium on the rate, never on the hours as well","source":"practice"},
];

export const labourFactorsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
