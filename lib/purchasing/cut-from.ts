import type { Solve } from "../plan/milp-model.js";
import { cutByPatterns } from "./cut-by-patterns.js";
import type { CutPiece, CutPlan, Spool } from "./cut-records.js";
import { cutResult, type PlacedCuts } from "./cut-result.js";
import { bestFitDecreasing, packPieces } from "./pack-pieces.js";
import { type CutProblem, cutProblem, type SpoolKind } from "./spool-kinds.js";
import { spoolMultisets } from "./spool-multisets.js";

export interface CutInput {
  /** No joints: every piece comes from one spool. */
  readonly pieces: readonly CutPiece[];
  readonly spools: readonly Spool[];
  /** MILP solver for pieces that the search cannot settle. */
  readonly solve?: Solve;
  /** Most time for the solver, default 20. [s] */
  readonly solveSeconds?: number;
  /** Most steps of the search for one set of spools, default 200,000. */
  readonly mostSteps?: number;
  /** Most sets of spools looked at, default 200,000. */
  readonly mostSets?: number;
}

/**
 * Which spools to buy and how to cut them at the lowest price. Sets of spools are tried in rising cost, each by
 * best-fit decreasing and then depth-first; the first that holds the pieces is the cheapest, since every cheaper set
 * was shown not to. Where the search runs out of steps (long pieces against short spools) the cutting patterns are
 * solved as a MILP; without a solver the answer carries the cost of the first undecided set as its bound.
 * What lies free on the van is always at hand. Pieces are rounded up, spools down to the millimetre.
 * @throws {@link InputError} when a length is not above 0 or a price or count is negative or not whole.
 * @example (await cutFrom({ pieces: [{ meters: 17, for: "R004" }], spools })).spools[0]?.leftoverMeters
 */
export async function cutFrom(input: CutInput): Promise<CutPlan> {
  const problem = cutProblem(input);
  const refused = tooLong(problem);
  if (refused) return refused;
  const searched = searchSpools(problem, input);
  if (searched.status === "infeasible") {
    return { ...infeasible, why: "The spools there are do not hold all pieces, however they are cut." };
  }
  if (searched.status === "optimal" && searched.cuts) return cutResult({ problem, ...searched, cuts: searched.cuts });
  const solved = input.solve && (await tryPatterns(problem, input.solve, input.solveSeconds ?? 20));
  const boundCents = Math.max(searched.boundCents, solved?.boundCents ?? 0);
  const candidates = [searched.cuts, solved?.cuts, quickCuts(problem)].filter((cuts) => cuts !== undefined);
  const cuts = candidates.sort((a, b) => costOf(a) - costOf(b))[0];
  if (!cuts) {
    if (solved?.infeasible) return { ...infeasible, why: "The spools there are do not hold all pieces." };
    return { ...infeasible, why: "No way of cutting was found within the steps allowed; none is ruled out." };
  }
  const status = boundCents >= costOf(cuts) ? "optimal" : "feasible";
  const method = solved ? "cutting patterns solved as a mixed-integer model" : "search ended by its step limit";
  return cutResult({ problem, cuts, status, boundCents: Math.min(boundCents, costOf(cuts)), method });
}

const infeasible = {
  status: "infeasible",
  cents: null,
  boundCents: null,
  spools: [],
  buy: [],
  method: "nothing found",
} as const;

const costOf = (cuts: PlacedCuts): number => cuts.bins.reduce((sum, { cents }) => sum + cents, 0);

async function tryPatterns(problem: CutProblem, solve: Solve, seconds: number) {
  try {
    return await cutByPatterns({ problem, solve, seconds });
  } catch {
    return undefined; // the solver could not run: the search's own answer and bound stand
  }
}

function tooLong({ pieces, free, priced }: CutProblem): CutPlan | undefined {
  const longest = Math.max(0, ...[...free, ...priced].map(({ millimeters }) => millimeters));
  const over = pieces.filter(({ millimeters }) => millimeters > longest);
  if (over.length === 0) return undefined;
  const names = over.map((piece) => `${piece.meters} m for ${piece.for}`).join(", ");
  return { ...infeasible, why: `No spool is long enough for ${names}; the longest holds ${longest / 1000} m.` };
}

function searchSpools(problem: CutProblem, { mostSteps = 200_000, mostSets = 200_000 }: CutInput) {
  const pieces = problem.pieces.map(({ millimeters }) => millimeters);
  const total = pieces.reduce((sum, piece) => sum + piece, 0);
  const free = problem.free.reduce((sum, { millimeters }) => sum + millimeters, 0);
  let undecided: number | undefined;
  let seen = 0;
  for (const set of spoolMultisets(problem.priced)) {
    if (seen++ > mostSets) {
      return { status: "feasible", boundCents: undecided ?? set.cents, cuts: undefined, method: "" } as const;
    }
    if (set.millimeters + free < total) continue;
    const bins = [...problem.free, ...problem.priced.flatMap((kind, k) => repeat(kind, set.counts[k] ?? 0))];
    const answer = packPieces({ pieces, bins: bins.map(({ millimeters }) => millimeters), mostSteps });
    if (answer === "impossible") continue;
    if (answer === "unknown") {
      undecided ??= set.cents;
      mostSteps = Math.min(mostSteps, 2000); // a bound is already owed; from here only quick answers help
      continue;
    }
    return {
      status: undecided === undefined || undecided >= set.cents ? "optimal" : "feasible",
      boundCents: undecided ?? set.cents,
      cuts: { bins, places: answer },
      method: "sets of spools in rising cost, best-fit decreasing, then depth-first",
    } as const;
  }
  if (undecided !== undefined)
    return { status: "feasible", boundCents: undecided, cuts: undefined, method: "" } as const;
  return { status: "infeasible", boundCents: 0, cuts: undefined, method: "" } as const;
}

const repeat = (kind: SpoolKind, count: number): SpoolKind[] => Array.from({ length: count }, () => kind);

/** A first answer without proof: as many of one kind as best-fit decreasing needs, the cheapest kind of all. */
function quickCuts({ pieces, free, priced }: CutProblem): PlacedCuts | undefined {
  const lengths = pieces.map(({ millimeters }) => millimeters);
  let best: PlacedCuts | undefined;
  for (const kind of priced) {
    for (let count = 0; count <= kind.most; count++) {
      const bins = [...free, ...repeat(kind, count)];
      const places = bestFitDecreasing({ pieces: lengths, bins: bins.map(({ millimeters }) => millimeters) });
      if (!places) continue;
      if (!best || costOf({ bins, places }) < costOf(best)) best = { bins, places };
      break;
    }
  }
  return best;
}
