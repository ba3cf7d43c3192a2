import { InputError } from "../problems/input-error.js";

/**
 * Working time for people: minutes below an hour, decimal hours above. "5 min", "1.5 h", "12.25 h"
 * @throws {@link InputError} when the time is negative or not a number.
 * @example formatHours(0.75); // "45 min"
 */
export function formatHours(hours: number): string {
  if (!(hours >= 0 && Number.isFinite(hours))) {
    throw new InputError({ field: "hours", got: `${hours} h`, expected: "0 h or more" });
  }
  const minutes = Math.round(hours * 60);
  return minutes < 60 ? `${minutes} min` : `${Number(hours.toFixed(2))} h`;
}
