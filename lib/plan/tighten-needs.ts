import type { PlanModel } from "./formulate.js";
import { type Solve, type SolveOptions, withRow } from "./milp-model.js";

export interface TightenInput {
  readonly plan: PlanModel;
  /** Cost of a plan that is known: dearer ones are of no interest. [cents] */
  readonly costCents: number;
  readonly solve: Solve;
  readonly options: () => SolveOptions;
}

/** Between these numbers of pieces lies the need of every plan that costs no more than the known one. */
export interface KnownNeed {
  readonly least: number;
  readonly most: number;
}

/**
 * Bounds the need of each article over the plans as cheap as the known one, whole numbers left out of account. Price
 * steps beyond it drop out, and stock that every such plan uses up is a fixed amount: what couples the panels of a
 * large site is mostly gone.
 */
export async function tightenNeeds(input: TightenInput): Promise<ReadonlyMap<string, KnownNeed>> {
  const { plan, costCents, solve, options } = input;
  const needs = new Map<string, KnownNeed>();
  const { model } = plan;
  const cheapEnough = withRow(model, { coefficients: model.columnCost, lower: -Infinity, upper: costCents + 1 });
  const columnInteger = model.columnCost.map(() => false);
  for (const { article, row, mostNeeded } of plan.articles) {
    const need = model.columnCost.map(() => 0);
    for (let column = 0; column < need.length; column += 1) {
      for (let at = model.columnStart[column] ?? 0; at < (model.columnStart[column + 1] ?? 0); at += 1) {
        const got = model.value[at] ?? 0;
        if (model.rowIndex[at] === row && got < 0) need[column] = -got;
      }
    }
    const least = await solve({ ...cheapEnough, columnCost: need, columnInteger }, options());
    const most = await solve({ ...cheapEnough, columnCost: need.map((count) => -count), columnInteger }, options());
    const proved = least.status === "optimal" && most.status === "optimal";
    if (!proved || least.objective === null || most.objective === null) continue;
    needs.set(article, {
      least: Math.max(0, Math.ceil(least.objective - 0.01)),
      most: Math.min(mostNeeded, Math.floor(-most.objective + 0.01)),
    });
  }
  return needs;
}
