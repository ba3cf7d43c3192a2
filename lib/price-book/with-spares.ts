import { InputError } from "../problems/input-error.js";
import { spareRules } from "../reference/generated/spare-rules.js";

/** A count with its spares, and how it came about. */
export interface SparedCount {
  /** Whole units. */
  readonly need: number;
  /** The arithmetic, "4 × 1.2 + 2 = 6.8, rounded up"; empty where nothing is added. */
  readonly words: string;
}

/**
 * Count with its spares: ceil(count · times · (1 + fraction) + extra), and at least `atLeast` more than counted; a
 * class without a rule is rounded up, and where nothing is needed no spares are. Rules: reference-data/spare-rules,
 * common practice, no source.
 * @throws {@link InputError} when the count or the fraction is negative or not finite.
 * @example withSpares({ class: "eolResistor", count: 11 }).need; // 16 = ceil(13.2 + 2)
 * @example withSpares({ class: "fuse", count: 2 }).words; // "2 × 2 = 4"
 */
export function withSpares({
  class: wanted,
  count,
  fraction,
}: {
  readonly class: string;
  readonly count: number;
  /** In place of the rule's fraction, such as the job's own waste on wire. */
  readonly fraction?: number;
}): SparedCount {
  for (const [field, value] of [["count", count] as const, ["fraction", fraction ?? 0] as const]) {
    if (!(value >= 0 && Number.isFinite(value)))
      throw new InputError({ field, got: `${value}`, expected: "0 or more" });
  }
  if (count === 0) return { need: 0, words: "" };
  const rule = spareRules.find((row) => row.class === wanted);
  const grown = fraction ?? rule?.fraction ?? 0;
  const { times, extra, atLeast } = { times: rule?.times ?? 1, extra: rule?.extra ?? 0, atLeast: rule?.atLeast ?? 0 };
  const exact = count * times * (1 + grown) + extra;
  const need = Math.max(Math.ceil(exact - 1e-9), Math.ceil(count - 1e-9) + atLeast);
  if (times === 1 && grown === 0 && extra === 0 && atLeast === 0) return { need, words: "" };
  const factors = [count, ...(times === 1 ? [] : [times]), ...(grown === 0 ? [] : [1 + grown])].map(short).join(" × ");
  const sum = `${factors}${extra > 0 ? ` + ${extra}` : ""} = ${short(exact)}`;
  const rounding = Number.isInteger(Number(short(exact))) ? "" : ", rounded up";
  return {
    need,
    words:
      need > Math.ceil(exact - 1e-9) ? `${sum}, at least ${atLeast} more than ${short(count)}` : `${sum}${rounding}`,
  };
}

const short = (value: number): string => String(Number(value.toFixed(2)));
