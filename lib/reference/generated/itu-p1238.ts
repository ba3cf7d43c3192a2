// Generated from reference-data/itu-p1238.json by tools/generate-reference.mjs. Do not edit.
/** Indoor site-general model: distance power loss coefficient and floor loss, ITU-R P.1238-8 family */
export interface ItuP1238Row {
  /** residential, office or commercial [text] */
  readonly building: string;
  /** Lower end of the row's frequency [MHz] */
  readonly lowMegahertz: number;
  /** Upper end of the row's frequency [MHz] */
  readonly highMegahertz: number;
  /** N [dB per decade of distance] */
  readonly powerLossCoefficient: number;
  /** Lf for 1, 2, 3 … floors between; absent = none read [list of dB] */
  readonly floorLossDb?: readonly (number)[];
  /** Key into the table's sources. */
  readonly source: string;
}

export const ituP1238: readonly ItuP1238Row[] = [
  {"building":"office","lowMegahertz":900,"highMegahertz":900,"powerLossCoefficient":33,"floorLossDb":[9,19,24],"source":"article"},
  {"building":"commercial","lowMegahertz":900,"highMegahertz":900,"powerLossCoefficient":20,"source":"article"},
  {"building":"office","lowMegahertz":1200,"highMegahertz":1300,"powerLossCoefficient":32,"source":"article"},
  {"building":"commercial","lowMegahertz":1200,"highMegahertz":1300,"powerLossCoefficient":22,"source":"article"},
  {"building":"residential","lowMegahertz":1800,"highMegahertz":2000,"powerLossCoefficient":28,"floorLossDb":[4,8,12],"source":"article"},
  {"building":"office","lowMegahertz":1800,"highMegahertz":2000,"powerLossCoefficient":30,"floorLossDb":[15,19,23],"source":"article"},
  {"building":"commercial","lowMegahertz":1800,"highMegahertz":2000,"powerLossCoefficient":22,"floorLossDb":[6,9,12],"source":"article"},
  {"building":"residential","lowMegahertz":2400,"highMegahertz":2400,"powerLossCoefficient":28,"floorLossDb":[10],"source":"articleFloorMemory"},
  {"building":"office","lowMegahertz":2400,"highMegahertz":2400,"powerLossCoefficient":30,"floorLossDb":[14],"source":"articleFloorMemory"},
];

export const ituP1238Sources: Readonly<Record<string, string>> = {
  "article": "ITU-R P.1238-8 family, tables 2 and 3, as reproduced in an encyclopedia article, read",
  "articleFloorMemory": "ITU-R P.1238-8 family: coefficient read in an encyclopedia article or code sample, floor loss from memory, not checked",
};
