/** Sets of inputs that must stay on one module, single inputs, and the modules there are. */
export interface PackingQuestion {
  /** Inputs of each set that may not be divided. */
  readonly sizes: readonly number[];
  /** Inputs that may go anywhere. */
  readonly singles: number;
  /** Modules. */
  readonly bins: number;
  /** Inputs of one module. */
  readonly capacity: number;
}

/**
 * Whether the sets and single inputs fit onto the modules without dividing a set; see {@link placeSets}.
 * @example packsIntoModules({ sizes: [3, 3, 2], singles: 0, bins: 2, capacity: 4 }); // false
 */
export function packsIntoModules(question: PackingQuestion): boolean {
  return placeSets(question) !== null;
}

/**
 * The module each set goes to, in the order of the sizes, so that none is divided and the single inputs find room too;
 * null when there is no way. Depth-first over the sets, largest first, equally full modules tried once.
 * @example placeSets({ sizes: [2, 3], singles: 1, bins: 2, capacity: 3 }); // [1, 0]
 */
export function placeSets({ sizes, singles, bins, capacity }: PackingQuestion): readonly number[] | null {
  const total = sizes.reduce((sum, size) => sum + size, 0);
  if (total + singles > bins * capacity) return null;
  const sorted = sizes.map((size, index) => ({ size, index })).sort((a, b) => b.size - a.size);
  if ((sorted[0]?.size ?? 0) > capacity) return null;
  const free = new Array<number>(bins).fill(capacity);
  const placed = new Array<number>(sizes.length).fill(0);
  const place = (at: number): boolean => {
    const set = sorted[at];
    if (set === undefined || set.size === 0) return true;
    const tried = new Set<number>();
    for (let bin = 0; bin < free.length; bin += 1) {
      const room = free[bin] ?? 0;
      if (room < set.size || tried.has(room)) continue;
      tried.add(room);
      free[bin] = room - set.size;
      placed[set.index] = bin;
      if (place(at + 1)) return true;
      free[bin] = room;
    }
    return false;
  };
  return place(0) ? placed : null;
}
