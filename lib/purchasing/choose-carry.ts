import type { JointCounts } from "./joint-counts.js";

export interface CarryChoice {
  readonly groups: readonly JointCounts[];
  readonly tied: readonly (readonly JointCounts[])[];
  readonly confidence: number;
  readonly tripCents: number;
  readonly returnCents: (code: string) => number;
}

type Carry = Map<string, number>;

/** Up to this many combinations of quantities all are tried. */
const MOST_COMBINATIONS = 20_000;

/** P(need ≤ carry) of one distribution: its states with every count covered, added up. */
function chanceOf({ codes, states }: JointCounts, carry: ReadonlyMap<string, number>): number {
  const most = codes.map((code) => carry.get(code) ?? 0);
  let sum = 0;
  for (const { counts, probability } of states) {
    if (counts.every((count, index) => count <= (most[index] ?? 0))) sum += probability;
  }
  return Math.min(1, sum);
}

/**
 * Probability that every article suffices: product over independent groups, each from its joint distribution. For
 * articles tied together without one, max(0, 1 − Σ shortage) to min(single figures), the bounds of Fréchet.
 */
export function jointChance({
  groups,
  tied,
  carry,
}: {
  readonly groups: readonly JointCounts[];
  readonly tied: readonly (readonly JointCounts[])[];
  readonly carry: ReadonlyMap<string, number>;
}): { readonly low: number; readonly high: number } {
  let low = 1;
  for (const group of groups) low *= chanceOf(group, carry);
  let high = low;
  for (const articles of tied) {
    const chances = articles.map((article) => chanceOf(article, carry));
    low *= Math.max(0, 1 - chances.reduce((sum, chance) => sum + 1 - chance, 0));
    high *= Math.min(1, ...chances);
  }
  return { low, high };
}

/**
 * Quantities for the confidence at the least expected return cost, and quantities of least return + trip cost.
 * Few combinations: all are tried. Otherwise one unit after another is added where it buys the most (log) probability
 * for its return cost, then units that turn out not to be needed are taken off again.
 */
export function chooseCarry(choice: CarryChoice): { carry: Carry; cheapest: Carry; method: string } {
  const ranges = rangesOf(choice);
  const combinations = ranges.reduce((product, { most }) => product * (most + 1), 1);
  const states = choice.groups.reduce((sum, group) => sum + group.states.length, 1);
  if (combinations * states <= MOST_COMBINATIONS * 500 && combinations <= MOST_COMBINATIONS) {
    return { ...tryAll(choice, ranges), method: "every combination of quantities was tried" };
  }
  return { ...stepByStep(choice, ranges), method: "found step by step; the least cost is not proved" };
}

interface Range {
  readonly code: string;
  readonly most: number;
  /** Expected cost of what comes back, by the number carried. */
  readonly idleCents: readonly number[];
}

function rangesOf({ groups, tied, returnCents }: CarryChoice): Range[] {
  const all = [...groups, ...tied.flat()];
  return all.flatMap(({ codes, states }) =>
    codes.map((code, index) => {
      const most = states.reduce((top, { counts }) => Math.max(top, counts[index] ?? 0), 0);
      const idleCents = Array.from({ length: most + 1 }, (_, carried) => {
        const idle = states.reduce((sum, s) => sum + s.probability * Math.max(0, carried - (s.counts[index] ?? 0)), 0);
        return idle * returnCents(code);
      });
      return { code, most, idleCents };
    }),
  );
}

const idle = (ranges: readonly Range[], carry: ReadonlyMap<string, number>): number =>
  ranges.reduce((sum, { code, idleCents }) => sum + (idleCents[carry.get(code) ?? 0] ?? 0), 0);

const units = (carry: ReadonlyMap<string, number>): number =>
  [...carry.values()].reduce((sum, count) => sum + count, 0);

function tryAll(choice: CarryChoice, ranges: readonly Range[]): { carry: Carry; cheapest: Carry } {
  const all: Carry = new Map(ranges.map(({ code, most }) => [code, most]));
  let carry = { map: all, cents: Number.POSITIVE_INFINITY, units: 0 };
  let cheapest = { map: all, cents: Number.POSITIVE_INFINITY };
  const now: Carry = new Map();
  const walk = (index: number): void => {
    const range = ranges[index];
    if (range) {
      for (let count = 0; count <= range.most; count++) {
        now.set(range.code, count);
        walk(index + 1);
      }
      return;
    }
    const { low } = jointChance({ ...choice, carry: now });
    const cents = idle(ranges, now);
    const total = units(now);
    const fewer = cents < carry.cents - 1e-9 || (cents < carry.cents + 1e-9 && total < carry.units);
    if (low >= choice.confidence - 1e-12 && fewer) carry = { map: new Map(now), cents, units: total };
    const both = cents + choice.tripCents * (1 - low);
    if (both < cheapest.cents - 1e-9) cheapest = { map: new Map(now), cents: both };
  };
  walk(0);
  return { carry: carry.map, cheapest: cheapest.map };
}

function stepByStep(choice: CarryChoice, ranges: readonly Range[]): { carry: Carry; cheapest: Carry } {
  const low = (carry: Carry) => jointChance({ ...choice, carry }).low;
  const changed = (carry: Carry, code: string, by: number): Carry =>
    new Map(carry).set(code, (carry.get(code) ?? 0) + by);
  const both = (carry: Carry) => idle(ranges, carry) + choice.tripCents * (1 - low(carry));
  // Start where each article alone reaches the confidence: the joint figure cannot be there with less.
  let carry: Carry = new Map(
    ranges.map(({ code, most }) => {
      const alone = [...choice.groups, ...choice.tied.flat()].find(({ codes }) => codes.includes(code));
      const others = new Map(ranges.map((range) => [range.code, range.most]));
      let count = 0;
      while (alone && count < most && chanceOf(alone, others.set(code, count)) < choice.confidence) count++;
      return [code, count];
    }),
  );
  const steps: Carry[] = [carry];
  while (low(carry) < choice.confidence) {
    let best: { readonly carry: Carry; readonly worth: number } | undefined;
    const before = Math.log(Math.max(1e-300, low(carry)));
    for (const { code, most, idleCents } of ranges) {
      const count = carry.get(code) ?? 0;
      if (count >= most) continue;
      const next = changed(carry, code, 1);
      const cost = (idleCents[count + 1] ?? 0) - (idleCents[count] ?? 0);
      const worth = (Math.log(Math.max(1e-300, low(next))) - before) / (cost + 1);
      if (!best || worth > best.worth) best = { carry: next, worth };
    }
    if (!best) break;
    carry = best.carry;
    steps.push(carry);
  }
  for (const { code } of [...ranges].sort((a, b) => choice.returnCents(b.code) - choice.returnCents(a.code))) {
    while ((carry.get(code) ?? 0) > 0 && low(changed(carry, code, -1)) >= choice.confidence)
      carry = changed(carry, code, -1);
  }
  let cheapest = carry;
  for (let improved = true; improved; ) {
    improved = false;
    for (const { code, most } of ranges) {
      for (const by of [1, -1]) {
        const count = (cheapest.get(code) ?? 0) + by;
        if (count < 0 || count > most) continue;
        const next = changed(cheapest, code, by);
        if (both(next) >= both(cheapest) - 1e-9) continue;
        cheapest = next;
        improved = true;
      }
    }
  }
  return { carry, cheapest };
}
