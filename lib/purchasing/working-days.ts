import { InputError } from "../problems/input-error.js";

/** Days since 1970-01-01 of a calendar date (proleptic Gregorian). */
function dayNumber(iso: string, field: string): number {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  const [year, month, day] = (match ?? []).slice(1).map(Number);
  const refuse = () => new InputError({ field, got: iso || "nothing", expected: "a date as YYYY-MM-DD" });
  if (year === undefined || month === undefined || day === undefined) throw refuse();
  const milliseconds = Date.UTC(year, month - 1, day);
  if (new Date(milliseconds).toISOString().slice(0, 10) !== iso) throw refuse();
  return milliseconds / 86_400_000;
}

const isoOf = (number: number): string => new Date(number * 86_400_000).toISOString().slice(0, 10);
/** 1970-01-01 was a Thursday; 0 = Monday … 6 = Sunday. */
const weekday = (number: number): number => (((number + 3) % 7) + 7) % 7;

/**
 * The date so many working days (Monday to Friday, less the holidays given) after a date; a negative count goes back.
 * Half a day counts as a day. Reads no clock.
 * @throws {@link InputError} when a date is not YYYY-MM-DD.
 * @example workingDaysFrom({ from: "2026-03-02", days: -2 }); // "2026-02-26": Monday back over the weekend to Thursday
 */
export function workingDaysFrom({
  from,
  days,
  holidays = [],
}: {
  readonly from: string;
  readonly days: number;
  readonly holidays?: readonly string[];
}): string {
  const off = new Set(holidays.map((date) => dayNumber(date, "holidays")));
  const step = days < 0 ? -1 : 1;
  let at = dayNumber(from, "from");
  for (let left = Math.ceil(Math.abs(days)); left > 0; ) {
    at += step;
    if (weekday(at) < 5 && !off.has(at)) left--;
  }
  return isoOf(at);
}

/**
 * The date so many calendar days after a date.
 * @throws {@link InputError} when the date is not YYYY-MM-DD.
 * @example calendarDaysFrom({ from: "2026-02-27", days: 30 }); // "2026-03-29"
 */
export function calendarDaysFrom({ from, days }: { readonly from: string; readonly days: number }): string {
  return isoOf(dayNumber(from, "from") + Math.round(days));
}
