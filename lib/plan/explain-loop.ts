import type { Cents } from "../quantities/money.js";
import { choosePlan } from "./choose-plan.js";
import type { CancelSignal, Solve } from "./milp-model.js";
import { permittedOffers } from "./permitted-offers.js";
import type { ModuleCounts, Plan, PlanChoice, PlanDraft } from "./plan.js";
import { type PricedPlan, pricePlan } from "./price-plan.js";
import type { PlanningProblem } from "./problem.js";

/** A line of the bill that another choice would change. */
export interface BillDifference {
  readonly line: string;
  /** Other bill less this one, positive = the other choice costs more here. */
  readonly quantity: number;
  readonly cents: Cents;
}

/** What another choice for one loop would cost. */
export interface Alternative {
  readonly choice: PlanChoice;
  /** Other plan less this plan. [cents] */
  readonly moreCents: Cents;
  /** The difference of the two bills, largest amount first; its cents add up to `moreCents`. */
  readonly differences: readonly BillDifference[];
  /** Other loops whose kind, module, option or company on their input changes with it. */
  readonly otherLoops: readonly string[];
}

/** Why a loop got its treatment. */
export interface LoopExplanation {
  readonly loop: string;
  readonly chosen: PlanChoice;
  /** The cheapest other kind, every other loop as in the plan (modules follow); null when there is none. */
  readonly heldFixed: Alternative | null;
  /**
   * The cheapest plan without the chosen kind for this loop; null when there is none, or `replanStatus` says that none
   * was asked for. Where it was not proved, `moreCents` is an upper figure.
   */
  readonly replanned: Alternative | null;
  readonly replanStatus: "optimal" | "feasible" | "infeasible" | "not asked";
}

export interface ExplainLoopInput {
  readonly problem: PlanningProblem;
  readonly plan: Plan;
  readonly loop: string;
  /** Absent: only the comparison with everything else held fixed. */
  readonly solve?: Solve | undefined;
  /** Most solver time for the new plan, default 10. [s] */
  readonly seconds?: number | undefined;
  readonly signal?: CancelSignal | undefined;
}

/**
 * The next best kind for one loop, told twice: with everything else held fixed, and with everything planned anew.
 * The second is what the chosen kind saves; the first alone would often blame a module that another loop would free.
 */
export async function explainLoop(input: ExplainLoopInput): Promise<LoopExplanation | undefined> {
  const { problem, plan, loop, solve } = input;
  const chosen = plan.choices.find((choice) => choice.loop === loop);
  if (!chosen || plan.status === "infeasible") return undefined;
  const bill = pricePlan(problem, plan);
  const held = heldFixed(problem, plan, chosen, bill);
  if (!solve) return { loop, chosen, heldFixed: held, replanned: null, replanStatus: "not asked" };
  const pins = [...(problem.pins ?? []), { loop, forbid: chosen.kind }];
  const others = permittedOffers({ ...problem, pins }).find((offers) => offers.loop.id === loop);
  if (!others || others.withoutInput.length + others.keep.length + others.repair.length === 0) {
    return { loop, chosen, heldFixed: held, replanned: null, replanStatus: "infeasible" };
  }
  const other = await choosePlan({
    problem: { ...problem, pins },
    solve,
    seconds: input.seconds ?? 10,
    signal: input.signal,
    breakTies: false,
  });
  const replanned = other.status === "infeasible" ? null : alternative(problem, plan, other, loop, bill);
  return { loop, chosen, heldFixed: held, replanned, replanStatus: other.status };
}

/** Explanations of several loops, one after the other, until the solver time given for all of them is used up. */
export async function explainLoops(
  input: Omit<ExplainLoopInput, "loop"> & { readonly loops: readonly string[] },
): Promise<readonly LoopExplanation[]> {
  const explanations: LoopExplanation[] = [];
  let left = input.seconds ?? 30;
  const counting: Solve | undefined = input.solve
    ? async (model, options) => {
        const result = await (input.solve as Solve)(model, options);
        left -= result.seconds;
        return result;
      }
    : undefined;
  for (const loop of input.loops) {
    const solve = left > 0 && !input.signal?.aborted ? counting : undefined;
    const one = await explainLoop({ ...input, loop, solve, seconds: Math.max(0, left) });
    if (one) explanations.push(one);
  }
  return explanations;
}

function heldFixed(problem: PlanningProblem, plan: Plan, chosen: PlanChoice, bill: PricedPlan): Alternative | null {
  let best: { draft: PlanDraft; costCents: Cents } | undefined;
  for (const choice of otherChoices(problem, plan, chosen)) {
    const choices = plan.choices.map((one) => (one.loop === chosen.loop ? choice : one));
    for (const modules of nearbyModules(problem, plan, chosen.loop)) {
      const { violations, costCents } = pricePlan(problem, { choices, modules });
      if (violations.length > 0 || costCents >= (best?.costCents ?? Infinity)) continue;
      best = { draft: { choices, modules }, costCents };
    }
  }
  return best ? alternative(problem, plan, best.draft, chosen.loop, bill) : null;
}

/** Every permitted choice of another kind: off the wire, repaired, kept alone, or kept on an input in use. */
function otherChoices(problem: PlanningProblem, plan: Plan, chosen: PlanChoice): PlanChoice[] {
  const loop = chosen.loop;
  const offers = permittedOffers(problem).find((one) => one.loop.id === loop);
  if (!offers) return [];
  const panelOf = new Map(problem.loops.map((one) => [one.id, one.panel]));
  const free = "free";
  const choices: PlanChoice[] = [
    ...offers.withoutInput.map(({ option, offer }): PlanChoice => ({ loop, kind: offer.kind, option })),
    ...offers.repair.map(({ module }): PlanChoice => ({ loop, kind: "repair", module })),
  ];
  for (const { module } of offers.keep) {
    const inputs = plan.choices.filter(
      (one) => one.kind === "keep" && one.module === module && panelOf.get(one.loop) === offers.loop.panel,
    );
    for (const input of new Set([free, ...inputs.flatMap((one) => one.input ?? [])])) {
      choices.push({ loop, kind: "keep", module, input });
    }
  }
  return choices.filter((choice) => choice.kind !== chosen.kind);
}

/** The plan's modules with up to one more or one fewer of each type at the loop's panel. */
function nearbyModules(problem: PlanningProblem, plan: Plan, loop: string): ModuleCounts[] {
  const panel = problem.loops.find((one) => one.id === loop)?.panel ?? "";
  let variants: Record<string, number>[] = [{ ...plan.modules[panel] }];
  for (const { type } of problem.modules) {
    const now = plan.modules[panel]?.[type] ?? 0;
    const counts = [now - 1, now, now + 1].filter((count) => count >= 0);
    variants = variants.flatMap((variant) => counts.map((count) => ({ ...variant, [type]: count })));
  }
  return variants.map((variant) => ({ ...plan.modules, [panel]: variant }));
}

function alternative(
  problem: PlanningProblem,
  plan: PlanDraft,
  other: PlanDraft,
  loop: string,
  bill: PricedPlan,
): Alternative | null {
  const choice = other.choices.find((one) => one.loop === loop);
  if (!choice) return null;
  const otherBill = pricePlan(problem, other);
  const before = treatmentsOf(problem, plan, loop);
  const after = treatmentsOf(problem, other, loop);
  const changed = [...after].filter(([id, treatment]) => id !== loop && before.get(id) !== treatment);
  return {
    choice,
    moreCents: otherBill.costCents - bill.costCents,
    differences: billDifference(bill, otherBill),
    otherLoops: changed.map(([id]) => id),
  };
}

/** Each loop's kind, module, option and the loops it shares its input with, the explained loop left out. */
function treatmentsOf(problem: PlanningProblem, draft: PlanDraft, explained: string): ReadonlyMap<string, string> {
  const panelOf = new Map(problem.loops.map((loop) => [loop.id, loop.panel]));
  const inputOf = (one: PlanChoice) => JSON.stringify([panelOf.get(one.loop), one.module, one.input]);
  return new Map(
    draft.choices.map((one) => {
      const sharing = draft.choices.filter(
        (other) => one.kind === "keep" && other.loop !== explained && inputOf(other) === inputOf(one),
      );
      return [one.loop, JSON.stringify([one.kind, one.module, one.option, sharing.map((other) => other.loop)])];
    }),
  );
}

/** Lines that differ between two bills, largest amount first. */
export function billDifference(bill: PricedPlan, other: PricedPlan): readonly BillDifference[] {
  const lines = new Map<string, { quantity: number; cents: Cents }>();
  const add = (one: PricedPlan, sign: 1 | -1) => {
    for (const { line, quantity, cents } of one.lines) {
      const sum = lines.get(line) ?? { quantity: 0, cents: 0 };
      lines.set(line, { quantity: sum.quantity + sign * quantity, cents: sum.cents + sign * cents });
    }
  };
  add(bill, -1);
  add(other, 1);
  return [...lines]
    .map(([line, difference]) => ({ line, ...difference }))
    .filter(({ quantity, cents }) => quantity !== 0 || cents !== 0)
    .sort((a, b) => Math.abs(b.cents) - Math.abs(a.cents));
}
