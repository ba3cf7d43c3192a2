import { type Parsed, read, unreadable } from "./parsed.js";
import { plainQuantity, quantityPattern } from "./plain-quantity.js";
import { type CellTyped, cellText } from "./typed-cell.js";
import type { DecimalMark } from "./typed-number.js";

const PATTERN = quantityPattern("%|percent|pct");

/**
 * Reads a share: `35 %`, `35%`, and bare numbers: below 1 a fraction (`0.35`), from 2 up a percentage (`35`).
 * A bare 1 to 2 may be either and is a question. [1]
 * @example parseFraction("35 %"); // { ok: true, value: 0.35 }
 */
export function parseFraction(
  cell: CellTyped,
  { decimalMark }: { readonly decimalMark?: DecimalMark } = {},
): Parsed<number> {
  const typed = cellText(cell);
  const expected = "write a percentage with its sign, such as 35 %";
  const parsed = plainQuantity(cell, { pattern: PATTERN, expected, decimalMark });
  if (!parsed.ok || parsed.value === undefined) return parsed;
  const { number, low, high, unit } = parsed.value;
  if (low !== high || number > 1000) return unreadable({ typed, expected });
  if (unit !== "") return read(number / 100, parsed.remarks);
  if (number < 1) return read(number, parsed.remarks);
  if (number < 2) return unreadable({ typed, expected: `this may be ${number} % or ${number * 100} %; ${expected}` });
  return read(number / 100, [...parsed.remarks, `"${typed}" was read as ${number} %.`]);
}
