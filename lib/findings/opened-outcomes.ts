import { at, conditionCount } from "./conditions.js";
import type { OutcomeTable } from "./outcome-loss.js";
import type { TakenReadings } from "./taken-readings.js";

/** Over-range, no change, a higher finite reading, a low one: under conditions whose loop simply opens. */
const usual = [0.985, 0.005, 0.006, 0.004] as const;

const template: readonly number[] = usual.flatMap((chance) => new Array<number>(conditionCount).fill(chance));

/**
 * What opening one more opening may show: over-range, no change, a higher finite reading, a low one; under each
 * condition, given which openings were read before. Shares are guesses (common practice, no source).
 */
export function openedOutcomes(openings: number, taken: TakenReadings, opening: number): OutcomeTable {
  const unread = Math.max(1, openings - taken.openings.length);
  let lastOpen = 0;
  let unchanged = 0;
  for (let i = 0; i < taken.opened.length; i += 1) {
    if (Number.isFinite(taken.opened[i])) unchanged += 1;
    else lastOpen = Math.max(lastOpen, taken.openings[i] ?? 0);
  }
  // Chance that the trouble lies before the opening asked for, given that those up to the last open one showed none.
  const beyond = Math.min(0.97, Math.max(0.02, (opening - lastOpen) / (openings - lastOpen + 1)));
  const bypassed = unchanged > 0 ? 0.15 : Math.min(0.98, 1 / unread + 0.1);
  const doubled = Math.min(0.98, 0.35 + 0.65 / unread);
  const chance = template.slice();
  const row = (c: number, open: number, same: number, higher: number, low: number): void => {
    chance[c] = open;
    chance[conditionCount + c] = same;
    chance[2 * conditionCount + c] = higher;
    chance[3 * conditionCount + c] = low;
  };
  row(at.bypassed, 1 - bypassed, bypassed, 0, 0);
  row(at.parallelContacts, 0.01, 0.99, 0, 0);
  row(at.shorted, 1 - beyond, beyond, 0, 0);
  row(at.leakage, 1 - beyond, 0, beyond, 0);
  row(at.doubleEol, 1 - doubled, 0, doubled, 0);
  row(at.doubledPair, 0.02, 0, 0.98, 0);
  row(at.normallyOpen, 0.01, 0.01, 0, 0.98);
  row(at.lifeSafety, 0.9, 0.1, 0, 0);
  row(at.unexplained, 0.35, 0.3, 0.25, 0.1);
  row(at.foreignVoltage, 0.4, 0.1, 0.35, 0.15);
  return { count: 4, chance };
}

/** All over-range, some unchanged, all unchanged, a higher finite reading, a low one: where the loop simply opens. */
const usualEvery = [0.98, 0.006, 0.002, 0.008, 0.004] as const;

/**
 * What opening every opening not yet read may show: all over-range, some unchanged, none changes anything, a higher
 * finite reading, a low one. Shares are guesses (common practice, no source).
 */
export function everyOpenedOutcomes(openings: number, taken: TakenReadings): OutcomeTable {
  let lastOpen = 0;
  let unchanged = 0;
  for (let i = 0; i < taken.opened.length; i += 1) {
    if (Number.isFinite(taken.opened[i])) unchanged += 1;
    else lastOpen = Math.max(lastOpen, taken.openings[i] ?? 0);
  }
  // A short or a leak is evenly likely at each place beyond the last opening that showed none; the last is past them all.
  const before = (openings - lastOpen) / (openings - lastOpen + 1);
  const chance = usualEvery.flatMap((share) => new Array<number>(conditionCount).fill(share));
  const row = (c: number, shares: readonly [number, number, number, number, number]): void => {
    for (const [o, share] of shares.entries()) chance[o * conditionCount + c] = share;
  };
  const further = unchanged > 0 ? 0.15 : 0.97;
  row(at.bypassed, [1 - further, further - 0.02, 0.02, 0, 0]);
  row(at.parallelContacts, [0.005, 0.005, 0.99, 0, 0]);
  row(at.shorted, [1 - before, 0.7 * before, 0.3 * before, 0, 0]);
  row(at.leakage, [1 - before, 0, 0, before, 0]);
  row(at.doubleEol, [0.02, 0, 0, 0.98, 0]);
  row(at.doubledPair, [0.02, 0, 0, 0.98, 0]);
  row(at.normallyOpen, [0.01, 0, 0.01, 0, 0.98]);
  row(at.lifeSafety, [0.9, 0, 0.1, 0, 0]);
  row(at.unexplained, [0.3, 0.2, 0.15, 0.25, 0.1]);
  row(at.foreignVoltage, [0.4, 0.05, 0.05, 0.35, 0.15]);
  return { count: 5, chance };
}
