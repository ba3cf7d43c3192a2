import type { ColumnMeaning, PlanModel } from "./formulate.js";
import { cheapestCarrier } from "./join-groups.js";
import { type MilpModel, withRow } from "./milp-model.js";
import type { KeepOffer, PlanningProblem } from "./problem.js";

/** Most loops decided at once between plans of equal cost. */
const mostLoopsAtOnce = 60;

/** Loops (as indices) to be decided together: all of them, or by panel where there are more than 60. */
export function tieBreakRounds(problem: PlanningProblem): readonly ReadonlySet<number>[] {
  const all = [...problem.loops.keys()];
  if (all.length <= mostLoopsAtOnce) return [new Set(all)];
  return problem.panels.flatMap((panel) => {
    const loops = all.filter((loop) => problem.loops[loop]?.panel === panel.id);
    const rounds = Math.ceil(loops.length / mostLoopsAtOnce);
    const size = Math.ceil(loops.length / Math.max(1, rounds));
    return Array.from({ length: rounds }, (_, at) => new Set(loops.slice(at * size, (at + 1) * size)));
  });
}

export interface TieBreakInput {
  readonly problem: PlanningProblem;
  readonly plan: PlanModel;
  readonly costCents: number;
  /** The loops that may change; all others stay as in `values`. */
  readonly round: ReadonlySet<number>;
  /** Columns and values of the plan so far, as `writeSolution` gives them. */
  readonly start: { readonly column: readonly number[]; readonly value: readonly number[] };
}

/**
 * The model that decides between plans of equal cost: cost held, fewest changes to wiring first, then loop order
 * (kept before repaired before taken off the wire, earlier loops weigh more). One whole-number objective:
 * changes · (1 + largest possible order term) + order term.
 */
export function tieBreakModel({ problem, plan, costCents, round, start }: TieBreakInput): MilpModel {
  const free = freeColumns(problem, plan, round);
  const order = orderTerms(problem, plan, round);
  const scale = 1 + largestOrder(plan, round, order);
  const held = withRow(plan.model, { coefficients: plan.model.columnCost, lower: -Infinity, upper: costCents + 0.25 });
  const columnLower = [...held.columnLower];
  const columnUpper = [...held.columnUpper];
  start.column.forEach((column, at) => {
    if (free[column]) return;
    columnLower[column] = start.value[at] ?? 0;
    columnUpper[column] = start.value[at] ?? 0;
  });
  const columnCost = plan.columns.map((meaning, column) =>
    free[column] ? wiringChanges(problem, meaning) * scale + (order[column] ?? 0) : 0,
  );
  return { ...held, columnLower, columnUpper, columnCost, start };
}

function loopsOf(meaning: ColumnMeaning): readonly number[] {
  if (meaning.is === "group") return meaning.loops;
  if (meaning.is === "member") return [meaning.loop, meaning.carrier];
  return meaning.is === "without" || meaning.is === "repair" ? [meaning.loop] : [];
}

function freeColumns(problem: PlanningProblem, plan: PlanModel, round: ReadonlySet<number>): boolean[] {
  const panels = new Set([...round].map((loop) => problem.loops[loop]?.panel));
  return plan.columns.map((meaning) =>
    meaning.is === "modules" ? panels.has(meaning.panel) : loopsOf(meaning).every((loop) => round.has(loop)),
  );
}

/**
 * Changes to the wiring that a column stands for: a loop taken off the wire or repaired, a loop joined onto
 * another's input, a resistor fitted or taken out (work that costs something).
 */
function wiringChanges(problem: PlanningProblem, meaning: ColumnMeaning): number {
  const keep = (loop: number, module: string): KeepOffer | undefined =>
    problem.loops[loop]?.keep.find((offer) => offer.module === module);
  if (meaning.is === "repair") return 1;
  if (meaning.is === "without") {
    return problem.loops[meaning.loop]?.withoutInput[meaning.option]?.kind === "excluded" ? 0 : 1;
  }
  if (meaning.is === "member") return 1 + ((keep(meaning.loop, meaning.module)?.removeCents ?? 0) > 0 ? 1 : 0);
  if (meaning.is !== "group") return 0;
  const offers = meaning.loops.flatMap((loop) => keep(loop, meaning.module) ?? []);
  const carrier = cheapestCarrier(offers);
  return offers.reduce(
    (sum, offer, at) => sum + ((at === carrier ? offer.setCents : offer.removeCents) > 0 ? 1 : 0),
    offers.length - 1,
  );
}

function orderTerms(problem: PlanningProblem, plan: PlanModel, round: ReadonlySet<number>): number[] {
  const places = new Map([...round].sort((a, b) => a - b).map((loop, at) => [loop, round.size - at]));
  const weight = (loop: number) => places.get(loop) ?? 0;
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

/** No plan's order terms add up to more: each loop's largest column, counted in full. */
function largestOrder(plan: PlanModel, round: ReadonlySet<number>, order: readonly number[]): number {
  const largest = new Map<number, number>();
  plan.columns.forEach((meaning, column) => {
    for (const loop of loopsOf(meaning)) {
      if (round.has(loop)) largest.set(loop, Math.max(largest.get(loop) ?? 0, order[column] ?? 0));
    }
  });
  return [...largest.values()].reduce((sum, one) => sum + one, 0);
}
