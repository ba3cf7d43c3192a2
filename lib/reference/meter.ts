import { meters } from "./generated/meters.js";
import { onlyRow } from "./rows.js";

/** Accuracy statement and display of the ohm ranges of a hand-held meter. */
export interface OhmMeter {
  /** Part of the reading. [%] */
  readonly percent: number;
  /** Last digits of the display, added to the percentage. [count] */
  readonly counts: number;
  /** The display runs from 0 up to one less than this. [count] */
  readonly displayCounts: number;
  /** One count on the lowest range. [Ω] */
  readonly finestResolutionOhms: number;
  /** Above this the display shows over-range. [Ω] */
  readonly overRangeOhms: number;
  /** From here on a reading counts as over-range when a loop is judged. [Ω] */
  readonly judgedOverRangeOhms: number;
}

export type MeterName = "commonHandheld" | "simpleHandheld" | "fineHandheld";

/**
 * A meter of the reference table; `commonHandheld` stands in where a survey names none.
 * @example referenceMeter("commonHandheld").percent; // 0.8
 * @see reference-data/meters.json (common practice, no source)
 */
export function referenceMeter(name: MeterName): OhmMeter {
  return onlyRow("meters", meters, (row) => row.meter === name);
}
