import { daysOnSite } from "../labour/days-on-site.js";
import { meanHours } from "../labour/mean-hours.js";
import type { PlannedLoop } from "../plan/planned-loop.js";
import type { JobSettings } from "../price-book/job-settings.js";
import type { LabourUnit } from "../survey/survey.js";
import type { FittedModule } from "../terminals/terminal-schedule.js";
import type { Work } from "../treatments/treatment.js";
import { workHours } from "../treatments/work-cents.js";

/**
 * Work of the job as a whole, beside the loops': set-up and clean-up for each day, hand-over, papers, the signal test,
 * and stripping out the old control, which waits while a life-safety circuit is not released.
 */
export function jobTasks({
  planned,
  fitted,
  locations,
  panels,
  held,
  loopTasks,
  labour,
  job,
}: {
  readonly planned: readonly PlannedLoop[];
  readonly fitted: readonly FittedModule[];
  readonly locations: readonly Work[];
  readonly panels: number;
  /** A hold stands: nothing is stripped out. */
  readonly held: boolean;
  /** Work of the loops, for the number of days. */
  readonly loopTasks: Work["tasks"];
  readonly labour: readonly LabourUnit[];
  readonly job: JobSettings;
}): readonly { readonly task: string; readonly count: number }[] {
  const active = planned.filter(({ treatment }) => treatment !== "excluded").length;
  if (active === 0) return [];
  const tens = Math.ceil(active / 10);
  const tasks = [
    ...locations.flatMap((location) => location.tasks),
    { task: "asBuilts", count: tens },
    { task: "management", count: tens },
    { task: "trainingAndHandover", count: 1 },
    { task: "signalTestWithCentre", count: fitted.length > 0 ? 1 : 0 },
    { task: "stripOut", count: held ? 0 : panels },
  ].filter(({ count }) => count > 0);
  const setUp = labour.find(({ task }) => task === "setUpAndCleanUp");
  const { personDays } = daysOnSite({
    workHours: workHours({ work: { tasks: [...loopTasks, ...tasks], parts: [] }, labour }),
    setUpHoursPerDay: setUp === undefined ? 0 : meanHours(setUp),
    productiveHoursPerDay: job.productiveHoursPerDay,
  });
  return [...tasks, { task: "setUpAndCleanUp", count: Math.max(1, personDays) }];
}
