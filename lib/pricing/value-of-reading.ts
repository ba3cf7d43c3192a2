import { InputError } from "../problems/input-error.js";
import { type Cents, roundCents } from "../quantities/money.js";

/** Probability of each condition; adds to 1. Conditions left out are impossible. */
export type Posterior = Readonly<Record<string, number>>;

export interface ReadingValueInput {
  /** What each treatment costs under each condition. A treatment without a figure for a condition cannot be chosen. */
  readonly treatments: readonly {
    readonly treatment: string;
    readonly centsByCondition: Readonly<Record<string, Cents>>;
  }[];
  /** What is believed now. */
  readonly before: Posterior;
  /** What the reading may show, how likely, and what would be believed then. Must average to `before`. */
  readonly after: readonly { readonly outcome: string; readonly probability: number; readonly posterior: Posterior }[];
  /** What taking the reading costs: minutes at the rate. [cents] */
  readonly readingCents: Cents;
}

export interface ReadingValue {
  /** Cheapest treatment now and its expected cost. */
  readonly now: { readonly treatment: string; readonly meanCents: Cents };
  readonly outcomes: readonly {
    readonly outcome: string;
    readonly probability: number;
    readonly treatment: string;
    readonly meanCents: Cents;
  }[];
  /** Expected cost saved by deciding after the reading; never below 0. */
  readonly savingCents: Cents;
  /** Saving less what the reading costs. */
  readonly netCents: Cents;
  /** Standard deviation of the loop's cost now, and the mean of it after the reading. */
  readonly sdBeforeCents: number;
  readonly sdAfterCents: number;
  /** Whether any outcome changes the treatment; where none does, the reading saves nothing. */
  readonly changesTreatment: boolean;
}

/**
 * Value of one more reading in money: min_t Σ p(c)·cost(t, c) − Σ_o p(o)·min_t Σ p(c | o)·cost(t, c) − cost of the
 * reading (expected value of sample information, one step ahead).
 * @throws {@link InputError} when probabilities do not add to 1, the outcomes do not average to `before`, or no
 * treatment has a figure for every possible condition.
 * @example valueOfReading({ treatments, before: { open: 0.5, soundNoEol: 0.5 }, after, readingCents: 170 }).netCents
 */
export function valueOfReading({ treatments, before, after, readingCents }: ReadingValueInput): ReadingValue {
  check(before, after);
  const now = cheapest(treatments, before);
  const outcomes = after
    .filter(({ probability }) => probability > 0)
    .map(({ outcome, probability, posterior }) => ({ outcome, probability, ...cheapest(treatments, posterior) }));
  const then = outcomes.reduce((sum, { probability, mean }) => sum + probability * mean, 0);
  const savingCents = Math.max(0, roundCents(now.mean - then));
  return {
    now: { treatment: now.treatment, meanCents: roundCents(now.mean) },
    outcomes: outcomes.map(({ outcome, probability, treatment, mean }) => ({
      outcome,
      probability,
      treatment,
      meanCents: roundCents(mean),
    })),
    savingCents,
    netCents: savingCents - readingCents,
    sdBeforeCents: now.sd,
    sdAfterCents: outcomes.reduce((sum, { probability, sd }) => sum + probability * sd, 0),
    changesTreatment: outcomes.some(({ treatment }) => treatment !== now.treatment),
  };
}

function cheapest(treatments: ReadingValueInput["treatments"], posterior: Posterior) {
  const possible = Object.entries(posterior).filter(([, probability]) => probability > 0);
  let best: { readonly treatment: string; readonly mean: number; readonly sd: number } | undefined;
  for (const { treatment, centsByCondition } of treatments) {
    let mean = 0;
    let square = 0;
    for (const [condition, probability] of possible) {
      const cents = centsByCondition[condition] ?? Number.POSITIVE_INFINITY;
      mean += probability * cents;
      square += probability * cents * cents;
    }
    if (!Number.isFinite(mean) || (best && mean >= best.mean)) continue;
    best = { treatment, mean, sd: Math.sqrt(Math.max(0, square - mean * mean)) };
  }
  if (best) return best;
  const expected = "one treatment with a cost for every possible condition";
  throw new InputError({ field: "treatments", got: treatments.map((t) => t.treatment).join(", ") || "none", expected });
}

function check(before: Posterior, after: ReadingValueInput["after"]): void {
  const oneOf = (field: string, values: readonly number[]) => {
    const sum = values.reduce((total, value) => total + value, 0);
    if (values.every((value) => value >= 0) && Math.abs(sum - 1) <= 1e-6) return;
    throw new InputError({ field, got: `probabilities adding to ${sum}`, expected: "0 or more each, adding to 1" });
  };
  oneOf("before", Object.values(before));
  oneOf(
    "after",
    after.map(({ probability }) => probability),
  );
  for (const { outcome, posterior } of after) oneOf(`posterior after ${outcome}`, Object.values(posterior));
  const conditions = new Set([...Object.keys(before), ...after.flatMap(({ posterior }) => Object.keys(posterior))]);
  for (const condition of conditions) {
    const mean = after.reduce((sum, { probability, posterior }) => sum + probability * (posterior[condition] ?? 0), 0);
    if (Math.abs(mean - (before[condition] ?? 0)) <= 1e-3) continue;
    const got = `${condition}: ${mean.toFixed(4)} on average after, ${(before[condition] ?? 0).toFixed(4)} before`;
    throw new InputError({ field: "after", got, expected: "outcomes that average to what is believed before" });
  }
}
