import { InputError } from "../problems/input-error.js";
import { spareRules } from "../reference/generated/spare-rules.js";

/**
 * Count with its spares: ceil(count · times · (1 + fraction)) + extra, and at least `atLeast` more than counted; a
 * class without a rule is rounded up, and where nothing is needed no spares are. Rules: reference-data/spare-rules,
 * common practice, no source.
 * @throws {@link InputError} when the count is negative or not finite.
 * @example withSpares({ class: "eolResistor", count: 11 }); // 16 = ceil(13.2) + 2
 * @example withSpares({ class: "spareInput", count: 4 }); // 5
 */
export function withSpares({ class: wanted, count }: { readonly class: string; readonly count: number }): number {
  if (!(count >= 0 && Number.isFinite(count))) {
    throw new InputError({ field: "count", got: `${count}`, expected: "0 or more" });
  }
  if (count === 0) return 0;
  const rule = spareRules.find((row) => row.class === wanted);
  if (!rule) return Math.ceil(count - 1e-9);
  const grown = Math.ceil(count * rule.times * (1 + rule.fraction) - 1e-9) + rule.extra;
  return Math.max(grown, Math.ceil(count - 1e-9) + rule.atLeast);
}
