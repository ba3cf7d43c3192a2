import { InputError } from "../problems/input-error.js";
import type { Cents } from "../quantities/money.js";
import { checkPlanProblem } from "./check-problem.js";
import { explainInfeasible, loopsWithoutTreatment } from "./explain-infeasible.js";
import { formulate, type PlanModel } from "./formulate.js";
import { type GreedyPlan, greedyPlan } from "./greedy-plan.js";
import { improveByPanel } from "./improve-by-panel.js";
import { quickLowerBound } from "./lower-bound.js";
import type { CancelSignal, Solve, SolveOptions, SolverResult } from "./milp-model.js";
import { type PanelBound, type PanelPrices, panelPrices, withPanelBounds } from "./panel-prices.js";
import type { ModuleCounts, Plan, PlanChoice, PlanDraft } from "./plan.js";
import { pricePlan } from "./price-plan.js";
import type { PlanningProblem } from "./problem.js";
import { numberInputs, readSolution, writeSolution } from "./read-solution.js";
import { coupledPanels, subproblem } from "./subproblem.js";
import { tieBreakModel, tieBreakRounds } from "./tie-break.js";
import { type KnownNeed, tightenNeeds } from "./tighten-needs.js";
import { uncoupleArticles } from "./uncouple-articles.js";

/** How far the choice has come: the best plan so far and the proved bound, over all panels. */
export interface PlanProgress {
  readonly stage: "quick plan" | "exact" | "equal costs";
  readonly bestCents: Cents | null;
  readonly boundCents: Cents | null;
}

export interface ChoosePlanInput {
  readonly problem: PlanningProblem;
  /** The exact solver, for example `solveWithHighs`. */
  readonly solve: Solve;
  /** Solver time in all, default 60. [s] */
  readonly seconds?: number | undefined;
  readonly onProgress?: ((progress: PlanProgress) => void) | undefined;
  /** Cuts the search short: the best plan so far comes back with its bound. */
  readonly signal?: CancelSignal | undefined;
  /** false: any plan of the lowest cost, default true: the one with fewest changes to wiring, then loop order. */
  readonly breakTies?: boolean | undefined;
}

/** A model or solver contradicted the independent reckoning: a fault of this program, never of the data. */
export class PlanCheckError extends Error {
  constructor(message: string) {
    super(message);
    this.name = "PlanCheckError";
  }
}

/**
 * The cheapest plan for the prices, hours and limits entered, with the proof as far as it got. Panels that nothing
 * couples are solved by themselves. Every plan is priced again independently before it is returned.
 * @throws {@link InputError} when the problem is not sound data ({@link checkPlanProblem} lists what is wrong).
 */
export async function choosePlan(input: ChoosePlanInput): Promise<Plan> {
  const { problem, solve, signal, onProgress } = input;
  const [fault] = checkPlanProblem(problem);
  if (fault) throw new InputError({ field: fault.path, got: fault.typed, expected: fault.expected });
  const stranded = loopsWithoutTreatment(problem);
  if (stranded.length > 0) return infeasible(stranded.join("; "));
  const budget = new Budget(input.seconds ?? 60);
  let quick = greedyPlan(problem);
  onProgress?.({ stage: "quick plan", bestCents: quick?.costCents ?? null, boundCents: null });

  let failure = "";
  const context: PartContext = {
    solve: async (model, options) => {
      const result = await solve(model, options);
      budget.left -= result.seconds;
      return result;
    },
    options: () => ({ seconds: budget.left, signal }),
    onProgress: onProgress ?? (() => {}),
    breakTies: input.breakTies ?? true,
    needs: new Map(),
    bounds: [],
  };
  try {
    let needs = await knownNeeds(problem, quick, context, []);
    let uncoupled = await solveUncoupled(problem, needs, context);
    let panels: PanelPrices = { boundCents: 0, bounds: [], best: undefined };
    if (quick && !uncoupled && needs.size > 0 && problem.loops.length >= loopsWorthPricing) {
      const { solve: counted, options } = context;
      const brief = () => ({ seconds: Math.min(budget.left, plainShare * budget.total), signal });
      const plain = await solvePart(problem, quick, { ...context, needs, options: brief }, () => {});
      if (plain.proof === "optimal") return finish(problem, [plain.draft], plain.boundCents, budget.total, "");
      const found = plain.draft && pricePlan(problem, plain.draft);
      if (plain.draft && found && found.violations.length === 0 && found.costCents < quick.costCents) {
        quick = { ...plain.draft, costCents: found.costCents };
      }
      const goOn = () => !signal?.aborted && budget.left > pricesShare * budget.total;
      panels = await panelPrices({ problem, needs, costCents: quick.costCents, solve: counted, options, goOn });
      if (panels.best && panels.best.costCents < quick.costCents) quick = panels.best;
      quick = await improveByPanel({ problem, from: quick, solve: counted, options });
      context.onProgress({ stage: "exact", bestCents: quick.costCents, boundCents: panels.boundCents });
      needs = await knownNeeds(problem, quick, context, panels.bounds);
      uncoupled = await solveUncoupled(problem, needs, context);
    }
    if (uncoupled) return finish(problem, [uncoupled], pricePlan(problem, uncoupled).costCents, budget.total, "");
    for (const withLimits of [false, true]) {
      const parts = coupledPanels(problem, withLimits).map((panels) => subproblem(problem, panels));
      const known = parts.length === 1 ? { ...context, needs, bounds: panels.bounds } : context;
      const outcome = await solveParts(parts, known, parts.length === 1 ? quick : undefined);
      if (outcome.proof === "infeasible") {
        return infeasible(await explainInfeasible({ problem, solve: context.solve, options: context.options() }));
      }
      const priced = outcome.draft ? pricePlan(problem, outcome.draft) : undefined;
      // Solved one by one, the panels may together ask too much of a controller: then they are solved together.
      if (!withLimits && priced && priced.violations.length > 0) continue;
      const boundCents = Math.max(outcome.boundCents, panels.boundCents);
      return finish(problem, [outcome.draft, quick], boundCents, budget.total, "");
    }
  } catch (error) {
    if (error instanceof PlanCheckError) throw error;
    failure = `The exact solver did not run (${error instanceof Error ? error.message : String(error)}).`;
  }
  return finish(problem, [quick], quickLowerBound(problem), budget.total, failure);
}

class Budget {
  readonly total: number;
  left: number;
  constructor(seconds: number) {
    this.total = seconds;
    this.left = seconds;
  }
}

interface PartContext {
  readonly solve: Solve;
  readonly options: () => SolveOptions;
  readonly onProgress: (progress: PlanProgress) => void;
  readonly breakTies: boolean;
  /** Bounded needs of the whole problem; they hold for its parts only where all of it is one part. */
  readonly needs: ReadonlyMap<string, KnownNeed>;
  readonly bounds: readonly PanelBound[];
}

interface PartOutcome {
  readonly draft: PlanDraft | undefined;
  readonly boundCents: Cents;
  readonly proof: "optimal" | "infeasible" | "open";
}

const emptyPart: PartOutcome = { draft: { choices: [], modules: {} }, boundCents: 0, proof: "optimal" };

async function solveParts(
  parts: readonly PlanningProblem[],
  context: PartContext,
  known: GreedyPlan | undefined,
): Promise<PartOutcome> {
  const quicks = parts.map((part) => known ?? greedyPlan(part));
  const bounds = parts.map(quickLowerBound);
  const bests = quicks.map((quick) => quick?.costCents ?? null);
  const sum = (values: readonly (number | null)[]) =>
    values.reduce<number | null>((total, value) => (total === null || value === null ? null : total + value), 0);
  const outcomes: PartOutcome[] = [];
  for (const [at, part] of parts.entries()) {
    const report = (stage: PlanProgress["stage"], best: number | null, bound: number | null) => {
      if (best !== null && best < (bests[at] ?? Infinity)) bests[at] = Math.round(best);
      if (bound !== null) bounds[at] = Math.max(bounds[at] ?? 0, Math.ceil(bound - 1e-2));
      context.onProgress({ stage, bestCents: sum(bests), boundCents: sum(bounds) });
    };
    const outcome = await solvePart(part, quicks[at], context, report);
    if (outcome.proof === "infeasible") return outcome;
    outcomes.push(outcome);
  }
  return outcomes.reduce((all, one) => merge(all, one), emptyPart);
}

function merge(a: PartOutcome, b: PartOutcome): PartOutcome {
  const modules: ModuleCounts = { ...a.draft?.modules, ...b.draft?.modules };
  const choices: PlanChoice[] = [...(a.draft?.choices ?? []), ...(b.draft?.choices ?? [])];
  return {
    draft: a.draft && b.draft ? { choices, modules } : undefined,
    boundCents: a.boundCents + b.boundCents,
    proof: a.proof === "optimal" ? b.proof : a.proof,
  };
}

type Report = (stage: PlanProgress["stage"], best: number | null, bound: number | null) => void;

async function solvePart(
  problem: PlanningProblem,
  quick: GreedyPlan | undefined,
  context: PartContext,
  report: Report,
  eachModule = false,
): Promise<PartOutcome> {
  if (problem.loops.length === 0 && problem.panels.every((panel) => (panel.spareInputs ?? 0) === 0)) return emptyPart;
  const plan = formulate({ problem, eachModule, mostNeeded: eachModule ? undefined : mostOf(context.needs) });
  const start = quick && !eachModule ? { start: writeSolution(problem, plan, quick) } : {};
  const onProgress: SolveOptions["onProgress"] = ({ best, bound }) => report("exact", best, bound);
  const { model } = withPanelBounds(problem, plan, context.bounds);
  const result = await context.solve({ ...model, ...start }, { ...context.options(), onProgress });
  if (result.status === "infeasible") {
    if (quick) throw new PlanCheckError("The solver finds no plan where the quick plan keeps every limit");
    return { draft: undefined, boundCents: 0, proof: "infeasible" };
  }
  const bound = Math.max(quickLowerBound(problem), result.bound === null ? 0 : Math.ceil(result.bound - 1e-2));
  if (!result.values) return { draft: quick, boundCents: Math.min(bound, quick?.costCents ?? bound), proof: "open" };
  const draft = readSolution(problem, plan, result.values);
  const priced = pricePlan(problem, draft);
  if (priced.violations.length > 0) {
    const divided = (problem.together ?? []).some((set) => set.sameModule);
    if (divided && !eachModule) return solvePart(problem, quick, context, report, true);
    throw new PlanCheckError(`The plan breaks a rule: ${priced.violations.join("; ")}`);
  }
  checkObjective(result, priced.costCents);
  report("exact", priced.costCents, bound);
  if (result.status !== "optimal") {
    const better = quick && quick.costCents < priced.costCents ? quick : draft;
    const cost = Math.min(priced.costCents, quick?.costCents ?? Infinity);
    return { draft: better, boundCents: Math.min(bound, cost), proof: bound >= cost ? "optimal" : "open" };
  }
  const settled = context.breakTies ? await settleTies(problem, plan, draft, priced.costCents, context) : draft;
  return { draft: settled, boundCents: priced.costCents, proof: "optimal" };
}

/** From this many loops on, the needs are bounded first: below it the proof is quick without. */
const loopsWorthTightening = 120;

/** Passes of bounding: steps that drop out in one make the next one sharper. */
const tighteningPasses = 2;

/** From this many loops on, panels are priced apart where they stay coupled: below it the search proves without. */
const loopsWorthPricing = 300;

/** Share of the time for the search by itself, before panels are priced apart. */
const plainShare = 0.4;

/** Share of the time that is left for the search once the panels' prices are found. */
const pricesShare = 0.3;

async function knownNeeds(
  problem: PlanningProblem,
  quick: GreedyPlan | undefined,
  context: PartContext,
  bounds: readonly PanelBound[],
) {
  let needs: ReadonlyMap<string, KnownNeed> = new Map();
  if (!quick || problem.loops.length < loopsWorthTightening) return needs;
  for (let pass = 0; pass < tighteningPasses; pass += 1) {
    const plan = withPanelBounds(problem, formulate({ problem, mostNeeded: mostOf(needs) }), bounds);
    if (plan.articles.length === 0) break;
    const { solve, options } = context;
    needs = await tightenNeeds({ plan, costCents: quick.costCents, solve, options });
    if (plan.articles.every((one) => (needs.get(one.article)?.most ?? one.mostNeeded) >= one.mostNeeded)) break;
  }
  return needs;
}

const mostOf = (needs: ReadonlyMap<string, KnownNeed>) => new Map([...needs].map(([key, { most }]) => [key, most]));

/**
 * Large sites: with the needs bounded, stock and price steps mostly couple nothing any more and the panels are solved
 * by themselves. The result counts only if, priced again with the real prices, it costs what the parts say.
 */
async function solveUncoupled(
  problem: PlanningProblem,
  needs: ReadonlyMap<string, KnownNeed>,
  context: PartContext,
): Promise<PlanDraft | undefined> {
  const { problem: uncoupled, creditCents } = uncoupleArticles(problem, needs);
  const parts = coupledPanels(uncoupled, false);
  if (needs.size === 0 || parts.length < 2) return undefined;
  const quiet = { ...context, onProgress: () => {} };
  const outcome = await solveParts(
    parts.map((panels) => subproblem(uncoupled, panels)),
    quiet,
    undefined,
  );
  if (outcome.proof !== "optimal" || !outcome.draft) return undefined;
  const { violations, costCents } = pricePlan(problem, outcome.draft);
  return violations.length === 0 && costCents === outcome.boundCents - creditCents ? outcome.draft : undefined;
}

/** The solver's objective carries noise below a cent; anything more means that model and reckoning disagree. */
function checkObjective(result: SolverResult, costCents: Cents): void {
  const difference = costCents - (result.objective ?? costCents);
  if (difference > 0.5 || (result.status === "optimal" && difference < -0.5)) {
    throw new PlanCheckError(`The solver says ${result.objective}, priced again the plan costs ${costCents}`);
  }
}

/** Branching nodes allowed for choosing between plans of equal cost: a limit that is the same on every machine. */
const tieBreakNodes = 200;

async function settleTies(
  problem: PlanningProblem,
  plan: PlanModel,
  found: PlanDraft,
  costCents: Cents,
  context: PartContext,
): Promise<PlanDraft> {
  let draft = found;
  context.onProgress({ stage: "equal costs", bestCents: null, boundCents: null });
  for (const round of tieBreakRounds(problem)) {
    const start = writeSolution(problem, plan, draft);
    const model = tieBreakModel({ problem, plan, costCents, round, start });
    const result = await context.solve(model, { ...context.options(), maxNodes: tieBreakNodes });
    if (!result.values) continue;
    const other = readSolution(problem, plan, result.values);
    const priced = pricePlan(problem, other);
    if (priced.violations.length === 0 && priced.costCents === costCents) draft = other;
  }
  return draft;
}

function infeasible(why: string): Plan {
  return {
    schema: "loopwright.plan.1",
    status: "infeasible",
    costCents: null,
    boundCents: null,
    why,
    choices: [],
    modules: {},
  };
}

/** The cheapest of the drafts, priced independently, with the proof stated. */
function finish(
  problem: PlanningProblem,
  drafts: readonly (PlanDraft | undefined)[],
  boundCents: Cents,
  seconds: number,
  failure: string,
): Plan {
  let best: { draft: PlanDraft; costCents: Cents } | undefined;
  for (const draft of drafts) {
    if (!draft) continue;
    const { violations, costCents } = pricePlan(problem, draft);
    if (violations.length === 0 && costCents < (best?.costCents ?? Infinity)) best = { draft, costCents };
  }
  if (!best) {
    const open = `No plan was found within ${seconds} s of solving; that none exists is not proved.`;
    return infeasible([failure, open].filter((part) => part !== "").join(" "));
  }
  const { choices, modules } = numberInputs(problem, best.draft);
  const proved = boundCents >= best.costCents;
  const open = `Not proved lowest: no plan costs less than ${boundCents} cents, this one costs ${best.costCents}.`;
  return {
    schema: "loopwright.plan.1",
    status: proved ? "optimal" : "feasible",
    costCents: best.costCents,
    boundCents: Math.min(boundCents, best.costCents),
    ...(proved ? {} : { why: [failure, open].filter((part) => part !== "").join(" ") }),
    choices,
    modules,
  };
}
