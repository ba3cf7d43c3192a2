import { InputError } from "../problems/input-error.js";
import type { Cents } from "../quantities/money.js";

/**
 * Parts a whole amount by weights so that the parts add up to it exactly: every part is rounded down and the cents
 * left go one each to the largest remainders, ties to the earlier part (method of the largest remainder).
 * @throws {@link InputError} when the total is not whole cents, a weight is negative, or all weights are 0.
 * @example allocateCents({ totalCents: 100, weights: [1, 1, 1] }); // [34, 33, 33]
 */
export function allocateCents({
  totalCents,
  weights,
}: {
  readonly totalCents: Cents;
  readonly weights: readonly number[];
}): readonly Cents[] {
  if (!Number.isInteger(totalCents)) {
    throw new InputError({ field: "totalCents", got: `${totalCents}`, expected: "whole cents" });
  }
  const sum = weights.reduce((total, weight) => total + weight, 0);
  if (weights.some((weight) => !(weight >= 0 && Number.isFinite(weight))) || !(sum > 0)) {
    throw new InputError({ field: "weights", got: weights.join(", ") || "none", expected: "0 or more, one above 0" });
  }
  const sign = totalCents < 0 ? -1 : 1;
  const whole = Math.abs(totalCents);
  const exact = weights.map((weight) => (whole * weight) / sum);
  // Binary noise must not take a cent away from a part that is whole.
  const parts = exact.map((part) => Math.floor(part + 1e-9));
  const order = exact
    .map((part, index) => ({ index, rest: part - (parts[index] ?? 0), weight: weights[index] ?? 0 }))
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.rest - a.rest || a.index - b.index);
  let left = whole - parts.reduce((total, part) => total + part, 0);
  for (let at = 0; left > 0; at = (at + 1) % order.length, left--) {
    const index = order[at]?.index ?? 0;
    parts[index] = (parts[index] ?? 0) + 1;
  }
  for (let at = order.length - 1; left < 0; at--, left++) {
    const index = order[at]?.index ?? 0;
    parts[index] = (parts[index] ?? 0) - 1;
  }
  return parts.map((part) => (part === 0 ? 0 : sign * part));
}
