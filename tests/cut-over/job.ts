import type { CutOverLoop } from "../../lib/cut-over/cut-over-loop.js";
import { readSurvey } from "../../lib/survey/read-survey.js";
import type { Survey } from "../../lib/survey/survey.js";
import type { Treatment } from "../../lib/treatments/treatment.js";
import { zoneSchedule } from "../../lib/zones/zone-schedule.js";
import { siteSheets } from "../survey/read-fixture.js";

/** A site's loops as a plan might leave them: every loop wired unless `treatments` says otherwise. */
export function siteJob(
  site: "a" | "b",
  treatments: Readonly<Record<string, Treatment>> = {},
): { readonly survey: Survey; readonly loops: readonly CutOverLoop[]; readonly asked: ReadonlySet<string> } {
  const { survey } = readSurvey({ sheets: siteSheets(site) });
  const schedule = zoneSchedule({ loops: survey.loops, oldZones: survey.oldZones });
  const zones = [...schedule.zones, ...schedule.armingInputs];
  let input = 0;
  const loops = survey.loops.map((loop): CutOverLoop => {
    const alone = schedule.excluded.some(({ key }) => key === loop.key);
    const treatment = alone ? "excluded" : (treatments[loop.key] ?? "fitEol");
    const wired = treatment !== "excluded" && treatment !== "wireless" && treatment !== "retire";
    const at = wired ? { module: `M${1 + Math.floor(input / 10)}`, number: 1 + (input % 10) } : null;
    if (wired) input += 1;
    return {
      key: loop.key,
      panel: loop.panel,
      loop: loop.loop,
      tag: loop.label ?? loop.loop,
      ...(loop.protects === undefined ? {} : { protects: loop.protects }),
      zones: zones
        .filter(({ key }) => key === loop.key)
        .map(({ number, name, use, area }) => ({ number, name, use, area })),
      treatment,
      input: at,
      eol: wired ? { ohms: 2200, at: "device" } : null,
      openings: loop.openings,
      devices: loop.devices,
      contactForm: loop.contactForm,
    };
  });
  const asked = new Set(schedule.queries.flatMap(({ key, column }) => (key && column === "use" ? [key] : [])));
  return { survey, loops, asked };
}
