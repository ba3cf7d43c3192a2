import type { PlannedLoop } from "../plan/planned-loop.js";
import type { SurveyLoop } from "../survey/survey.js";
import type { FittedModule } from "../terminals/terminal-schedule.js";
import type { ZoneSchedule } from "../zones/zone.js";
import type { CutOverLoop } from "./cut-over-loop.js";

/** Survey, plan, modules and zones of every planned loop as one record for the cut-over papers. */
export function cutOverLoops({
  loops,
  planned,
  fitted,
  zones,
  expectedShut = () => undefined,
}: {
  readonly loops: readonly SurveyLoop[];
  readonly planned: readonly PlannedLoop[];
  readonly fitted: readonly FittedModule[];
  readonly zones: ZoneSchedule;
  /** As-left band by loop key. [Ω] */
  readonly expectedShut?: (key: string) => { readonly lowOhms: number; readonly highOhms: number } | undefined;
}): readonly CutOverLoop[] {
  const schedule = [...zones.zones, ...zones.armingInputs];
  return loops.flatMap((loop): CutOverLoop[] => {
    const plan = planned.find(({ key }) => key === loop.key);
    if (plan === undefined) return [];
    const band = expectedShut(loop.key);
    const mine = schedule.filter(({ key }) => key === loop.key);
    const alone = zones.excluded.some(({ key }) => key === loop.key);
    return [
      {
        key: loop.key,
        panel: loop.panel,
        loop: loop.loop,
        tag: loop.label ?? loop.loop,
        ...(loop.protects === undefined ? {} : { protects: loop.protects }),
        ...(loop.place === undefined ? {} : { place: loop.place }),
        zones: mine.map(({ number, name, use, area, part }) => ({
          number,
          name,
          use,
          area,
          ...((part === "detector" || part === "dailyDoor") && plan.treatment === "split"
            ? { takenOff: true as const }
            : {}),
        })),
        // The zones leave alone what the old list calls fire, even where the plan would keep it.
        treatment: alone ? "excluded" : plan.treatment,
        input: alone ? null : inputOf(loop.key, fitted),
        eol: plan.eol === null || alone ? null : { ohms: plan.eol.ohms, at: plan.eol.at },
        openings: loop.openings,
        devices: loop.devices.map(({ kind, count }) => ({ kind, count })),
        contactForm: loop.contactForm,
        asFound: {
          ...(loop.typed["closed"] === undefined ? {} : { shut: loop.typed["closed"] }),
          ...(loop.typed["opened"] === undefined ? {} : { opened: loop.typed["opened"] }),
        },
        ...(band === undefined || alone ? {} : { expectedShut: band }),
      },
    ];
  });
}

function inputOf(key: string, fitted: readonly FittedModule[]): CutOverLoop["input"] {
  for (const module of fitted) {
    const input = module.inputs.find(({ loops }) => loops.includes(key));
    if (input !== undefined) return { module: module.name, number: input.number };
  }
  return null;
}
