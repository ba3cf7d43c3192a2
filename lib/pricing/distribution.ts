/** Masses on an even grid: mass i sits at (first + i)·step. */
export interface GridDistribution {
  readonly first: number;
  readonly masses: Float64Array;
}

/** One value with its probability. */
export interface Atom {
  readonly value: number;
  readonly probability: number;
}

/** Atoms moved, stretched and weighted: value shift + scale·value with probability weight·probability. */
export interface ScaledAtoms {
  readonly atoms: readonly Atom[];
  readonly shift: number;
  /** 0 or more. */
  readonly scale: number;
  readonly weight: number;
}

/** Puts a mixture of atoms on the grid, each parted between its two neighbours so that the mean is kept. */
export function onGrid(mixture: readonly ScaledAtoms[], step: number): GridDistribution {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { atoms, shift, scale } of mixture) {
    for (const { value } of atoms) {
      low = Math.min(low, shift + scale * value);
      high = Math.max(high, shift + scale * value);
    }
  }
  const first = Math.floor(low / step);
  const masses = new Float64Array(Math.floor(high / step) - first + 2);
  for (const { atoms, shift, scale, weight } of mixture) {
    for (const { value, probability } of atoms) {
      const at = (shift + scale * value) / step - first;
      const cell = Math.floor(at);
      const part = at - cell;
      masses[cell] = (masses[cell] ?? 0) + weight * probability * (1 - part);
      masses[cell + 1] = (masses[cell + 1] ?? 0) + weight * probability * part;
    }
  }
  return trimmed({ first, masses });
}

/** Cuts off ends that hold next to nothing (10⁻¹⁰ each). */
function trimmed({ first, masses }: GridDistribution): GridDistribution {
  let from = 0;
  let to = masses.length;
  for (let sum = 0; from < to - 1; from++) {
    sum += masses[from] ?? 0;
    if (sum > 1e-10) break;
  }
  for (let sum = 0; to > from + 1; to--) {
    sum += masses[to - 1] ?? 0;
    if (sum > 1e-10) break;
  }
  return { first: first + from, masses: masses.slice(from, to) };
}

/** Distribution of the sum of two independent amounts on the same grid. */
export function convolve(a: GridDistribution, b: GridDistribution): GridDistribution {
  const [long, short] = a.masses.length >= b.masses.length ? [a, b] : [b, a];
  const from = long.masses;
  const masses = new Float64Array(from.length + short.masses.length - 1);
  for (let j = 0; j < short.masses.length; j++) {
    const weight = short.masses[j] ?? 0;
    if (weight === 0) continue;
    for (let i = 0; i < from.length; i++) masses[i + j] = (masses[i + j] ?? 0) + weight * (from[i] ?? 0);
  }
  return trimmed({ first: a.first + b.first, masses });
}

/**
 * Value at each of the probabilities (rising), each grid mass taken as spread evenly over its cell.
 * @example quantiles({ distribution, step: 1, at: [0.1, 0.5, 0.9] })
 */
export function quantiles({
  distribution: { first, masses },
  step,
  at,
}: {
  readonly distribution: GridDistribution;
  readonly step: number;
  readonly at: readonly number[];
}): Float64Array {
  const total = masses.reduce((sum, mass) => sum + mass, 0);
  const found = new Float64Array(at.length);
  let cell = 0;
  let before = 0;
  for (let index = 0; index < at.length; index++) {
    const wanted = (at[index] ?? 0) * total;
    while (cell < masses.length - 1 && before + (masses[cell] ?? 0) < wanted) {
      before += masses[cell] ?? 0;
      cell++;
    }
    const mass = masses[cell] ?? 0;
    const inside = mass > 0 ? Math.min(1, Math.max(0, (wanted - before) / mass)) : 0.5;
    found[index] = (first + cell - 0.5 + inside) * step;
  }
  return found;
}
