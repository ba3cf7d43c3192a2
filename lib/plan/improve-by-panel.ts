import { formulate, type PlanModel } from "./formulate.js";
import type { GreedyPlan } from "./greedy-plan.js";
import type { Solve, SolveOptions } from "./milp-model.js";
import { panelOfColumn } from "./panel-prices.js";
import { pricePlan } from "./price-plan.js";
import type { PlanningProblem } from "./problem.js";
import { readSolution, writeSolution } from "./read-solution.js";

export interface ImproveInput {
  readonly problem: PlanningProblem;
  readonly from: GreedyPlan;
  readonly solve: Solve;
  readonly options: () => SolveOptions;
}

/** Most rounds over all panels. */
const mostRounds = 3;

/** Branching nodes for one panel: a limit that ends at the same place on every machine. */
const nodesForOnePanel = 300;

/**
 * A better plan for a large site, still without proof: one panel after another is planned exactly with everything else
 * held, articles bought together as they are, until a round brings nothing. The better the known plan, the narrower the
 * needs that {@link tightenNeeds} leaves open.
 */
export async function improveByPanel({ problem, from, solve, options }: ImproveInput): Promise<GreedyPlan> {
  const plan = formulate({ problem });
  let best = from;
  for (let round = 0; round < mostRounds; round += 1) {
    const before = best.costCents;
    for (const panel of problem.panels) {
      const start = writeSolution(problem, plan, best);
      const held = heldElsewhere(problem, plan, panel.id, start);
      const result = await solve({ ...held, start }, { ...options(), maxNodes: nodesForOnePanel });
      if (!result.values) continue;
      const draft = readSolution(problem, plan, result.values);
      const { violations, costCents } = pricePlan(problem, draft);
      if (violations.length === 0 && costCents < best.costCents) best = { ...draft, costCents };
    }
    if (best.costCents === before) break;
  }
  return best;
}

/** The model with the treatments and modules of every other panel held as they are. */
function heldElsewhere(
  problem: PlanningProblem,
  plan: PlanModel,
  panel: string,
  start: ReturnType<typeof writeSolution>,
) {
  const columnLower = [...plan.model.columnLower];
  const columnUpper = [...plan.model.columnUpper];
  start.column.forEach((column, at) => {
    if (panelOfColumn(problem, plan, column) === panel) return;
    columnLower[column] = start.value[at] ?? 0;
    columnUpper[column] = start.value[at] ?? 0;
  });
  return { ...plan.model, columnLower, columnUpper };
}
