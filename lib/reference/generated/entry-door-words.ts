// Generated from reference-data/entry-door-words.json by tools/generate-reference.mjs. Do not edit.
/** Words that tell a door of daily entry from windows and other openings, matched as whole words */
export interface EntryDoorWordsRow {
  /** entryDoor: a door people come in by; dailyUse: an opening of the loop is used daily; oneDoor: several leaves or contacts of one door; window: an opening that is no door; innerDoor: overrules entryDoor [text] */
  readonly means: string;
  /** Whole words or phrases, small letters [list of text] */
  readonly words: readonly (string)[];
  /** Key into the table's sources. */
  readonly source: string;
}

export const entryDoorWords: readonly EntryDoorWordsRow[] = [
  {"means":"entryDoor","words":["front door","main entrance","main door","main ent","entrance","entrance door","entry","entry door","back door","rear door","side door","kitchen door","staff door","staff entrance","patio door","sliding door","slider","utility door","mud room door","garage door","front dr","rear dr","staff dr","back dr"],"source":"practice"},
  {"means":"dailyUse","words":["used every day","used daily","daily door","in daily use","every day","daily entry","daily use"],"source":"practice"},
  {"means":"oneDoor","words":["double door","double doors","pair of doors","both leaves","two leaves","2 leaves","leaves"],"source":"practice"},
  {"means":"window","words":["window","windows","win","wndw","wndws","sash","skylight","skylights"],"source":"practice"},
];

export const entryDoorWordsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
