import type { OldZone, SurveyLoop } from "../survey/survey.js";

/** A zone number without leading zeros and spaces, small letters: "07" and "7" are one zone. */
export const zoneNumberOf = (typed: string): string =>
  typed
    .trim()
    .toLowerCase()
    .replace(/^0+(?=.)/, "");

/** The first row of the old list with this loop's zone number. */
export function oldZoneOf(loop: SurveyLoop, oldZones: readonly OldZone[]): OldZone | undefined {
  const { oldZone } = loop;
  if (oldZone === undefined || oldZone.trim() === "") return undefined;
  return oldZones.find(({ zone }) => zoneNumberOf(zone) === zoneNumberOf(oldZone));
}
