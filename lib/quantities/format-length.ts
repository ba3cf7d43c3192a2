import { InputError } from "../problems/input-error.js";
import { metersPerUnit } from "./length-unit.js";

/**
 * A length for people in the unit they work in: metres to one decimal, feet whole. "36.6 m", "120 ft"
 * @throws {@link InputError} when the length is not a finite number.
 * @example formatLength({ meters: 36.576, unit: "ft" }); // "120 ft"
 */
export function formatLength({ meters, unit }: { readonly meters: number; readonly unit: "m" | "ft" }): string {
  if (!Number.isFinite(meters))
    throw new InputError({ field: "meters", got: `${meters} m`, expected: "a finite length" });
  if (unit === "m") return `${trimmed(meters.toFixed(1))} m`;
  return `${trimmed((meters / (metersPerUnit("ft") ?? 1)).toFixed(0))} ft`;
}

const trimmed = (digits: string): string => digits.replace(/\.0$/, "").replace(/^-0$/, "0");
