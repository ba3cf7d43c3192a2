// Generated from reference-data/asked-settings.json by tools/generate-reference.mjs. Do not edit.
/** Settings that only the owner can give: nothing is assumed for them, the estimate asks */
export interface AskedSettingsRow {
  /** Key in the settings of the survey [text] */
  readonly setting: string;
  /** Unit of its value [text] */
  readonly unit: string;
  /** What it does [text] */
  readonly meaning: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const askedSettings: readonly AskedSettingsRow[] = [
  {"setting":"agreedDarkMinutes","unit":"min","meaning":"Longest time that an area or a hold-up may be unguarded while it moves over, agreed with the owner","source":"practice"},
  {"setting":"exitSeconds","unit":"s","meaning":"Exit time wanted by the owner; empty = the usual one","source":"practice"},
  {"setting":"entrySeconds","unit":"s","meaning":"Entry delay wanted by the owner; empty = the usual one","source":"practice"},
  {"setting":"abortSeconds","unit":"s","meaning":"Abort window wanted by the owner; empty = the usual one. Entry delay and abort window together at most 60 s","source":"practice"},
];

export const askedSettingsSources: Readonly<Record<string, string>> = {
  "ours": "our own settings",
  "practice": "common practice, no source",
};
