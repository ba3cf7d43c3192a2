import { InputError } from "../problems/input-error.js";
import { type Cents, roundCents } from "../quantities/money.js";
import type { PriceRange } from "./price-range.js";

/**
 * Contingency from the job's own range instead of a flat rate: the price not exceeded with the wanted confidence less
 * the mean, 0 where that is below the mean. Between whole percents it is interpolated. [cents]
 * @throws {@link InputError} when the confidence is outside 0.01 to 0.99.
 * @example contingencyFor({ range, confidence: 0.8 }); // P80 − mean
 */
export function contingencyFor({
  range,
  confidence,
}: {
  readonly range: Pick<PriceRange, "percentiles" | "meanCents">;
  readonly confidence: number;
}): Cents {
  if (!(confidence >= 0.01 && confidence <= 0.99)) {
    throw new InputError({ field: "confidence", got: `${confidence}`, expected: "0.01 to 0.99" });
  }
  const percent = confidence * 100;
  const below = range.percentiles[Math.floor(percent + 1e-9) - 1];
  const above = range.percentiles[Math.ceil(percent - 1e-9) - 1];
  if (!below || !above) return 0;
  const part = above.percent === below.percent ? 0 : (percent - below.percent) / (above.percent - below.percent);
  return Math.max(0, roundCents(below.cents + part * (above.cents - below.cents)) - range.meanCents);
}
