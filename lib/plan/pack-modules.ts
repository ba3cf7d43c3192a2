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
 * Whether the sets and single inputs fit onto the modules without dividing a set: depth-first over the sets, largest
 * first, equally full modules tried once.
 * @example packsIntoModules({ sizes: [3, 3, 2], singles: 0, bins: 2, capacity: 4 }); // false
 */
export function packsIntoModules({ sizes, singles, bins, capacity }: PackingQuestion): boolean {
  const total = sizes.reduce((sum, size) => sum + size, 0);
  if (total + singles > bins * capacity) return false;
  const sorted = sizes.filter((size) => size > 0).sort((a, b) => b - a);
  if ((sorted[0] ?? 0) > capacity) return false;
  const free = new Array<number>(bins).fill(capacity);
  const place = (index: number): boolean => {
    const size = sorted[index];
    if (size === undefined) return true;
    const tried = new Set<number>();
    for (let bin = 0; bin < free.length; bin += 1) {
      const room = free[bin] ?? 0;
      if (room < size || tried.has(room)) continue;
      tried.add(room);
      free[bin] = room - size;
      if (place(index + 1)) return true;
      free[bin] = room;
    }
    return false;
  };
  return place(0);
}
