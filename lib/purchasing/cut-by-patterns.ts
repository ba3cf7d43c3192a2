import { MilpBuilder, type Solve } from "../plan/milp-model.js";
import type { PlacedCuts } from "./cut-result.js";
import type { CutProblem, SpoolKind } from "./spool-kinds.js";

/** Most patterns put into the model. */
const MOST_PATTERNS = 20_000;

interface Pattern {
  readonly kind: SpoolKind;
  /** Pieces of each distinct length, longest first. */
  readonly counts: readonly number[];
}

/** Every maximal way to cut one spool: nothing that is still wanted fits into what is left. */
function patternsOf(kind: SpoolKind, lengths: readonly number[], wanted: readonly number[]): Pattern[] | undefined {
  const found: Pattern[] = [];
  const counts = lengths.map(() => 0);
  const walk = (index: number, room: number): boolean => {
    const length = lengths[index];
    if (length === undefined) {
      const maximal = lengths.every((other, i) => other > room || (counts[i] ?? 0) >= (wanted[i] ?? 0));
      if (maximal) found.push({ kind, counts: [...counts] });
      return found.length <= MOST_PATTERNS;
    }
    for (let count = Math.min(wanted[index] ?? 0, Math.floor(room / length)); count >= 0; count--) {
      counts[index] = count;
      if (!walk(index + 1, room - count * length)) return false;
    }
    counts[index] = 0;
    return true;
  };
  return walk(0, kind.millimeters) ? found : undefined;
}

/**
 * Cutting stock by patterns: x_p spools cut in pattern p, min Σ cents·x_p with Σ a_pg·x_p ≥ demand of length g and
 * Σ x_p ≤ spools of that kind. Exact over maximal patterns, since cutting more than asked costs nothing.
 * undefined when there are too many patterns (short pieces, which the search settles anyway).
 */
export async function cutByPatterns({
  problem,
  solve,
  seconds,
}: {
  readonly problem: CutProblem;
  readonly solve: Solve;
  readonly seconds: number;
}): Promise<{ readonly cuts?: PlacedCuts; readonly boundCents: number; readonly infeasible: boolean } | undefined> {
  const lengths = [...new Set(problem.pieces.map(({ millimeters }) => millimeters))];
  const wanted = lengths.map((length) => problem.pieces.filter(({ millimeters }) => millimeters === length).length);
  const freeKinds = [...new Set(problem.free)];
  const kinds = [
    ...freeKinds.map((kind) => ({ kind, most: problem.free.filter((one) => one === kind).length })),
    ...problem.priced.map((kind) => ({ kind, most: kind.most })),
  ];
  const build = new MilpBuilder();
  const demand = wanted.map((count) => build.row(count, Number.POSITIVE_INFINITY));
  const patterns: Pattern[] = [];
  for (const { kind, most } of kinds) {
    const own = patternsOf(kind, lengths, wanted);
    if (!own || patterns.length + own.length > MOST_PATTERNS) return undefined;
    const limit = build.row(Number.NEGATIVE_INFINITY, most);
    for (const pattern of own) {
      const column = build.column({ cost: kind.cents, upper: most });
      build.entry(limit, column, 1);
      pattern.counts.forEach((count, g) => {
        build.entry(demand[g] ?? 0, column, count);
      });
      patterns.push(pattern);
    }
  }
  const { status, values, bound } = await solve(build.build(), { seconds });
  if (status === "infeasible") return { boundCents: 0, infeasible: true };
  const boundCents = Math.max(0, Math.ceil((bound ?? 0) - 1e-3));
  if (!values) return { boundCents, infeasible: false };
  const bins: SpoolKind[] = [];
  const left = [...wanted];
  const binsOf = lengths.map((): number[] => []);
  for (const [p, pattern] of patterns.entries()) {
    for (let copy = Math.round(values[p] ?? 0); copy > 0; copy--) {
      const bin = bins.push(pattern.kind) - 1;
      pattern.counts.forEach((count, g) => {
        const taken = Math.min(count, left[g] ?? 0);
        left[g] = (left[g] ?? 0) - taken;
        for (let i = 0; i < taken; i++) binsOf[g]?.push(bin);
      });
    }
  }
  const places = problem.pieces.map(({ millimeters }) => binsOf[lengths.indexOf(millimeters)]?.shift() ?? -1);
  if (places.includes(-1)) return { boundCents, infeasible: false };
  return { cuts: { bins, places }, boundCents, infeasible: false };
}
