import type { CutPlan, CutSpool } from "./cut-records.js";
import type { CutProblem, SpoolKind } from "./spool-kinds.js";

/** Bins and the bin of every piece, pieces in the problem's order. */
export interface PlacedCuts {
  readonly bins: readonly SpoolKind[];
  readonly places: readonly number[];
}

/** The cut list per spool. A spool from the van that nothing is cut from is not listed; a bought one always is. */
export function cutResult({
  problem,
  cuts,
  status,
  boundCents,
  method,
}: {
  readonly problem: CutProblem;
  readonly cuts: PlacedCuts;
  readonly status: "optimal" | "feasible";
  readonly boundCents: number;
  readonly method: string;
}): CutPlan {
  const spools = cuts.bins.flatMap((kind, bin): CutSpool[] => {
    const own = problem.pieces.filter((_, piece) => cuts.places[piece] === bin);
    if (own.length === 0 && kind.fromStock && kind.cents === 0) return [];
    const used = own.reduce((sum, { millimeters }) => sum + millimeters, 0);
    return [
      {
        code: kind.code,
        meters: kind.meters,
        fromStock: kind.fromStock,
        cents: kind.cents,
        cuts: own.map(({ meters, for: use }) => ({ meters, for: use })),
        leftoverMeters: (kind.millimeters - used) / 1000,
      },
    ];
  });
  const codes = [...new Set(problem.priced.filter(({ fromStock }) => !fromStock).map(({ code }) => code))];
  const buy = codes.flatMap((code) => {
    const own = spools.filter((spool) => spool.code === code && !spool.fromStock);
    if (own.length === 0) return [];
    return [{ code, count: own.length, cents: own.reduce((sum, { cents }) => sum + cents, 0) }];
  });
  const cents = spools.reduce((sum, spool) => sum + spool.cents, 0);
  return { status, cents, boundCents, spools, buy, method };
}
