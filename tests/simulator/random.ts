/** Repeatable random draws: a 32-bit generator (mulberry32) and the shapes the simulator needs. */
export interface Draw {
  /** Evenly in [0, 1). */
  unit(): number;
  between(low: number, high: number): number;
  /** Evenly over the decades. */
  logBetween(low: number, high: number): number;
  normal(mean: number, spread: number): number;
  chance(share: number): boolean;
  whole(low: number, high: number): number;
  pick<T>(shares: readonly (readonly [T, number])[]): T;
}

export function draws(seed: number): Draw {
  let state = seed >>> 0;
  const unit = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const between = (low: number, high: number): number => low + (high - low) * unit();
  return {
    unit,
    between,
    logBetween: (low, high) => Math.exp(between(Math.log(low), Math.log(high))),
    normal: (mean, spread) => mean + spread * Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit()),
    chance: (share) => unit() < share,
    whole: (low, high) => Math.floor(between(low, high + 1)),
    pick: (shares) => {
      let left = unit() * shares.reduce((sum, [, share]) => sum + share, 0);
      for (const [value, share] of shares) {
        left -= share;
        if (left < 0) return value;
      }
      const last = shares[shares.length - 1];
      if (last === undefined) throw new RangeError("pick from nothing");
      return last[0];
    },
  };
}
