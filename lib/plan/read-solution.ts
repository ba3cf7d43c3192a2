import type { ColumnMeaning, PlanModel } from "./formulate.js";
import { cheapestCarrier } from "./join-groups.js";
import type { PlanChoice, PlanDraft } from "./plan.js";
import type { PlanningProblem } from "./problem.js";

/** Reads a solution of the model back into treatments and modules; inputs are numbered in loop order. */
export function readSolution(problem: PlanningProblem, plan: PlanModel, values: readonly number[]): PlanDraft {
  const leader = new Map<number, number>();
  const choices = new Map<number, PlanChoice>();
  const modules: Record<string, Record<string, number>> = {};
  plan.columns.forEach((meaning, column) => {
    const value = Math.round(values[column] ?? 0);
    if (value === 0) return;
    if (meaning.is === "modules") {
      modules[meaning.panel] = { ...modules[meaning.panel], [meaning.module]: value };
      return;
    }
    for (const loop of loopsOf(meaning)) {
      const id = problem.loops[loop]?.id ?? "";
      if (meaning.is === "without") {
        const kind = problem.loops[loop]?.withoutInput[meaning.option]?.kind ?? "wireless";
        choices.set(loop, { loop: id, kind, option: meaning.option });
        continue;
      }
      if (meaning.is !== "group" && meaning.is !== "member" && meaning.is !== "repair") continue;
      if (meaning.is === "member") leader.set(loop, meaning.carrier);
      if (meaning.is === "group") leader.set(loop, meaning.loops[0] ?? loop);
      choices.set(loop, { loop: id, kind: meaning.is === "repair" ? "repair" : "keep", module: meaning.module });
    }
  });
  return numberInputs(problem, {
    modules,
    choices: [...choices]
      .sort(([a], [b]) => a - b)
      .map(([loop, choice]) => {
        const first = leader.get(loop);
        return first === undefined ? choice : { ...choice, input: String(first) };
      }),
  });
}

/** Names every input by its number at its panel and module type, in loop order. */
export function numberInputs(problem: PlanningProblem, draft: PlanDraft): PlanDraft {
  const panelOf = new Map(problem.loops.map((loop) => [loop.id, loop.panel]));
  const order = new Map(problem.loops.map((loop, index) => [loop.id, index]));
  const numbers = new Map<string, string>();
  const counts = new Map<string, number>();
  const choices = [...draft.choices].sort((a, b) => (order.get(a.loop) ?? 0) - (order.get(b.loop) ?? 0));
  return {
    modules: draft.modules,
    choices: choices.map((choice) => {
      if (choice.input === undefined) return choice;
      const bank = JSON.stringify([panelOf.get(choice.loop), choice.module]);
      const key = JSON.stringify([bank, choice.input]);
      const known = numbers.get(key);
      if (known !== undefined) return { ...choice, input: known };
      const next = (counts.get(bank) ?? 0) + 1;
      counts.set(bank, next);
      numbers.set(key, String(next));
      return { ...choice, input: String(next) };
    }),
  };
}

function loopsOf(meaning: ColumnMeaning): readonly number[] {
  if (meaning.is === "group") return meaning.loops;
  return meaning.is === "without" || meaning.is === "repair" || meaning.is === "member" ? [meaning.loop] : [];
}

/** Values of the treatment and module columns that stand for a plan, for the solver to start from. */
export function writeSolution(problem: PlanningProblem, plan: PlanModel, draft: PlanDraft) {
  const index = new Map(problem.loops.map((loop, at) => [loop.id, at]));
  const wanted = new Set<string>();
  const inputs = new Map<string, { module: string; loops: number[] }>();
  for (const choice of draft.choices) {
    const loop = index.get(choice.loop) ?? 0;
    if (choice.kind === "repair") wanted.add(JSON.stringify(["repair", loop, choice.module]));
    else if (choice.kind !== "keep") wanted.add(JSON.stringify(["without", loop, choice.option]));
    else {
      const key = JSON.stringify([problem.loops[loop]?.panel, choice.module, choice.input]);
      const use = inputs.get(key) ?? { module: choice.module ?? "", loops: [] };
      use.loops.push(loop);
      inputs.set(key, use);
    }
  }
  for (const { module, loops } of inputs.values()) {
    loops.sort((a, b) => a - b);
    wanted.add(JSON.stringify(["group", loops, module]));
    const keeps = loops.flatMap((loop) => problem.loops[loop]?.keep.find((offer) => offer.module === module) ?? []);
    const carrier = loops[cheapestCarrier(keeps)] ?? 0;
    if (!plan.columns.some((meaning) => meaning.is === "member")) continue;
    wanted.add(JSON.stringify(["group", [carrier], module]));
    for (const loop of loops) wanted.add(JSON.stringify(["member", loop, carrier, module]));
  }
  const column: number[] = [];
  const value: number[] = [];
  plan.columns.forEach((meaning, at) => {
    if (meaning.is === "reckoning") return;
    column.push(at);
    value.push(
      meaning.is === "modules"
        ? (draft.modules[meaning.panel]?.[meaning.module] ?? 0)
        : wanted.has(columnKey(meaning))
          ? 1
          : 0,
    );
  });
  return { column, value };
}

function columnKey(meaning: ColumnMeaning): string {
  switch (meaning.is) {
    case "without":
      return JSON.stringify(["without", meaning.loop, meaning.option]);
    case "repair":
      return JSON.stringify(["repair", meaning.loop, meaning.module]);
    case "group":
      return JSON.stringify(["group", meaning.loops, meaning.module]);
    case "member":
      return JSON.stringify(["member", meaning.loop, meaning.carrier, meaning.module]);
    default:
      return "";
  }
}
