import { InputError } from "../problems/input-error.js";
import type { Cents } from "../quantities/money.js";

/** One loop of a panel and what each EOL value would cost it. */
export interface EolLoop {
  readonly id: string;
  /** Cost of bringing this loop to a value; 0 where it already reads in the band set for it. [cents] */
  readonly centsAt: readonly { readonly eolOhms: number; readonly cents: Cents }[];
}

/** A module type as far as its EOL setting goes. */
export interface EolModule {
  readonly type: string;
  readonly inputs: number;
  /** How many inputs share one EOL setting: 1, a bank, or all of them. Divides `inputs`. */
  readonly inputsPerSetting: number;
  /** Values a setting can take. [Ω] */
  readonly eolOhms: readonly number[];
  /** One more module, bought and fitted. [cents] */
  readonly moduleCents: Cents;
}

/** Which values, which loops on them, at what cost. */
export interface EolValueChoice {
  readonly module: string;
  readonly modules: number;
  /** One entry per setting that is used: its value and the loops on it. */
  readonly settings: readonly { readonly eolOhms: number; readonly loops: readonly string[] }[];
  /** Loops that need work on their resistor. */
  readonly changed: readonly string[];
  readonly loopCents: Cents;
  readonly moduleCents: Cents;
  readonly totalCents: Cents;
  /** Whether every combination of values was tried. */
  readonly proved: boolean;
  readonly words: string;
}

/**
 * Which EOL value each module or bank is set to, so that the loops of one panel cost least: swap resistors, or buy a
 * further module so that fewer need swapping. Per module type the choices for the least number of modules and for
 * each number above it that still saves resistor work; cheapest first over all types. Every combination of values
 * is tried, and for each the loops are placed at least cost (shortest augmenting paths), so the first is the optimum
 * for the prices entered unless `proved` says otherwise.
 * @throws {@link InputError} when there is no loop or module, or a loop has no price at any value of a module.
 * @example eolValueFor({ loops: [{ id: "1", centsAt: [{ eolOhms: 2200, cents: 0 }, { eolOhms: 4700, cents: 900 }] }],
 *   modules: [{ type: "ten", inputs: 10, inputsPerSetting: 10, eolOhms: [2200, 4700], moduleCents: 13800 }] });
 */
export function eolValueFor(asked: {
  readonly loops: readonly EolLoop[];
  readonly modules: readonly EolModule[];
}): EolValueChoice[] {
  const { loops, modules } = asked;
  if (loops.length === 0 || modules.length === 0) {
    throw new InputError({
      field: "loops, modules",
      got: `${loops.length} loops, ${modules.length} modules`,
      expected: "one of each or more",
    });
  }
  return modules
    .flatMap((module) => choicesOf(loops, module))
    .sort((a, b) => a.totalCents - b.totalCents || a.changed.length - b.changed.length || a.modules - b.modules);
}

/** More combinations than this are not all tried. */
const MOST_COMBINATIONS = 20_000;

function choicesOf(loops: readonly EolLoop[], module: EolModule): EolValueChoice[] {
  const { inputs, inputsPerSetting } = module;
  if (!(Number.isInteger(inputs) && inputs > 0 && inputsPerSetting > 0 && inputs % inputsPerSetting === 0)) {
    throw new InputError({
      field: "inputsPerSetting",
      got: `${inputsPerSetting} of ${inputs} inputs`,
      expected: "a divisor of the module's inputs",
    });
  }
  const costs = loops.map((loop) => module.eolOhms.map((ohms) => centsAt(loop, ohms)));
  costs.forEach((row, i) => {
    if (row.every((cents) => cents === null)) {
      const got = `loop ${loops[i]?.id ?? ""} without a price at ${module.eolOhms.join(", ")} Ω`;
      throw new InputError({
        field: "centsAt",
        got,
        expected: `a price at one value or more of module ${module.type}`,
      });
    }
  });
  const values = undominated(costs, module.eolOhms);
  const settingsPerModule = inputs / inputsPerSetting;
  const fewest = Math.ceil(loops.length / inputs);
  const choices: EolValueChoice[] = [];
  // With one setting more per value than the fewest, every loop can have the value it likes best.
  const most = fewest + Math.ceil(values.length / settingsPerModule);
  for (let count = fewest; count <= most; count++) {
    const choice = bestFor({ loops, module, costs, values, count });
    if (choice === null) continue;
    if (choices.every((fewer) => fewer.loopCents > choice.loopCents)) choices.push(choice);
  }
  return choices;
}

function centsAt(loop: EolLoop, ohms: number): Cents | null {
  return loop.centsAt.find((price) => price.eolOhms === ohms)?.cents ?? null;
}

/** Indexes of the values that are not, for every loop, at best as cheap as some other value. */
function undominated(costs: readonly (readonly (Cents | null)[])[], eolOhms: readonly number[]): number[] {
  const at = (row: readonly (Cents | null)[], v: number): number => row[v] ?? Number.POSITIVE_INFINITY;
  const beats = (w: number, v: number): boolean =>
    costs.every((row) => at(row, w) <= at(row, v)) && (w < v || costs.some((row) => at(row, w) < at(row, v)));
  const all = eolOhms.map((_, v) => v);
  return all.filter((v) => !all.some((w) => w !== v && beats(w, v)));
}

interface Placing {
  readonly loops: readonly EolLoop[];
  readonly module: EolModule;
  readonly costs: readonly (readonly (Cents | null)[])[];
  readonly values: readonly number[];
  readonly count: number;
}

function bestFor(placing: Placing): EolValueChoice | null {
  const { module, costs, values, count } = placing;
  const settings = (count * module.inputs) / module.inputsPerSetting;
  let best: { cents: number; seats: readonly number[] } | null = null;
  let tried = 0;
  let proved = true;
  for (const split of compositions(settings, values.length)) {
    if (++tried > MOST_COMBINATIONS) {
      proved = false;
      break;
    }
    const room = split.map((n) => n * module.inputsPerSetting);
    const found = placeLoops(
      costs.map((row) => values.map((v) => row[v] ?? null)),
      room,
    );
    if (found !== null && (best === null || found.cents < best.cents)) best = found;
  }
  return best === null ? null : choiceOf(placing, best, proved);
}

function choiceOf(
  { loops, module, costs, values, count }: Placing,
  best: { readonly cents: number; readonly seats: readonly number[] },
  proved: boolean,
): EolValueChoice {
  const settings = values.flatMap((v, place) => {
    const ids = loops.filter((_, i) => best.seats[i] === place).map((loop) => loop.id);
    const shares: { eolOhms: number; loops: string[] }[] = [];
    for (let from = 0; from < ids.length; from += module.inputsPerSetting) {
      shares.push({ eolOhms: module.eolOhms[v] ?? 0, loops: ids.slice(from, from + module.inputsPerSetting) });
    }
    return shares;
  });
  const changed = loops.filter((_, i) => (costs[i]?.[values[best.seats[i] ?? 0] ?? 0] ?? 0) > 0).map((loop) => loop.id);
  const moduleCents = count * module.moduleCents;
  const set = settings.map((s) => `${s.eolOhms} Ω for ${s.loops.length}`).join(", ");
  return {
    module: module.type,
    modules: count,
    settings,
    changed,
    loopCents: best.cents,
    moduleCents,
    totalCents: best.cents + moduleCents,
    proved,
    words: `${count} × ${module.type}: ${set}; resistor work on ${changed.length} of ${loops.length} loops`,
  };
}

/** Every way to split `total` settings among `parts` values. */
function* compositions(total: number, parts: number): Generator<readonly number[]> {
  if (parts === 1) {
    yield [total];
    return;
  }
  for (let first = total; first >= 0; first--) {
    for (const rest of compositions(total - first, parts - 1)) yield [first, ...rest];
  }
}

/**
 * Puts each loop on one value within the room of each, at least total cost: loops one by one, each along the
 * cheapest chain of moves that makes room. Null when they do not fit.
 */
function placeLoops(
  costs: readonly (readonly (number | null)[])[],
  room: readonly number[],
): { cents: number; seats: readonly number[] } | null {
  const seats: number[] = [];
  const used = room.map(() => 0);
  for (let loop = 0; loop < costs.length; loop++) {
    const chain = cheapestChain(costs, room, used, seats, loop);
    if (chain === null) return null;
    let moving = loop;
    for (const step of chain) {
      seats[moving] = step.value;
      if (step.pushes === null) used[step.value] = (used[step.value] ?? 0) + 1;
      else moving = step.pushes;
    }
  }
  return { cents: seats.reduce((sum, value, i) => sum + (costs[i]?.[value] ?? 0), 0), seats };
}

interface ChainStep {
  readonly value: number;
  /** The loop that leaves this value to make room, or null when there was room. */
  readonly pushes: number | null;
}

function cheapestChain(
  costs: readonly (readonly (number | null)[])[],
  room: readonly number[],
  used: readonly number[],
  seats: readonly number[],
  loop: number,
): ChainStep[] | null {
  const cost = (i: number, v: number): number => costs[i]?.[v] ?? Number.POSITIVE_INFINITY;
  const reach = room.map((_, v) => cost(loop, v));
  const via: ({ readonly from: number; readonly pushed: number } | null)[] = room.map(() => null);
  // Bellman–Ford over the few values; an edge from→to moves the seated loop for which that is cheapest.
  for (let round = 1; round < room.length; round++) {
    for (let seated = 0; seated < seats.length; seated++) {
      const from = seats[seated] ?? 0;
      for (let to = 0; to < room.length; to++) {
        const cents = (reach[from] ?? 0) + cost(seated, to) - cost(seated, from);
        if (to !== from && cents < (reach[to] ?? 0)) {
          reach[to] = cents;
          via[to] = { from, pushed: seated };
        }
      }
    }
  }
  let end = -1;
  room.forEach((size, v) => {
    const free = (used[v] ?? 0) < size && Number.isFinite(reach[v] ?? 0);
    if (free && (end < 0 || (reach[v] ?? 0) < (reach[end] ?? 0))) end = v;
  });
  if (end < 0) return null;
  const chain: ChainStep[] = [{ value: end, pushes: null }];
  for (let step = via[end] ?? null; step !== null; step = via[step.from] ?? null) {
    chain.unshift({ value: step.from, pushes: step.pushed });
  }
  return chain;
}
