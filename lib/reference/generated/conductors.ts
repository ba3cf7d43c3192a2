// Generated from reference-data/conductors.json by tools/generate-reference.mjs. Do not edit.
/** Conductor metals: conductivity and temperature coefficient at 20 °C */
export interface ConductorsRow {
  /** Name of the metal as functions take it [text] */
  readonly metal: string;
  /** Name for people [text] */
  readonly words: string;
  /** Volume conductivity at 20 °C; 100 % is 58 S·m/mm² [% IACS] */
  readonly percentIacs: number;
  /** Temperature coefficient of resistance referred to 20 °C [1/°C] */
  readonly alpha20PerCelsius: number;
  /** Row holds for single wires or strands thicker than this; absent = any [mm] */
  readonly overDiameterMm?: number;
  /** Row holds up to and including this strand diameter; absent = any [mm] */
  readonly toDiameterMm?: number;
  /** Which figures were read and which are from memory [text] */
  readonly note: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const conductors: readonly ConductorsRow[] = [
  {"metal":"copper","words":"annealed copper","percentIacs":100,"alpha20PerCelsius":0.00393,"note":"both figures read","source":"iec60028"},
  {"metal":"tinnedCopper","words":"tinned copper","percentIacs":93.15,"alpha20PerCelsius":0.00393,"overDiameterMm":0.0762,"toDiameterMm":0.28194,"note":"0.0030–0.0111 in; conductivity from memory; coefficient as plain copper, as the NEC table has it","source":"b33memory"},
  {"metal":"tinnedCopper","words":"tinned copper","percentIacs":94.16,"alpha20PerCelsius":0.00393,"overDiameterMm":0.28194,"toDiameterMm":0.51054,"note":"0.0111–0.0201 in; from memory, confirmed by 18 and 16 AWG of 7 strands; coefficient as plain copper","source":"b33"},
  {"metal":"tinnedCopper","words":"tinned copper","percentIacs":96.16,"alpha20PerCelsius":0.00393,"overDiameterMm":0.51054,"toDiameterMm":2.6162,"note":"0.0201–0.103 in; from memory, confirmed by 18 to 10 AWG solid; coefficient as plain copper","source":"b33"},
  {"metal":"tinnedCopper","words":"tinned copper","percentIacs":97.16,"alpha20PerCelsius":0.00393,"overDiameterMm":2.6162,"toDiameterMm":7.366,"note":"0.103–0.290 in; from memory; coefficient as plain copper","source":"b33memory"},
  {"metal":"copperCladAluminium","words":"copper-clad aluminium, 10 % copper","percentIacs":62.9,"alpha20PerCelsius":0.00405,"note":"conductivity read (least of class 10A; class 15A has 64.4); coefficient from memory, about that of aluminium","source":"b566"},
  {"metal":"aluminium","words":"aluminium EC 1350","percentIacs":61,"alpha20PerCelsius":0.00403,"note":"both figures read","source":"b609"},
  {"metal":"copperCladSteel","words":"copper-clad steel, 40 % conductivity","percentIacs":39.21,"alpha20PerCelsius":0.00378,"note":"both figures from memory (least of class 40; class 30 has 29.41)","source":"b227"},
];

export const conductorsSources: Readonly<Record<string, string>> = {
  "iec60028": "IEC 60028 and NBS Handbook 100 section 1: 1/58 Ω·mm²/m, 0.00393 per °C",
  "b609": "EC 1350 aluminium: NBS Handbook 109 as quoted; industrial power handbook p. 970",
  "b566": "ASTM B566 classes 10A and 15A as printed by two wire makers",
  "b33": "ASTM B33 from memory; confirmed by the coated/uncoated ratios of NFPA 70 (NEC) Chapter 9 Table 8",
  "b33memory": "ASTM B33 from memory, not checked",
  "b227": "ASTM B227 from memory, not checked",
};
