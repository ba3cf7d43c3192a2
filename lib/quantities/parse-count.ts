import { type Parsed, read, unreadable } from "./parsed.js";
import { plainQuantity, quantityPattern } from "./plain-quantity.js";
import { type CellTyped, cellText } from "./typed-cell.js";

const PATTERN = quantityPattern("pcs?|pieces?|ea|each|off|x|no");

/**
 * Reads a whole number of things, 0 or more: `12`, `1,000`, `3 pcs`.
 * @example parseCount("1,000"); // { ok: true, value: 1000 }
 */
export function parseCount(cell: CellTyped): Parsed<number> {
  const expected = "write a whole number, 0 or more";
  // Things come whole, so a comma before three digits can only part thousands.
  const parsed = plainQuantity(cell, { pattern: PATTERN, expected, decimalMark: "." });
  if (!parsed.ok || parsed.value === undefined) return parsed;
  const { number, low, high } = parsed.value;
  if (low !== high || !Number.isSafeInteger(number)) return unreadable({ typed: cellText(cell), expected });
  return read(number, parsed.remarks);
}
