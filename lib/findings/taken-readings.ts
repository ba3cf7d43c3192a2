import type { Ohms } from "../quantities/ohms-reading.js";
import type { Figures } from "./judge-options.js";
import type { LoopRecord } from "./loop-record.js";
import { lastDigitOhms, type MeterFigures, meterOf, readingSpreadOhms } from "./reading-spread.js";

/** The ohms readings of a record that count, as numbers; over-range is `Infinity` inside the judge only. */
export interface TakenReadings {
  /** Shut reading, `NaN` when not taken. [Ω] */
  readonly closed: number;
  readonly closedOverRange: boolean;
  /** Standard deviation of the shut reading by the meter alone. [Ω] */
  readonly closedSpread: number;
  /** Distinct openings read one at a time, nearest the panel first. */
  readonly openings: readonly number[];
  /** Their readings, `Infinity` for over-range. [Ω] */
  readonly opened: readonly number[];
  readonly together: number;
  readonly meter: MeterFigures;
}

/** Readings of a record that count as ohms of the pair itself. Those on a pair that was not lifted do not. */
export function takenReadings(record: LoopRecord, figures: Figures): TakenReadings {
  const meter = meterOf(record);
  const counts = record.lifted !== "no";
  const closed = counts ? asNumber(record.readings.closedOhms, figures) : Number.NaN;
  const finite = Number.isFinite(closed);
  const openings: number[] = [];
  const opened: number[] = [];
  for (const reading of (counts ? record.readings.opened : undefined) ?? []) {
    if (openings.includes(reading.opening)) continue;
    let place = openings.length;
    while (place > 0 && (openings[place - 1] ?? 0) > reading.opening) place -= 1;
    openings.splice(place, 0, reading.opening);
    opened.splice(place, 0, asNumber(reading.ohms, figures));
  }
  return {
    closed: finite ? Math.max(closed, lastDigitOhms(closed, meter.displayCounts) / 2) : closed,
    closedOverRange: closed === Number.POSITIVE_INFINITY,
    closedSpread: finite ? readingSpreadOhms(closed, meter) : 0,
    openings,
    opened,
    together: counts ? asNumber(record.readings.openedTogetherOhms, figures) : Number.NaN,
    meter,
  };
}

function asNumber(ohms: Ohms | undefined, figures: Figures): number {
  if (ohms === undefined) return Number.NaN;
  return ohms === "OL" || ohms >= figures.overRangeOhms ? Number.POSITIVE_INFINITY : ohms;
}
