import type { Cents } from "../quantities/money.js";
import type { TreatmentKind } from "./problem.js";

/** What one loop becomes. Loops with equal panel, module and `input` share that input. */
export interface PlanChoice {
  readonly loop: string;
  readonly kind: TreatmentKind;
  /** Module type, for keep and repair. */
  readonly module?: string;
  /** Name of the input, unique at its panel and module type, for keep; a repaired loop holds one by itself. */
  readonly input?: string;
  /** Index into the loop's `withoutInput`. */
  readonly option?: number;
}

/** Number of modules by panel and type. */
export type ModuleCounts = Readonly<Record<string, Readonly<Record<string, number>>>>;

/** Treatments and modules, not yet priced. */
export interface PlanDraft {
  readonly choices: readonly PlanChoice[];
  readonly modules: ModuleCounts;
}

/**
 * The chosen plan. `optimal`: no plan costs less, for the prices, hours and limits entered; `feasible`: it can be
 * carried out, and no plan costs less than `boundCents`; `infeasible`: no plan keeps every limit, `why` says which.
 */
export interface Plan extends PlanDraft {
  readonly schema: "loopwright.plan.1";
  readonly status: "optimal" | "feasible" | "infeasible";
  readonly costCents: Cents | null;
  /** Proved lower limit of any plan's cost; null when infeasible or when nothing was proved. */
  readonly boundCents: Cents | null;
  readonly why?: string;
}
