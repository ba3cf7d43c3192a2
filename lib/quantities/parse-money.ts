import { type Cents, roundCents } from "./money.js";
import { type Parsed, read, unreadable } from "./parsed.js";
import { plainQuantity, quantityPattern } from "./plain-quantity.js";
import { type CellTyped, cellText } from "./typed-cell.js";
import type { DecimalMark } from "./typed-number.js";

/** Up to here integer cents stay exact in every sum of a job. [cents] */
const MOST_CENTS = 1e12;
const PATTERN = quantityPattern("ea|each");

/**
 * Reads an amount in the job's one currency: `1.20`, `$1.20`, `1,20`, `1,234.50`, `.16`. [cents]
 * More than two decimals are rounded to the cent with a remark: prices per piece that small belong to a pack price.
 * @example parseMoney("$1.20"); // { ok: true, value: 120 }
 */
export function parseMoney(
  cell: CellTyped,
  { decimalMark }: { readonly decimalMark?: DecimalMark } = {},
): Parsed<Cents> {
  const typed = cellText(cell);
  const expected = "write an amount such as 12.50, 0 or more";
  const stripped = typeof cell === "string" ? typed.replace(/\p{Sc}|\b[A-Z]{3}\b/gu, " ").trim() : cell;
  if (typed !== "" && stripped === "") return unreadable({ typed, expected });
  const parsed = plainQuantity(stripped, { pattern: PATTERN, expected, decimalMark });
  if (!parsed.ok) return unreadable({ typed, expected });
  if (parsed.value === undefined) return parsed;
  const { number, low, high } = parsed.value;
  if (low !== high || !(number * 100 <= MOST_CENTS)) return unreadable({ typed, expected });
  const cents = roundCents(number * 100);
  const rounded = Math.abs(cents - number * 100) > 1e-6 * Math.max(1, cents);
  return read(cents, rounded ? [...parsed.remarks, `"${typed}" was rounded to ${cents} cents.`] : parsed.remarks);
}
