// What the solver's own worker takes from the library: the solver and nothing else.
export type { MilpModel, Solve, SolverProgress, SolverResult } from "../lib/plan/milp-model.js";
export { loadHighs, runHighs } from "../lib/solver/highs.js";
