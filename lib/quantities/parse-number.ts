import { type Parsed, read, unreadable } from "./parsed.js";
import { plainQuantity, quantityPattern } from "./plain-quantity.js";
import { type CellTyped, cellText } from "./typed-cell.js";
import type { DecimalMark } from "./typed-number.js";

export interface NumberOptions {
  /** Least and greatest value accepted. */
  readonly least: number;
  readonly greatest: number;
  /** Unit for the message and, lower case, the spelling that may stand behind the number; "" for a pure number. */
  readonly unit: string;
  readonly decimalMark?: DecimalMark;
}

/**
 * Reads one plain number in a stated unit and range, such as a signal of -71 dBm or 24 h.
 * @example parseNumber("-71 dBm", { least: -150, greatest: 30, unit: "dBm" }); // { ok: true, value: -71 }
 */
export function parseNumber(cell: CellTyped, { least, greatest, unit, decimalMark }: NumberOptions): Parsed<number> {
  const expected = `write a number of ${least} to ${greatest}${unit === "" ? "" : ` ${unit}`}`;
  const units = unit === "" ? "(?!)" : unit.toLowerCase().replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
  const parsed = plainQuantity(cell, { pattern: quantityPattern(units), expected, mayBeNegative: true, decimalMark });
  if (!parsed.ok || parsed.value === undefined) return parsed;
  const { number, low, high } = parsed.value;
  if (low !== high || number < least || number > greatest) return unreadable({ typed: cellText(cell), expected });
  return read(number, parsed.remarks);
}
