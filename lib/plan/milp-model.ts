/** A linear model with whole-number columns, minimised, as plain data (compressed by column). */
export interface MilpModel {
  readonly columnCost: readonly number[];
  readonly columnLower: readonly number[];
  /** Infinity = no upper bound. */
  readonly columnUpper: readonly number[];
  readonly columnInteger: readonly boolean[];
  readonly rowLower: readonly number[];
  readonly rowUpper: readonly number[];
  /** Start of each column in `rowIndex` and `value`, one more entry than columns. */
  readonly columnStart: readonly number[];
  readonly rowIndex: readonly number[];
  readonly value: readonly number[];
  /** Values of some columns of a known plan, to start from. */
  readonly start?: { readonly column: readonly number[]; readonly value: readonly number[] };
}

/** How far the solver has come. */
export interface SolverProgress {
  readonly seconds: number;
  /** Objective of the best plan so far, null before there is one. */
  readonly best: number | null;
  /** Proved lower bound of the objective, null before there is one. */
  readonly bound: number | null;
}

/** What the solver found. */
export interface SolverResult {
  /** `cut short`: time, nodes or the caller ended it; `values` is the best so far, if any. */
  readonly status: "optimal" | "infeasible" | "cut short";
  readonly objective: number | null;
  readonly values: readonly number[] | null;
  /** Proved lower bound of the objective. */
  readonly bound: number | null;
  /** Time it took. */
  readonly seconds: number;
}

/** Any AbortSignal fits; the stage itself stays free of the platform. */
export interface CancelSignal {
  readonly aborted: boolean;
}

export interface SolveOptions {
  readonly seconds: number;
  /** Most branching nodes: a limit that ends at the same place on every machine. */
  readonly maxNodes?: number | undefined;
  readonly onProgress?: ((progress: SolverProgress) => void) | undefined;
  readonly signal?: CancelSignal | undefined;
}

/**
 * A solver of {@link MilpModel}. It proves to an absolute gap below 1, so objectives must be whole numbers at whole
 * columns. It rejects when it cannot run at all.
 */
export type Solve = (model: MilpModel, options: SolveOptions) => Promise<SolverResult>;

/** Collects columns, rows and entries. */
export class MilpBuilder {
  readonly #cost: number[] = [];
  readonly #lower: number[] = [];
  readonly #upper: number[] = [];
  readonly #integer: boolean[] = [];
  readonly #rowLower: number[] = [];
  readonly #rowUpper: number[] = [];
  readonly #entries: [row: number, value: number][][] = [];

  column(column: { cost: number; lower?: number; upper?: number; integer?: boolean }): number {
    this.#cost.push(column.cost);
    this.#lower.push(column.lower ?? 0);
    this.#upper.push(column.upper ?? Infinity);
    this.#integer.push(column.integer ?? true);
    return this.#entries.push([]) - 1;
  }

  row(lower: number, upper: number): number {
    this.#rowLower.push(lower);
    return this.#rowUpper.push(upper) - 1;
  }

  /** Adds to an entry; entries of one row and column must be added once. */
  entry(row: number, column: number, value: number): void {
    if (value !== 0) this.#entries[column]?.push([row, value]);
  }

  addCost(column: number, cents: number): void {
    this.#cost[column] = (this.#cost[column] ?? 0) + cents;
  }

  build(): MilpModel {
    const columnStart = [0];
    const rowIndex: number[] = [];
    const value: number[] = [];
    for (const entries of this.#entries) {
      for (const [row, amount] of entries.sort((a, b) => a[0] - b[0])) {
        rowIndex.push(row);
        value.push(amount);
      }
      columnStart.push(rowIndex.length);
    }
    return {
      columnCost: this.#cost,
      columnLower: this.#lower,
      columnUpper: this.#upper,
      columnInteger: this.#integer,
      rowLower: this.#rowLower,
      rowUpper: this.#rowUpper,
      columnStart,
      rowIndex,
      value,
    };
  }
}

/** The same model with another row: Σ coefficient · column between lower and upper. */
export function withRow(model: MilpModel, row: { coefficients: readonly number[]; lower: number; upper: number }) {
  const index = model.rowLower.length;
  const columnStart = [0];
  const rowIndex: number[] = [];
  const value: number[] = [];
  row.coefficients.forEach((coefficient, column) => {
    for (let at = model.columnStart[column] ?? 0; at < (model.columnStart[column + 1] ?? 0); at += 1) {
      rowIndex.push(model.rowIndex[at] ?? 0);
      value.push(model.value[at] ?? 0);
    }
    if (coefficient !== 0) {
      rowIndex.push(index);
      value.push(coefficient);
    }
    columnStart.push(rowIndex.length);
  });
  const rowLower = [...model.rowLower, row.lower];
  const rowUpper = [...model.rowUpper, row.upper];
  return { ...model, columnStart, rowIndex, value, rowLower, rowUpper } satisfies MilpModel;
}
