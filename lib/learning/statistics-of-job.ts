import type { Condition } from "../findings/loop-record.js";
import { InputError } from "../problems/input-error.js";
import type { Query } from "../problems/query.js";
import type { Ohms } from "../quantities/ohms-reading.js";
import type { LabourUnit } from "../survey/survey.js";
import type { HoursSums, JobStatistics, RepairCounts } from "./job-statistics.js";

/** One loop of a finished job. Absent = nobody wrote it down. */
export interface FinishedLoop {
  readonly key: string;
  /** What it was judged before the work. */
  readonly condition: Condition;
  readonly repairOutcome?: "repaired" | "notRepaired" | "notTried" | undefined;
  readonly asLeftShut?: Ohms | undefined;
  /** The band that was expected. [Ω] */
  readonly expectedShut?: { readonly lowOhms: number; readonly highOhms: number } | undefined;
  /** Time on this loop, all its tasks together. [h] */
  readonly hoursSpent?: number | undefined;
  /** What was planned for it. */
  readonly tasks: readonly { readonly task: string; readonly count: number }[];
}

/** Hours written down for a task of the whole job. */
export interface TaskHours {
  readonly task: string;
  readonly count: number;
  /** All units together. [h] */
  readonly hours: number;
}

/**
 * Counts and sums of a finished job. A loop counts for the fault rate when a repair was tried or its as-left reading can
 * be compared; it was faulty when a repair was tried or that reading lies outside its band. Hours of a loop are shared
 * over its tasks as the labour table shares them. Life safety teaches nothing here.
 * @throws {@link InputError} when the job has no name.
 */
export function statisticsOfJob({
  job,
  finished,
  loops,
  taskHours = [],
  labour,
}: {
  readonly job: string;
  readonly finished: string;
  readonly loops: readonly FinishedLoop[];
  readonly taskHours?: readonly TaskHours[];
  readonly labour: readonly LabourUnit[];
}): { readonly statistics: JobStatistics; readonly queries: readonly Query[] } {
  if (job.trim() === "") throw new InputError({ field: "job", got: '""', expected: "the name of the finished job" });
  const ours = loops.filter(({ condition }) => condition !== "lifeSafety");
  const compared = ours.map((loop) => ({ ...loop, band: inBand(loop), tried: wasTried(loop) }));
  const counted = compared.filter(({ band, tried }) => tried || band !== null);
  const queries: Query[] = [];
  const statistics: JobStatistics = {
    job: job.trim(),
    finished,
    loops: { counted: counted.length, faulty: counted.filter(({ band, tried }) => tried || band === false).length },
    asLeft: {
      inBand: compared.filter(({ band }) => band === true).length,
      outside: compared.filter(({ band }) => band === false).length,
    },
    repairs: repairCounts(compared.filter(({ tried }) => tried)),
    hours: hoursSums([
      ...ours.flatMap((loop) => loopObservations(loop, labour, queries)),
      ...taskHours.flatMap((line) => taskObservation(line, labour, queries)),
    ]),
  };
  return { statistics, queries };
}

const wasTried = ({ repairOutcome }: FinishedLoop): boolean =>
  repairOutcome === "repaired" || repairOutcome === "notRepaired";

function inBand({ asLeftShut, expectedShut }: FinishedLoop): boolean | null {
  if (asLeftShut === undefined || expectedShut === undefined) return null;
  return asLeftShut !== "OL" && asLeftShut >= expectedShut.lowOhms && asLeftShut <= expectedShut.highOhms;
}

function repairCounts(tried: readonly FinishedLoop[]): readonly RepairCounts[] {
  return [...new Set(tried.map(({ condition }) => condition))].sort().map((condition) => {
    const mine = tried.filter((loop) => loop.condition === condition);
    return {
      condition,
      tried: mine.length,
      succeeded: mine.filter(({ repairOutcome }) => repairOutcome === "repaired").length,
    };
  });
}

interface Observation {
  readonly task: string;
  readonly weight: number;
  readonly logHours: number;
}

function loopObservations(loop: FinishedLoop, labour: readonly LabourUnit[], queries: Query[]): readonly Observation[] {
  const { hoursSpent, key } = loop;
  if (hoursSpent === undefined) return [];
  const units = loop.tasks.flatMap(({ task, count }) => {
    const likely = labour.find((unit) => unit.task === task)?.likelyHours ?? 0;
    return likely > 0 && count > 0 ? [{ task, planned: likely * count, likely }] : [];
  });
  const planned = units.reduce((sum, unit) => sum + unit.planned, 0);
  if (!(hoursSpent > 0 && Number.isFinite(hoursSpent)) || planned === 0) {
    const message =
      planned === 0
        ? "Hours were written for a loop without planned tasks: nothing can be learned from them."
        : "Expected the hours spent on this loop, more than 0; leave the cell empty where nobody wrote them down.";
    queries.push({ sheet: "Loops", row: null, column: "hoursSpent", typed: `${hoursSpent}`, message, key });
    return [];
  }
  return units.map(({ task, planned: mine, likely }) => ({
    task,
    weight: mine / planned,
    logHours: Math.log((likely * hoursSpent) / planned),
  }));
}

function taskObservation(line: TaskHours, labour: readonly LabourUnit[], queries: Query[]): readonly Observation[] {
  const { task, count, hours } = line;
  const known = labour.some((unit) => unit.task === task && unit.likelyHours > 0);
  if (known && hours > 0 && Number.isFinite(hours) && count > 0 && Number.isFinite(count)) {
    return [{ task, weight: 1, logHours: Math.log(hours / count) }];
  }
  const message = known
    ? "Expected a count and hours more than 0."
    : `"${task}" is no task of the labour table with hours; use its key.`;
  queries.push({ sheet: "Labour", row: null, column: "task", typed: `${task}: ${count} in ${hours} h`, message });
  return [];
}

function hoursSums(observations: readonly Observation[]): readonly HoursSums[] {
  return [...new Set(observations.map(({ task }) => task))].sort().map((task) => {
    const mine = observations.filter((one) => one.task === task);
    const sum = (of: (one: Observation) => number) => mine.reduce((total, one) => total + of(one), 0);
    return {
      task,
      weight: sum(({ weight }) => weight),
      sumLog: sum(({ weight, logHours }) => weight * logHours),
      sumLogSquares: sum(({ weight, logHours }) => weight * logHours ** 2),
    };
  });
}
