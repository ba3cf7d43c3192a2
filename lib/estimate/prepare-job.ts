import { loopRecord } from "../findings/from-survey.js";
import { judgeJob } from "../findings/judge-job.js";
import type { JudgeOptions } from "../findings/judge-options.js";
import type { LoopJudgement } from "../findings/loop-record.js";
import type { PlanningProblem } from "../plan/problem.js";
import { planningProblem } from "../plan/problem-from-treatments.js";
import { type JobSettings, jobSettings } from "../price-book/job-settings.js";
import { readPriceBook } from "../price-book/read-price-book.js";
import type { Query } from "../problems/query.js";
import type { InputModuleProfile, Survey } from "../survey/survey.js";
import { locationWork } from "../treatments/location-work.js";
import { loopTreatments } from "../treatments/loop-treatments.js";
import { moduleSettings } from "../treatments/module-settings.js";
import type { OddsTable } from "../treatments/recommend.js";
import type { LoopTreatments, ModuleSetting, Work } from "../treatments/treatment.js";
import type { WorkRates } from "../treatments/work-cents.js";
import { oldZoneOf } from "../zones/old-zone-of.js";
import { jobTables } from "./demo-tables.js";
import type { Hold } from "./estimate.js";
import { holdsOf } from "./holds.js";
import { type EstimatedLearning, learningOf } from "./learning-of.js";
import { pinsOf } from "./pins.js";

/** Everything of a job that stands before a plan is chosen. */
export interface PreparedJob {
  readonly survey: Survey;
  readonly judgements: readonly LoopJudgement[];
  readonly holds: readonly Hold[];
  readonly treatments: readonly LoopTreatments[];
  readonly profiles: readonly InputModuleProfile[];
  readonly moduleSettings: readonly ModuleSetting[];
  readonly job: JobSettings;
  readonly rates: WorkRates;
  /** What a place with modules costs, with the battery usual for such places. */
  readonly location: Work;
  readonly problem: PlanningProblem;
  /** Chance of repair by condition: the table's, or what finished jobs made of it. */
  readonly repairOdds: OddsTable;
  /** What finished jobs tell the judge; undefined = its own tables. */
  readonly judgeOptions: JudgeOptions | undefined;
  readonly learning: EstimatedLearning | null;
  readonly demoPrices: boolean;
  /** Settings taken from the demo because the survey gives none. */
  readonly assumedSettings: readonly string[];
  readonly queries: readonly Query[];
}

/** Battery of a place before its loads are known: the usual size of such places; common practice, no source. [Ah] */
const usualBatteryAmpereHours = 7;

/** Survey to planning problem: tables, judgements, holds, treatments, wishes. */
export function prepareJob(survey: Survey): PreparedJob {
  const tables = jobTables(survey);
  const { currency } = survey.site;
  const { book, queries: bookQueries } = readPriceBook({ rows: tables.priceBook, currency, sheet: "Price book" });
  const { settings: job, queries: settingQueries, assumed } = jobSettings({ given: survey.settings });
  const learned = learningOf(survey, tables.labour);
  const { repairOdds } = learned;
  const rates: WorkRates = { book, labour: learned.labour, labourCentsPerHour: job.labourCostPerHour * 100 };
  const { site, oldZones } = survey;
  const named = new Map(survey.loops.map(({ key, loop, label }) => [key, label ?? loop]));
  const nameOf = (key: string) => named.get(key) ?? key;
  const judgements = judgeJob(
    survey.loops.map((loop) => loopRecord({ loop, site, oldZone: oldZoneOf(loop, oldZones), nameOf })),
    learned.judgeOptions,
  ).loops;
  const profiles = tables.inputModules;
  const settings = moduleSettings({ profiles, found: nominalEols(judgements), book });
  const context = { profiles, settings, job, rates, repairOdds };
  const treatments = survey.loops.flatMap((loop, index) => {
    const judgement = judgements[index];
    return judgement ? [loopTreatments({ loop, judgement, context })] : [];
  });
  const { pins, queries: pinQueries } = pinsOf({ survey, treatments });
  const location = locationWork({ book, batteryAmpereHours: usualBatteryAmpereHours });
  return {
    survey,
    judgements,
    holds: holdsOf({ survey, judgements }),
    treatments,
    profiles,
    moduleSettings: settings,
    job,
    rates,
    location,
    problem: planningProblem({
      treatments,
      profiles,
      moduleSettings: settings,
      job,
      rates,
      pins,
      sharedReturns: returnsOf(survey),
      location,
    }),
    repairOdds,
    judgeOptions: learned.judgeOptions,
    learning: learned.learning,
    demoPrices: tables.demoPrices,
    assumedSettings: assumed,
    queries: [
      ...survey.queries,
      ...tables.queries,
      ...bookQueries,
      ...settingQueries,
      ...pinQueries,
      ...learned.queries,
    ],
  };
}

function nominalEols(judgements: readonly LoopJudgement[]): readonly number[] {
  return judgements.flatMap(({ eol, action }) => (eol && action !== "leaveAlone" ? [eol.nominal] : []));
}

/** Loops on one return conductor, set by set. */
export function returnsOf({ loops }: Survey): readonly (readonly string[])[] {
  const first = loops.filter(({ key, returnSharedWith = [] }) => {
    const place = (other: string) => loops.findIndex((loop) => loop.key === other);
    return returnSharedWith.length > 0 && returnSharedWith.every((other) => place(other) > place(key));
  });
  return first.map(({ key, returnSharedWith = [] }) => [key, ...returnSharedWith]);
}
