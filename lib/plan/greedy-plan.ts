import type { Cents } from "../quantities/money.js";
import { type Assignment, GreedyState } from "./greedy-state.js";
import type { PlanDraft } from "./plan.js";
import { pricePlan } from "./price-plan.js";
import type { PlanningProblem } from "./problem.js";
import { numberInputs } from "./read-solution.js";

/** A plan found without proof, with its cost. */
export interface GreedyPlan extends PlanDraft {
  readonly costCents: Cents;
}

/**
 * The instant plan, and the fall-back where no exact solver runs: from the habit of each module type (keep what can be
 * kept) and from nothing kept, tries every module count per panel with the loops of largest saving, then moves, joins
 * and frees modules while that lowers the cost. Never dearer than the habit; undefined when it finds no plan that
 * keeps every limit (which proves nothing).
 */
export function greedyPlan(problem: PlanningProblem): GreedyPlan | undefined {
  const starts: (number | "nothing")[] = ["nothing", ...problem.modules.keys()];
  let best: GreedyPlan | undefined;
  let bestStart: GreedyState | undefined;
  let bestCost = Infinity;
  const consider = (state: GreedyState) => {
    const draft = numberInputs(problem, state.draft());
    const priced = pricePlan(problem, draft);
    if (priced.violations.length > 0 || priced.costCents >= (best?.costCents ?? Infinity)) return;
    best = { ...draft, costCents: priced.costCents };
  };
  for (const start of starts) {
    const state = new GreedyState(problem);
    startFrom(state, start);
    consider(state);
    if (state.cost() >= bestCost) continue;
    bestCost = state.cost();
    bestStart = state;
  }
  if (!bestStart) return best;
  improve(bestStart);
  consider(bestStart);
  return best;
}

/** Every way a loop may stand alone, keep on the module types given. */
function waysAlone(state: GreedyState, loop: number, modules: readonly number[]): Assignment[] {
  const facts = state.loops[loop];
  if (!facts) return [];
  return [
    ...facts.offers.withoutInput.map((_, at): Assignment => ({ as: "without", at })),
    ...facts.offers.repair.map((_, at): Assignment => ({ as: "repair", at })),
    ...modules.filter((module) => facts.keep[module]).map((module): Assignment => ({ as: "keep", module, input: 0 })),
  ];
}

function cheapestWay(state: GreedyState, loop: number, ways: readonly Assignment[], cheap: boolean) {
  let best: { way: Assignment; cents: Cents } | undefined;
  for (const way of ways) {
    const cents = state.guideCents(loop, way, cheap);
    if (!best || cents < best.cents) best = { way, cents };
  }
  return best;
}

function place(state: GreedyState, loop: number, way: Assignment): void {
  const panel = state.loops[loop]?.panel ?? 0;
  state.assign(loop, way.as === "keep" ? { ...way, input: state.newInput(panel, way.module) } : way);
}

/** Keeps every loop that one module type can keep, or none; the rest by the cheapest other way. */
function startFrom(state: GreedyState, start: number | "nothing"): void {
  state.loops.forEach((facts, loop) => {
    const every = [...state.problem.modules.keys()];
    if (start !== "nothing" && facts.keep[start]) {
      place(state, loop, { as: "keep", module: start, input: 0 });
      return;
    }
    const ways = waysAlone(state, loop, []);
    const withoutInput = ways.filter((way) => way.as === "without");
    const best =
      cheapestWay(state, loop, withoutInput, false) ??
      cheapestWay(state, loop, ways, false) ??
      cheapestWay(state, loop, waysAlone(state, loop, every), false);
    if (best) place(state, loop, best.way);
  });
}

function improve(state: GreedyState): void {
  let cost = state.cost();
  for (let round = 0; round < 4; round += 1) {
    for (const panel of state.problem.panels.keys()) {
      tryModuleCounts(state, panel);
      moveLoops(state, panel);
      freeModules(state, panel);
    }
    const now = state.cost();
    if (now >= cost) return;
    cost = now;
  }
}

interface Snapshot {
  readonly loop: number;
  readonly assignment: Assignment;
}

function snapshot(state: GreedyState, loops: readonly number[]): Snapshot[] {
  return loops.flatMap((loop) => {
    const assignment = state.assignments[loop];
    return assignment ? [{ loop, assignment }] : [];
  });
}

function restore(state: GreedyState, taken: readonly Snapshot[]): void {
  for (const { loop, assignment } of taken) state.assign(loop, assignment);
}

function loopsAt(state: GreedyState, panel: number): number[] {
  return [...state.loops.keys()].filter((loop) => state.loops[loop]?.panel === panel);
}

/** Tries every combination of module counts at a panel, the loops with the largest saving on the inputs. */
function tryModuleCounts(state: GreedyState, panel: number): void {
  const loops = loopsAt(state, panel);
  for (const cheap of [false, true]) {
    const savings = savingsOf(state, loops, cheap);
    for (const counts of moduleCounts(state, panel, loops)) {
      const taken = snapshot(state, loops);
      const before = state.cost();
      fillInputs(state, loops, savings, counts);
      if (state.cost() >= before) restore(state, taken);
    }
  }
}

interface Saving {
  readonly loop: number;
  readonly way: Assignment;
  readonly module: number;
  readonly cents: Cents;
}

function savingsOf(state: GreedyState, loops: readonly number[], cheap: boolean) {
  const otherwise = new Map<number, Assignment>();
  const savings: Saving[] = [];
  for (const loop of loops) {
    const facts = state.loops[loop];
    if (!facts) continue;
    const without = waysAlone(state, loop, []).filter((way) => way.as === "without");
    const best = cheapestWay(state, loop, without, cheap);
    if (best) otherwise.set(loop, best.way);
    for (const way of waysAlone(state, loop, [...state.problem.modules.keys()])) {
      if (way.as === "without") continue;
      const type = way.as === "repair" ? facts.offers.repair[way.at]?.module : undefined;
      const module = way.as === "keep" ? way.module : state.problem.modules.findIndex((one) => one.type === type);
      savings.push({ loop, way, module, cents: (best?.cents ?? 1e9) - state.guideCents(loop, way, cheap) });
    }
  }
  savings.sort((a, b) => b.cents - a.cents || a.loop - b.loop);
  return { otherwise, savings };
}

/** Largest number of module count combinations tried at one panel. */
const mostCombinations = 120;

function moduleCounts(state: GreedyState, panel: number, loops: readonly number[]): number[][] {
  const controller = state.problem.panels[panel]?.controller;
  const limit = state.problem.controllers.find((one) => one.id === controller)?.maxModules ?? 0;
  let combinations: number[][] = [[]];
  state.problem.modules.forEach((module, at) => {
    const able = loops.filter(
      (loop) =>
        state.loops[loop]?.keep[at] || state.loops[loop]?.offers.repair.some((offer) => offer.module === module.type),
    ).length;
    const most = Math.min(limit, Math.ceil(able / module.inputs));
    combinations = combinations
      .flatMap((counts) => Array.from({ length: most + 1 }, (_, count) => [...counts, count]))
      .filter((counts) => counts.reduce((sum, count) => sum + count, 0) <= limit);
  });
  return combinations.length > mostCombinations ? combinations.slice(0, mostCombinations) : combinations;
}

function fillInputs(
  state: GreedyState,
  loops: readonly number[],
  { otherwise, savings }: ReturnType<typeof savingsOf>,
  counts: readonly number[],
): void {
  const free = counts.map((count, at) => count * (state.problem.modules[at]?.inputs ?? 0));
  const placed = new Set<number>();
  for (const { loop, way, module, cents } of savings) {
    if (placed.has(loop) || (free[module] ?? 0) <= 0 || cents <= 0) continue;
    free[module] = (free[module] ?? 0) - 1;
    placed.add(loop);
    place(state, loop, way);
  }
  for (const loop of loops) {
    const way = otherwise.get(loop);
    if (!placed.has(loop) && way) state.assign(loop, way);
  }
}

/** Gives single loops another treatment or another input while that lowers the cost. */
function moveLoops(state: GreedyState, panel: number): void {
  const loops = loopsAt(state, panel);
  for (let sweep = 0; sweep < 6; sweep += 1) {
    let moved = false;
    for (const loop of loops) if (moveLoop(state, loop)) moved = true;
    if (!moved) return;
  }
}

function waysOf(state: GreedyState, loop: number): Assignment[] {
  const facts = state.loops[loop];
  if (!facts) return [];
  const ways = waysAlone(state, loop, [...state.problem.modules.keys()]);
  if (facts.joinClass < 0 || state.problem.join.maxLoops < 2) return ways;
  for (const [input, use] of state.inputs) {
    const [first] = use.loops;
    if (use.panel !== facts.panel || first === undefined || use.loops.includes(loop)) continue;
    if (state.loops[first]?.joinClass !== facts.joinClass) continue;
    if (state.mayShare([...use.loops, loop], use.module)) ways.push({ as: "keep", module: use.module, input });
  }
  return ways;
}

function moveLoop(state: GreedyState, loop: number): boolean {
  const from = state.assignments[loop];
  let bestCost = state.cost();
  let best: Assignment | undefined;
  const panel = state.loops[loop]?.panel ?? 0;
  for (const way of waysOf(state, loop)) {
    const target = way.as === "keep" && way.input === 0 ? { ...way, input: state.newInput(panel, way.module) } : way;
    state.assign(loop, target);
    const cost = state.cost();
    if (cost < bestCost) {
      bestCost = cost;
      best = target;
    } else if (target !== way && target.as === "keep") {
      if (from) state.assign(loop, from);
      state.inputs.delete(target.input);
    }
  }
  if (best) state.assign(loop, best);
  else if (from) state.assign(loop, from);
  dropEmptyInputs(state);
  return best !== undefined;
}

function dropEmptyInputs(state: GreedyState): void {
  for (const [input, use] of state.inputs) if (use.loops.length === 0) state.inputs.delete(input);
}

/** Tries to do with one module fewer: joins or replaces, cheapest first, the loops that would lose their input. */
function freeModules(state: GreedyState, panel: number): void {
  const loops = loopsAt(state, panel);
  for (const module of state.problem.modules.keys()) {
    for (;;) {
      const size = state.problem.modules[module]?.inputs ?? 1;
      const used = state.usedInputs(panel)[module] ?? 0;
      const target = (Math.ceil(used / size) - 1) * size;
      if (target < 0) break;
      const taken = snapshot(state, loops);
      const before = state.cost();
      while ((state.usedInputs(panel)[module] ?? 0) > target) if (!freeOneInput(state, panel, module)) break;
      if (state.cost() < before) continue;
      restoreInputs(state, taken, panel);
      break;
    }
  }
  moveLoops(state, panel);
}

/** Inputs that were dropped meanwhile are made again before loops return to them. */
function restoreInputs(state: GreedyState, taken: readonly Snapshot[], panel: number): void {
  for (const { assignment } of taken) {
    if (assignment.as !== "keep" || state.inputs.has(assignment.input)) continue;
    state.inputs.set(assignment.input, { panel, module: assignment.module, loops: [], cents: 0, excess: 0 });
  }
  restore(state, taken);
  dropEmptyInputs(state);
}

function freeOneInput(state: GreedyState, panel: number, module: number): boolean {
  const used = state.usedInputs(panel)[module] ?? 0;
  let best: { loop: number; way: Assignment } | undefined;
  let bestCost = Infinity;
  for (const loop of loopsAt(state, panel)) {
    const from = state.assignments[loop];
    if (!from || !holdsAlone(state, loop, module)) continue;
    for (const way of waysOf(state, loop)) {
      if (way.as === "keep" && way.input === 0) continue;
      state.assign(loop, way);
      const cost = state.cost();
      if ((state.usedInputs(panel)[module] ?? 0) < used && cost < bestCost) {
        bestCost = cost;
        best = { loop, way };
      }
      state.assign(loop, from);
    }
  }
  if (!best) return false;
  state.assign(best.loop, best.way);
  dropEmptyInputs(state);
  return true;
}

function holdsAlone(state: GreedyState, loop: number, module: number): boolean {
  const assignment = state.assignments[loop];
  if (assignment?.as === "repair") {
    return state.loops[loop]?.offers.repair[assignment.at]?.module === state.problem.modules[module]?.type;
  }
  if (assignment?.as !== "keep" || assignment.module !== module) return false;
  return state.inputs.get(assignment.input)?.loops.length === 1;
}
