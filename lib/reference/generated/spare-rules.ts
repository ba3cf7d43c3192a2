// Generated from reference-data/spare-rules.json by tools/generate-reference.mjs. Do not edit.
/** How many more than counted are bought of each class of article */
export interface SpareRulesRow {
  /** Class of the article in the price book, or the input that the rule is for [text] */
  readonly class: string;
  /** Multiple of the count that is bought [1] */
  readonly times: number;
  /** Share added to the count before rounding up to a whole unit [1] */
  readonly fraction: number;
  /** Units added on top, only where anything is needed [count] */
  readonly extra: number;
  /** Least addition where anything is needed [count] */
  readonly atLeast: number;
  /** The rule in words [text] */
  readonly words: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const spareRules: readonly SpareRulesRow[] = [
  {"class":"eolResistor","times":1,"fraction":0.2,"extra":2,"atLeast":0,"words":"every fitted end-of-line resistor + 20 % + 2","source":"practice"},
  {"class":"gelSplice","times":1,"fraction":0.15,"extra":0,"atLeast":0,"words":"+ 15 %","source":"practice"},
  {"class":"fuse","times":2,"fraction":0,"extra":0,"atLeast":0,"words":"one fitted, one spare","source":"practice"},
  {"class":"label","times":1,"fraction":0.2,"extra":0,"atLeast":0,"words":"both ends + 20 %","source":"practice"},
  {"class":"wire","times":1,"fraction":0.1,"extra":0,"atLeast":0,"words":"waste 10 % on every length","source":"practice"},
  {"class":"spareInput","times":1,"fraction":0.1,"extra":0,"atLeast":1,"words":"10 % of the inputs of a panel, at least 1","source":"practice"},
];

export const spareRulesSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
