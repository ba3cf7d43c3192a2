import type { PriceRangeInput } from "../../lib/pricing/price-range.js";

/** mulberry32, a public-domain generator: repeatable uniform draws. */
function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Log spreads of the common factors of the simulated job. */
export interface Spreads {
  readonly crew: number;
  readonly access: number;
  readonly faultRate: number;
}

/**
 * The same job drawn many times: common factors once per draw from their continuous log-normal, outcomes by their odds,
 * hours from the beta distribution of PERT by gamma draws (Marsaglia and Tsang). Nothing of the library takes part.
 */
export function monteCarloPrices(input: PriceRangeInput, spreads: Spreads, draws: number, seed: number): Float64Array {
  const random = uniform(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const gamma = (shape: number): number => {
    const d = shape - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const x = normal();
      const v = (1 + c * x) ** 3;
      if (v > 0 && Math.log(1 - random()) < (x * x) / 2 + d - d * v + d * Math.log(v)) return d * v;
    }
  };
  const pert = (low: number, likely: number, high: number): number => {
    if (high === low) return low;
    const alpha = 1 + (4 * (likely - low)) / (high - low);
    const a = gamma(alpha);
    return low + ((high - low) * a) / (a + gamma(6 - alpha));
  };
  const logNormal = (sd: number) => (sd === 0 ? 1 : Math.exp(sd * normal() - (sd * sd) / 2));
  const prices = new Float64Array(draws);
  for (let draw = 0; draw < draws; draw++) {
    const crew = logNormal(spreads.crew);
    const access = logNormal(spreads.access);
    const fault = logNormal(spreads.faultRate);
    let material = input.fixed.materialCents;
    let hours = 0;
    for (const { lowHours, likelyHours, highHours } of input.fixed.hours)
      hours += pert(lowHours, likelyHours, highHours);
    for (const loop of input.loops) {
      const odds = loop.outcomes.map(({ probability, faulty }) => probability * (faulty ? fault : 1));
      let at = random() * odds.reduce((sum, value) => sum + value, 0);
      let index = 0;
      while (index < odds.length - 1 && at >= (odds[index] ?? 0)) at -= odds[index++] ?? 0;
      const outcome = loop.outcomes[index];
      if (!outcome) continue;
      material += outcome.materialCents;
      const { lowHours, likelyHours, highHours } = outcome.hours;
      hours += (loop.access ? access : 1) * pert(lowHours, likelyHours, highHours);
    }
    prices[draw] = material + input.centsPerHour * crew * hours;
  }
  return prices.sort();
}
