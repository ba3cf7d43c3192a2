import { type Parsed, read, unreadable } from "./parsed.js";
import { plainQuantity, quantityPattern } from "./plain-quantity.js";
import { type CellTyped, cellText } from "./typed-cell.js";
import type { DecimalMark } from "./typed-number.js";

const PATTERN = quantityPattern("h(?:rs?|ours?)?|m(?:in(?:ute)?s?)?");

/**
 * Reads a time taken: `1.5 h`, `1.5`, `90 min`, `1:30`, `1 h 30`. A bare number is hours. [h]
 * @example parseHours("90 min"); // { ok: true, value: 1.5 }
 */
export function parseHours(
  cell: CellTyped,
  { decimalMark }: { readonly decimalMark?: DecimalMark } = {},
): Parsed<number> {
  const typed = cellText(cell);
  const expected = "write hours such as 1.5, 1:30 or 90 min";
  const clock = /^(\d{1,3})\s?(?::|h(?:rs?|ours?)?\s?)(\d{1,2})\s?(?:m(?:in\w*)?)?$/i.exec(typed);
  if (clock !== null) {
    const minutes = Number(clock[2]);
    return minutes < 60 ? read(Number(clock[1]) + minutes / 60) : unreadable({ typed, expected });
  }
  const parsed = plainQuantity(cell, { pattern: PATTERN, expected, decimalMark });
  if (!parsed.ok || parsed.value === undefined) return parsed;
  const { number, low, high, unit } = parsed.value;
  if (low !== high) return unreadable({ typed, expected });
  return read(unit.startsWith("m") ? number / 60 : number, parsed.remarks);
}
