import { InputError } from "../problems/input-error.js";

export interface DaysOnSiteInput {
  /** Mean hours of all work without the daily set-up. [h] */
  readonly workHours: number;
  /** Set-up and clean-up of one person-day. [h] */
  readonly setUpHoursPerDay: number;
  /** Productive hours of one person in a day; 6.5 to 7 is usual (common practice, no source), default 6.75. [h] */
  readonly productiveHoursPerDay?: number;
  /** People working at once, default 1. */
  readonly people?: number;
  /** Least labour charged; 2 to 4 h is usual (common practice, no source), default 0. [h] */
  readonly minimumCallHours?: number;
}

/**
 * Days on site, counting the set-up that every day brings: person-days = ceil(work ÷ (productive − set-up)), days =
 * ceil(person-days ÷ people). Labour charged = max(work + person-days · set-up, minimum call).
 * @throws {@link InputError} when set-up leaves no time to work, or a figure is negative.
 * @example daysOnSite({ workHours: 24.5, setUpHoursPerDay: 0.78 }).days; // 5
 */
export function daysOnSite({
  workHours,
  setUpHoursPerDay,
  productiveHoursPerDay = 6.75,
  people = 1,
  minimumCallHours = 0,
}: DaysOnSiteInput): {
  readonly days: number;
  readonly personDays: number;
  readonly totalHours: number;
  readonly chargedHours: number;
} {
  const refuse = (field: string, got: number, expected: string) => new InputError({ field, got: `${got}`, expected });
  if (!(workHours >= 0 && Number.isFinite(workHours))) throw refuse("workHours", workHours, "0 h or more");
  if (!(setUpHoursPerDay >= 0)) throw refuse("setUpHoursPerDay", setUpHoursPerDay, "0 h or more");
  if (!(people >= 1 && Number.isInteger(people))) throw refuse("people", people, "a whole number from 1");
  const perDay = productiveHoursPerDay - setUpHoursPerDay;
  if (!(perDay > 0)) throw refuse("productiveHoursPerDay", productiveHoursPerDay, `more than ${setUpHoursPerDay} h`);
  const personDays = Math.ceil(workHours / perDay - 1e-9);
  const totalHours = workHours + personDays * setUpHoursPerDay;
  return {
    days: Math.ceil(personDays / people),
    personDays,
    totalHours,
    chargedHours: workHours === 0 ? 0 : Math.max(totalHours, minimumCallHours),
  };
}
