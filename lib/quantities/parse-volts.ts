import { type Parsed, read, unreadable } from "./parsed.js";
import { plainQuantity, quantityPattern } from "./plain-quantity.js";
import { type CellTyped, cellText } from "./typed-cell.js";
import type { DecimalMark } from "./typed-number.js";

/** Volts as typed. */
export interface TypedVolts {
  /** Absent when only words were typed ("AC volts!"). May be negative: leads the other way round. [V] */
  readonly volts?: number;
  readonly lowVolts?: number;
  readonly highVolts?: number;
  /** What the cell itself says; absent when it says neither and the heading decides. */
  readonly kind?: "ac" | "dc";
  readonly words: readonly string[];
}

const PATTERN = quantityPattern("mv|v(?:olts?)?\\s?(?:ac|dc)?|[ad]c|~");
const EXPECTED = "write volts such as 13.4, 0 or 2.1 AC";

/**
 * Reads volts: `0`, `13.5`, `2.1 VAC`, `350 mV`, `-` (not measured), `AC volts!` (there are some, nobody wrote how many).
 * @example parseVolts("2.1 VAC"); // { ok: true, value: { volts: 2.1, …, kind: "ac" } }
 */
export function parseVolts(
  cell: CellTyped,
  { decimalMark }: { readonly decimalMark?: DecimalMark } = {},
): Parsed<TypedVolts> {
  const typed = cellText(cell);
  const kind = /\bv?(olts?)?\s?ac\b|\d\s?v?ac\b|~/i.test(typed)
    ? "ac"
    : /\b(v?dc|volts? dc)\b|\d\s?v?dc\b/i.test(typed)
      ? "dc"
      : undefined;
  if (/\b(no|not|none|nil)\b/i.test(typed) && !/\d/.test(typed) && kind !== undefined) {
    return unreadable({ typed, expected: `write 0 where the meter showed 0; ${EXPECTED}` });
  }
  if (kind !== undefined && !/\d/.test(typed)) {
    const remark = `"${typed}" gives no number: nothing else is metered on this pair until its volts are written down.`;
    return read({ kind, words: [typed] }, [remark]);
  }
  const parsed = plainQuantity(cell, {
    pattern: PATTERN,
    expected: EXPECTED,
    mayBeNegative: true,
    ignore: /\bafter \d+ ?(min\w*|h|hours?|s\w*)\b/i,
    decimalMark,
  });
  if (!parsed.ok || parsed.value === undefined) return parsed;
  const { number, low, high, unit, words } = parsed.value;
  const factor = unit === "mv" ? 1e-3 : 1;
  return read(
    {
      volts: number * factor,
      lowVolts: low * factor,
      highVolts: high * factor,
      ...(kind === undefined ? {} : { kind }),
      words,
    },
    parsed.remarks,
  );
}
