import { InputError } from "../problems/input-error.js";

/**
 * Something the whole job has in common: drawn once, not per loop. Either a log-normal factor of mean 1 with this
 * standard deviation of its logarithm (about its relative spread), or listed values with their probabilities.
 */
export type CommonFactor =
  | { readonly logSd: number }
  | { readonly points: readonly { readonly value: number; readonly probability: number }[] };

export interface WeightedValue {
  readonly value: number;
  readonly weight: number;
}

/** Nothing in common: always 1. */
export const noFactor: CommonFactor = { points: [{ value: 1, probability: 1 }] };

/** Ends of the normal quadrature; what lies outside is 3 in 10,000. */
const END = 3.6;

/**
 * Points of a factor with weights adding to 1. A log-normal exp(σz − σ²/2) is taken at z from −3.6 to 3.6 in equal
 * steps with the normal density as weight: the trapezoidal rule, whose error for a normal falls as exp(−2π²/step²).
 * @throws {@link InputError} when the spread is negative, or listed probabilities do not add to 1.
 */
export function factorPoints({
  factor,
  step,
}: {
  readonly factor: CommonFactor;
  readonly step: number;
}): readonly WeightedValue[] {
  if ("points" in factor) {
    const sum = factor.points.reduce((total, { probability }) => total + probability, 0);
    const bad = factor.points.some(({ value, probability }) => !(value > 0 && probability >= 0));
    if (bad || Math.abs(sum - 1) > 1e-6) {
      const expected = "values above 0 with probabilities adding to 1";
      throw new InputError({ field: "factor.points", got: `probabilities adding to ${sum}`, expected });
    }
    return factor.points
      .filter((p) => p.probability > 0)
      .map(({ value, probability }) => ({ value, weight: probability }));
  }
  const { logSd } = factor;
  if (!(logSd >= 0 && logSd <= 1)) {
    throw new InputError({ field: "factor.logSd", got: `${logSd}`, expected: "0 to 1" });
  }
  if (logSd === 0) return [{ value: 1, weight: 1 }];
  const count = Math.round((2 * END) / step) + 1;
  const z = Array.from({ length: count }, (_, index) => -END + index * ((2 * END) / (count - 1)));
  const densities = z.map((at) => Math.exp((-at * at) / 2));
  const total = densities.reduce((sum, density) => sum + density, 0);
  const raw = z.map((at, index) => ({ value: Math.exp(logSd * at), weight: (densities[index] ?? 0) / total }));
  const mean = raw.reduce((sum, { value, weight }) => sum + value * weight, 0);
  return raw.map(({ value, weight }) => ({ value: value / mean, weight }));
}

/** A few values between the ends of a list of points, where a smooth function of the factor is worked out. */
export function interpolationNodes(points: readonly WeightedValue[], most: number): readonly number[] {
  const values = [...new Set(points.map(({ value }) => value))];
  if (values.length <= most) return values;
  const low = Math.min(...values);
  const high = Math.max(...values);
  // Chebyshev nodes: no run-away between them.
  return Array.from({ length: most }, (_, index) => {
    const c = Math.cos((Math.PI * (2 * index + 1)) / (2 * most));
    return (low + high) / 2 + ((high - low) / 2) * c;
  });
}

/** Lagrange weights of the nodes at one value: Σ weight·f(node) is the polynomial through all nodes there. */
export function lagrangeWeights(nodes: readonly number[], at: number): readonly number[] {
  return nodes.map((own, index) =>
    nodes.reduce((product, other, j) => (j === index ? product : (product * (at - other)) / (own - other)), 1),
  );
}
