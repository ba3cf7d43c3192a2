import { requireBetween } from "../problems/require-between.js";
import { type PartOhms, partOhms } from "../reference/loop-part.js";

/**
 * What the test leads add to a reading. [Ω] Zeroed leads add next to nothing; leads whose shorted reading was written
 * down add that, ± 0.1 Ω; otherwise the usual range of the reference table.
 * @throws {@link InputError} when a written lead resistance is outside 0 to 10 Ω.
 * @example leadOhms({ leadsZeroed: false }).likelyOhms; // 0.27
 */
export function leadOhms(leads: { readonly leadsZeroed: boolean; readonly measuredOhms?: number }): PartOhms {
  if (leads.leadsZeroed) return partOhms("leadsZeroed");
  if (leads.measuredOhms === undefined) return partOhms("leads");
  const likelyOhms = requireBetween({ field: "measuredOhms", value: leads.measuredOhms, unit: "Ω", from: 0, to: 10 });
  const repeats = 0.1;
  return {
    words: "test leads, shorted reading written down",
    lowOhms: Math.max(0, likelyOhms - repeats),
    likelyOhms,
    highOhms: likelyOhms + repeats,
    standardDeviationOhms: repeats / Math.sqrt(3),
  };
}
