// Generated from reference-data/supply-defaults.json by tools/generate-reference.mjs. Do not edit.
/** Defaults of the supply and battery arithmetic; each can be replaced in a call */
export interface SupplyDefaultsRow {
  /** Key [text] */
  readonly setting: string;
  /** Default [as in the column unit] */
  readonly value: number;
  /** Unit of the value [text] */
  readonly unit: string;
  /** What it is [text] */
  readonly words: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const supplyDefaults: readonly SupplyDefaultsRow[] = [
  {"setting":"chargerVolts","value":13.7,"unit":"V","words":"Auxiliary terminals with the charger on, until measured: float charge of a 12 V lead-acid battery","source":"practice"},
  {"setting":"detectorMilliamps","value":25,"unit":"mA","words":"What one powered detector draws, until measured or read off its data sheet","source":"practice"},
  {"setting":"standbyHours","value":24,"unit":"h","words":"Standby without mains where nobody has named a rule","source":"practice"},
  {"setting":"batteryEndVolts","value":10.5,"unit":"V","words":"12 V lead-acid battery at the end of discharge","source":"practice"},
  {"setting":"internalDropVolts","value":0.5,"unit":"V","words":"Lost inside the panel between battery and auxiliary terminals, until measured","source":"practice"},
  {"setting":"detectorMinimumVolts","value":9.5,"unit":"V","words":"Least supply a detector works at, until its data sheet is at hand","source":"practice"},
  {"setting":"batteryFactor","value":1.25,"unit":"1","words":"Battery size over load × time","source":"guide"},
  {"setting":"rechargeFactor","value":1.25,"unit":"1","words":"Charge put in over charge taken out, and a slow end","source":"practice"},
  {"setting":"fuseFactor","value":1.5,"unit":"1","words":"Battery fuse over the largest current","source":"practice"},
  {"setting":"voltsBound","value":0.05,"unit":"V","words":"How far a voltage read on site may be off, either way","source":"practice"},
];

export const supplyDefaultsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
  "guide": "alarm trade battery guide, read: C = 1.25 × (Talarm × Ialarm + Tstandby × Iquiescent), because only 80 % charge is assumed",
};
