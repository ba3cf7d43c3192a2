// Generated from reference-data/itu-p1238-site-general.json by tools/generate-reference.mjs. Do not edit.
/** Indoor site-general median loss within one floor, ITU-R P.1238-11: 10α·log10(d) + β + 10γ·log10(f) */
export interface ItuP1238SiteGeneralRow {
  /** office, corridor or industrial [text] */
  readonly environment: string;
  /** clear = line of sight, blocked = none [text] */
  readonly sight: string;
  /** Lowest frequency the row holds for [GHz] */
  readonly lowGigahertz: number;
  /** Highest frequency the row holds for [GHz] */
  readonly highGigahertz: number;
  /** Shortest distance the row holds for [m] */
  readonly lowMeters: number;
  /** Longest distance the row holds for [m] */
  readonly highMeters: number;
  /** Distance exponent [1] */
  readonly alpha: number;
  /** Loss at 1 m and 1 GHz [dB] */
  readonly betaDb: number;
  /** Frequency exponent [1] */
  readonly gamma: number;
  /** Standard deviation of single places about the median [dB] */
  readonly sigmaDb: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const ituP1238SiteGeneral: readonly ItuP1238SiteGeneralRow[] = [
  {"environment":"office","sight":"clear","lowGigahertz":0.3,"highGigahertz":83.5,"lowMeters":2,"highMeters":27,"alpha":1.46,"betaDb":34.62,"gamma":2.03,"sigmaDb":3.76,"source":"p1238-11"},
  {"environment":"office","sight":"blocked","lowGigahertz":0.3,"highGigahertz":82,"lowMeters":4,"highMeters":30,"alpha":2.46,"betaDb":29.53,"gamma":2.38,"sigmaDb":5.04,"source":"p1238-11"},
  {"environment":"corridor","sight":"clear","lowGigahertz":0.3,"highGigahertz":83.5,"lowMeters":2,"highMeters":160,"alpha":1.63,"betaDb":28.12,"gamma":2.25,"sigmaDb":4.07,"source":"p1238-11"},
  {"environment":"corridor","sight":"blocked","lowGigahertz":0.625,"highGigahertz":83.5,"lowMeters":4,"highMeters":94,"alpha":2.77,"betaDb":29.27,"gamma":2.48,"sigmaDb":7.63,"source":"p1238-11"},
  {"environment":"industrial","sight":"clear","lowGigahertz":0.625,"highGigahertz":70.28,"lowMeters":2,"highMeters":101,"alpha":2.31,"betaDb":24.52,"gamma":2.06,"sigmaDb":2.69,"source":"p1238-11"},
  {"environment":"industrial","sight":"blocked","lowGigahertz":0.625,"highGigahertz":70.28,"lowMeters":5,"highMeters":108,"alpha":3.79,"betaDb":21.01,"gamma":1.34,"sigmaDb":9.05,"source":"p1238-11"},
];

export const ituP1238SiteGeneralSources: Readonly<Record<string, string>> = {
  "p1238-11": "ITU-R P.1238-11 table 2 as coded in a public repository, read; f in GHz confirmed against free space",
};
