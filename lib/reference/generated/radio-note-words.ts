// Generated from reference-data/radio-note-words.json by tools/generate-reference.mjs. Do not edit.
/** Words of a radio test row that tell whether doors and covers stood as in use; the first row that fits counts */
export interface RadioNoteWordsRow {
  /** notAsUsed or asUsed [text] */
  readonly state: string;
  /** Phrases of whole words in the note or the location [list of text] */
  readonly words: readonly (string)[];
  /** Key into the table's sources. */
  readonly source: string;
}

export const radioNoteWords: readonly RadioNoteWordsRow[] = [
  {"state":"notAsUsed","words":["retest","re test","test again","was open","were open","door open","doors open","hatch open","cover open","lid open"],"source":"practice"},
  {"state":"asUsed","words":["closed","shut","as used","as in use"],"source":"practice"},
];

export const radioNoteWordsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
