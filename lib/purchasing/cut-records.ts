import type { Cents } from "../quantities/money.js";

/** One length of wire that must be in one piece. */
export interface CutPiece {
  /** More than 0. [m] */
  readonly meters: number;
  /** What it is for: loop key or words. */
  readonly for: string;
}

/** One kind of spool, pack or remnant that pieces can be cut from. */
export interface Spool {
  readonly code: string;
  /** Usable length. [m] */
  readonly meters: number;
  /** Price of one. [cents] */
  readonly cents: Cents;
  /** How many are on the van already. */
  readonly stock: number;
  /** What one from the van is charged at, default 0. [cents] */
  readonly stockCents?: Cents;
  /** Most that can be bought; absent = no limit, 0 = a remnant that only the van has. */
  readonly mostBought?: number;
}

/** One spool and what is cut from it, longest piece first. */
export interface CutSpool {
  readonly code: string;
  readonly meters: number;
  readonly fromStock: boolean;
  readonly cents: Cents;
  readonly cuts: readonly CutPiece[];
  readonly leftoverMeters: number;
}

export interface CutPlan {
  readonly status: "optimal" | "feasible" | "infeasible";
  /** null when infeasible. */
  readonly cents: Cents | null;
  /** No way of cutting these pieces costs less. null when infeasible. */
  readonly boundCents: Cents | null;
  readonly spools: readonly CutSpool[];
  /** What to buy, by code in the order given. */
  readonly buy: readonly { readonly code: string; readonly count: number; readonly cents: Cents }[];
  readonly method: string;
  readonly why?: string;
}
