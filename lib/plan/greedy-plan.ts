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
  const input = way.as === "keep" ? state.emptyInput(panel, way.module) : -1;
  state.assignOnly(loop, way.as === "keep" ? { ...way, input } : way);
}

/** Keeps every loop that one module type can keep, or none; the rest by the cheapest other way. */
function startFrom(state: GreedyState, start: number | "nothing"): void {
  state.loops.forEach((facts, loop) => {
    if (start !== "nothing" && facts.keep[start]) {
      place(state, loop, { as: "keep", module: start, input: -1 });
      return;
    }
    const wired = (way: Assignment) => (way.as === "without" ? 0 : way.as === "repair" ? 1 : 2);
    const fewest = Math.min(...facts.alone.map(wired));
    const best = cheapestWay(
      state,
      loop,
      facts.alone.filter((way) => wired(way) === fewest),
      false,
    );
    if (best) place(state, loop, best.way);
  });
  for (const panel of state.problem.panels.keys()) state.fitPanel(panel);
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
  for (const { loop, assignment } of taken) state.assignOnly(loop, assignment);
  state.fitPanel(state.loops[taken[0]?.loop ?? 0]?.panel ?? 0);
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
    const without = facts.alone.filter((way) => way.as === "without");
    const best = cheapestWay(state, loop, without, cheap);
    if (best) otherwise.set(loop, best.way);
    for (const way of facts.alone) {
      if (way.as === "without") continue;
      const module = way.as === "keep" ? way.module : (facts.repairModules[way.at] ?? 0);
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
    if (!placed.has(loop) && way) state.assignOnly(loop, way);
  }
  state.fitPanel(state.loops[loops[0] ?? 0]?.panel ?? 0);
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

/** Ways onto the inputs in use that the loop may share. */
function joinsOf(state: GreedyState, loop: number): Assignment[] {
  const facts = state.loops[loop];
  if (!facts || facts.joinClass < 0 || state.problem.join.maxLoops < 2) return [];
  const ways: Assignment[] = [];
  state.inputsAt[facts.panel]?.forEach((inputs, module) => {
    if (!facts.keep[module]) return;
    for (const input of inputs) {
      const loops = state.inputs[input]?.loops ?? [];
      const [first] = loops;
      if (first === undefined || state.loops[first]?.joinClass !== facts.joinClass || loops.includes(loop)) continue;
      if (state.mayShare([...loops, loop], module)) ways.push({ as: "keep", module, input });
    }
  });
  return ways;
}

function moveLoop(state: GreedyState, loop: number): boolean {
  const facts = state.loops[loop];
  const from = state.assignments[loop];
  if (!facts || !from) return false;
  let bestCost = state.cost();
  let best: Assignment | undefined;
  for (const ways of [facts.alone, joinsOf(state, loop)]) {
    for (const way of ways) {
      const target = way.as === "keep" && way.input < 0 ? alone(state, loop, way.module) : way;
      state.assign(loop, target);
      const cost = state.cost();
      if (cost >= bestCost) continue;
      bestCost = cost;
      best = target;
    }
  }
  state.assign(loop, best ?? from);
  return best !== undefined;
}

function alone(state: GreedyState, loop: number, module: number): Assignment {
  return { as: "keep", module, input: state.emptyInput(state.loops[loop]?.panel ?? 0, module) };
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
      restore(state, taken);
      break;
    }
  }
  moveLoops(state, panel);
}

function freeOneInput(state: GreedyState, panel: number, module: number): boolean {
  const used = state.usedInputs(panel)[module] ?? 0;
  let best: { loop: number; way: Assignment } | undefined;
  let bestCost = Infinity;
  for (const loop of loopsAt(state, panel)) {
    const from = state.assignments[loop];
    if (!from || !holdsAlone(state, loop, module)) continue;
    for (const way of [...(state.loops[loop]?.alone ?? []), ...joinsOf(state, loop)]) {
      if (way.as === "keep" && way.input < 0 && way.module === module) continue;
      state.assign(loop, way.as === "keep" && way.input < 0 ? alone(state, loop, way.module) : way);
      const cost = state.cost();
      if ((state.usedInputs(panel)[module] ?? 0) < used && cost < bestCost) {
        bestCost = cost;
        best = { loop, way: state.assignments[loop] ?? way };
      }
      state.assign(loop, from);
    }
  }
  if (!best) return false;
  state.assign(best.loop, best.way);
  return true;
}

function holdsAlone(state: GreedyState, loop: number, module: number): boolean {
  const assignment = state.assignments[loop];
  if (assignment?.as === "repair") {
    return state.loops[loop]?.offers.repair[assignment.at]?.module === state.problem.modules[module]?.type;
  }
  if (assignment?.as !== "keep" || assignment.module !== module) return false;
  return state.inputs[assignment.input]?.loops.length === 1;
}
