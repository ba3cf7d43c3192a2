// Generated from reference-data/zone-uses.json by tools/generate-reference.mjs. Do not edit.
/** Uses of a zone: how surveyors write them, and what may share an input */
export interface ZoneUsesRow {
  /** Our key of the use [text] */
  readonly use: string;
  /** The use for people [text] */
  readonly words: string;
  /** Whole words or phrases that mean it, lower case [list of text] */
  readonly spellings: readonly (string)[];
  /** yes: loops of this use in one area may share an input with the owner's consent; no: never [text] */
  readonly joins: string;
  /** yes: reports alarms; no: an arming input, never an alarm zone [text] */
  readonly alarm: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const zoneUses: readonly ZoneUsesRow[] = [
  {"use":"entryExit","words":"entry/exit (delay)","spellings":["entry/exit","entry exit","entry-exit","entry","e/e","ee","delay"],"joins":"no","alarm":"yes","source":"practice"},
  {"use":"perimeter","words":"perimeter (instant)","spellings":["perimeter","perim","instant"],"joins":"yes","alarm":"yes","source":"practice"},
  {"use":"interiorFollower","words":"interior follower","spellings":["interior follower","follower","int follower"],"joins":"no","alarm":"yes","source":"practice"},
  {"use":"interior","words":"interior (away only)","spellings":["interior","int","away only"],"joins":"no","alarm":"yes","source":"practice"},
  {"use":"holdUp","words":"24-hour silent hold-up","spellings":["24h silent","24 hour silent","24hr silent","hold-up","holdup","panic","silent"],"joins":"no","alarm":"yes","source":"practice"},
  {"use":"tamper","words":"24-hour tamper","spellings":["24 hour tamper","24h tamper","tamper"],"joins":"no","alarm":"yes","source":"practice"},
  {"use":"environmental","words":"24-hour environmental","spellings":["aux","environmental","24 hour environmental","flood","freezer","24h aux"],"joins":"no","alarm":"yes","source":"practice"},
  {"use":"audible24h","words":"24-hour audible","spellings":["24h","24hr","24 hour"],"joins":"no","alarm":"yes","source":"practice"},
  {"use":"arming","words":"arming input","spellings":["arm","arming","keyswitch","key switch"],"joins":"no","alarm":"no","source":"practice"},
  {"use":"lifeSafety","words":"excluded (life safety)","spellings":["fire","24hr fire","waterflow","smoke"],"joins":"no","alarm":"no","source":"practice"},
];

export const zoneUsesSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
