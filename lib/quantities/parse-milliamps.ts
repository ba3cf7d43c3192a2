import { type Parsed, read, unreadable } from "./parsed.js";
import { plainQuantity, quantityPattern } from "./plain-quantity.js";
import { type CellTyped, cellText } from "./typed-cell.js";
import type { DecimalMark } from "./typed-number.js";

/** Supply current as typed. */
export interface TypedMilliamps {
  /** All devices together. [mA] */
  readonly milliamps: number;
  /** How many devices share it and what each takes, where that was typed. */
  readonly devices?: number;
  readonly milliampsEach?: number;
}

const PATTERN = quantityPattern("ma|milliamps?|amps?|a");
const EXPECTED = "write the current of all devices together in mA, such as 18 or 45 (3x15)";
/** More than the supply of such a panel gives: amperes written as milliamperes, or a slip. [mA] */
const MOST_MILLIAMPS = 10_000;
const EACH = /\(?\s*(\d{1,3})\s?[x*@]\s?(\d+(?:[.,]\d+)?)\s?(?:ma)?\s*\)?/i;

/**
 * Reads a supply current: `18`, `30 mA`, `0.06 A`, `45 (3x15)`, `3x15`. A bare number is mA. [mA]
 * @example parseMilliamps("45 (3x15)"); // { ok: true, value: { milliamps: 45, devices: 3, milliampsEach: 15 } }
 */
export function parseMilliamps(
  cell: CellTyped,
  { decimalMark }: { readonly decimalMark?: DecimalMark } = {},
): Parsed<TypedMilliamps> {
  const typed = cellText(cell);
  const each = EACH.exec(typed);
  const devices = Number(each?.[1]);
  const milliampsEach = Number(each?.[2]?.replace(",", "."));
  const without = each === null ? cell : typed.replace(EACH, " ").trim();
  if (each !== null && without === "") {
    return read({ milliamps: devices * milliampsEach, devices, milliampsEach }, [
      `"${typed}" was read as ${devices} devices of ${milliampsEach} mA.`,
    ]);
  }
  const parsed = plainQuantity(without, { pattern: PATTERN, expected: EXPECTED, decimalMark });
  if (!parsed.ok) return unreadable({ typed, expected: EXPECTED });
  if (parsed.value === undefined) return parsed;
  const { number, low, high, unit } = parsed.value;
  const milliamps = (low === high ? number : high) * (/^a/.test(unit) ? 1000 : 1);
  if (milliamps > MOST_MILLIAMPS)
    return unreadable({ typed, expected: `${milliamps} mA is more than a panel supplies; ${EXPECTED}` });
  if (each === null) {
    const remarks = low === high ? [] : [`"${typed}" is a range: the highest current is used.`];
    return read({ milliamps }, [...parsed.remarks, ...remarks]);
  }
  if (Math.abs(devices * milliampsEach - milliamps) > 0.005 * milliamps) {
    return unreadable({ typed, expected: `${devices} × ${milliampsEach} is not ${milliamps}; ${EXPECTED}` });
  }
  return read({ milliamps, devices, milliampsEach }, parsed.remarks);
}
