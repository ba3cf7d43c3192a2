// Generated from reference-data/meters.json by tools/generate-reference.mjs. Do not edit.
/** Ohm ranges of hand-held meters: what a reading may be off by */
export interface MetersRow {
  /** Key [text] */
  readonly meter: string;
  /** The meter for people [text] */
  readonly words: string;
  /** Part of the reading in the accuracy statement [%] */
  readonly percent: number;
  /** Last digits in the accuracy statement; added to the percentage, never the larger of the two [count] */
  readonly counts: number;
  /** Display runs from 0 up to one less than this, then takes the next range [count] */
  readonly displayCounts: number;
  /** One count on the lowest range [Ω] */
  readonly finestResolutionOhms: number;
  /** Above this the display shows over-range [Ω] */
  readonly overRangeOhms: number;
  /** From here on a reading counts as over-range when a loop is judged [Ω] */
  readonly judgedOverRangeOhms: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const meters: readonly MetersRow[] = [
  {"meter":"commonHandheld","words":"common hand-held meter; used where the survey names none","percent":0.8,"counts":5,"displayCounts":6000,"finestResolutionOhms":0.1,"overRangeOhms":40000000,"judgedOverRangeOhms":8000000,"source":"practice"},
  {"meter":"simpleHandheld","words":"simple hand-held meter","percent":1,"counts":5,"displayCounts":2000,"finestResolutionOhms":0.1,"overRangeOhms":20000000,"judgedOverRangeOhms":8000000,"source":"practice"},
  {"meter":"fineHandheld","words":"fine hand-held meter","percent":0.2,"counts":2,"displayCounts":50000,"finestResolutionOhms":0.01,"overRangeOhms":50000000,"judgedOverRangeOhms":8000000,"source":"practice"},
];

export const metersSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
