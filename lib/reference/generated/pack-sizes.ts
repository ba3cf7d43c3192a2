// Generated from reference-data/pack-sizes.json by tools/generate-reference.mjs. Do not edit.
/** Packs things are usually sold in */
export interface PackSizesRow {
  /** Key [text] */
  readonly item: string;
  /** The thing for people [text] */
  readonly words: string;
  /** Usual pack sizes, in the unit beside it [count] */
  readonly sizes: readonly (number)[];
  /** What a size counts [text] */
  readonly unit: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const packSizes: readonly PackSizesRow[] = [
  {"item":"alarmCable22x2","words":"22/2 solid alarm cable","sizes":[500,1000],"unit":"ft","source":"sheets"},
  {"item":"bulkWire22","words":"22 AWG bulk cable","sizes":[1000],"unit":"ft","source":"sheets"},
  {"item":"thermostatCable18And20","words":"18/2 and 20/2 cable","sizes":[500],"unit":"ft","source":"sheets"},
  {"item":"speakerCable14x4","words":"14/4 cable","sizes":[500],"unit":"ft","source":"sheets"},
  {"item":"securityCable","words":"22/2, 22/4, 18/2 security cable","sizes":[250,500,1000],"unit":"ft","source":"practice"},
  {"item":"singleCore","words":"single-core wire","sizes":[30,100],"unit":"m","source":"sheets"},
  {"item":"alarmCable7x02","words":"7/0.2 alarm cable","sizes":[100,200,500],"unit":"m","source":"practice"},
  {"item":"gelSplice","words":"gel-filled splice, 19 to 26 AWG","sizes":[25,50,100,500],"unit":"piece","source":"practice"},
  {"item":"drySplice","words":"dry crimp splice, 19 to 26 AWG","sizes":[100,500,1000],"unit":"piece","source":"practice"},
  {"item":"buttSplice","words":"butt splice, 22 to 16 AWG","sizes":[25,50,100,1000],"unit":"piece","source":"practice"},
  {"item":"resistorQuarterWatt","words":"resistor, 1/4 W","sizes":[10,25,100,1000,5000],"unit":"piece","source":"practice"},
  {"item":"sealedLeadAcid12V","words":"sealed lead-acid battery, 12 V: stock capacities","sizes":[1.3,2.1,4.5,7,12,18,26],"unit":"Ah","source":"practice"},
];

export const packSizesSources: Readonly<Record<string, string>> = {
  "sheets": "Cable data sheets, makers withheld, read",
  "practice": "common practice, no source",
};
