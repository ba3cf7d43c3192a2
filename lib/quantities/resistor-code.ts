import { InputError } from "../problems/input-error.js";
import { requireBetween } from "../problems/require-between.js";
import { type ColourCodeRow, colourCode } from "../reference/generated/colour-code.js";

/** What the colour bands of a resistor say. */
export interface BandedResistor {
  /** [Ω] */
  readonly ohms: number;
  /** Absent where the sources read disagree on the last band's colour. [%] */
  readonly tolerancePercent?: number;
  /** What the 2016 edition is quoted to say of such a colour; other pages print something else. [%] */
  readonly disputedTolerancePercent?: number;
}

/**
 * Value of a resistor from its colour bands, read from the end that is nearer a band: two digits and a multiplier,
 * then a tolerance; five bands have three digits; three bands mean ± 20 %.
 * @throws {@link InputError} when the number of bands is not 3 to 5 or a colour cannot stand where it stands.
 * @example ohmsFromBands(["yellow", "violet", "orange", "gold"]); // { ohms: 47000, tolerancePercent: 5 }
 * @see IEC 60062:2016, reference-data/colour-code.json
 */
export function ohmsFromBands(bands: readonly string[]): BandedResistor {
  requireBetween({ field: "bands", value: bands.length, unit: "bands", from: 3, to: 5, whole: true });
  const digitCount = bands.length === 5 ? 3 : 2;
  const digits = bands.slice(0, digitCount).map((colour) => meaning(colour, "digit"));
  const exponent = meaning(bands[digitCount] ?? "", "multiplierExponent");
  const significand = digits.reduce((value, digit) => value * 10 + digit, 0);
  return { ohms: scaled(significand, exponent), ...toleranceOf(bands[digitCount + 1] ?? "none") };
}

function toleranceOf(colour: string): Omit<BandedResistor, "ohms"> {
  const row = rowOf(colour, "tolerance");
  if (row.tolerancePercent !== undefined) return { tolerancePercent: row.tolerancePercent };
  if (row.disputedTolerancePercent !== undefined) return { disputedTolerancePercent: row.disputedTolerancePercent };
  throw new InputError({ field: "bands", got: colour, expected: "a colour that stands for a tolerance" });
}

function meaning(colour: string, as: "digit" | "multiplierExponent"): number {
  const value = rowOf(colour, as)[as];
  if (value !== undefined) return value;
  const place = as === "digit" ? "a digit" : "a multiplier";
  throw new InputError({ field: "bands", got: colour, expected: `a colour that stands for ${place}` });
}

function rowOf(colour: string, place: string): ColourCodeRow {
  const named = colour.trim().toLowerCase();
  const wanted = named === "gray" ? "grey" : named === "purple" ? "violet" : named;
  const row = colourCode.find((candidate) => candidate.colour === wanted);
  if (row !== undefined) return row;
  const expected = colourCode.map((candidate) => candidate.colour).join(", ");
  throw new InputError({ field: "bands", got: `${colour || "nothing"} for the ${place}`, expected });
}

/** A value to be coded. */
export interface ResistorToCode {
  /** 0.01 Ω to 999 GΩ, of no more significant digits than the bands hold. [Ω] */
  readonly ohms: number;
  /** One the sources agree on: 20, 10, 5, 2, 1, 0.5 or 0.25. [%] */
  readonly tolerancePercent: number;
  /** 4 bands hold two digits, 5 hold three; absent = as few as hold the value. */
  readonly bands?: 4 | 5;
}

/**
 * Colour bands of a resistor, first digit first.
 * @throws {@link InputError} when the value needs more digits than there are bands for, or the tolerance has no colour
 * that the sources agree on.
 * @example bandsFromOhms({ ohms: 2200, tolerancePercent: 5 }); // ["red", "red", "red", "gold"]
 * @example bandsFromOhms({ ohms: 2200, tolerancePercent: 1, bands: 5 }); // ["red", "red", "black", "brown", "brown"]
 * @see IEC 60062:2016, reference-data/colour-code.json
 */
export function bandsFromOhms({ ohms, tolerancePercent, bands }: ResistorToCode): string[] {
  requireBetween({ field: "ohms", value: ohms, unit: "Ω", from: 0.01, to: 999e9 });
  const digits = bands === undefined ? (digitsNeeded(ohms) > 2 ? 3 : 2) : bands - 2;
  const needed = digitsNeeded(ohms);
  if (needed > digits) {
    const expected = `at most ${digits} significant digits`;
    throw new InputError({ field: "ohms", got: `${ohms} Ω with ${needed} significant digits`, expected });
  }
  const [mantissa = "", power = "0"] = ohms.toExponential(digits - 1).split("e");
  const figures = [...mantissa.replace(".", "")].map(Number);
  const exponent = Number(power) - (digits - 1);
  return [
    ...figures.map((digit) => colourFor("digit", digit, "a digit")),
    colourFor("multiplierExponent", exponent, "a multiplier"),
    colourFor("tolerancePercent", tolerancePercent, "a tolerance the sources agree on [%]"),
  ].filter((colour) => colour !== "none");
}

function colourFor(column: "digit" | "multiplierExponent" | "tolerancePercent", value: number, words: string): string {
  const row = colourCode.find((candidate) => candidate[column] === value);
  if (row !== undefined) return row.colour;
  const held = colourCode.map((candidate) => candidate[column]).filter((held) => held !== undefined);
  throw new InputError({ field: column, got: `${value}`, expected: `${words}: ${held.join(", ")}` });
}

/** Significant digits of a value, up to nine. */
function digitsNeeded(ohms: number): number {
  const [mantissa = ""] = ohms.toExponential(8).split("e");
  return mantissa.replace(".", "").replace(/0+$/, "").length;
}

/** significand · 10^exponent without the last-bit error of multiplying by 0.1 or 0.01. */
function scaled(significand: number, exponent: number): number {
  return exponent < 0 ? significand / 10 ** -exponent : significand * 10 ** exponent;
}
