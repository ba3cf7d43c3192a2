// Generated from reference-data/common-factors.json by tools/generate-reference.mjs. Do not edit.
/** What a whole job has in common, drawn once for the price range: log-normal factors of mean 1 */
export interface CommonFactorsRow {
  /** Which factor [text] */
  readonly factor: string;
  /** Standard deviation of its logarithm, about its relative spread [1] */
  readonly logSd: number;
  /** What it multiplies [text] */
  readonly meaning: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const commonFactors: readonly CommonFactorsRow[] = [
  {"factor":"crew","logSd":0.2,"meaning":"all hours of the job: how quick this crew is","source":"guess"},
  {"factor":"access","logSd":0.15,"meaning":"hours of loops with an access remark: ladder, lift, occupied rooms","source":"guess"},
  {"factor":"faultRate","logSd":0.3,"meaning":"odds of every loop's going wrong: how the building was kept","source":"guess"},
];

export const commonFactorsSources: Readonly<Record<string, string>> = {
  "guess": "common practice, no source: a guess to be refitted from finished jobs",
};
