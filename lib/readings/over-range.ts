import { requireBetween } from "../problems/require-between.js";
import type { Ohms } from "../quantities/ohms-reading.js";
import { type OhmMeter, referenceMeter } from "../reference/meter.js";

/**
 * Whether a reading counts as over-range when a loop is judged: shown as over-range, or at least the judging
 * threshold (8 MΩ by default, or the meter's own top where that is lower). A reading that was not taken is not a
 * reading: ask before calling.
 * @throws {@link InputError} when the reading is negative or not a number.
 * @example countsAsOverRange({ ohms: 12e6 }); // true
 * @example countsAsOverRange({ ohms: 4e6 }); // false: something leaks
 */
export function countsAsOverRange(reading: { readonly ohms: Ohms; readonly meter?: Partial<OhmMeter> }): boolean {
  if (reading.ohms === "OL") return true;
  requireBetween({ field: "ohms", value: reading.ohms, unit: "Ω", from: 0, to: 1e12 });
  return reading.ohms >= judgedOverRangeOhms(reading.meter);
}

/**
 * From here on a reading counts as over-range when a loop is judged. [Ω]
 * @example judgedOverRangeOhms({ overRangeOhms: 2e6 }); // 2000000
 */
export function judgedOverRangeOhms(meter: Partial<OhmMeter> = {}): number {
  const { overRangeOhms, judgedOverRangeOhms: threshold } = { ...referenceMeter("commonHandheld"), ...meter };
  requireBetween({ field: "overRangeOhms", value: overRangeOhms, unit: "Ω", from: 1000, to: 1e12 });
  requireBetween({ field: "judgedOverRangeOhms", value: threshold, unit: "Ω", from: 1000, to: 1e12 });
  return Math.min(overRangeOhms, threshold);
}
