import type { PlannedCell, PrintablePlan } from "../../lib/report/printable-plan.js";

/** What no formula of our tests gives. */
export const wrongValue = -777.25;

/** The plan with a wrong cached value in every formula cell (or in the chosen ones): a canary for recalculation. */
export function withWrongCache(
  plan: PrintablePlan,
  chosen: (cell: PlannedCell, sheet: string) => boolean = () => true,
): PrintablePlan {
  return {
    ...plan,
    sheets: plan.sheets.map((sheet) => ({
      ...sheet,
      cells: sheet.cells.map((cell) =>
        cell.content.kind === "formula" && chosen(cell, sheet.name)
          ? { ...cell, content: { ...cell.content, cached: wrongValue } }
          : cell,
      ),
    })),
  };
}
