import type { Condition } from "../findings/loop-record.js";

/** What one finished job teaches: counts and sums only, so that it can be added and taken away without a trace. */
export interface JobStatistics {
  /** Name of the job, unique among the finished ones. */
  readonly job: string;
  /** Day it was finished, as typed. */
  readonly finished: string;
  /** Loops whose outcome is known, and those of them that had a fault. */
  readonly loops: { readonly counted: number; readonly faulty: number };
  /** As-left readings inside and outside the band expected. */
  readonly asLeft: { readonly inBand: number; readonly outside: number };
  readonly repairs: readonly RepairCounts[];
  readonly hours: readonly HoursSums[];
}

/** Repairs of one condition that were tried, and that kept the loop on the wire. */
export interface RepairCounts {
  readonly condition: Condition;
  readonly tried: number;
  readonly succeeded: number;
}

/** Sums over the natural logarithm of hours per unit of a task. */
export interface HoursSums {
  readonly task: string;
  /** Observations; a loop whose hours cover several tasks counts as a share for each. */
  readonly weight: number;
  readonly sumLog: number;
  readonly sumLogSquares: number;
}
