// Generated from reference-data/walk-test-words.json by tools/generate-reference.mjs. Do not edit.
/** How an opening is tried and what is expected, by use of the zone */
export interface WalkTestWordsRow {
  /** Use of the zone; unknown = nobody wrote it [text] */
  readonly use: string;
  /** What to do [text] */
  readonly how: string;
  /** Expected before [text] */
  readonly atRest: string;
  /** Expected while tried [text] */
  readonly tried: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const walkTestWords: readonly WalkTestWordsRow[] = [
  {"use":"entryExit","how":"armed: open it once, wait for the entry delay, disarm","atRest":"zone normal","tried":"zone open at once, entry delay starts","source":"practice"},
  {"use":"perimeter","how":"open it once, shut it","atRest":"zone normal","tried":"zone open at once","source":"practice"},
  {"use":"interior","how":"walk across its field, then stand still","atRest":"zone normal with nobody moving","tried":"zone open while walking","source":"practice"},
  {"use":"interiorFollower","how":"walk in by the entry door, then across its field","atRest":"zone normal with nobody moving","tried":"zone open while walking; after the entry door it waits for the delay","source":"practice"},
  {"use":"holdUp","how":"owner present, centre told: press, then reset","atRest":"zone normal","tried":"no sound on site; received at the centre","source":"practice"},
  {"use":"tamper","how":"disarmed: lift the cover or the box, put it back","atRest":"zone normal","tried":"tamper at any time, armed or not","source":"practice"},
  {"use":"environmental","how":"by the sensor maker's method; no flame, no flood","atRest":"zone normal","tried":"environmental signal at any time","source":"practice"},
  {"use":"audible24h","how":"disarmed: try it once","atRest":"zone normal","tried":"sounds at any time, armed or not","source":"practice"},
  {"use":"arming","how":"turn the key: arm, then disarm","atRest":"input at rest, no alarm","tried":"arms and disarms; no alarm at any time","source":"practice"},
  {"use":"unknown","how":"only after somebody has written what it is for","atRest":"zone normal","tried":"zone open","source":"practice"},
];

export const walkTestWordsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
