import { loopRecord } from "../findings/from-survey.js";
import { judgeJob } from "../findings/judge-job.js";
import type { LoopJudgement } from "../findings/loop-record.js";
import { labourLines } from "../labour/labour-lines.js";
import { materialNeeds } from "../materials/material-needs.js";
import { choosePlan, type PlanProgress } from "../plan/choose-plan.js";
import type { CancelSignal, Solve } from "../plan/milp-model.js";
import type { Plan } from "../plan/plan.js";
import { type PlannedLoop, plannedLoops } from "../plan/planned-loop.js";
import { planningProblem } from "../plan/problem-from-treatments.js";
import { type JobSettings, jobSettings } from "../price-book/job-settings.js";
import { readPriceBook } from "../price-book/read-price-book.js";
import type { JobPrice } from "../pricing/price-job.js";
import type { PriceRange } from "../pricing/price-range.js";
import type { Query } from "../problems/query.js";
import { orderFor } from "../purchasing/order-for.js";
import { labourUnits } from "../reference/generated/labour-units.js";
import type { Survey } from "../survey/survey.js";
import { type FittedModule, fitModules, terminalSchedule } from "../terminals/terminal-schedule.js";
import { locationWork } from "../treatments/location-work.js";
import { loopTreatments } from "../treatments/loop-treatments.js";
import { moduleSettings } from "../treatments/module-settings.js";
import type { ModuleSetting, Work } from "../treatments/treatment.js";
import { type WorkRates, workHours } from "../treatments/work-cents.js";
import { basisOf } from "./basis.js";
import { billLines } from "./bill-lines.js";
import { carryOf } from "./carry-of.js";
import { cautionsFor } from "./cautions.js";
import { jobTables } from "./demo-tables.js";
import type { Estimate } from "./estimate.js";
import { estimatedLoops } from "./estimated-loops.js";
import { holdsOf } from "./holds.js";
import { jobTasks } from "./job-work.js";
import { pinsOf } from "./pins.js";
import { priceOf } from "./price-of.js";
import { rangeOf } from "./range-of.js";

/** What an estimate needs besides the survey. */
export interface EstimateInput {
  readonly survey: Survey;
  /** MILP solver; absent = the quick plan, labelled as unproved. */
  readonly solve?: Solve;
  /** Most time for the plan. [s] */
  readonly seconds?: number;
  readonly onProgress?: (progress: PlanProgress) => void;
  readonly signal?: CancelSignal;
}

/** Why there is no estimate: the wishes and limits leave no plan, or the needs cannot be bought. */
export class NoEstimate extends Error {
  override readonly name = "NoEstimate";
}

/** Battery of a place before its loads are known: the usual size of such places; common practice, no source. [Ah] */
const usualBatteryAmpereHours = 7;

/**
 * Survey to everything: judgement, treatments, the cheapest plan, terminals, bill, orders, labour, price.
 * @throws {@link NoEstimate} with the conflict in words.
 */
export async function estimateJob(input: EstimateInput): Promise<Estimate> {
  const { survey } = input;
  const tables = jobTables(survey);
  const { currency } = survey.site;
  const { book, queries: bookQueries } = readPriceBook({ rows: tables.priceBook, currency, sheet: "Price book" });
  const { settings: job, queries: settingQueries, assumed } = jobSettings({ given: survey.settings });
  const rates: WorkRates = { book, labour: tables.labour, labourCentsPerHour: job.labourCostPerHour * 100 };
  const judgements = judgeJob(survey.loops.map((loop) => loopRecord({ loop, site: survey.site }))).loops;
  const holds = holdsOf({ survey, judgements });
  const profiles = tables.inputModules;
  const settings = moduleSettings({ profiles, found: nominalEols(judgements), book });
  const context = { profiles, settings, job, rates };
  const treatments = survey.loops.flatMap((loop, index) => {
    const judgement = judgements[index];
    return judgement ? [loopTreatments({ loop, judgement, context })] : [];
  });
  const { pins, queries: pinQueries } = pinsOf({ survey, treatments });
  const location = locationWork({ book, batteryAmpereHours: usualBatteryAmpereHours });
  const problem = planningProblem({ treatments, profiles, moduleSettings: settings, job, rates, pins, location });
  const plan = await choosePlan({
    problem,
    solve: input.solve ?? noSolver,
    ...(input.seconds === undefined ? {} : { seconds: input.seconds }),
    ...(input.onProgress ? { onProgress: input.onProgress } : {}),
    ...(input.signal ? { signal: input.signal } : {}),
  });
  if (plan.status === "infeasible") throw new NoEstimate(plan.why ?? "no plan keeps every limit and wish");
  const planned = plannedLoops({ plan, treatments, moduleSettings: settings, rates });
  const laid = layOut({ plan, planned, survey, profiles, settings });
  const locations = [...new Set(laid.fitted.map(({ panel }) => panel))].map(() => location);
  const needs = materialNeeds({ planned, ...laid, profiles, locations, book, job, removedDevices: 0 });
  const ordered = await orderFor({
    needs: needs.map(({ code, need, loops }) => ({ code, quantity: need, loops })),
    priceBook: book,
    ...(input.solve ? { solve: input.solve } : {}),
    stock: "first",
    stockAt: "bookPrice",
  });
  if (ordered.status === "infeasible")
    throw new NoEstimate(ordered.why ?? "something that is needed is for sale nowhere");
  const bill = billLines({ needs, ordered });
  const labour = labourOf({ planned, locations, survey, fitted: laid.fitted, held: holds.length > 0, job, rates });
  const price = priceOf({ bill, labour: labour.lines, planned, rates, job });
  const range = rangeOf({ planned, loops: survey.loops, labour: labour.lines, price, job, rates });
  const loops = estimatedLoops({ survey, judgements, treatments, planned, fitted: laid.fitted });
  return {
    schema: "loopwright.estimate.1",
    currency,
    site: { name: survey.site.name ?? null, panels: [...new Set(survey.loops.map(({ panel }) => panel))] },
    demoPrices: tables.demoPrices,
    holds,
    queries: [
      ...survey.queries,
      ...tables.queries,
      ...bookQueries,
      ...settingQueries,
      ...pinQueries,
      ...ordered.queries,
      ...labour.queries,
      ...loops.queries,
    ],
    loops: loops.loops,
    modules: moduleCounts(laid.fitted),
    terminals: laid.terminals,
    bill,
    orders: ordered.orders,
    labour: labour.lines,
    price: { ...totalsOf(price), ...rangeFigures(range) },
    supply: null,
    radio: null,
    carry: carryOf({ planned, job }),
    cautions: cautionsFor({ survey, holds, planned }),
    basis: basisOf({ plan, assumed, demoPrices: tables.demoPrices }),
  };
}

function totalsOf({
  lines,
  byClass,
  costCents,
  sellCents,
  taxCents,
  totalCents,
  marginFraction,
  markupFraction,
}: JobPrice) {
  return { lines, byClass, costCents, sellCents, taxCents, totalCents, marginFraction, markupFraction };
}

function rangeFigures({ meanCents, p10Cents, p50Cents, p90Cents, likelySumCents, drivers }: PriceRange) {
  return { meanCents, p10Cents, p50Cents, p90Cents, likelySumCents, drivers };
}

/** Stands in where no solver was passed: the quick plan is then the answer, labelled as unproved. */
const noSolver: Solve = () => Promise.reject(new Error("no solver passed"));

function nominalEols(judgements: readonly LoopJudgement[]): readonly number[] {
  return judgements.flatMap(({ eol, action }) => (eol && action !== "leaveAlone" ? [eol.nominal] : []));
}

function layOut({
  plan,
  planned,
  survey,
  profiles,
  settings,
}: {
  readonly plan: Plan;
  readonly planned: readonly PlannedLoop[];
  readonly survey: Survey;
  readonly profiles: Survey["inputModules"];
  readonly settings: readonly ModuleSetting[];
}) {
  const fitted = fitModules({ planned, profiles, settings, modules: plan.modules });
  return { fitted, terminals: terminalSchedule({ fitted, planned, loops: survey.loops, profiles }) };
}

function moduleCounts(fitted: readonly FittedModule[]): Estimate["modules"] {
  const counts = new Map<string, { panel: string; type: string; count: number; eolOhms: number }>();
  for (const { panel, type, eolOhms } of fitted) {
    const key = `${panel}/${type}/${eolOhms}`;
    const entry = counts.get(key) ?? { panel, type, count: 0, eolOhms };
    entry.count += 1;
    counts.set(key, entry);
  }
  return [...counts.values()];
}

function labourOf({
  planned,
  locations,
  survey,
  fitted,
  held,
  job,
  rates,
}: {
  readonly planned: readonly PlannedLoop[];
  readonly locations: readonly Work[];
  readonly survey: Survey;
  readonly fitted: readonly FittedModule[];
  readonly held: boolean;
  readonly job: JobSettings;
  readonly rates: WorkRates;
}) {
  const loopTasks = planned.flatMap(({ work }) => work.tasks);
  const here = { tasks: [...loopTasks, ...locations.flatMap(({ tasks }) => tasks)], parts: [] };
  const loopHours = workHours({ work: here, labour: rates.labour });
  const panels = new Set(survey.loops.map(({ panel }) => panel)).size;
  const tasks = [...loopTasks, ...jobTasks({ planned, fitted, locations, panels, held, loopHours, job })];
  const words = (task: string) => labourUnits.find((row) => row.task === task)?.words ?? task;
  const { lines, unknown } = labourLines({ tasks, labour: rates.labour, words });
  const queries: Query[] = unknown.map((task) => ({
    sheet: "Labour",
    row: null,
    column: "task",
    typed: task,
    message: "The labour table has no hours for this task, so it is priced at nothing: add a row for it.",
  }));
  return { lines, queries };
}
