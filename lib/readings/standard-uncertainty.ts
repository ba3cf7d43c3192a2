import { InputError } from "../problems/input-error.js";
import { requireBetween } from "../problems/require-between.js";

/** How an input may lie about its estimate. */
export type Spread =
  /** Anywhere within ± bound alike: accuracy statements, resolution, tolerances. */
  | { readonly shape: "rectangular"; readonly bound: number }
  /** Within ± bound, the middle likelier. */
  | { readonly shape: "triangular"; readonly bound: number }
  /** A standard uncertainty as it stands: repeated readings, calibration certificate ÷ its coverage factor. */
  | { readonly shape: "normal"; readonly standardUncertainty: number };

/**
 * Standard uncertainty of one input, in its own unit: bound/√3 rectangular, bound/√6 triangular.
 * @throws {@link InputError} when the bound is negative or not a number.
 * @example standardUncertainty({ shape: "rectangular", bound: 22.6 }); // 13.048…
 * @see JCGM 100:2008 4.3.7 (rectangular), 4.3.9 (triangular)
 */
export function standardUncertainty(spread: Spread): number {
  if (spread.shape === "normal") {
    const value = spread.standardUncertainty;
    return requireBetween({ field: "standardUncertainty", value, unit: "", from: 0, to: 1e15 });
  }
  const bound = requireBetween({ field: "bound", value: spread.bound, unit: "", from: 0, to: 1e15 });
  return bound / Math.sqrt(spread.shape === "rectangular" ? 3 : 6);
}

/**
 * Standard uncertainty of a sum of inputs that have nothing to do with each other: root of the sum of squares.
 * @example combinedUncertainty([3, 4]); // 5
 * @see JCGM 100:2008 5.1.2
 */
export function combinedUncertainty(standardUncertainties: readonly number[]): number {
  return Math.hypot(
    ...standardUncertainties.map((value) =>
      requireBetween({ field: "standardUncertainty", value, unit: "", from: 0, to: 1e15 }),
    ),
  );
}

/** One input of a calculation: what it is taken as and how it may lie about that. */
export interface UncertainInput {
  readonly name: string;
  readonly estimate: number;
  readonly spread: Spread;
}

/** How two inputs move together, −1 to 1. */
export interface Correlation {
  readonly between: readonly [string, string];
  readonly coefficient: number;
}

/** Result of a calculation with its uncertainty. */
export interface UncertainResult {
  readonly estimate: number;
  readonly standardUncertainty: number;
  /** By how much each input's standard uncertainty moves the result, signed, in the order of the inputs. */
  readonly contributions: readonly number[];
}

/**
 * Carries uncertainties through any formula: contribution Zᵢ = ½[f(xᵢ + uᵢ) − f(xᵢ − uᵢ)] of each input, combined as
 * u² = ΣΣ Zᵢ·Zⱼ·rᵢⱼ. First order; a strongly curved formula over ± u is outside what it can tell.
 * @throws {@link InputError} when a correlation names an unknown input or lies outside −1 to 1, or the formula yields
 * no finite number.
 * @example propagateUncertainty({
 *   inputs: [
 *     { name: "volts", estimate: 4.999, spread: { shape: "normal", standardUncertainty: 0.0032 } },
 *     { name: "amperes", estimate: 0.019661, spread: { shape: "normal", standardUncertainty: 9.5e-6 } },
 *   ],
 *   formula: ([volts = 0, amperes = 0]) => volts / amperes,
 * }).standardUncertainty; // 0.204…
 * @see JCGM 100:2008 5.1.2, 5.1.3 note 2, 5.2.2
 */
export function propagateUncertainty(task: {
  readonly inputs: readonly UncertainInput[];
  readonly correlations?: readonly Correlation[];
  readonly formula: (values: readonly number[]) => number;
}): UncertainResult {
  const values = task.inputs.map((input) => input.estimate);
  const at = (index: number, shift: number): number =>
    finite(task.formula(values.map((value, i) => (i === index ? value + shift : value))));
  const contributions = task.inputs.map((input, index) => {
    const u = standardUncertainty(input.spread);
    return (at(index, u) - at(index, -u)) / 2;
  });
  const variance = covariance(contributions, contributions, correlationMatrix(task.inputs, task.correlations ?? []));
  return { estimate: at(-1, 0), standardUncertainty: Math.sqrt(Math.max(0, variance)), contributions };
}

/**
 * Correlation of two results that were worked out from the same inputs, −1 to 1.
 * @throws {@link InputError} when one of the results has no uncertainty, or the inputs differ in number.
 * @see JCGM 100:2008 H.2.3, equation (H.9)
 */
export function resultCorrelation(task: {
  readonly inputs: readonly UncertainInput[];
  readonly correlations?: readonly Correlation[];
  readonly first: UncertainResult;
  readonly second: UncertainResult;
}): number {
  const { first, second, inputs } = task;
  if (first.contributions.length !== inputs.length || second.contributions.length !== inputs.length) {
    const got = `${first.contributions.length} and ${second.contributions.length} contributions`;
    throw new InputError({ field: "first, second", got, expected: `${inputs.length} each, one per input` });
  }
  const scale = first.standardUncertainty * second.standardUncertainty;
  if (scale === 0) {
    throw new InputError({ field: "first, second", got: "uncertainty 0", expected: "two results that may vary" });
  }
  const matrix = correlationMatrix(inputs, task.correlations ?? []);
  return covariance(first.contributions, second.contributions, matrix) / scale;
}

type Matrix = (i: number, j: number) => number;

function correlationMatrix(inputs: readonly UncertainInput[], correlations: readonly Correlation[]): Matrix {
  const indexOf = (name: string): number => {
    const index = inputs.findIndex((input) => input.name === name);
    if (index >= 0) return index;
    const expected = inputs.map((input) => input.name).join(", ");
    throw new InputError({ field: "correlations", got: name, expected: `one of ${expected}` });
  };
  const off = new Map<string, number>();
  for (const { between, coefficient } of correlations) {
    requireBetween({ field: "coefficient", value: coefficient, unit: "", from: -1, to: 1 });
    const [i, j] = [indexOf(between[0]), indexOf(between[1])];
    off.set(`${i},${j}`, coefficient).set(`${j},${i}`, coefficient);
  }
  return (i, j) => (i === j ? 1 : (off.get(`${i},${j}`) ?? 0));
}

function covariance(a: readonly number[], b: readonly number[], matrix: Matrix): number {
  return a.reduce((sum, ai, i) => sum + b.reduce((row, bj, j) => row + ai * bj * matrix(i, j), 0), 0);
}

function finite(value: number): number {
  if (Number.isFinite(value)) return value;
  throw new InputError({ field: "formula", got: `${value}`, expected: "a finite number for every input ± u" });
}
