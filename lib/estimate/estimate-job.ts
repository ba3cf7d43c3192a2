import { choosePlan, type PlanProgress } from "../plan/choose-plan.js";
import type { CancelSignal, Solve } from "../plan/milp-model.js";
import { pricePlan } from "../plan/price-plan.js";
import { zonesFrontier } from "../plan/zones-frontier.js";
import type { JobPrice } from "../pricing/price-job.js";
import type { PriceRange } from "../pricing/price-range.js";
import type { Survey } from "../survey/survey.js";
import type { FittedModule } from "../terminals/terminal-schedule.js";
import { basisOf } from "./basis.js";
import { carryOf } from "./carry-of.js";
import { cautionsFor } from "./cautions.js";
import { cutOverOf } from "./cut-over-of.js";
import type { Estimate, EstimatedLoop } from "./estimate.js";
import { estimatedLoops } from "./estimated-loops.js";
import { type WhyTreatment, whyTreatments } from "./explanations.js";
import { changesSince, type HeldPlan, type PacksWanted } from "./held-plan.js";
import { jobOptions } from "./job-options.js";
import { type PreparedJob, prepareJob } from "./prepare-job.js";
import { quoteOf } from "./quote-of.js";
import { withReadingWorth } from "./reading-worth.js";
import { withSupplyChoices } from "./supply-choices.js";
import { teachesOf } from "./teaches.js";
import { NoEstimate, workOut } from "./work-out.js";
import { zonesOf } from "./zones-of.js";

export { NoEstimate };

/** What an estimate needs besides the survey. */
export interface EstimateInput {
  readonly survey: Survey;
  /** MILP solver; absent = the quick plan, labelled as unproved, and no options. */
  readonly solve?: Solve;
  /** Most time for the plan, default 30. [s] */
  readonly seconds?: number;
  readonly onProgress?: (progress: PlanProgress) => void;
  readonly signal?: CancelSignal;
  /** Packs written on the Bill of a former estimate; they replace the planned ones. */
  readonly packsWanted?: PacksWanted;
  /** The former estimate of this job: what changed since is listed. */
  readonly before?: HeldPlan;
  /** Keep the treatments, modules and orders of `before` and only work out the money again. */
  readonly hold?: boolean;
  /** false: leave out what compares the plan with others (`options`, `whys`, `zonesFrontier` are null), to show it sooner. */
  readonly compare?: boolean;
}

/**
 * Survey to everything: judgement, treatments, the cheapest plan, terminals, bill, orders, labour, price, options.
 * @throws {@link NoEstimate} with the conflict in words.
 */
export async function estimateJob(input: EstimateInput): Promise<Estimate> {
  const { survey, solve, seconds = 30, onProgress, signal } = input;
  const prepared = prepareJob(survey);
  const { problem, holds, judgements, treatments, job } = prepared;
  const cancel = signal ? { signal } : {};
  const { packsWanted = {}, before } = input;
  const held = input.hold === true ? before : undefined;
  if (held) requireFits(held, prepared);
  const plan =
    held?.plan ??
    (await choosePlan({
      problem,
      solve: solve ?? noSolver,
      seconds,
      ...(onProgress ? { onProgress } : {}),
      ...cancel,
    }));
  const worked = await workOut({ prepared, plan, solve, packsWanted, ...(held ? { held } : {}) });
  const { planned, fitted } = worked;
  const loops = estimatedLoops({ survey, judgements, treatments, planned, fitted, rates: prepared.rates });
  const eolAtPanel = new Set(worked.terminals.filter(({ eolAt }) => eolAt === "panel").map(({ loop }) => loop));
  const { totalCents } = worked.price;
  const asked = held || input.compare === false ? undefined : solve;
  const whys = asked ? await whyTreatments({ prepared, plan, planned, solve: asked, seconds, ...cancel }) : null;
  const frontier = asked ? await zonesFrontier({ problem, solve: asked, seconds: seconds / 4, ...cancel }) : null;
  const zones = zonesOf({ prepared, planned, fitted });
  const cutOver = cutOverOf({ prepared, planned, fitted, zones: zones.zones, loops: loops.loops });
  const supply = withSupplyChoices({ supply: worked.supply, prepared, planned, whys });
  const teaches = teachesOf({ survey, judgements, loops: loops.loops, planned });
  const estimate: Estimate = {
    schema: "loopwright.estimate.1",
    currency: survey.site.currency,
    site: { name: survey.site.name ?? null, panels: [...new Set(survey.loops.map(({ panel }) => panel))] },
    demoPrices: prepared.demoPrices,
    holds,
    queries: [
      ...prepared.queries,
      ...worked.queries,
      ...loops.queries,
      ...supply.queries,
      ...zones.queries,
      ...cutOver.queries,
      ...teaches.queries,
    ],
    loops: withWhys(
      withReadingWorth({ loops: loops.loops, prepared, price: { ...worked.price, range: worked.range } }),
      whys,
    ),
    modules: moduleCounts(fitted),
    terminals: worked.terminals,
    bill: worked.bill,
    orders: worked.ordered.orders,
    cuts: worked.cuts,
    labour: worked.labour,
    price: { ...totalsOf(worked.price), ...rangeFigures(worked.range) },
    options: asked ? await jobOptions({ prepared, base: worked, solve: asked, seconds: seconds / 4, ...cancel }) : null,
    whys,
    zonesFrontier: frontier?.points.map(({ zonesLost, costCents }) => ({ zonesLost, costCents })) ?? null,
    quote: quoteOf({ prepared, loops: loops.loops, eolAtPanel, totalCents }),
    supply: supply.supply,
    radio: worked.radio,
    carry: carryOf({ planned, job, book: prepared.rates.book, bill: worked.bill }),
    zones: zones.zones,
    cutOver: cutOver.cutOver,
    learning: prepared.learning,
    teaches: teaches.rows,
    cautions: cautionsFor({ survey, holds, planned }),
    basis: basisOf({ plan, assumed: prepared.assumedSettings, demoPrices: prepared.demoPrices }),
    plan,
    changes: [],
  };
  return before ? { ...estimate, changes: changesSince({ before, estimate }) } : estimate;
}

/** Each loop's reason, closed by what its alternatives would cost. */
function withWhys(loops: readonly EstimatedLoop[], whys: readonly WhyTreatment[] | null): readonly EstimatedLoop[] {
  const words = new Map((whys ?? []).map((why) => [why.key, why.words]));
  return loops.map((loop) => ({ ...loop, reason: `${loop.reason} ${words.get(loop.key) ?? ""}`.trim() }));
}

/** A held plan must still serve the survey: same loops, every limit kept. */
function requireFits({ plan }: HeldPlan, { problem }: PreparedJob): void {
  const [fault] = pricePlan(problem, plan).violations;
  if (fault === undefined) return;
  throw new NoEstimate(`The held plan no longer fits the survey (${fault}): run again without --hold-plan.`);
}

function totalsOf(price: JobPrice) {
  const { lines, byClass, costCents, sellCents, taxCents, totalCents, marginFraction, markupFraction } = price;
  return { lines, byClass, costCents, sellCents, taxCents, totalCents, marginFraction, markupFraction };
}

function rangeFigures({ meanCents, p10Cents, p50Cents, p90Cents, likelySumCents, drivers }: PriceRange) {
  return { meanCents, p10Cents, p50Cents, p90Cents, likelySumCents, drivers };
}

/** Stands in where no solver was passed: the quick plan is then the answer, labelled as unproved. */
const noSolver: Solve = () => Promise.reject(new Error("no solver passed"));

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
