import type { Condition } from "../findings/loop-record.js";
import type { Query } from "../problems/query.js";
import { judgeConditions } from "../reference/generated/judge-conditions.js";
import type { FinishedJobs } from "./finished-jobs.js";
import type { JobStatistics } from "./job-statistics.js";

/** One row of the table of finished jobs in the user's workbook. */
export interface LearningRow {
  readonly job: string;
  readonly finished: string;
  readonly kind: "loops" | "asLeft" | "repair" | "hours";
  /** Condition of a repair, task of hours; "" otherwise. */
  readonly name: string;
  /** loops: counted, faulty · asLeft: in band, outside · repair: tried, succeeded · hours: weight, Σ ln h, Σ (ln h)². */
  readonly first: number;
  readonly second: number;
  readonly third: number;
}

/** The finished jobs as rows of a plain table. */
export function learningRows(jobs: FinishedJobs): readonly LearningRow[] {
  return jobs.flatMap(({ job, finished, loops, asLeft, repairs, hours }) => {
    const row = (kind: LearningRow["kind"], name: string, first: number, second: number, third = 0): LearningRow => ({
      job,
      finished,
      kind,
      name,
      first,
      second,
      third,
    });
    return [
      row("loops", "", loops.counted, loops.faulty),
      row("asLeft", "", asLeft.inBand, asLeft.outside),
      ...repairs.map(({ condition, tried, succeeded }) => row("repair", condition, tried, succeeded)),
      ...hours.map(({ task, weight, sumLog, sumLogSquares }) => row("hours", task, weight, sumLog, sumLogSquares)),
    ];
  });
}

/** Reads the rows back. A row that cannot be counted is asked about and left out; the others stand. */
export function jobsFromRows(
  rows: readonly (Omit<LearningRow, "kind"> & { readonly kind: string })[],
  sheet = "Finished jobs",
): { readonly jobs: FinishedJobs; readonly queries: readonly Query[] } {
  const queries: Query[] = [];
  const jobs = new Map<string, JobStatistics>();
  const seen = new Set<string>();
  rows.forEach((row, index) => {
    const problem = rowProblem(row) ?? (seen.has(nameOf(row)) ? "this line stands here twice" : null);
    if (problem !== null) {
      const typed = `${row.first}, ${row.second}, ${row.third}`;
      const message = `${row.job} ${row.kind} ${row.name}: ${problem}. The row is left out; restore it or take the job out.`;
      queries.push({ sheet, row: index + 2, column: null, typed, message });
      return;
    }
    seen.add(nameOf(row));
    const empty = { job: row.job, finished: row.finished, repairs: [], hours: [] };
    const nothing = { loops: { counted: 0, faulty: 0 }, asLeft: { inBand: 0, outside: 0 } };
    jobs.set(row.job, withRow(jobs.get(row.job) ?? { ...empty, ...nothing }, row));
  });
  const sorted = [...jobs.values()].sort((a, b) => (a.job < b.job ? -1 : a.job > b.job ? 1 : 0));
  return { jobs: sorted, queries };
}

/** More loops or repairs than anybody counts, and more hours than one unit of work takes. */
const mostCounts = 1e6;
const mostHours = 1000;

const nameOf = ({ job, kind, name }: { readonly job: string; readonly kind: string; readonly name: string }): string =>
  JSON.stringify([job, kind, name]);

function rowProblem(row: Omit<LearningRow, "kind"> & { readonly kind: string }): string | null {
  const { job, kind, name, first, second, third } = row;
  if (job.trim() === "") return "the job has no name";
  if (![first, second, third].every(Number.isFinite)) return "expected three numbers";
  if (kind === "hours") return hoursProblem(row);
  if (!["loops", "asLeft", "repair"].includes(kind)) return "expected loops, asLeft, repair or hours";
  if (![first, second].every((count) => Number.isInteger(count) && count >= 0 && count <= mostCounts))
    return `expected whole counts from 0 to ${mostCounts}`;
  if (kind !== "asLeft" && second > first) return "the second count is above the first";
  const known = judgeConditions.some(({ condition }) => condition === name);
  return kind === "repair" && !known ? "no condition of that name" : null;
}

/** Sums that no hours between these could give would carry the figures off to nothing or beyond all bounds. */
function hoursProblem({ name, first, second, third }: Omit<LearningRow, "kind">): string | null {
  if (name === "" || !(first > 0 && first <= mostCounts)) return "expected a task and a weight above 0";
  const farthest = Math.log(mostHours);
  if (Math.abs(second / first) > farthest || !(third >= 0 && third / first <= farthest ** 2))
    return `expected sums of ln(hours), hours of one unit from ${1 / mostHours} to ${mostHours}`;
  return null;
}

function withRow(job: JobStatistics, row: Omit<LearningRow, "kind"> & { readonly kind: string }): JobStatistics {
  const { name, first, second, third } = row;
  switch (row.kind) {
    case "loops":
      return { ...job, loops: { counted: first, faulty: second } };
    case "asLeft":
      return { ...job, asLeft: { inBand: first, outside: second } };
    case "repair":
      return { ...job, repairs: [...job.repairs, { condition: name as Condition, tried: first, succeeded: second }] };
    default:
      return { ...job, hours: [...job.hours, { task: name, weight: first, sumLog: second, sumLogSquares: third }] };
  }
}
