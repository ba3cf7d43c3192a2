import type { MilpModel, SolverProgress, SolverResult } from "../../loopwright-solver.js";

export interface ToSolver {
  readonly model: MilpModel;
  /** Most time. [s] */
  readonly seconds: number;
  readonly maxNodes: number | undefined;
}

export type FromSolver =
  | { readonly progress: SolverProgress }
  | { readonly improved: { readonly values: readonly number[]; readonly objective: number } }
  | { readonly result: SolverResult }
  | { readonly failure: string };
