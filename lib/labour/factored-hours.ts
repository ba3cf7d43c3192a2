import { InputError } from "../problems/input-error.js";
import { labourFactors } from "../reference/generated/labour-factors.js";
import type { ThreePointHours } from "./hours-spread.js";

/**
 * Hours × product of the factors of the circumstances (reference-data/labour-factors, common practice, no source).
 * Each circumstance counts once. Night has factor 1: it is a premium on the rate, never on the hours as well.
 * @throws {@link InputError} for a circumstance the table does not hold.
 * @example factoredHours({ hours: { lowHours: 0.3, likelyHours: 0.4, highHours: 0.7 }, circumstances: ["ladder"] }).likelyHours; // 0.44
 */
export function factoredHours({
  hours,
  circumstances,
}: {
  readonly hours: ThreePointHours;
  readonly circumstances: readonly string[];
}): ThreePointHours {
  const factor = [...new Set(circumstances)].reduce((product, name) => {
    const row = labourFactors.find((one) => one.factor === name);
    if (row) return product * row.timesHours;
    const expected = `one of ${labourFactors.map((one) => one.factor).join(", ")}`;
    throw new InputError({ field: "circumstances", got: name, expected });
  }, 1);
  return {
    lowHours: hours.lowHours * factor,
    likelyHours: hours.likelyHours * factor,
    highHours: hours.highHours * factor,
  };
}
