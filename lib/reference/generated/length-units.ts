// Generated from reference-data/length-units.json by tools/generate-reference.mjs. Do not edit.
/** Units of length that people write, exact in metres */
export interface LengthUnitsRow {
  /** Our name of the unit [text] */
  readonly unit: string;
  /** Length of one unit, exact [m] */
  readonly meters: number;
  /** How people write it, lower case, without a full stop [list of text] */
  readonly spellings: readonly (string)[];
  /** Key into the table's sources. */
  readonly source: string;
}

export const lengthUnits: readonly LengthUnitsRow[] = [
  {"unit":"m","meters":1,"spellings":["m","mtr","mtrs","meter","meters","metre","metres"],"source":"si"},
  {"unit":"cm","meters":0.01,"spellings":["cm","centimeter","centimeters","centimetre","centimetres"],"source":"si"},
  {"unit":"mm","meters":0.001,"spellings":["mm","millimeter","millimeters","millimetre","millimetres"],"source":"si"},
  {"unit":"km","meters":1000,"spellings":["km","kilometer","kilometers","kilometre","kilometres"],"source":"si"},
  {"unit":"ft","meters":0.3048,"spellings":["ft","foot","feet","'"],"source":"sp811"},
  {"unit":"in","meters":0.0254,"spellings":["in","inch","inches","\"","''"],"source":"sp811"},
  {"unit":"yd","meters":0.9144,"spellings":["yd","yds","yard","yards"],"source":"sp811"},
];

export const lengthUnitsSources: Readonly<Record<string, string>> = {
  "sp811": "NIST Special Publication 811 (2008), Appendix B.8: international foot 0.3048 m, inch 0.0254 m, yard 0.9144 m, exact",
  "si": "SI Brochure, 9th edition (2019), prefixes of the metre",
};
