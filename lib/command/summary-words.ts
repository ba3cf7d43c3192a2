import type { Estimate } from "../estimate/estimate.js";
import { summaryOf } from "../estimate/summary.js";

/** The summary the terminal prints, with the queries below. */
export function summaryWords(estimate: Estimate, mostQueries = 40): readonly string[] {
  const { stays, costs, measureNext, orderToday, doNotTouch } = summaryOf(estimate);
  const part = (heading: string, lines: readonly string[]) => [heading, ...lines.map((line) => `  ${line}`), ""];
  const { queries } = estimate;
  return [
    `${estimate.site.name ?? "Unnamed site"}`,
    "",
    ...part("DO NOT TOUCH", doNotTouch),
    ...part("What stays", stays),
    ...part("What it costs", costs),
    ...part("Measure next", measureNext),
    ...part("Order today", orderToday),
    ...part(
      queries.length === 0 ? "No queries" : `${queries.length} queries (all on the Queries sheet)`,
      queries.slice(0, mostQueries).map(({ sheet, row, column, typed, message }) => {
        const place = [sheet, row === null ? "" : `row ${row}`, column ?? ""].filter((word) => word !== "").join(", ");
        return `${place}${typed === "" ? "" : ` "${typed}"`}: ${message}`;
      }),
    ),
    ...(queries.length > mostQueries ? [`  … and ${queries.length - mostQueries} more.`] : []),
  ];
}
