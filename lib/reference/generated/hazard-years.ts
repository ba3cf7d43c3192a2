// Generated from reference-data/hazard-years.json by tools/generate-reference.mjs. Do not edit.
/** Years of building from which a hazard is less likely */
export interface HazardYearsRow {
  /** Key [text] */
  readonly hazard: string;
  /** Flag buildings from before this year [1] */
  readonly builtBefore: number;
  /** What is flagged [text] */
  readonly flag: string;
  /** Key in the cautions table [text] */
  readonly caution: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const hazardYears: readonly HazardYearsRow[] = [
  {"hazard":"leadPaint","builtBefore":1978,"flag":"built before 1978: lead paint likely (US rule)","caution":"beforeDrilling","source":"epa"},
];

export const hazardYearsSources: Readonly<Record<string, string>> = {
  "epa": "US residential lead paint rules, buildings from before 1978, from memory, not checked",
};
