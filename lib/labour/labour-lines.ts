import type { LabourUnit } from "../survey/survey.js";
import { meanHours } from "./mean-hours.js";

/** One kind of work of the whole job. Hours are of all of it together. */
export interface LabourLine {
  readonly task: string;
  readonly words: string;
  readonly count: number;
  readonly lowHours: number;
  readonly likelyHours: number;
  readonly highHours: number;
  /** What the price is reckoned with: PERT mean × count. [h] */
  readonly meanHours: number;
}

/**
 * Gathers tasks into lines in the order of the labour table. `unknown` names tasks the table has no hours for; they
 * are in no line, so the caller must ask about them.
 */
export function labourLines({
  tasks,
  labour,
  words,
}: {
  readonly tasks: readonly { readonly task: string; readonly count: number }[];
  readonly labour: readonly LabourUnit[];
  readonly words: (task: string) => string;
}): { readonly lines: readonly LabourLine[]; readonly unknown: readonly string[] } {
  const counts = new Map<string, number>();
  for (const { task, count } of tasks) counts.set(task, (counts.get(task) ?? 0) + count);
  const lines = labour.flatMap((unit) => {
    const count = counts.get(unit.task) ?? 0;
    if (count === 0) return [];
    const { task, lowHours, likelyHours, highHours } = unit;
    return [
      {
        task,
        words: words(task),
        count,
        lowHours: count * lowHours,
        likelyHours: count * likelyHours,
        highHours: count * highHours,
        meanHours: count * meanHours(unit),
      },
    ];
  });
  const known = new Set(labour.map(({ task }) => task));
  return { lines, unknown: [...counts.keys()].filter((task) => !known.has(task)) };
}
