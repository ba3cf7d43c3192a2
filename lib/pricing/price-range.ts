import { hoursSpread, type ThreePointHours } from "../labour/hours-spread.js";
import { InputError } from "../problems/input-error.js";
import { type Cents, roundCents } from "../quantities/money.js";
import {
  type CommonFactor,
  factorPoints,
  interpolationNodes,
  lagrangeWeights,
  noFactor,
  type WeightedValue,
} from "./common-factor.js";
import { type Atom, convolve, type GridDistribution, onGrid, quantiles } from "./distribution.js";
import { pertAtoms } from "./pert-atoms.js";

/** One way a loop can turn out: a condition met by the treatment's success or failure. */
export interface PriceOutcome {
  /** 0 to 1; the outcomes of a loop add to 1. */
  readonly probability: number;
  /** Material and everything else without hours, in the money of the range (cost, or sell). [cents] */
  readonly materialCents: number;
  /** Hours of the loop as one three-point estimate: its tasks go well or badly together. */
  readonly hours: ThreePointHours;
  /** The job's common fault rate makes these outcomes more or less likely together. */
  readonly faulty: boolean;
}

export interface PriceRangeInput {
  readonly loops: readonly {
    readonly key: string;
    /** The job's common access factor applies to the hours of this loop. */
    readonly access: boolean;
    readonly outcomes: readonly PriceOutcome[];
  }[];
  /** What does not depend on the loops: material, and pieces of work that vary independently of each other. */
  readonly fixed: {
    readonly materialCents: number;
    readonly hours: readonly ThreePointHours[];
  };
  /** In the money of the range. [cents per hour] */
  readonly centsPerHour: number;
  /** Drawn once for the job. Absent = 1. */
  readonly common?: {
    /** On all hours. */
    readonly crew?: CommonFactor;
    /** On the hours of loops marked `access`. */
    readonly access?: CommonFactor;
    /** On the odds of faulty outcomes: p ∝ p·F for faulty ones. */
    readonly faultRate?: CommonFactor;
  };
}

/** What makes the price uncertain, as a share of its variance. */
export interface RangeDriver {
  readonly cause: "loop" | "crew" | "access" | "faultRate" | "fixedWork";
  /** Loop key, or null for what the job has in common. */
  readonly key: string | null;
  /** Standard deviation that it alone brings. [cents] */
  readonly sdCents: number;
  /** Share of the sum of all drivers' variances; the shares add to 1. */
  readonly varianceShare: number;
}

export interface PriceRange {
  /** What the job is quoted at. */
  readonly meanCents: Cents;
  readonly p10Cents: Cents;
  readonly p50Cents: Cents;
  readonly p90Cents: Cents;
  /** Price that is not exceeded with 1, 2 … 99 %. */
  readonly percentiles: readonly { readonly percent: number; readonly cents: Cents }[];
  /** What adding up the most probable outcomes and likely hours gives; shown beside the mean, never quoted. */
  readonly likelySumCents: Cents;
  /** Largest first. */
  readonly drivers: readonly RangeDriver[];
}

interface LoopAtoms {
  readonly access: boolean;
  readonly outcomes: readonly { readonly outcome: PriceOutcome; readonly hours: readonly Atom[] }[];
}

/** Levels at which the distribution is taken over from one value of the factors to the next. */
const LEVELS = Array.from({ length: 80 }, (_, index) => (index + 0.5) / 80);

/**
 * Range of a job's price. Given the common factors (crew K, access A, fault rate F) the loops are independent:
 * price = Σ material + rate·K·(Σ hours of plain loops + A·Σ hours of access loops + Σ fixed hours), each loop a mixture
 * over its outcomes with a PERT beta for its hours, added up by convolution on a grid of 1/40 standard deviation or finer. The
 * factors are then averaged over: F by quadrature, K and A by quadrature with the quantiles interpolated between a few
 * worked-out values. Mean = E over F of Σ p(outcome | F)·(material + rate·mean hours), with E[K], E[A] of their points.
 * @throws {@link InputError} when probabilities of a loop do not add to 1 or hours are not in rising order.
 */
export function priceRange(input: PriceRangeInput): PriceRange {
  check(input);
  const { crew = noFactor, access = noFactor, faultRate = noFactor } = input.common ?? {};
  const loops: LoopAtoms[] = input.loops.map((loop) => ({
    access: loop.access,
    outcomes: loop.outcomes.map((outcome) => ({ outcome, hours: pertAtoms(outcome.hours) })),
  }));
  const factors = {
    crew: factorPoints({ factor: crew, step: 0.15 }),
    access: factorPoints({ factor: access, step: 0.3 }),
    faultRate: factorPoints({ factor: faultRate, step: 0.6 }),
  };
  const moments = momentsOf(input, factors);
  const sd = Math.sqrt(moments.loops.reduce((sum, { variance }) => sum + variance, moments.fixedVariance));
  const step = Math.max(1, sd / (loops.length > 15 ? 40 : 60));
  const samples = mixture({ input, loops, factors, step });
  const at = Array.from({ length: 99 }, (_, index) => (index + 1) / 100);
  const values = weightedQuantiles(samples, at);
  const percentiles = at.map((_, index) => ({ percent: index + 1, cents: roundCents(values[index] ?? 0) }));
  const percentile = (percent: number) => percentiles[percent - 1]?.cents ?? 0;
  return {
    meanCents: roundCents(moments.mean),
    p10Cents: percentile(10),
    p50Cents: percentile(50),
    p90Cents: percentile(90),
    percentiles,
    likelySumCents: roundCents(likelySum(input)),
    drivers: driversOf(input, moments),
  };
}

interface Factors {
  readonly crew: readonly WeightedValue[];
  readonly access: readonly WeightedValue[];
  readonly faultRate: readonly WeightedValue[];
}

/** Probabilities of a loop's outcomes at one fault rate. */
function chancesAt(outcomes: readonly PriceOutcome[], faultRate: number): number[] {
  const raw = outcomes.map(({ probability, faulty }) => probability * (faulty ? faultRate : 1));
  const total = raw.reduce((sum, value) => sum + value, 0);
  return raw.map((value) => (total > 0 ? value / total : 0));
}

const meanOf = (points: readonly WeightedValue[]): number =>
  points.reduce((sum, { value, weight }) => sum + value * weight, 0);

const varianceOf = (points: readonly WeightedValue[]): number => {
  const mean = meanOf(points);
  return points.reduce((sum, { value, weight }) => sum + weight * (value - mean) ** 2, 0);
};

/** Values with weights: the price at every combination of the common factors, level by level. */
function mixture({
  input,
  loops,
  factors,
  step,
}: {
  readonly input: PriceRangeInput;
  readonly loops: readonly LoopAtoms[];
  readonly factors: Factors;
  readonly step: number;
}): { readonly values: Float64Array; readonly weights: Float64Array } {
  const crewNodes = interpolationNodes(factors.crew, 4);
  const accessNodes = loops.some(({ access }) => access) ? interpolationNodes(factors.access, 3) : [1];
  const accessPoints = accessNodes.length === 1 ? [{ value: accessNodes[0] ?? 1, weight: 1 }] : factors.access;
  const fixedAtoms = input.fixed.hours.map(pertAtoms);
  const size = factors.faultRate.length * factors.crew.length * accessPoints.length * LEVELS.length;
  const values = new Float64Array(size);
  const weights = new Float64Array(size);
  let filled = 0;
  for (const fault of factors.faultRate) {
    const chances = loops.map(({ outcomes }) =>
      chancesAt(
        outcomes.map(({ outcome }) => outcome),
        fault.value,
      ),
    );
    const nodes = crewNodes.map((crew) =>
      accessNodes.map((access) => {
        const distribution = conditional({ input, loops, fixedAtoms, chances, crew, access, step });
        return quantiles({ distribution, step, at: LEVELS });
      }),
    );
    for (const crew of factors.crew) {
      const byCrew = accessNodes.map((_, a) =>
        combined(
          lagrangeWeights(crewNodes, crew.value),
          nodes.map((row) => row[a]),
        ),
      );
      for (const access of accessPoints) {
        values.set(combined(lagrangeWeights(accessNodes, access.value), byCrew), filled);
        weights.fill((fault.weight * crew.weight * access.weight) / LEVELS.length, filled, filled + LEVELS.length);
        filled += LEVELS.length;
      }
    }
  }
  return { values, weights };
}

/** Σ weight · quantiles, level by level. */
function combined(weights: readonly number[], rows: readonly (Float64Array | undefined)[]): Float64Array {
  const sum = new Float64Array(LEVELS.length);
  rows.forEach((row, index) => {
    const weight = weights[index] ?? 0;
    row?.forEach((value, level) => {
      sum[level] = (sum[level] ?? 0) + weight * value;
    });
  });
  return sum;
}

/** Distribution of the price with all common factors given. */
function conditional({
  input,
  loops,
  fixedAtoms,
  chances,
  crew,
  access,
  step,
}: {
  readonly input: PriceRangeInput;
  readonly loops: readonly LoopAtoms[];
  readonly fixedAtoms: readonly (readonly Atom[])[];
  readonly chances: readonly (readonly number[])[];
  readonly crew: number;
  readonly access: number;
  readonly step: number;
}): GridDistribution {
  const rate = input.centsPerHour * crew;
  const parts = loops.map((loop, index) => {
    const perHour = loop.access ? rate * access : rate;
    const scaled = loop.outcomes.map(({ outcome, hours }, o) => ({
      atoms: hours,
      shift: outcome.materialCents,
      scale: perHour,
      weight: chances[index]?.[o] ?? 0,
    }));
    return onGrid(scaled, step);
  });
  for (const atoms of fixedAtoms) {
    parts.push(onGrid([{ atoms, shift: 0, scale: rate, weight: 1 }], step));
  }
  return parts.reduce(
    convolve,
    onGrid([{ atoms: [{ value: input.fixed.materialCents, probability: 1 }], shift: 0, scale: 1, weight: 1 }], step),
  );
}

/** Quantiles of weighted values by a fine histogram of 8,000 cells. */
function weightedQuantiles(
  { values, weights }: { readonly values: Float64Array; readonly weights: Float64Array },
  at: readonly number[],
): Float64Array {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const cells = 8000;
  const width = Math.max((high - low) / cells, 1e-9);
  const masses = new Float64Array(cells + 2);
  for (let index = 0; index < values.length; index++) {
    const place = ((values[index] ?? low) - low) / width;
    const cell = Math.floor(place);
    const part = place - cell;
    masses[cell] = (masses[cell] ?? 0) + (weights[index] ?? 0) * (1 - part);
    masses[cell + 1] = (masses[cell + 1] ?? 0) + (weights[index] ?? 0) * part;
  }
  return quantiles({ distribution: { first: 0, masses }, step: width, at }).map((value) => value + low);
}

interface Moments {
  readonly mean: number;
  readonly loops: readonly { readonly key: string; readonly variance: number }[];
  readonly fixedVariance: number;
  readonly crewVariance: number;
  readonly accessVariance: number;
  readonly faultVariance: number;
}

/** Mean of the price, and the variance that each cause alone brings with everything else at its mean. */
function momentsOf(input: PriceRangeInput, factors: Factors): Moments {
  const rate = input.centsPerHour;
  const crewMean = meanOf(factors.crew);
  const accessMean = meanOf(factors.access);
  const hoursFactor = (access: boolean) => rate * crewMean * (access ? accessMean : 1);
  const spreads = input.loops.map(({ outcomes }) => outcomes.map(({ hours }) => hoursSpread({ hours })));
  const loopMean = (index: number, fault: number) => {
    const loop = input.loops[index];
    if (!loop) return { price: 0, hours: 0 };
    const chances = chancesAt(loop.outcomes, fault);
    let price = 0;
    let hours = 0;
    loop.outcomes.forEach((outcome, o) => {
      const chance = chances[o] ?? 0;
      const mean = spreads[index]?.[o]?.meanHours ?? 0;
      hours += chance * mean;
      price += chance * (outcome.materialCents + hoursFactor(loop.access) * mean);
    });
    return { price, hours };
  };
  const fixed = input.fixed.hours.map((hours) => hoursSpread({ hours }));
  const fixedHours = fixed.reduce((sum, { meanHours }) => sum + meanHours, 0);
  const fixedPrice = input.fixed.materialCents + rate * crewMean * fixedHours;
  const byFault = factors.faultRate.map(({ value, weight }) => ({
    value: input.loops.reduce((sum, _, index) => sum + loopMean(index, value).price, fixedPrice),
    weight,
  }));
  const faultMean = meanOf(factors.faultRate);
  const loops = input.loops.map((loop, index) => {
    const chances = chancesAt(loop.outcomes, faultMean);
    const { price } = loopMean(index, faultMean);
    const variance = loop.outcomes.reduce((sum, outcome, o) => {
      const { meanHours = 0, varianceHours2 = 0 } = spreads[index]?.[o] ?? {};
      const factor = hoursFactor(loop.access);
      const away = outcome.materialCents + factor * meanHours - price;
      return sum + (chances[o] ?? 0) * (factor * factor * varianceHours2 + away * away);
    }, 0);
    return { key: loop.key, variance };
  });
  const hoursOf = (access: boolean) =>
    input.loops.reduce(
      (sum, loop, index) => (loop.access === access ? sum + loopMean(index, faultMean).hours : sum),
      0,
    );
  const accessHours = hoursOf(true);
  const allHours = fixedHours + hoursOf(false) + accessMean * accessHours;
  return {
    mean: meanOf(byFault),
    loops,
    fixedVariance: fixed.reduce((sum, { varianceHours2 }) => sum + (rate * crewMean) ** 2 * varianceHours2, 0),
    crewVariance: varianceOf(factors.crew) * (rate * allHours) ** 2,
    accessVariance: varianceOf(factors.access) * (rate * crewMean * accessHours) ** 2,
    faultVariance: varianceOf(byFault),
  };
}

function driversOf(input: PriceRangeInput, moments: Moments): readonly RangeDriver[] {
  const causes = [
    ...moments.loops.map(({ key, variance }) => ({ cause: "loop" as const, key, variance })),
    { cause: "crew" as const, key: null, variance: moments.crewVariance },
    { cause: "access" as const, key: null, variance: moments.accessVariance },
    { cause: "faultRate" as const, key: null, variance: moments.faultVariance },
    { cause: "fixedWork" as const, key: null, variance: input.fixed.hours.length > 0 ? moments.fixedVariance : 0 },
  ];
  const total = causes.reduce((sum, { variance }) => sum + variance, 0);
  return causes
    .filter(({ variance }) => variance > 0)
    .sort((a, b) => b.variance - a.variance)
    .map(({ cause, key, variance }) => ({
      cause,
      key,
      sdCents: Math.sqrt(variance),
      varianceShare: variance / total,
    }));
}

function likelySum({ loops, fixed, centsPerHour }: PriceRangeInput): number {
  const loopSum = loops.reduce((sum, { outcomes }) => {
    const [likely] = [...outcomes].sort((a, b) => b.probability - a.probability);
    return likely ? sum + likely.materialCents + centsPerHour * likely.hours.likelyHours : sum;
  }, fixed.materialCents);
  return fixed.hours.reduce((sum, { likelyHours }) => sum + centsPerHour * likelyHours, loopSum);
}

function check({ loops, fixed, centsPerHour }: PriceRangeInput): void {
  const refuse = (field: string, got: string, expected: string) => new InputError({ field, got, expected });
  if (!(centsPerHour >= 0)) throw refuse("centsPerHour", `${centsPerHour}`, "0 or more");
  if (!Number.isFinite(fixed.materialCents)) throw refuse("fixed.materialCents", `${fixed.materialCents}`, "an amount");
  for (const { key, outcomes } of loops) {
    const sum = outcomes.reduce((total, { probability }) => total + probability, 0);
    if (outcomes.some(({ probability }) => !(probability >= 0)) || Math.abs(sum - 1) > 1e-6) {
      throw refuse(`outcomes of ${key}`, `probabilities adding to ${sum}`, "0 or more each, adding to 1");
    }
    if (outcomes.some(({ materialCents }) => !Number.isFinite(materialCents))) {
      throw refuse(`materialCents of ${key}`, "not a number", "an amount in cents");
    }
  }
}
