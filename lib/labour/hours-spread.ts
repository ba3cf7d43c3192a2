import { InputError } from "../problems/input-error.js";

/** Hours of a piece of work: when everything goes well, usually, and when it goes badly. [h] */
export interface ThreePointHours {
  readonly lowHours: number;
  readonly likelyHours: number;
  readonly highHours: number;
}

/**
 * Mean and variance of a three-point estimate.
 * pert (default, what every price is reckoned with): mean (l + 4m + h)/6, variance (mean − l)(h − mean)/7, the beta
 * distribution of PERT with weight 4. triangular: mean (l + m + h)/3, variance (l² + m² + h² − lm − lh − mh)/18.
 * @throws {@link InputError} when the hours are negative or not in rising order.
 * @example hoursSpread({ hours: { lowHours: 0.5, likelyHours: 1, highHours: 2.5 } }).meanHours; // 1.1667
 */
export function hoursSpread({
  hours: { lowHours: l, likelyHours: m, highHours: h },
  method = "pert",
}: {
  readonly hours: ThreePointHours;
  readonly method?: "pert" | "triangular";
}): { readonly meanHours: number; readonly varianceHours2: number } {
  if (!(l >= 0 && l <= m && m <= h && Number.isFinite(h))) {
    throw new InputError({ field: "hours", got: `${l} / ${m} / ${h} h`, expected: "0 ≤ low ≤ likely ≤ high" });
  }
  if (method === "triangular") {
    return { meanHours: (l + m + h) / 3, varianceHours2: (l * l + m * m + h * h - l * m - l * h - m * h) / 18 };
  }
  const meanHours = (l + 4 * m + h) / 6;
  return { meanHours, varianceHours2: ((meanHours - l) * (h - meanHours)) / 7 };
}
