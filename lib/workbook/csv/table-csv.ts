import { InputError } from "../../problems/input-error.js";
import { inputMark } from "../../report/layout.js";
import type { PlannedSheet, PrintablePlan } from "../../report/printable-plan.js";
import { type CsvField, csvText } from "./csv-text.js";

const marked = new RegExp(`^${inputMark}\\s*`, "u");

/**
 * One table of a printable plan as CSV, heading first and without its totals row: values only, formulas as the figure
 * they show.
 * @throws {@link InputError} when the plan has no such table.
 */
export function tableCsv(plan: PrintablePlan, table: string): string {
  return csvText(tableRows(plan, table));
}

/**
 * Heading and rows of one table of a printable plan, without its totals row; the mark of an input's heading is left out.
 * @throws {@link InputError} when the plan has no such table.
 */
export function tableRows(plan: PrintablePlan, table: string): CsvField[][] {
  for (const sheet of plan.sheets) {
    const found = sheet.tables.find((each) => each.name === table);
    if (found === undefined) continue;
    const last = found.totalsRow ? found.area.bottom - 1 : found.area.bottom;
    const [heading = [], ...rows] = valuesOf(sheet, { ...found.area, bottom: last });
    return [heading.map((name) => (typeof name === "string" ? name.replace(marked, "") : name)), ...rows];
  }
  throw new InputError({ field: "table", got: `"${table}"`, expected: "the name of a table in the plan" });
}

function valuesOf(
  sheet: PlannedSheet,
  area: { top: number; left: number; bottom: number; right: number },
): CsvField[][] {
  const width = area.right - area.left + 1;
  const rows = Array.from({ length: area.bottom - area.top + 1 }, (): CsvField[] => Array<CsvField>(width).fill(null));
  for (const { row, column, content } of sheet.cells) {
    const line = rows[row - area.top];
    if (line === undefined || column < area.left || column > area.right) continue;
    if (content.kind === "text") line[column - area.left] = content.text;
    if (content.kind === "number") line[column - area.left] = content.value;
    if (content.kind === "formula") {
      line[column - area.left] = typeof content.cached === "boolean" ? String(content.cached) : content.cached;
    }
  }
  return rows;
}
