// Generated from reference-data/metric-sizes.json by tools/generate-reference.mjs. Do not edit.
/** Metric conductor sizes met on alarm and low-voltage cable */
export interface MetricSizesRow {
  /** Nominal cross-section [mm²] */
  readonly areaMm2: number;
  /** Usual make-up, strands / wire diameter in mm [text] */
  readonly madeAs: string;
  /** Where it is met [text] */
  readonly whereMet: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const metricSizes: readonly MetricSizesRow[] = [
  {"areaMm2":0.2,"madeAs":"1/0.5","whereMet":"telephone and bell wire","source":"memory"},
  {"areaMm2":0.22,"madeAs":"7/0.2","whereMet":"alarm cable, 4 to 12 cores","source":"trade"},
  {"areaMm2":0.28,"madeAs":"1/0.6","whereMet":"telephone and bus cable","source":"memory"},
  {"areaMm2":0.5,"madeAs":"16/0.2 or 1/0.8","whereMet":"alarm supply pairs, bell wire","source":"iec60228"},
  {"areaMm2":0.75,"madeAs":"24/0.2 or 1/0.98","whereMet":"supply pairs","source":"iec60228"},
  {"areaMm2":1,"madeAs":"32/0.2 or 1/1.13","whereMet":"supply pairs, sounder feeds","source":"iec60228"},
  {"areaMm2":1.5,"madeAs":"30/0.25 or 1/1.38","whereMet":"mains and supply feeds","source":"iec60228"},
  {"areaMm2":2.5,"madeAs":"50/0.25 or 1/1.78","whereMet":"mains and supply feeds","source":"iec60228"},
  {"areaMm2":4,"madeAs":"56/0.3 or 1/2.25","whereMet":"mains feeds","source":"iec60228"},
];

export const metricSizesSources: Readonly<Record<string, string>> = {
  "trade": "BS 4737 alarm cable as described on two trade pages, read",
  "iec60228": "IEC 60228:2004 nominal cross-sections",
  "memory": "from memory, not checked",
};
