import { judgeGradedReadings } from "../reference/generated/judge-graded-readings.js";
import { conditionCount, conditions } from "./conditions.js";
import { zeros } from "./zeros.js";

/** One size class of a reading and how likely it is under each condition. */
export interface GradedClass {
  readonly outcome: string;
  /** Upper end of the class, `Infinity` for the last. [Ω, V or 1] */
  readonly upTo: number;
  readonly likelihood: number[];
}

/** The size classes of each graded reading, smallest first. */
export type GradedReadings = Readonly<Record<string, readonly GradedClass[]>>;

/** Table reference-data/judge-graded-readings as arrays over the conditions. */
export function gradedReadings(): GradedReadings {
  const result: Record<string, GradedClass[]> = {};
  for (const row of judgeGradedReadings) {
    const classes = result[row.reading] ?? [];
    result[row.reading] = classes;
    if (row.condition === "other") {
      const likelihood = zeros(conditionCount).fill(row.likelihood);
      classes.push({ outcome: row.outcome, upTo: row.upTo ?? Number.POSITIVE_INFINITY, likelihood });
    } else {
      const last = classes[classes.length - 1];
      const index = conditions.indexOf(row.condition as never);
      if (last !== undefined && index >= 0) last.likelihood[index] = row.likelihood;
    }
  }
  return result;
}

/** The class a size falls into. */
export function gradedClass(classes: readonly GradedClass[] | undefined, size: number): GradedClass | undefined {
  if (classes === undefined) return undefined;
  for (const candidate of classes) if (size < candidate.upTo) return candidate;
  return classes[classes.length - 1];
}
