// Generated from reference-data/learning-priors.json by tools/generate-reference.mjs. Do not edit.
/** How much the tables count against finished jobs; settings a user can change */
export interface LearningPriorsRow {
  /** Key [text] */
  readonly figure: string;
  /** The figure for people [text] */
  readonly words: string;
  /** Its value [1] */
  readonly value: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const learningPriors: readonly LearningPriorsRow[] = [
  {"figure":"repairWeight","words":"repairs that the odds in the table count for","value":4,"source":"practice"},
  {"figure":"faultWeight","words":"loops that the fault rate in the table counts for","value":20,"source":"practice"},
  {"figure":"hoursWeight","words":"finished tasks that the hours in the table count for","value":4,"source":"practice"},
  {"figure":"hoursShape","words":"shape of the spread of hours before any job (gamma)","value":2,"source":"practice"},
  {"figure":"hoursSpread","words":"spread of the logarithm of hours before any job","value":0.4,"source":"practice"},
  {"figure":"jobsToMean","words":"finished jobs before the figures mean much","value":20,"source":"practice"},
];

export const learningPriorsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
