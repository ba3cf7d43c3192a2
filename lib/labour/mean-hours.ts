import type { LabourUnit } from "../survey/survey.js";

/**
 * Mean of a three-point estimate as PERT takes it: (low + 4·likely + high) / 6. [h]
 * Sums of likely hours come out too low because hours are skewed; every price is reckoned with this mean.
 * @example meanHours({ task: "repair", lowHours: 0.5, likelyHours: 1, highHours: 2.5 }); // 1.1667
 */
export function meanHours({ lowHours, likelyHours, highHours }: LabourUnit): number {
  return (lowHours + 4 * likelyHours + highHours) / 6;
}
