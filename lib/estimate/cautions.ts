import type { PlannedLoop } from "../plan/planned-loop.js";
import { cautions } from "../reference/generated/cautions.js";
import type { Survey } from "../survey/survey.js";
import type { Hold, PrintedCaution } from "./estimate.js";

/** Cautions about powering down and taking away; they are not printed while a hold stands, because neither is the step. */
const onlyWithoutHold = new Set([
  "mainsThenBattery",
  "selfContainedSiren",
  "hardwiredTransformer",
  "batteryLeads",
  "phoneLineInSeries",
]);

/** Every caution of the table that applies to this job, in the table's order. */
export function cautionsFor({
  survey,
  holds,
  planned,
}: {
  readonly survey: Survey;
  readonly holds: readonly Hold[];
  readonly planned: readonly PlannedLoop[];
}): readonly PrintedCaution[] {
  const holdUp = survey.loops.some(({ devices }) => devices.some(({ kind }) => kind === "holdUp"));
  const radio = planned.some(({ items }) => Object.keys(items).length > 0);
  return cautions
    .filter(({ caution }) => !(holds.length > 0 && onlyWithoutHold.has(caution)))
    .filter(({ caution }) => caution !== "holdUp" || holdUp)
    .filter(({ caution }) => caution !== "lithiumCells" || radio)
    .map(({ words, when, who }) => ({ words, when, who }));
}
