import { InputError } from "../problems/input-error.js";

/**
 * A probability for paper, to the nearest 5 %: nothing here is known more finely. What is neither impossible nor certain
 * never rounds to 0 % or 100 %. "85 %", "under 5 %", "over 95 %"
 * @param fraction 0 to 1.
 * @throws {@link InputError} outside 0 to 1.
 * @example formatPercentOnPaper(0.83); // "85 %"
 */
export function formatPercentOnPaper(fraction: number): string {
  if (!(fraction >= 0 && fraction <= 1)) {
    throw new InputError({ field: "fraction", got: String(fraction), expected: "0 to 1" });
  }
  const percent = 5 * Math.round(fraction * 20);
  if (percent === 0 && fraction > 0) return "under 5 %";
  if (percent === 100 && fraction < 1) return "over 95 %";
  return `${percent} %`;
}
