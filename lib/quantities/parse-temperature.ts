import { type Parsed, read, unreadable } from "./parsed.js";
import { plainQuantity, quantityPattern } from "./plain-quantity.js";
import { type CellTyped, cellText } from "./typed-cell.js";
import type { DecimalMark } from "./typed-number.js";

export interface TypedTemperature {
  /** [°C] */
  readonly celsius: number;
}

export interface TemperatureOptions {
  /** What a bare number is, where the heading says so. Without it a bare number is a question. */
  readonly bareUnit?: "C" | "F";
  readonly decimalMark?: DecimalMark;
  /** Reads a unit text other than °C, °F and K. [°C] */
  readonly celsiusFromText?: (text: string) => number | undefined;
}

const PATTERN = quantityPattern("°|(?:°|deg(?:rees?)?)?\\s?(?:c(?:elsius)?|f(?:ahrenheit)?|k(?:elvin)?)|deg(?:rees?)?");
const EXPECTED = "write the temperature where the cable runs, such as 17 °C or 63 F";
const COLDEST = -60;
const HOTTEST = 100;

/**
 * Reads a temperature: `63 F`, `22 °C`, `-5C`, and a bare `22` where `bareUnit` says what it is. [°C]
 * Fahrenheit: (F − 32)/1.8 (NIST SP 811, B.8).
 * @example parseTemperature("63 F"); // { ok: true, value: { celsius: 17.22… } }
 */
export function parseTemperature(cell: CellTyped, options: TemperatureOptions = {}): Parsed<TypedTemperature> {
  const typed = cellText(cell);
  const parsed = plainQuantity(cell, {
    pattern: PATTERN,
    expected: EXPECTED,
    mayBeNegative: true,
    decimalMark: options.decimalMark,
  });
  if (!parsed.ok) {
    const celsius = options.celsiusFromText?.(typed);
    return celsius === undefined ? parsed : checked(typed, celsius, []);
  }
  if (parsed.value === undefined) return parsed;
  const { number, low, high, unit } = parsed.value;
  const remarks = low === high ? [] : [`"${typed}" is a range: its middle is used.`];
  const letter = (/[cfk](?=[a-z]*$)/.exec(unit.replace(/^deg(rees?)?/, ""))?.[0] ?? options.bareUnit)?.toUpperCase();
  if (letter === undefined) {
    return unreadable({ typed, expected: `nothing says whether this is °C or °F; ${EXPECTED}` });
  }
  const celsius = letter === "F" ? (number - 32) / 1.8 : letter === "K" ? number - 273.15 : number;
  return checked(typed, celsius, [...parsed.remarks, ...remarks]);
}

function checked(typed: string, celsius: number, remarks: readonly string[]): Parsed<TypedTemperature> {
  if (celsius >= COLDEST && celsius <= HOTTEST) return read({ celsius }, remarks);
  return unreadable({ typed, expected: `a cable here is between ${COLDEST} and ${HOTTEST} °C; check the unit` });
}
