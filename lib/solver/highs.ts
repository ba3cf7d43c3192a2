import type { Highs, ModelData } from "highs";
import type { MilpModel, Solve, SolveOptions, SolverResult } from "../plan/milp-model.js";

/** Where the WebAssembly file is, for hosts that do not find it beside the package. */
export interface HighsLocation {
  readonly locateFile?: (file: string) => string;
  readonly wasmBinary?: ArrayBuffer;
}

/** The runtime of this thread: the package can be instantiated once only. */
let loaded: Promise<Highs> | undefined;

/**
 * The exact solver in this thread: HiGHS as WebAssembly, loaded at the first call (the first call's `location`
 * counts). A running solve blocks its thread and cannot see a signal raised there; use the worker where cutting
 * short matters.
 */
export function highsSolver(location: HighsLocation = {}): Solve {
  return async (model, options) => {
    loaded ??= loadHighs(location);
    return runHighs(await loaded, model, options);
  };
}

/** The package's types describe its CommonJS face; imported as a module its default export is the loader itself. */
export async function loadHighs(location: HighsLocation): Promise<Highs> {
  const module = (await import("highs")) as unknown as { default: (options: HighsLocation) => Promise<Highs> };
  return module.default(location);
}

/** {@link highsSolver} with the package's own WebAssembly file. */
export const solveWithHighs: Solve = highsSolver();

/** Optima are whole cents: a gap below 1 is a proof; the rest is room for the solver's own tolerance. */
const absoluteGap = 0.95;

/** Improving solutions, for a caller that may have to end the thread. */
export type OnImproved = (values: readonly number[], objective: number) => void;

/** Solves one model; throws when HiGHS refuses it or answers anything but optimal, infeasible or cut short. */
export function runHighs(highs: Highs, model: MilpModel, options: SolveOptions, onImproved?: OnImproved): SolverResult {
  if (model.columnCost.length === 0) return solveNothing(model);
  const { callbackType, modelStatus } = highs.constants;
  let interrupted = options.signal?.aborted ?? false;
  if (interrupted || options.seconds <= 0) {
    return { status: "cut short", objective: null, values: null, bound: null, seconds: 0 };
  }
  const instance = highs.createModel(modelData(model, highs.infinity));
  try {
    instance.options.set({
      output_flag: false,
      time_limit: options.seconds,
      random_seed: 1,
      mip_rel_gap: 0,
      mip_abs_gap: absoluteGap,
      mip_feasibility_tolerance: 1e-7,
      // Restarts of the root cost more than they bring on these models: about twice the time without this.
      mip_allow_restart: false,
      ...(options.maxNodes === undefined ? {} : { mip_max_nodes: options.maxNodes }),
    });
    if (model.start) instance.setSolution({ indices: [...model.start.column], values: [...model.start.value] });
    const finite = (value: number | undefined) =>
      value === undefined || !Number.isFinite(value) || Math.abs(value) >= 1e30 ? null : value;
    instance.run({
      [callbackType.mipLogging](event) {
        options.onProgress?.({
          seconds: event.data.running_time ?? 0,
          best: finite(event.data.mip_primal_bound),
          bound: finite(event.data.mip_dual_bound),
        });
        return undefined;
      },
      [callbackType.mipImprovingSolution](event) {
        const values = event.data.mip_solution;
        if (values && onImproved) onImproved(Array.from(values), event.data.objective_function_value ?? 0);
        return undefined;
      },
      [callbackType.mipInterrupt](event) {
        interrupted ||= options.signal?.aborted ?? false;
        if (interrupted) event.interrupt();
        return undefined;
      },
    });
    const seconds = instance.getRunTime();
    const status = instance.getModelStatus();
    if (status === modelStatus.infeasible || status === modelStatus.unboundedOrInfeasible) {
      return { status: "infeasible", objective: null, values: null, bound: null, seconds };
    }
    const cutShort =
      status === modelStatus.timeLimit || status === modelStatus.interrupted || status === modelStatus.solutionLimit;
    if (status !== modelStatus.optimal && !cutShort) throw new Error(`The solver ended with model status ${status}.`);
    const bound = finite(instance.info.get("mip_dual_bound") as number);
    const found = instance.info.get("primal_solution_status") === highs.constants.solutionStatus.feasible;
    return {
      status: cutShort ? "cut short" : "optimal",
      objective: found ? instance.getObjectiveValue() : null,
      values: found ? Array.from(instance.getSolution().colValue) : null,
      bound,
      seconds,
    };
  } finally {
    instance.dispose();
  }
}

/** HiGHS answers a model without columns with the status "empty" and objective 0, whatever the rows ask. */
function solveNothing(model: MilpModel): SolverResult {
  const kept = model.rowLower.every((lower, row) => lower <= 0 && (model.rowUpper[row] ?? 0) >= 0);
  if (!kept) return { status: "infeasible", objective: null, values: null, bound: null, seconds: 0 };
  return { status: "optimal", objective: 0, values: [], bound: 0, seconds: 0 };
}

function modelData(model: MilpModel, infinity: number): ModelData {
  const bounded = (value: number) => (value === Infinity ? infinity : value === -Infinity ? -infinity : value);
  const numCols = model.columnCost.length;
  const numRows = model.rowLower.length;
  return {
    numCols,
    numRows,
    colCost: [...model.columnCost],
    colLower: model.columnLower.map(bounded),
    colUpper: model.columnUpper.map(bounded),
    rowLower: model.rowLower.map(bounded),
    rowUpper: model.rowUpper.map(bounded),
    integrality: model.columnInteger.map((integer) => (integer ? 1 : 0)),
    matrix: {
      format: "csc",
      numRows,
      numCols,
      starts: [...model.columnStart],
      indices: [...model.rowIndex],
      values: [...model.value],
    },
  };
}
