import { requireBetween } from "../problems/require-between.js";

/** What is believed of the logarithm of hours: normal with unknown mean and precision. */
export interface NormalGamma {
  /** Mean of ln(hours). */
  readonly mean: number;
  /** Observations the mean counts for. */
  readonly weight: number;
  /** Shape and rate of the gamma distribution of the precision. */
  readonly shape: number;
  readonly rate: number;
}

/**
 * Normal–gamma distribution after observations given by their weight n, Σx and Σx²:
 * κₙ = κ₀ + n, μₙ = (κ₀μ₀ + Σx)/κₙ, αₙ = α₀ + n/2, βₙ = β₀ + ½Σ(x − x̄)² + κ₀n(x̄ − μ₀)²/(2κₙ).
 * @throws {@link InputError} when a weight, shape or rate is not above 0.
 * @see Bernardo and Smith, Bayesian Theory, appendix A.2; DeGroot, Optimal Statistical Decisions, section 9.6 (from memory)
 */
export function hoursUpdate(
  prior: NormalGamma,
  {
    weight,
    sumLog,
    sumLogSquares,
  }: { readonly weight: number; readonly sumLog: number; readonly sumLogSquares: number },
): NormalGamma {
  for (const field of ["weight", "shape", "rate"] as const) {
    requireBetween({ field, value: prior[field], unit: "", from: 1e-9, to: 1e9 });
  }
  requireBetween({ field: "weight", value: weight, unit: "", from: 0, to: 1e9 });
  if (weight === 0) return prior;
  const observed = sumLog / weight;
  // Rounding may leave a spread just below zero where all observations are equal.
  const spread = Math.max(0, sumLogSquares - weight * observed ** 2);
  const total = prior.weight + weight;
  return {
    mean: (prior.weight * prior.mean + sumLog) / total,
    weight: total,
    shape: prior.shape + weight / 2,
    rate: prior.rate + spread / 2 + (prior.weight * weight * (observed - prior.mean) ** 2) / (2 * total),
  };
}
