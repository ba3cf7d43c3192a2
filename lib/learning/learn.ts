import { judgeConditions } from "../reference/generated/judge-conditions.js";
import { learningPriors } from "../reference/generated/learning-priors.js";
import { repairOdds } from "../reference/generated/repair-odds.js";
import { onlyRow } from "../reference/rows.js";
import type { LabourUnit } from "../survey/survey.js";
import { type BetaFigure, betaUpdate } from "./beta-update.js";
import type { FinishedJobs } from "./finished-jobs.js";
import { hoursUpdate } from "./hours-update.js";

/** How much the tables count against finished jobs; see reference-data/learning-priors. */
export interface LearningWeights {
  readonly repairWeight: number;
  readonly faultWeight: number;
  readonly hoursWeight: number;
  readonly hoursShape: number;
  readonly hoursSpread: number;
}

/** A probability before and after the finished jobs. */
export interface LearnedOdds {
  readonly before: BetaFigure;
  readonly after: BetaFigure;
  readonly tried: number;
  readonly succeeded: number;
  /** Jobs that had any. */
  readonly jobs: number;
}

/** Hours of one task before and after. */
export interface LearnedHours {
  readonly before: LabourUnit;
  readonly after: LabourUnit;
  /** Low, likely and high are all multiplied by it. */
  readonly factor: number;
  /** Spread of the logarithm of hours, before and after. */
  readonly spreadBefore: number;
  readonly spreadAfter: number;
  /** Tasks that the hours before count for. */
  readonly priorWeight: number;
  /** Tasks it was learned from; shares of loops add up. */
  readonly observations: number;
  readonly jobs: number;
}

/** Everything the finished jobs change, beside what it was. */
export interface Learned {
  readonly jobs: number;
  readonly words: string;
  readonly repairs: readonly (LearnedOdds & { readonly condition: string })[];
  /** Share of metered loops that have a fault. */
  readonly faultRate: LearnedOdds;
  readonly asLeft: { readonly inBand: number; readonly outside: number };
  readonly hours: readonly LearnedHours[];
}

const figure = (name: string): number => onlyRow("learning-priors", learningPriors, (row) => row.figure === name).value;

/** The weights of the table. */
export function learningWeights(): LearningWeights {
  return {
    repairWeight: figure("repairWeight"),
    faultWeight: figure("faultWeight"),
    hoursWeight: figure("hoursWeight"),
    hoursShape: figure("hoursShape"),
    hoursSpread: figure("hoursSpread"),
  };
}

/**
 * What finished jobs say against the tables: odds of repair by condition and the fault rate as beta distributions,
 * hours by task as a log-normal with normal–gamma prior. Worked out from the jobs each time, so a job taken out leaves
 * no trace.
 * @param input.odds Odds before any job; absent = the repair-odds table.
 */
export function learn({
  jobs,
  labour,
  odds = repairOdds,
  weights = learningWeights(),
}: {
  readonly jobs: FinishedJobs;
  readonly labour: readonly LabourUnit[];
  readonly odds?: readonly { readonly condition: string; readonly succeeds: number }[];
  readonly weights?: LearningWeights;
}): Learned {
  const sum = (of: (job: FinishedJobs[number]) => number) => jobs.reduce((total, job) => total + of(job), 0);
  return {
    jobs: jobs.length,
    words: wordsFor(jobs.length),
    repairs: odds.map(({ condition, succeeds }) => {
      const counts = jobs.map(({ repairs }) => repairs.find((row) => row.condition === condition));
      const total = (of: "tried" | "succeeded") => counts.reduce((all, row) => all + (row?.[of] ?? 0), 0);
      const trials = { tried: total("tried"), succeeded: total("succeeded") };
      const among = counts.filter((row) => row !== undefined).length;
      return { condition, ...learnedOdds(succeeds, weights.repairWeight, trials, among) };
    }),
    faultRate: learnedOdds(
      faultRateBefore(),
      weights.faultWeight,
      { tried: sum(({ loops }) => loops.counted), succeeded: sum(({ loops }) => loops.faulty) },
      jobs.filter(({ loops }) => loops.counted > 0).length,
    ),
    asLeft: { inBand: sum(({ asLeft }) => asLeft.inBand), outside: sum(({ asLeft }) => asLeft.outside) },
    hours: labour.map((unit) => learnedHours(unit, jobs, weights)),
  };
}

function learnedOdds(
  mean: number,
  weight: number,
  trials: { readonly tried: number; readonly succeeded: number },
  jobs: number,
): LearnedOdds {
  return {
    before: betaUpdate({ mean, weight, tried: 0, succeeded: 0 }),
    after: betaUpdate({ mean, weight, ...trials }),
    ...trials,
    jobs,
  };
}

/** Share of the conditions that call for a repair, before any job. */
function faultRateBefore(): number {
  const total = judgeConditions.reduce((sum, { prior }) => sum + prior, 0);
  return (
    judgeConditions.filter(({ rightAction }) => rightAction === "repair").reduce((sum, { prior }) => sum + prior, 0) /
    total
  );
}

function learnedHours(unit: LabourUnit, jobs: FinishedJobs, weights: LearningWeights): LearnedHours {
  const rows = jobs.flatMap(({ hours }) => hours.filter(({ task }) => task === unit.task));
  const sum = (of: "weight" | "sumLog" | "sumLogSquares") => rows.reduce((total, row) => total + row[of], 0);
  const observations = sum("weight");
  const prior = {
    mean: Math.log(unit.likelyHours),
    weight: weights.hoursWeight,
    shape: weights.hoursShape,
    rate: weights.hoursSpread ** 2 * (weights.hoursShape - 1),
  };
  const spread = ({ rate, shape }: { readonly rate: number; readonly shape: number }) => Math.sqrt(rate / (shape - 1));
  if (!(unit.likelyHours > 0) || observations === 0) {
    const same = { before: unit, after: unit, factor: 1, priorWeight: prior.weight, observations: 0, jobs: 0 };
    return { ...same, spreadBefore: spread(prior), spreadAfter: spread(prior) };
  }
  const after = hoursUpdate(prior, {
    weight: observations,
    sumLog: sum("sumLog"),
    sumLogSquares: sum("sumLogSquares"),
  });
  const factor = Math.exp(after.mean - prior.mean);
  return {
    before: unit,
    after: {
      task: unit.task,
      lowHours: unit.lowHours * factor,
      likelyHours: unit.likelyHours * factor,
      highHours: unit.highHours * factor,
    },
    factor,
    spreadBefore: spread(prior),
    spreadAfter: spread(after),
    priorWeight: prior.weight,
    observations,
    jobs: rows.length,
  };
}

function wordsFor(jobs: number): string {
  const enough = figure("jobsToMean");
  const from =
    jobs === 0
      ? "No finished job yet: the figures are those of the tables."
      : `From ${jobs} finished ${jobs === 1 ? "job" : "jobs"}.`;
  return jobs >= enough
    ? `${from} The figures lean on these jobs; look at the counts beside each.`
    : `${from} Before about ${enough} finished jobs such figures mean little: one odd job moves them.`;
}
