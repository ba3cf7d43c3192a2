import { requireBetween } from "../problems/require-between.js";

/** A probability as a beta distribution. */
export interface BetaFigure {
  readonly alpha: number;
  readonly beta: number;
  readonly mean: number;
  /** Standard deviation of the probability. */
  readonly deviation: number;
}

/**
 * A beta distribution with the prior worth `weight` trials at `mean`, after `tried` trials of which `succeeded` did:
 * α = mean·weight + succeeded, β = (1 − mean)·weight + tried − succeeded.
 * @throws {@link InputError} when mean is not 0 to 1, the weight not above 0, or more succeeded than were tried.
 * @example betaUpdate({ mean: 0.7, weight: 4, tried: 6, succeeded: 3 }).mean; // 0.58
 * @see Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.4 (from memory)
 */
export function betaUpdate({
  mean,
  weight,
  tried,
  succeeded,
}: {
  readonly mean: number;
  readonly weight: number;
  readonly tried: number;
  readonly succeeded: number;
}): BetaFigure {
  requireBetween({ field: "mean", value: mean, unit: "", from: 0, to: 1 });
  requireBetween({ field: "weight", value: weight, unit: "", from: 1e-6, to: 1e6 });
  requireBetween({ field: "tried", value: tried, unit: "", from: 0, to: 1e9 });
  requireBetween({ field: "succeeded", value: succeeded, unit: "", from: 0, to: tried });
  const alpha = mean * weight + succeeded;
  const beta = (1 - mean) * weight + tried - succeeded;
  const total = alpha + beta;
  return { alpha, beta, mean: alpha / total, deviation: Math.sqrt((alpha * beta) / (total * total * (total + 1))) };
}
