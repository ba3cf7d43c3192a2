// Generated from reference-data/battery-and-fuse-sizes.json by tools/generate-reference.mjs. Do not edit.
/** Sizes that are commonly in stock */
export interface BatteryAndFuseSizesRow {
  /** battery12V or fuse [text] */
  readonly part: string;
  /** Unit of the sizes [text] */
  readonly unit: string;
  /** Sizes in rising order [as in the column unit] */
  readonly sizes: readonly (number)[];
  /** Key into the table's sources. */
  readonly source: string;
}

export const batteryAndFuseSizes: readonly BatteryAndFuseSizesRow[] = [
  {"part":"battery12V","unit":"Ah","sizes":[1.3,2.3,4.5,7,12,18,26],"source":"practice"},
  {"part":"fuse","unit":"A","sizes":[0.5,0.63,0.8,1,1.25,1.6,2,2.5,3.15,4,5,6.3,8,10],"source":"iec60127Memory"},
];

export const batteryAndFuseSizesSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
  "iec60127Memory": "IEC 60127 preferred fuse ratings, from memory, not checked",
};
