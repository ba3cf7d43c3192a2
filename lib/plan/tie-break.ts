import type { PlanModel } from "./formulate.js";
import { cheapestCarrier } from "./join-groups.js";
import type { MilpModel } from "./milp-model.js";
import { withRow } from "./milp-model.js";
import type { KeepOffer, PlanningProblem } from "./problem.js";

/**
 * The model that decides between plans of equal cost: cost held, fewest changes to wiring first, then loop order
 * (kept before repaired before taken off the wire, earlier loops weigh more). One whole-number objective:
 * changes · (1 + largest possible order term) + order term.
 */
export function tieBreakModel(problem: PlanningProblem, plan: PlanModel, costCents: number): MilpModel {
  const order = orderTerms(problem, plan);
  const scale = 1 + sumOfLargest(problem, plan, order);
  const changes = plan.columns.map((_, column) => wiringChanges(problem, plan, column));
  const held = withRow(plan.model, {
    coefficients: plan.model.columnCost,
    lower: -Infinity,
    upper: costCents + 0.25,
  });
  return { ...held, columnCost: changes.map((count, column) => count * scale + (order[column] ?? 0)) };
}

/**
 * Changes to the wiring that a column stands for: a loop taken off the wire or repaired, a loop joined onto
 * another's input, a resistor fitted or taken out (work that costs something).
 */
function wiringChanges(problem: PlanningProblem, plan: PlanModel, column: number): number {
  const meaning = plan.columns[column];
  if (meaning?.is === "repair") return 1;
  if (meaning?.is === "without") {
    return problem.loops[meaning.loop]?.withoutInput[meaning.option]?.kind === "excluded" ? 0 : 1;
  }
  const keep = (loop: number, module: string): KeepOffer | undefined =>
    problem.loops[loop]?.keep.find((offer) => offer.module === module);
  if (meaning?.is === "member") return 1 + ((keep(meaning.loop, meaning.module)?.removeCents ?? 0) > 0 ? 1 : 0);
  if (meaning?.is !== "group") return 0;
  const offers = meaning.loops.flatMap((loop) => keep(loop, meaning.module) ?? []);
  const carrier = cheapestCarrier(offers);
  return offers.reduce(
    (sum, offer, at) => sum + ((at === carrier ? offer.setCents : offer.removeCents) > 0 ? 1 : 0),
    offers.length - 1,
  );
}

function orderTerms(problem: PlanningProblem, plan: PlanModel): number[] {
  const weight = (loop: number) => problem.loops.length - loop;
  const typeAt = (module: string) => problem.modules.findIndex(({ type }) => type === module);
  return plan.columns.map((meaning) => {
    switch (meaning.is) {
      case "group":
        return meaning.loops.reduce((sum, loop) => sum + weight(loop) * typeAt(meaning.module), 0);
      case "member":
        return weight(meaning.loop) * typeAt(meaning.module);
      case "repair":
        return weight(meaning.loop) * (problem.modules.length + typeAt(meaning.module));
      case "without":
        return weight(meaning.loop) * (2 * problem.modules.length + meaning.option);
      default:
        return 0;
    }
  });
}

function sumOfLargest(problem: PlanningProblem, plan: PlanModel, order: readonly number[]): number {
  const largest = problem.loops.map(() => 0);
  plan.columns.forEach((meaning, column) => {
    const loops = "loops" in meaning ? meaning.loops : "loop" in meaning ? [meaning.loop] : [];
    for (const loop of loops) largest[loop] = Math.max(largest[loop] ?? 0, (order[column] ?? 0) / loops.length);
  });
  return Math.ceil(largest.reduce((sum, one) => sum + one, 0));
}
