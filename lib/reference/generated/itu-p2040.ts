// Generated from reference-data/itu-p2040.json by tools/generate-reference.mjs. Do not edit.
/** Electrical properties of building materials, ITU-R P.2040-1 table 3: permittivity a·f^b, conductivity c·f^d, f in GHz */
export interface ItuP2040Row {
  /** Building material [text] */
  readonly material: string;
  /** Relative permittivity at 1 GHz [1] */
  readonly a: number;
  /** Its frequency exponent [1] */
  readonly b: number;
  /** Conductivity at 1 GHz [S/m] */
  readonly c: number;
  /** Its frequency exponent [1] */
  readonly d: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const ituP2040: readonly ItuP2040Row[] = [
  {"material":"concrete","a":5.31,"b":0,"c":0.0326,"d":0.8095,"source":"p2040"},
  {"material":"brick","a":3.75,"b":0,"c":0.038,"d":0,"source":"p2040"},
  {"material":"plasterboard","a":2.94,"b":0,"c":0.0116,"d":0.7076,"source":"p2040"},
  {"material":"wood","a":1.99,"b":0,"c":0.0047,"d":1.0718,"source":"p2040"},
  {"material":"glass","a":6.27,"b":0,"c":0.0043,"d":1.1925,"source":"p2040"},
  {"material":"ceilingBoard","a":1.5,"b":0,"c":0.0005,"d":1.1634,"source":"p2040"},
  {"material":"chipboard","a":2.58,"b":0,"c":0.0217,"d":0.78,"source":"p2040"},
  {"material":"floorboard","a":3.66,"b":0,"c":0.0044,"d":1.3515,"source":"p2040"},
];

export const ituP2040Sources: Readonly<Record<string, string>> = {
  "p2040": "ITU-R P.2040-1 table 3, from memory; the conductivities at 9 GHz reproduce eight values printed in a software manual, read",
};
