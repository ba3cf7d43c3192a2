import type { LabourUnit } from "../survey/survey.js";
import type { Treatment } from "../treatments/treatment.js";
import type { CutOverLoop } from "./cut-over-loop.js";

const furtherTask: Readonly<Partial<Record<Treatment, string>>> = {
  fitEol: "eolAtFarEnd",
  changeEol: "eolAtFarEnd",
  repair: "repair",
  rewire: "repair",
  split: "split",
  measureAgain: "measureAgain",
};

/**
 * Minutes a loop watches nothing while it moves: likely hours of verifying, landing, its treatment and the walk test of
 * its openings. [min]
 */
export function darkMinutes(loop: CutOverLoop, labour: readonly LabourUnit[]): number {
  if (loop.darkMinutes !== undefined) return loop.darkMinutes;
  const hours = (task: string) => labour.find((unit) => unit.task === task)?.likelyHours ?? 0;
  const further = furtherTask[loop.treatment];
  const work = hours("verifyLoop") + hours("landLabelConfigure") + (further === undefined ? 0 : hours(further));
  return Math.round(60 * (work + loop.openings.count * hours("walkTestOpening")));
}
