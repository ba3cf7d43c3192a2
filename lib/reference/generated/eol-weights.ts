// Generated from reference-data/eol-weights.json by tools/generate-reference.mjs. Do not edit.
/** How often each end-of-line value is met, before the job says more */
export interface EolWeightsRow {
  /** Nominal value [Ω] */
  readonly eolOhms: number;
  /** Weight; normalised on use [1] */
  readonly weight: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const eolWeights: readonly EolWeightsRow[] = [
  {"eolOhms":1000,"weight":0.1224,"source":"practice"},
  {"eolOhms":2200,"weight":0.1601,"source":"practice"},
  {"eolOhms":4700,"weight":0.1412,"source":"practice"},
  {"eolOhms":5600,"weight":0.1036,"source":"practice"},
  {"eolOhms":2000,"weight":0.0847,"source":"practice"},
  {"eolOhms":10000,"weight":0.0847,"source":"practice"},
  {"eolOhms":6800,"weight":0.0377,"source":"practice"},
  {"eolOhms":3300,"weight":0.0565,"source":"practice"},
  {"eolOhms":8200,"weight":0.0282,"source":"practice"},
  {"eolOhms":1500,"weight":0.0282,"source":"practice"},
  {"eolOhms":2700,"weight":0.0282,"source":"practice"},
  {"eolOhms":3650,"weight":0.0377,"source":"practice"},
  {"eolOhms":3900,"weight":0.0094,"source":"practice"},
  {"eolOhms":1200,"weight":0.0056,"source":"practice"},
  {"eolOhms":1800,"weight":0.0056,"source":"practice"},
  {"eolOhms":5100,"weight":0.0056,"source":"practice"},
  {"eolOhms":3000,"weight":0.0056,"source":"practice"},
  {"eolOhms":2490,"weight":0.0056,"source":"practice"},
  {"eolOhms":3740,"weight":0.0056,"source":"practice"},
  {"eolOhms":12000,"weight":0.0047,"source":"practice"},
  {"eolOhms":15000,"weight":0.0047,"source":"practice"},
  {"eolOhms":22000,"weight":0.0056,"source":"practice"},
  {"eolOhms":47000,"weight":0.0038,"source":"practice"},
  {"eolOhms":680,"weight":0.0038,"source":"practice"},
  {"eolOhms":470,"weight":0.0038,"source":"practice"},
  {"eolOhms":820,"weight":0.0028,"source":"practice"},
  {"eolOhms":560,"weight":0.0038,"source":"practice"},
  {"eolOhms":330,"weight":0.0028,"source":"practice"},
  {"eolOhms":1100,"weight":0.0047,"source":"practice"},
  {"eolOhms":4300,"weight":0.0028,"source":"practice"},
];

export const eolWeightsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
