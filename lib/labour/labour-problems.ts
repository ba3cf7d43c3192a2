import type { Query } from "../problems/query.js";
import type { LabourUnit } from "../survey/survey.js";

/** Queries for labour rows that cannot be reckoned with: hours negative, not in rising order, a task twice. */
export function labourProblems({
  labour,
  sheet = "labour",
}: {
  readonly labour: readonly LabourUnit[];
  readonly sheet?: string;
}): readonly Query[] {
  const seen = new Map<string, number>();
  return labour.flatMap((unit, index): Query[] => {
    const row = index + 2;
    const { task, lowHours, likelyHours, highHours } = unit;
    const queries: Query[] = [];
    const typed = `${lowHours} / ${likelyHours} / ${highHours}`;
    if (!(lowHours >= 0 && lowHours <= likelyHours && likelyHours <= highHours && Number.isFinite(highHours))) {
      const message = `${task}: expected 0 ≤ low ≤ likely ≤ high hours; write the three in that order`;
      queries.push({ sheet, row, column: "likelyHours", typed, message });
    }
    const before = seen.get(task);
    if (before !== undefined) {
      queries.push({ sheet, row, column: "task", typed: task, message: `row ${before} holds this task: keep one row` });
    } else seen.set(task, row);
    return queries;
  });
}
