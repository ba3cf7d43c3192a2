// Generated from reference-data/zone-limits.json by tools/generate-reference.mjs. Do not edit.
/** Limits of a zone schedule; settings a user can change */
export interface ZoneLimitsRow {
  /** Key [text] */
  readonly limit: string;
  /** The limit for people [text] */
  readonly words: string;
  /** Its value [count] */
  readonly value: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const zoneLimits: readonly ZoneLimitsRow[] = [
  {"limit":"displayCharacters","words":"characters of a zone name that a keypad shows","value":16,"source":"practice"},
  {"limit":"windowsPerZone","words":"windows of one room on one zone","value":6,"source":"practice"},
  {"limit":"motionsPerZone","words":"motion detectors on one zone","value":1,"source":"practice"},
];

export const zoneLimitsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
