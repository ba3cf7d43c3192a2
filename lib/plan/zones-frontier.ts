import { InputError } from "../problems/input-error.js";
import type { Cents } from "../quantities/money.js";
import { checkPlanProblem } from "./check-problem.js";
import { formulate } from "./formulate.js";
import { type CancelSignal, type MilpModel, type Solve, type SolverResult, withRow } from "./milp-model.js";
import type { PlanDraft } from "./plan.js";
import { pricePlan } from "./price-plan.js";
import type { PlanningProblem } from "./problem.js";
import { numberInputs, readSolution, writeSolution } from "./read-solution.js";

/** The cheapest plan that loses at most so many zones. */
export interface ZonesPoint extends PlanDraft {
  /** Loops without a zone of their own: joined beyond the first of an input, or retired. */
  readonly zonesLost: number;
  readonly costCents: Cents;
}

export interface ZonesFrontier {
  /** From the cheapest plan to the fewest zones lost; each costs more and loses fewer than the one before. */
  readonly points: readonly ZonesPoint[];
  /** false: cut short by time, cancel or `maxPoints`; the points there are hold. */
  readonly complete: boolean;
}

export interface ZonesFrontierInput {
  readonly problem: PlanningProblem;
  readonly solve: Solve;
  /** Solver time for all points, default 60. [s] */
  readonly seconds?: number | undefined;
  /** Default 20. */
  readonly maxPoints?: number | undefined;
  readonly signal?: CancelSignal | undefined;
}

/**
 * Cost against zones lost, exactly: the least cost, then the fewest zones lost at that cost, then the least cost with
 * at least one zone fewer lost, and so on until none is lost or no plan is left.
 */
export async function zonesFrontier(input: ZonesFrontierInput): Promise<ZonesFrontier> {
  const { problem, solve, signal, maxPoints = 20 } = input;
  const [fault] = checkPlanProblem(problem);
  if (fault) throw new InputError({ field: fault.path, got: fault.typed, expected: fault.expected });
  const eachModule = (problem.together ?? []).some((set) => set.sameModule);
  const plan = formulate({ problem, eachModule });
  const points: ZonesPoint[] = [];
  let left = input.seconds ?? 60;
  const run = async (model: MilpModel): Promise<SolverResult> => {
    const result = await solve(model, { seconds: left, signal });
    left -= result.seconds;
    return result;
  };
  let mostLost = Infinity;
  while (points.length < maxPoints && mostLost >= 0) {
    const bounded =
      mostLost === Infinity
        ? plan.model
        : withRow(plan.model, { coefficients: plan.zonesLost, lower: -Infinity, upper: mostLost });
    const cheapest = await run(bounded);
    if (cheapest.status === "infeasible") return { points, complete: true };
    if (cheapest.status !== "optimal" || !cheapest.values) return { points, complete: false };
    const first = readSolution(problem, plan, cheapest.values);
    const { costCents } = pricePlan(problem, first);
    const held = withRow(bounded, { coefficients: plan.model.columnCost, lower: -Infinity, upper: costCents + 0.25 });
    const fewest = await run({ ...held, columnCost: plan.zonesLost, start: writeSolution(problem, plan, first) });
    const draft = numberInputs(problem, fewest.values ? readSolution(problem, plan, fewest.values) : first);
    const priced = pricePlan(problem, draft);
    if (fewest.status !== "optimal" || priced.violations.length > 0) return { points, complete: false };
    points.push({ ...draft, zonesLost: priced.zonesLost, costCents: priced.costCents });
    mostLost = priced.zonesLost - 1;
  }
  return { points, complete: mostLost < 0 };
}
