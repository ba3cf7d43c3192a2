import type { JudgeOptions } from "../findings/judge-options.js";
import { type Learned, type LearnedOdds, learn } from "../learning/learn.js";
import { jobsFromRows, type LearningRow } from "../learning/learning-rows.js";
import type { Query } from "../problems/query.js";
import { findingsWords } from "../reference/generated/findings-words.js";
import { judgeConditions } from "../reference/generated/judge-conditions.js";
import { labourUnits } from "../reference/generated/labour-units.js";
import { repairOdds } from "../reference/generated/repair-odds.js";
import type { FinishedJobRow, LabourUnit, Survey } from "../survey/survey.js";
import type { OddsTable } from "../treatments/recommend.js";

/** One figure that finished jobs changed. */
export interface LearnedFigure {
  readonly figure: "repairOdds" | "faultRate" | "hours";
  /** Condition of a repair, task of hours; "" for the fault rate. */
  readonly of: string;
  readonly words: string;
  /** "1" = a probability, "h" = hours for one unit, likely. */
  readonly unit: "1" | "h";
  /** Before the finished jobs. */
  readonly prior: number;
  /** How much of the same kind of data the prior counts for. */
  readonly priorCount: number;
  /** Repairs tried, loops metered, or tasks with hours; `jobs` that had any. */
  readonly data: {
    readonly count: number;
    /** Repairs that held, loops that were faulty; null for hours. */
    readonly succeeded: number | null;
    readonly jobs: number;
  };
  /** What the estimate used. */
  readonly now: number;
}

/** What the estimate took from finished jobs. */
export interface EstimatedLearning {
  readonly jobs: readonly string[];
  readonly words: string;
  /** Only figures for which there was any data; all others are those of the tables. */
  readonly figures: readonly LearnedFigure[];
  /** As-left readings inside and outside their band; shown, not used. */
  readonly asLeft: { readonly inBand: number; readonly outside: number };
  /** Share of loops that are not sound, from which the judge started. [1] */
  readonly unsound: { readonly prior: number; readonly now: number };
  /** Low, likely and high hours of these tasks are multiplied by it. */
  readonly hourFactors: readonly { readonly task: string; readonly factor: number }[];
}

/** What the estimate is to be reckoned with; without usable finished jobs exactly the tables. */
export interface LearnedTables {
  readonly learning: EstimatedLearning | null;
  readonly repairOdds: OddsTable;
  /** undefined = the judge's own tables. */
  readonly judgeOptions: JudgeOptions | undefined;
  readonly labour: readonly LabourUnit[];
  readonly queries: readonly Query[];
}

/** Repair odds, the judge's shares and labour hours after the survey's finished jobs. */
export function learningOf(survey: Survey, labour: readonly LabourUnit[]): LearnedTables {
  const used = (survey.finishedJobs ?? []).flatMap(({ sheet, row, counts }) =>
    counts === null ? [] : [{ sheet, row, counts }],
  );
  const { jobs, queries } = jobsFromRows(used.map(({ counts }) => counts));
  const asked = [...queries.map((query) => atItsRow(query, used)), ...unknownTasks(used, labour)];
  if (jobs.length === 0) return { learning: null, repairOdds, judgeOptions: undefined, labour, queries: asked };
  const learned = learn({ jobs, labour });
  const priors = learned.faultRate.tried > 0 ? priorsAt(learned.faultRate.after.mean) : undefined;
  const now = new Map(learned.repairs.filter(({ tried }) => tried > 0).map((one) => [one.condition, one.after.mean]));
  return {
    learning: {
      jobs: jobs.map(({ job }) => job),
      words: learned.words,
      figures: figuresOf(learned),
      asLeft: learned.asLeft,
      unsound: { prior: unsoundShare(tablePriors), now: unsoundShare(priors ?? tablePriors) },
      hourFactors: learned.hours
        .filter(({ observations }) => observations > 0)
        .map(({ before, factor }) => ({ task: before.task, factor })),
    },
    repairOdds: repairOdds.map((row) => ({ ...row, succeeds: now.get(row.condition) ?? row.succeeds })),
    judgeOptions: priors === undefined ? undefined : { priors },
    labour: learned.hours.map(({ after }) => after),
    queries: asked,
  };
}

/** Labour units multiplied by the factors that an estimate learned; its formulas do the same. */
export function learnedLabour(
  labour: readonly LabourUnit[],
  learning: EstimatedLearning | null,
): readonly LabourUnit[] {
  const factors = new Map(learning?.hourFactors.map(({ task, factor }) => [task, factor]));
  return labour.map((unit) => {
    const factor = factors.get(unit.task);
    if (factor === undefined) return unit;
    const { task, lowHours, likelyHours, highHours } = unit;
    return {
      task,
      lowHours: lowHours * factor,
      likelyHours: likelyHours * factor,
      highHours: highHours * factor,
    };
  });
}

interface UsedRow extends Pick<FinishedJobRow, "sheet" | "row"> {
  readonly counts: LearningRow;
}

/** The reader of rows counts them from 2, as if each stood below one heading: put it back where it stands. */
function atItsRow(query: Query, used: readonly UsedRow[]): Query {
  const stands = used[(query.row ?? 0) - 2];
  return stands === undefined ? query : { ...query, sheet: stands.sheet, row: stands.row };
}

function unknownTasks(used: readonly UsedRow[], labour: readonly LabourUnit[]): readonly Query[] {
  const known = new Set(labour.filter(({ likelyHours }) => likelyHours > 0).map(({ task }) => task));
  return used
    .filter(({ counts }) => counts.kind === "hours" && counts.name !== "" && !known.has(counts.name))
    .map(({ sheet, row, counts }) => ({
      sheet,
      row,
      column: "Of what",
      typed: counts.name,
      message:
        "Expected a task of the labour table that has hours: this row teaches nothing. Write the task's key, or no under Use.",
    }));
}

const tablePriors: Readonly<Record<string, number>> = Object.fromEntries(
  judgeConditions.map(({ condition, prior }) => [condition, prior]),
);

const needsRepair = new Set(
  judgeConditions.filter(({ rightAction }) => rightAction === "repair").map(({ condition }) => condition as string),
);
const sound = new Set(["soundEolAtEnd", "soundNoEol", "eolInPanel"]);

function shareOf(priors: Readonly<Record<string, number>>, counts: (condition: string) => boolean): number {
  const rows = Object.entries(priors);
  const all = rows.reduce((sum, [, prior]) => sum + prior, 0);
  return rows.filter(([condition]) => counts(condition)).reduce((sum, [, prior]) => sum + prior, 0) / all;
}

const unsoundShare = (priors: Readonly<Record<string, number>>) =>
  shareOf(priors, (condition) => !sound.has(condition));

/**
 * The judge's shares when this share of all loops needs a repair: finished jobs count repairs, not wrong resistors or
 * detectors without supply, so only the conditions that call for a repair grow, in the table's mix.
 */
function priorsAt(rate: number): Readonly<Record<string, number>> {
  const before = shareOf(tablePriors, (condition) => needsRepair.has(condition));
  return Object.fromEntries(
    Object.entries(tablePriors).map(([condition, prior]) => [
      condition,
      prior * (needsRepair.has(condition) ? rate / before : (1 - rate) / (1 - before)),
    ]),
  );
}

function figuresOf({ repairs, faultRate, hours }: Learned): readonly LearnedFigure[] {
  return [
    ...(faultRate.tried === 0 ? [] : [odds("faultRate", "", "Share of metered loops that need a repair", faultRate)]),
    ...repairs
      .filter(({ tried }) => tried > 0)
      .map((one) => odds("repairOdds", one.condition, `A repair holds. ${wordsOf(one.condition)}`, one)),
    ...hours
      .filter(({ observations }) => observations > 0)
      .map(
        ({ before, after, observations, jobs, priorWeight }): LearnedFigure => ({
          figure: "hours",
          of: before.task,
          words: labourUnits.find(({ task }) => task === before.task)?.words ?? before.task,
          unit: "h",
          prior: before.likelyHours,
          priorCount: priorWeight,
          data: { count: observations, succeeded: null, jobs },
          now: after.likelyHours,
        }),
      ),
  ];
}

function odds(figure: "repairOdds" | "faultRate", of: string, words: string, learned: LearnedOdds): LearnedFigure {
  const { before, after, tried, succeeded, jobs } = learned;
  return {
    figure,
    of,
    words,
    unit: "1",
    prior: before.mean,
    priorCount: before.alpha + before.beta,
    data: { count: tried, succeeded, jobs },
    now: after.mean,
  };
}

const wordsOf = (condition: string): string =>
  findingsWords.find((row) => row.condition === condition)?.words ?? condition;
