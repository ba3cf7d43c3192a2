const inverseRootTwoPi = 0.3989422804014327;

/** Normal density. [1/unit of value] */
export function normalDensity(value: number, mean: number, spread: number): number {
  const z = (value - mean) / spread;
  return z > 8 || z < -8 ? 0 : (inverseRootTwoPi / spread) * Math.exp(-0.5 * z * z);
}

/** Density of a log-normal with this mean and standard deviation (moments of the value, not of its logarithm). */
export function logNormalDensity(value: number, mean: number, spread: number): number {
  const variation = spread / mean;
  const logVariance = Math.log(1 + variation * variation);
  const z2 = (Math.log(value / mean) + 0.5 * logVariance) ** 2 / logVariance;
  return z2 > 64 ? 0 : (inverseRootTwoPi / (value * Math.sqrt(logVariance))) * Math.exp(-0.5 * z2);
}

/** Chance that a log-uniform quantity between low and high is under value. [1] */
export function logUniformBelow(value: number, low: number, high: number): number {
  if (value <= low) return 0;
  return value >= high ? 1 : Math.log(value / low) / Math.log(high / low);
}

/** Density of a log-uniform quantity between low and high. [1/unit of value] */
export function logUniformDensity(value: number, low: number, high: number): number {
  return value < low || value > high ? 0 : 1 / (value * Math.log(high / low));
}
