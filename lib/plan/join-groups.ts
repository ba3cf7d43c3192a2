import type { PermittedOffers } from "./permitted-offers.js";
import { defaultMaxOpenings, type KeepOffer, type PlanningProblem } from "./problem.js";

/** Loops that may share one input of one module type, as indices in loop order. */
export interface JoinGroup {
  readonly loops: readonly number[];
  readonly module: string;
}

/** Loops (as indices) that could be joined with one another, by panel and join key; shared returns left out. */
export function joinableSets(problem: PlanningProblem, offers: readonly PermittedOffers[]): readonly number[][] {
  const shared = new Set((problem.together ?? []).flatMap((set) => set.loops));
  const sets = new Map<string, number[]>();
  offers.forEach(({ loop, keep }, index) => {
    if (loop.joinKey === null || keep.length === 0 || shared.has(loop.id)) return;
    const key = JSON.stringify([loop.panel, loop.joinKey]);
    const set = sets.get(key);
    if (set) set.push(index);
    else sets.set(key, [index]);
  });
  return [...sets.values()];
}

/** Number of groups of two or more that {@link joinGroups} would look at, limits aside. */
export function countJoinGroups(problem: PlanningProblem, offers: readonly PermittedOffers[]): number {
  let count = 0;
  for (const set of joinableSets(problem, offers)) {
    let ways = set.length;
    for (let size = 2; size <= Math.min(problem.join.maxLoops, set.length); size += 1) {
      ways = (ways * (set.length - size + 1)) / size;
      count += ways;
    }
  }
  return count * problem.modules.length;
}

/** Every group of two or more loops that may share an input, by module type. */
export function joinGroups(problem: PlanningProblem, offers: readonly PermittedOffers[]): readonly JoinGroup[] {
  const groups: JoinGroup[] = [];
  const maxOpenings = problem.join.maxOpenings ?? defaultMaxOpenings;
  for (const { type, maxOhms } of problem.modules) {
    for (const set of joinableSets(problem, offers)) {
      const able = set.filter((index) => offers[index]?.keep.some((offer) => offer.module === type));
      const extend = (members: readonly number[], from: number, ohms: number, openings: number): void => {
        if (members.length > 1) groups.push({ loops: members, module: type });
        if (members.length === problem.join.maxLoops) return;
        for (let at = from; at < able.length; at += 1) {
          const index = able[at] ?? 0;
          const loop = offers[index]?.loop;
          const nextOhms = ohms + (typeof loop?.ohms === "number" ? loop.ohms : Infinity);
          const nextOpenings = openings + (loop?.openings ?? 0);
          if (nextOhms > maxOhms + 1e-9 || (nextOpenings > maxOpenings && members.length > 0)) continue;
          extend([...members, index], at + 1, nextOhms, nextOpenings);
        }
      };
      extend([], 0, 0, 0);
    }
  }
  return groups;
}

/** Which of the joined loops carries the end-of-line resistor at the least cost (the first of equals). */
export function cheapestCarrier(offers: readonly KeepOffer[]): number {
  let best = 0;
  const difference = (index: number) => (offers[index]?.setCents ?? 0) - (offers[index]?.removeCents ?? 0);
  for (let index = 1; index < offers.length; index += 1) if (difference(index) < difference(best)) best = index;
  return best;
}
