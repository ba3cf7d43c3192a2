import type { JudgeModel } from "./judge-model.js";
import { zeros } from "./zeros.js";

/** Shares of loops that are not sound, at which a job is weighed. [1] */
export const rates = [
  0.015, 0.04, 0.07, 0.1, 0.14, 0.18, 0.23, 0.28, 0.33, 0.38, 0.44, 0.5, 0.56, 0.62, 0.68, 0.74, 0.8, 0.86, 0.91, 0.96,
] as const;

/** How alike the fault rates of jobs are, as multiples of the figure `faultRateConcentration`. */
const likeness = [1, 4, 16, 64] as const;

/** A beta narrower than this would fall between the rates of the grid. */
const narrowest = 250;

/** Common means that are weighed: finer than the rates, which a narrow beta reads between. */
const means: readonly number[] = Array.from({ length: 48 }, (_, k) => (k + 1) / 49);

/**
 * Weights of {@link rates} for each job before its own readings, from the other jobs judged with it: rates of jobs are
 * spread by a beta about a common mean, mean and narrowness unknown. A job alone has the spread of all of them. Exact on
 * the grid; a job never counts for its own prior.
 * @param chances Chance of each job's readings at each rate, up to a factor per job.
 */
export function rateWeightsByJob(
  chances: readonly (readonly number[])[],
  model: JudgeModel,
): readonly (readonly number[])[] {
  const common = commonRates(model);
  const logs = chances.map((chance) => common.map(({ weights }) => Math.log(dot(weights, chance) + 1e-300)));
  const totals = common.map(({ share }, k) => Math.log(share) + logs.reduce((sum, own) => sum + (own[k] ?? 0), 0));
  return chances.map((_, j) => {
    const others = totals.map((total, k) => total - (logs[j]?.[k] ?? 0));
    const highest = Math.max(...others);
    const result = zeros(rates.length);
    let sum = 0;
    for (const [k, { weights }] of common.entries()) {
      const share = Math.exp((others[k] ?? 0) - highest);
      sum += share;
      for (let r = 0; r < result.length; r += 1) result[r] = (result[r] ?? 0) + share * (weights[r] ?? 0);
    }
    return result.map((weight) => weight / sum);
  });
}

interface CommonRate {
  /** Chance of this mean and narrowness before any job. [1] */
  readonly share: number;
  /** Weights of {@link rates}, adding to 1. */
  readonly weights: readonly number[];
}

/** Every mean × every narrowness. */
function commonRates(model: JudgeModel): readonly CommonRate[] {
  const usual = model.figures.faultRateConcentration;
  const logs = means.map((mean) => betaLog(mean, model.faultRate, usual));
  const highest = Math.max(...logs);
  const shares = logs.map((log) => Math.exp(log - highest));
  const total = shares.reduce((sum, share) => sum + share, 0) * likeness.length;
  return means.flatMap((mean, m) =>
    likeness.map((times) => ({ share: (shares[m] ?? 0) / total, weights: betaWeights(mean, usual * times) })),
  );
}

/** Logarithm of a beta density about a mean, up to a constant. */
function betaLog(value: number, mean: number, concentration: number): number {
  return (concentration * mean - 1) * Math.log(value) + (concentration * (1 - mean) - 1) * Math.log(1 - value);
}

/** Beta weights about a mean, each rate standing for the stretch half-way to its neighbours. */
function betaWeights(mean: number, concentration: number): readonly number[] {
  const narrow = Math.min(narrowest, concentration);
  const logs = rates.map((rate, r) => Math.log(stretch(r)) + betaLog(rate, mean, narrow));
  const highest = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - highest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

function stretch(r: number): number {
  const low = r === 0 ? 0 : ((rates[r - 1] ?? 0) + (rates[r] ?? 0)) / 2;
  const high = r === rates.length - 1 ? 1 : ((rates[r] ?? 0) + (rates[r + 1] ?? 1)) / 2;
  return high - low;
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
}
