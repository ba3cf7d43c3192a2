// Generated from reference-data/eol-place-words.json by tools/generate-reference.mjs. Do not edit.
/** Words for where the end-of-line resistor is */
export interface EolPlaceWordsRow {
  /** Our name of the place [text] */
  readonly place: string;
  /** What surveyors type, small letters without punctuation [list of text] */
  readonly words: readonly (string)[];
  /** Key into the table's sources. */
  readonly source: string;
}

export const eolPlaceWords: readonly EolPlaceWordsRow[] = [
  {"place":"panel","words":["in can","can","in panel","panel","at panel","on terminal","on terminals","terminal","at control","in the can","at the can"],"source":"practice"},
  {"place":"device","words":["device","at device","at door","door","far","far end","at far end","end","last","last window","last device","last smoke","last contact","far button","button","valve","siren","window","at window","detector","in detector","sensor","contact","motion"],"source":"practice"},
  {"place":"none","words":["no","none","n","not fitted","no eol","without"],"source":"practice"},
  {"place":"unknown","words":["unknown","two found","not found","several found","dont know","don t know"],"source":"practice"},
];

export const eolPlaceWordsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
