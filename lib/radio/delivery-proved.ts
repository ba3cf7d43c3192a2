import { requireBetween } from "../problems/require-between.js";
import { radioDefault } from "./radio-defaults.js";

/** Messages heard of those sent. */
export interface MessageCount {
  readonly heard: number;
  /** 1 to 100 000. */
  readonly sent: number;
  /** One-sided; absent = 0.95. [1] */
  readonly confidence?: number;
}

/**
 * Share of messages that a count proves to be delivered: the exact one-sided lower limit of Clopper and Pearson, the
 * share at which hearing so many or more would have had a chance of 1 − confidence. [1]
 * @throws {@link InputError} when a count is not whole, or more were heard than sent.
 * @example deliveryProved({ heard: 10, sent: 10 }); // 0.741
 * @example deliveryProved({ heard: 9, sent: 10 }); // 0.606
 */
export function deliveryProved({ heard, sent, confidence = radioDefault("confidence") }: MessageCount): number {
  requireBetween({ field: "sent", value: sent, unit: "", from: 1, to: 100_000, whole: true });
  requireBetween({ field: "heard", value: heard, unit: "", from: 0, to: sent, whole: true });
  requireBetween({ field: "confidence", value: confidence, unit: "", from: 0.5, to: 0.9999 });
  if (heard === 0) return 0;
  let low = 0;
  let high = 1;
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (chanceOfAtLeast(heard, sent, middle) < 1 - confidence) low = middle;
    else high = middle;
  }
  return low;
}

/** Chance of `heard` or more of `sent`, each delivered with `share`. */
function chanceOfAtLeast(heard: number, sent: number, share: number): number {
  if (share <= 0) return 0;
  if (share >= 1) return 1;
  const odds = share / (1 - share);
  let logTerm = sent * Math.log1p(-share);
  let sum = 0;
  for (let k = 0; k <= sent; k++) {
    if (k >= heard) sum += Math.exp(logTerm);
    logTerm += Math.log((sent - k) / (k + 1)) + Math.log(odds);
  }
  return Math.min(1, sum);
}
