import { referenceMeter } from "../reference/meter.js";
import type { LoopRecord } from "./loop-record.js";

/** What a meter may be off by: percent of reading plus counts of its last digit. */
export interface MeterFigures {
  readonly percent: number;
  readonly counts: number;
  readonly displayCounts: number;
}

/** Used where the record names no meter. */
const commonMeter: MeterFigures = referenceMeter("commonHandheld");

export function meterOf(record: LoopRecord): MeterFigures {
  return record.meter ?? commonMeter;
}

/** Value of the last digit on the range that shows this reading; the finest range ends at a tenth of the counts. [Ω] */
export function lastDigitOhms(ohms: number, displayCounts: number): number {
  let digit = 0.1;
  while (ohms >= displayCounts * digit && digit < 1e6) digit *= 10;
  return digit;
}

/**
 * Standard deviation of one reading: the accuracy bound percent·r + counts·digit taken as uniform, plus rounding. [Ω]
 */
export function readingSpreadOhms(ohms: number, meter: MeterFigures): number {
  const digit = lastDigitOhms(ohms, meter.displayCounts);
  const bound = (meter.percent / 100) * ohms + meter.counts * digit;
  return Math.sqrt((bound * bound) / 3 + (digit * digit) / 12);
}
