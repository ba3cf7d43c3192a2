import { InputError } from "../problems/input-error.js";
import type { Ohms } from "./ohms-reading.js";

/** Significant digits shown. */
const DIGITS = 3;

/**
 * A resistance for people, three significant digits: "0 Ω", "5.4 Ω", "47 Ω", "2.20 kΩ", "1.2 MΩ", "over-range";
 * "not measured" for a reading that was not taken.
 * @param ohms 0 or more, Infinity or "OL" = over-range, undefined = not measured. [Ω]
 * @throws {@link InputError} when it is negative or not a number.
 * @example formatOhms(2200); // "2.20 kΩ"
 */
export function formatOhms(ohms: Ohms | undefined): string {
  if (ohms === undefined) return "not measured";
  if (ohms === "OL" || ohms === Number.POSITIVE_INFINITY) return "over-range";
  if (!(ohms >= 0)) throw new InputError({ field: "ohms", got: `${ohms} Ω`, expected: "0 Ω or more" });
  // Rounded first, so that 999.6 Ω becomes 1.00 kΩ and not 1000 Ω.
  const rounded = Number(ohms.toPrecision(DIGITS));
  if (rounded < 1e-3) return `${plain(Number(ohms.toFixed(6)))} Ω`;
  if (rounded < 1e3) return `${plain(rounded)} Ω`;
  if (rounded < 1e6) return `${(rounded / 1e3).toPrecision(DIGITS)} kΩ`;
  if (rounded < 1e9) return `${plain(Number((rounded / 1e6).toPrecision(DIGITS)))} MΩ`;
  return `${plain(Number((rounded / 1e9).toPrecision(DIGITS)))} GΩ`;
}

/** Digits without an exponent. */
function plain(value: number): string {
  const text = String(value);
  return text.includes("e-") ? value.toFixed(6).replace(/0+$/, "") : text;
}
