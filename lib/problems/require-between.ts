import { InputError } from "./input-error.js";

/** One number an argument carries and the range it must lie in. */
export interface NumberInRange {
  /** Name of the field, as the caller wrote it. */
  readonly field: string;
  readonly value: number;
  /** Unit printed after the numbers; "" for a pure number. */
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  /** Only whole numbers are accepted. */
  readonly whole?: boolean;
}

/**
 * The value, when it is a finite number from `from` to `to`, ends included.
 * @throws {@link InputError} otherwise; NaN and Infinity are never accepted.
 * @example requireBetween({ field: "gaugeAwg", value: 22, unit: "AWG", from: 10, to: 30, whole: true }); // 22
 */
export function requireBetween({ field, value, unit, from, to, whole = false }: NumberInRange): number {
  const fits = Number.isFinite(value) && value >= from && value <= to && (!whole || Number.isInteger(value));
  if (fits) return value;
  const after = unit === "" ? "" : ` ${unit}`;
  const kind = whole ? "a whole number " : "";
  throw new InputError({ field, got: `${value}${after}`, expected: `${kind}${from} to ${to}${after}` });
}
