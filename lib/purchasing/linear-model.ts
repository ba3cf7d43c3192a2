/**
 * A mixed-integer linear model as plain data: minimise Σ cost·x with every row's sum between its bounds.
 * Absent bounds mean none; a variable is at least 0 unless `lower` says otherwise.
 */
export interface LinearModel {
  readonly variables: readonly {
    readonly name: string;
    readonly cost: number;
    readonly lower?: number;
    readonly upper?: number;
    readonly integer: boolean;
  }[];
  readonly rows: readonly {
    readonly name: string;
    readonly lower?: number;
    readonly upper?: number;
    readonly terms: readonly { readonly variable: number; readonly factor: number }[];
  }[];
}

/** A solver's answer: values by variable, and a proved lower limit of the cost where it has one. */
export interface LinearAnswer {
  readonly status: "optimal" | "feasible" | "infeasible" | "unknown";
  readonly values: readonly number[];
  readonly bound?: number;
}

/** A MILP solver, passed in so that this stage stays free of packages. */
export type Solve = (model: LinearModel) => LinearAnswer | Promise<LinearAnswer>;
