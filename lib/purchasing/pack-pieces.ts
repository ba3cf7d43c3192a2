/** Pieces longest first and bins, in whole millimetres. */
export interface PackQuestion {
  /** Lengths, descending. [mm] */
  readonly pieces: readonly number[];
  /** Room of each bin. [mm] */
  readonly bins: readonly number[];
  /** Most steps of the depth-first search. */
  readonly mostSteps: number;
}

/** Bin of each piece; `"impossible"` is proved, `"unknown"` means that the steps ran out. */
export type PackAnswer = readonly number[] | "impossible" | "unknown";

/** Best-fit decreasing: each piece into the fullest bin that still takes it. undefined when one finds no room. */
export function bestFitDecreasing({ pieces, bins }: Pick<PackQuestion, "pieces" | "bins">): number[] | undefined {
  const room = [...bins];
  const places: number[] = [];
  for (const piece of pieces) {
    let best = -1;
    for (let bin = 0; bin < room.length; bin++) {
      const left = room[bin] ?? 0;
      if (left >= piece && (best < 0 || left < (room[best] ?? 0))) best = bin;
    }
    if (best < 0) return undefined;
    room[best] = (room[best] ?? 0) - piece;
    places.push(best);
  }
  return places;
}

/** For some length t, more pieces of at least t than the bins can hold at t each: a proof that they do not fit. */
function tooFewPlaces(pieces: readonly number[], bins: readonly number[]): boolean {
  return pieces.some((length, index) => {
    if (pieces[index + 1] === length) return false;
    return bins.reduce((sum, bin) => sum + Math.floor(bin / length), 0) < index + 1;
  });
}

/**
 * Whether the pieces fit the bins: best-fit decreasing, then depth-first over the places of each piece, longest
 * first, fullest bin first. Bins with equal room left are tried once, equal pieces in order of bin, and a branch ends
 * when the room that can still be used is less than what is left to place.
 */
export function packPieces({ pieces, bins, mostSteps }: PackQuestion): PackAnswer {
  const total = pieces.reduce((sum, piece) => sum + piece, 0);
  if (bins.reduce((sum, bin) => sum + bin, 0) < total) return "impossible";
  if (tooFewPlaces(pieces, bins)) return "impossible";
  const quick = bestFitDecreasing({ pieces, bins });
  if (quick) return quick;
  const room = [...bins];
  const places: number[] = [];
  const smallest = pieces[pieces.length - 1] ?? 0;
  let steps = 0;
  const place = (index: number, left: number): PackAnswer => {
    const piece = pieces[index];
    if (piece === undefined) return [...places];
    if (steps++ > mostSteps) return "unknown";
    const usable = room.reduce((sum, bin) => (bin >= smallest ? sum + bin : sum), 0);
    if (usable < left) return "impossible";
    // Equal pieces need no order among themselves: the next goes into the same bin or a later one.
    const from = pieces[index - 1] === piece ? (places[index - 1] ?? 0) : 0;
    const order = room.map((_, bin) => bin).filter((bin) => bin >= from && (room[bin] ?? 0) >= piece);
    order.sort((a, b) => (room[a] ?? 0) - (room[b] ?? 0) || a - b);
    const tried = new Set<number>();
    let unknown = false;
    for (const bin of order) {
      const before = room[bin] ?? 0;
      if (from === 0 && tried.has(before)) continue;
      tried.add(before);
      room[bin] = before - piece;
      places[index] = bin;
      const answer = place(index + 1, left - piece);
      room[bin] = before;
      if (answer === "unknown") unknown = true;
      else if (answer !== "impossible") return answer;
      if (unknown) return "unknown";
    }
    places.length = index;
    return unknown ? "unknown" : "impossible";
  };
  return place(0, total);
}
