import { InputError } from "../problems/input-error.js";
import type { Cents } from "./money.js";

/**
 * Cents as an amount for people in their language.
 * @param locale BCP 47 tag; the machine's own setting is never asked.
 * @throws {@link InputError} when the amount is not whole cents.
 * @example formatMoney({ cents: 123450, currency: "USD" }); // "$1,234.50"
 */
export function formatMoney({
  cents,
  currency,
  locale = "en",
}: {
  readonly cents: Cents;
  /** ISO 4217 code. */
  readonly currency: string;
  readonly locale?: string;
}): string {
  if (!Number.isSafeInteger(cents))
    throw new InputError({ field: "cents", got: String(cents), expected: "whole cents" });
  return new Intl.NumberFormat(locale, {
    style: "currency",
    currency,
    minimumFractionDigits: 2,
    maximumFractionDigits: 2,
  }).format(cents / 100);
}
