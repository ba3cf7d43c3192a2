import { requireBetween } from "../problems/require-between.js";
import { type OhmMeter, referenceMeter } from "../reference/meter.js";

/** An accuracy statement "±(percent of reading + counts)" applied to one displayed value. */
export interface AccuracyStatement {
  /** Displayed value, in any unit. */
  readonly value: number;
  /** [%] */
  readonly percent: number;
  /** Last digits of the display. [count] */
  readonly counts: number;
  /** One count of the range in use, in the unit of `value`. */
  readonly resolution: number;
}

/**
 * Largest error the statement allows: |value| · percent/100 + counts · resolution. The two terms add; it is never the
 * larger of the two. [unit of `value`]
 * @throws {@link InputError} when a term is negative or not a number.
 * @example accuracyBound({ value: 120, percent: 1, counts: 3, resolution: 0.1 }); // 1.5
 */
export function accuracyBound({ value, percent, counts, resolution }: AccuracyStatement): number {
  requireBetween({ field: "value", value, unit: "", from: -1e15, to: 1e15 });
  requireBetween({ field: "percent", value: percent, unit: "%", from: 0, to: 100 });
  requireBetween({ field: "counts", value: counts, unit: "counts", from: 0, to: 1e6 });
  requireBetween({ field: "resolution", value: resolution, unit: "", from: 0, to: 1e12 });
  return (Math.abs(value) * percent) / 100 + counts * resolution;
}

/** The range a display takes for a reading. */
export interface DisplayRange {
  /** One count. [Ω] */
  readonly resolutionOhms: number;
  /** First value that no longer fits the range. [Ω] */
  readonly topOhms: number;
}

/**
 * Range an auto-ranging display uses: the finest decade on which the reading still fits below the display count, as
 * 599.9 Ω then 0.600 kΩ on a display of 6000 counts.
 * @throws {@link InputError} when the reading is negative or above 1 GΩ, or the display count is outside 1000 to 10⁷.
 * @example displayRange({ ohms: 2200, displayCounts: 6000, finestResolutionOhms: 0.1 }).resolutionOhms; // 1
 */
export function displayRange(reading: {
  readonly ohms: number;
  readonly displayCounts: number;
  readonly finestResolutionOhms: number;
}): DisplayRange {
  const { ohms, displayCounts, finestResolutionOhms } = reading;
  requireBetween({ field: "ohms", value: ohms, unit: "Ω", from: 0, to: 1e9 });
  requireBetween({ field: "displayCounts", value: displayCounts, unit: "counts", from: 1000, to: 1e7, whole: true });
  requireBetween({ field: "finestResolutionOhms", value: finestResolutionOhms, unit: "Ω", from: 1e-4, to: 10 });
  let resolutionOhms = finestResolutionOhms;
  while (Math.round(ohms / resolutionOhms) >= displayCounts)
    resolutionOhms = Number((resolutionOhms * 10).toPrecision(9));
  return { resolutionOhms, topOhms: Number((displayCounts * resolutionOhms).toPrecision(9)) };
}

/** How far off one resistance reading may be, with its two terms. */
export interface MeterBound {
  /** Half-width: the true value lies within reading ± this, leads apart. [Ω] */
  readonly boundOhms: number;
  /** The percentage term. [Ω] */
  readonly percentOhms: number;
  /** The counts term. [Ω] */
  readonly countsOhms: number;
  /** One count of the range the display uses. [Ω] */
  readonly resolutionOhms: number;
}

/**
 * Bound of one resistance reading: ±(percent · reading + counts · resolution of the range the display would use). [Ω]
 * Fields of the meter that are not given come from the common hand-held meter of the reference table.
 * @throws {@link InputError} when the reading or a field of the meter is outside its range.
 * @example meterBoundOhms({ ohms: 2200 }).boundOhms; // 22.6: 0.8 % of 2200 Ω and 5 counts of 1 Ω
 */
export function meterBoundOhms(reading: { readonly ohms: number; readonly meter?: Partial<OhmMeter> }): MeterBound {
  const meter: OhmMeter = { ...referenceMeter("commonHandheld"), ...reading.meter };
  const { resolutionOhms } = displayRange({ ...meter, ohms: reading.ohms });
  const { percent, counts } = meter;
  const percentOhms = accuracyBound({ value: reading.ohms, percent, counts: 0, resolution: resolutionOhms });
  const countsOhms = accuracyBound({ value: 0, percent, counts, resolution: resolutionOhms });
  return { boundOhms: percentOhms + countsOhms, percentOhms, countsOhms, resolutionOhms };
}
