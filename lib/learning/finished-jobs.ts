import { InputError } from "../problems/input-error.js";
import type { JobStatistics } from "./job-statistics.js";

/** The finished jobs in the order of their names, so that the order in which they came leaves no trace. */
export type FinishedJobs = readonly JobStatistics[];

const byName = (a: JobStatistics, b: JobStatistics): number => (a.job < b.job ? -1 : a.job > b.job ? 1 : 0);

/**
 * The jobs with one more.
 * @throws {@link InputError} when a job of that name is there already; take it out first.
 */
export function withJob(jobs: FinishedJobs, job: JobStatistics): FinishedJobs {
  if (jobs.some((one) => one.job === job.job)) {
    throw new InputError({ field: "job", got: `"${job.job}"`, expected: "a job that was not learned from yet" });
  }
  return [...jobs, job].sort(byName);
}

/**
 * The jobs without one: exactly what they were before it was added.
 * @throws {@link InputError} when no job has that name.
 */
export function withoutJob(jobs: FinishedJobs, name: string): FinishedJobs {
  const rest = jobs.filter(({ job }) => job !== name);
  if (rest.length === jobs.length) {
    const known = jobs.map(({ job }) => `"${job}"`).join(", ");
    throw new InputError({
      field: "job",
      got: `"${name}"`,
      expected: known === "" ? "no job is there" : `one of ${known}`,
    });
  }
  return rest;
}
