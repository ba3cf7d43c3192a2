import { InputError } from "../problems/input-error.js";
import { type Cents, roundCents } from "../quantities/money.js";
import { chooseCarry, jointChance } from "./choose-carry.js";
import { type JointCounts, jointCounts, type LoopOutcome } from "./joint-counts.js";

export interface CarryInput {
  /** Uncertain loops; a loop whose outcome is certain has one outcome of probability 1. */
  readonly loops: readonly { readonly key: string; readonly outcomes: readonly LoopOutcome[] }[];
  /** Wanted probability of no second trip, 0 to below 1. */
  readonly confidence: number;
  /** What one unit that comes back unused costs: restocking, freight, loss of value. Absent = 0. [cents per unit] */
  readonly returnCents?: Readonly<Record<string, Cents>>;
  /** What one second trip costs. [cents] */
  readonly tripCents: Cents;
}

export interface CarryLine {
  readonly code: string;
  /** Mean number needed. */
  readonly meanNeed: number;
  /** Most that can be needed. */
  readonly mostNeed: number;
  /** How many to carry for the wanted confidence over all articles together. */
  readonly carry: number;
  /** Probability that this article alone suffices. */
  readonly enough: number;
  /** Probability of each count from 0 on. */
  readonly chances: readonly number[];
  /** How many to carry where return cost and trip cost together are least, whatever the confidence. */
  readonly cheapest: number;
  readonly loops: readonly string[];
}

export interface CarryList {
  readonly lines: readonly CarryLine[];
  /**
   * Probability that every article suffices at once: one figure where the joint distribution was worked out, else the
   * bounds that hold whatever ties the articles together.
   */
  readonly noSecondTrip: { readonly low: number; readonly high: number };
  readonly expectedReturnCents: Cents;
  readonly expectedTripCents: Cents;
  /** The same figures for the `cheapest` column. */
  readonly cheapest: {
    readonly noSecondTrip: { readonly low: number; readonly high: number };
    readonly expectedReturnCents: Cents;
    readonly expectedTripCents: Cents;
  };
  /** Whether the quantities are the cheapest there are for the confidence, or found step by step. */
  readonly method: string;
}

/**
 * How many devices and parts to take so that, with the wanted confidence, nobody drives a second time. The need of the
 * job is the sum over independent loops of what each outcome takes, by exact convolution, jointly over the articles:
 * P(no second trip) = P(need_a ≤ carry_a for all a), which is less than any single article's figure.
 * Returns are weighed by Σ returnCents·E[(carry − need)⁺], the trip by tripCents·P(something is short).
 * @throws {@link InputError} when probabilities of a loop do not add to 1, or the confidence is not from 0 to below 1.
 * @example carryList({ loops: [{ key: "R004", outcomes }], confidence: 0.9, tripCents: 11800 }).noSecondTrip.low
 */
export function carryList(input: CarryInput): CarryList {
  check(input);
  const { groups, tied } = jointCounts(input.loops);
  const returnCents = (code: string) => input.returnCents?.[code] ?? 0;
  const chosen = chooseCarry({ ...input, groups, tied, returnCents });
  const marginals = [...groups.flatMap(apart), ...tied.flat()].sort((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1));
  const lines = marginals.map((marginal): CarryLine => {
    const code = nameOf(marginal);
    const chances = chancesOf(marginal);
    const carry = chosen.carry.get(code) ?? 0;
    const uses = ({ outcomes }: (typeof input.loops)[number]) =>
      outcomes.some(({ probability, items }) => probability > 0 && items.some((item) => item.code === code));
    return {
      code,
      meanNeed: chances.reduce((sum, chance, count) => sum + chance * count, 0),
      mostNeed: chances.length - 1,
      carry,
      enough: chances.slice(0, carry + 1).reduce((sum, chance) => sum + chance, 0),
      chances,
      cheapest: chosen.cheapest.get(code) ?? 0,
      loops: input.loops.filter(uses).map(({ key }) => key),
    };
  });
  const figures = (carry: ReadonlyMap<string, number>) => {
    const noSecondTrip = jointChance({ groups, tied, carry });
    const expected = lines.reduce((sum, { code, chances }) => {
      const idle = chances.reduce(
        (rest, chance, count) => rest + chance * Math.max(0, (carry.get(code) ?? 0) - count),
        0,
      );
      return sum + returnCents(code) * idle;
    }, 0);
    return {
      noSecondTrip,
      expectedReturnCents: roundCents(expected),
      expectedTripCents: roundCents(input.tripCents * (1 - noSecondTrip.low)),
    };
  };
  return { lines, ...figures(chosen.carry), cheapest: figures(chosen.cheapest), method: chosen.method };
}

const nameOf = ({ codes }: JointCounts): string => codes[0] ?? "";

/** The distribution of each article by itself. */
function apart({ codes, states }: JointCounts): JointCounts[] {
  return codes.map((code, index) => {
    const sums = new Map<number, number>();
    for (const { counts, probability } of states) {
      const count = counts[index] ?? 0;
      sums.set(count, (sums.get(count) ?? 0) + probability);
    }
    return { codes: [code], states: [...sums].map(([count, probability]) => ({ counts: [count], probability })) };
  });
}

function chancesOf({ states }: JointCounts): number[] {
  const most = Math.max(0, ...states.map(({ counts }) => counts[0] ?? 0));
  const chances = Array.from({ length: most + 1 }, () => 0);
  for (const { counts, probability } of states) chances[counts[0] ?? 0] = (chances[counts[0] ?? 0] ?? 0) + probability;
  return chances;
}

function check({ loops, confidence, tripCents }: CarryInput): void {
  const refuse = (field: string, got: string, expected: string) => new InputError({ field, got, expected });
  if (!(confidence >= 0 && confidence < 1)) throw refuse("confidence", `${confidence}`, "0 to below 1");
  if (!(tripCents >= 0)) throw refuse("tripCents", `${tripCents} cents`, "0 or more");
  for (const { key, outcomes } of loops) {
    const sum = outcomes.reduce((total, { probability }) => total + probability, 0);
    if (outcomes.some(({ probability }) => !(probability >= 0)) || Math.abs(sum - 1) > 1e-6) {
      throw refuse(`outcomes of ${key}`, `probabilities adding to ${sum}`, "0 or more each, adding to 1");
    }
    for (const { code, quantity } of outcomes.flatMap(({ items }) => items)) {
      if (Number.isInteger(quantity) && quantity >= 0) continue;
      throw refuse(`quantity of ${code} at ${key}`, `${quantity}`, "a whole number of 0 or more");
    }
  }
}
