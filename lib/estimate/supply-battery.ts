import type { JobSettings } from "../price-book/job-settings.js";
import { standbyRules } from "../reference/generated/standby-rules.js";
import { type AuxBudget, type AuxLoad, auxBudget } from "../supply/aux-budget.js";
import { type BatteryAnswer, batteryAmpHours } from "../supply/battery-amp-hours.js";
import { type ClassTwoCaution, classTwoCaution } from "../supply/class-two-caution.js";
import { supplyDefault } from "../supply/supply-defaults.js";

/** The supply of one place after the take-over: what hangs on it and what bridges a mains failure. */
export interface PlaceSupply {
  readonly budget: AuxBudget;
  readonly battery: BatteryAnswer & {
    readonly standbyHours: number;
    /** Nobody named the hours. */
    readonly standbyAssumed: boolean;
    readonly alarmMinutes: number;
    /** Rule set the alarm minutes come from, in words. */
    readonly rule: string;
  };
  readonly classTwo: ClassTwoCaution;
}

/**
 * Budget, battery, fuse and Class 2 reminder of the supply at a place with modules. Modules and detectors draw the
 * same in alarm as at rest: no sounder hangs on this supply.
 */
export function placeSupply({
  loads,
  chargerVolts,
  standbyHours,
  stockAmpHours,
  job,
}: {
  readonly loads: readonly AuxLoad[];
  readonly chargerVolts: number;
  /** Hours wanted by the site sheet; absent = not written. */
  readonly standbyHours: number | undefined;
  /** Battery sizes the price book sells. Empty = those commonly in stock. */
  readonly stockAmpHours: readonly number[];
  readonly job: JobSettings;
}): PlaceSupply {
  const ratedMilliamps = job.supplyRatedMilliamps;
  const budget = auxBudget({ ratedMilliamps, loads });
  const hours = standbyHours ?? supplyDefault("standbyHours");
  const rule = alarmRule(hours);
  const battery = batteryAmpHours({
    standbyHours: hours,
    standbyMilliamps: budget.totalMilliamps,
    alarmMinutes: rule.minutes,
    alarmMilliamps: budget.totalMilliamps,
    ...(budget.leftMilliamps >= 1 ? { chargeMilliamps: budget.leftMilliamps } : {}),
    ...(stockAmpHours.length === 0 ? {} : { stockAmpHours }),
  });
  return {
    budget,
    battery: {
      ...battery,
      standbyHours: hours,
      standbyAssumed: standbyHours === undefined,
      alarmMinutes: rule.minutes,
      rule: rule.words,
    },
    classTwo: classTwoCaution({ volts: chargerVolts, nameplateAmps: ratedMilliamps / 1000, limitedBy: "inherent" }),
  };
}

/** Alarm minutes that go with so many hours of standby: the longest of the rule sets that ask for these hours. */
function alarmRule(hours: number): { readonly minutes: number; readonly words: string } {
  const named = standbyRules.filter(({ alarmMinutes }) => alarmMinutes !== undefined && alarmMinutes !== null);
  const same = named.filter((row) => row.standbyHours === hours);
  const rows = same.length > 0 ? same : named;
  const row = [...rows].sort((a, b) => (b.alarmMinutes ?? 0) - (a.alarmMinutes ?? 0))[0];
  const minutes = row?.alarmMinutes ?? 0;
  const how = same.length > 0 ? "" : `no rule read asks for ${hours} h; the longest alarm of all: `;
  return { minutes, words: `${how}${row?.words ?? "none"} (${row?.confidence ?? "low"} confidence)` };
}
