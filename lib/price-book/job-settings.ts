import type { Query } from "../problems/query.js";
import { moneySettings } from "../reference/generated/demo/money-settings.js";

/** Rates, margins, taxes and limits of one job. Money in currency units as typed, fractions as fractions. */
export interface JobSettings {
  readonly labourCostPerHour: number;
  readonly marginMaterial: number;
  readonly marginLabour: number;
  readonly taxMaterial: number;
  readonly taxLabour: number;
  readonly freight: number;
  readonly returnTripHours: number;
  readonly returnTripCost: number;
  readonly returnFraction: number;
  readonly waste: number;
  readonly slackMeters: number;
  readonly extensionMeters: number;
  readonly repairSucceeds: number;
  readonly confidenceOneTrip: number;
  readonly controllerModules: number;
  readonly controllerDevices: number;
  readonly spareFraction: number;
  readonly productiveHoursPerDay: number;
  readonly minimumCallHours: number;
  readonly joinLoops: number;
  readonly joinOpenings: number;
  readonly joinMinutes: number;
  readonly detectorMinimumVolts: number;
  readonly batteryEndVolts: number;
  readonly panelDropVolts: number;
  readonly supplyRatedMilliamps: number;
  readonly radioMarginDb: number;
  readonly quoteValidDays: number;
  readonly repairCapHours: number;
}

const defaults = Object.fromEntries(
  moneySettings.map(({ setting, value }) => [setting, value]),
) as unknown as JobSettings;

/**
 * Settings of a job: what the survey gives, completed from the demo settings. A value outside its range is not used
 * and asked about; `assumed` names what came from the demo.
 */
export function jobSettings({
  given,
  sheet = "Settings",
}: {
  readonly given: Readonly<Record<string, number>>;
  readonly sheet?: string;
}): { readonly settings: JobSettings; readonly assumed: readonly string[]; readonly queries: readonly Query[] } {
  const queries: Query[] = [];
  const assumed: string[] = [];
  const values: Record<string, number> = {};
  for (const { setting, least, most, value: fallback, unit } of moneySettings) {
    const typed = given[setting];
    if (typed === undefined) assumed.push(setting);
    else if (Number.isFinite(typed) && typed >= least && typed <= most) {
      values[setting] = typed;
    } else {
      const message = `got ${typed}, expected ${least} to ${most} ${unit}; reckoned with ${fallback} until it is mended`;
      queries.push({ sheet, row: null, column: setting, typed: String(typed), message });
    }
  }
  return { settings: { ...defaults, ...values }, assumed, queries };
}
