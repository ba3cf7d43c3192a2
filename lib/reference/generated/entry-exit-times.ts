// Generated from reference-data/entry-exit-times.json by tools/generate-reference.mjs. Do not edit.
/** Delays that keep false alarms down */
export interface EntryExitTimesRow {
  /** Key [text] */
  readonly time: string;
  /** The delay for people [text] */
  readonly words: string;
  /** Shortest allowed; absent = no lower limit read [s] */
  readonly lowSeconds?: number;
  /** Longest allowed; absent = no upper limit read [s] */
  readonly highSeconds?: number;
  /** As delivered; absent = none read [s] */
  readonly defaultSeconds?: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const entryExitTimes: readonly EntryExitTimesRow[] = [
  {"time":"exit","words":"exit time","lowSeconds":45,"highSeconds":255,"defaultSeconds":60,"source":"cp01"},
  {"time":"entry","words":"entry delay","lowSeconds":30,"highSeconds":240,"defaultSeconds":30,"source":"cp01"},
  {"time":"abort","words":"abort window","lowSeconds":15,"highSeconds":45,"defaultSeconds":30,"source":"cp01abort"},
  {"time":"entryPlusAbort","words":"entry delay and abort window together","highSeconds":60,"source":"cp01sum"},
  {"time":"settleAfterPower","words":"wait after power returns before any sensor counts","lowSeconds":60,"source":"cp01draft"},
];

export const entryExitTimesSources: Readonly<Record<string, string>> = {
  "cp01": "ANSI/SIA CP-01 feature tables as quoted in public compliance tables, read",
  "cp01abort": "ANSI/SIA CP-01 feature tables as quoted in public compliance tables, read; a newer table prints 0 s as the lower limit",
  "cp01sum": "ANSI/SIA CP-01, note in tables of listed systems, read, medium confidence",
  "cp01draft": "SIA CP-01-200x draft clause 4.4.3, read",
};
