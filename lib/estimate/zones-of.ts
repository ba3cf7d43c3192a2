import type { PlannedLoop } from "../plan/planned-loop.js";
import type { Query } from "../problems/query.js";
import type { FittedModule } from "../terminals/terminal-schedule.js";
import { poweredAmongContacts } from "../treatments/loop-devices.js";
import type { Zone, ZoneSchedule } from "../zones/zone.js";
import { zoneConflicts } from "../zones/zone-conflicts.js";
import { zoneSchedule } from "../zones/zone-schedule.js";
import type { PreparedJob } from "./prepare-job.js";

/**
 * The zone schedule of a planned job and every question about it. Loops that the plan gives up have no zone; loops on
 * one input are one zone and share its number; a detector that the plan takes off a pair has a zone of its own.
 */
export function zonesOf({
  prepared,
  planned,
  fitted,
}: {
  readonly prepared: PreparedJob;
  readonly planned: readonly PlannedLoop[];
  readonly fitted: readonly FittedModule[];
}): { readonly zones: ZoneSchedule; readonly queries: readonly Query[] } {
  const { survey, judgements } = prepared;
  const { loops, oldZones, site } = survey;
  const keysOf = (treatment: PlannedLoop["treatment"]) =>
    planned.filter((loop) => loop.treatment === treatment).map(({ key }) => key);
  const givenUp = keysOf("retire");
  const withDetector = new Set(loops.filter((loop) => poweredAmongContacts(loop).length > 0).map(({ key }) => key));
  const areaWords = Object.entries(site.typed).find(([item]) => /^(partitions?|areas?)\b/i.test(item))?.[1];
  const schedule = zoneSchedule({
    loops: loops.filter(({ key }) => !givenUp.includes(key)),
    oldZones,
    judgements,
    detectorsTakenOff: keysOf("split").filter((key) => withDetector.has(key)),
    ...(areaWords === undefined ? {} : { areaWords }),
  });
  const zones = { ...schedule, zones: numbered(schedule.zones, fitted) };
  return { zones, queries: [...schedule.queries, ...zoneConflicts({ loops, oldZones, judgements })] };
}

/** Numbers from 1 in the order of the schedule; zones on one input have one number. */
function numbered(zones: readonly Zone[], fitted: readonly FittedModule[]): readonly Zone[] {
  const numbers = new Map<string, number>();
  return zones.map((zone) => {
    const at = zone.part === null || zone.part === "rest" ? inputOf(zone.key, fitted) : null;
    const own = `${zone.key} ${zone.part ?? ""}`;
    const name = at ?? own;
    const number = numbers.get(name) ?? new Set(numbers.values()).size + 1;
    numbers.set(name, number);
    return { ...zone, number };
  });
}

function inputOf(key: string, fitted: readonly FittedModule[]): string | null {
  for (const { panel, name, inputs } of fitted) {
    const input = inputs.find(({ loops }) => loops.includes(key));
    if (input !== undefined) return JSON.stringify([panel, name, input.number]);
  }
  return null;
}
