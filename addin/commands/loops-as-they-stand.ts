import { columnsOf, fullHeading, type Sheet, type Survey } from "../loopwright.js";
import { plainHeading } from "../sheet/merge-survey.js";
import type { SurveyInWorkbook } from "../sheet/read-survey-sheets.js";

const loopsTable = "survey_loops";

/**
 * The planned sheet of the loops with what really stands in the workbook's table, key excepted: the loops stay as they
 * were typed, and the report's formulas compare the plan with just that. Other sheets come back unchanged.
 */
export function loopsAsTheyStand(given: {
  readonly sheet: Sheet;
  readonly loops: Survey["loops"];
  readonly found: SurveyInWorkbook;
}): Sheet {
  const { sheet, loops, found } = given;
  const read = found.tables.get(loopsTable);
  if (read === undefined) return sheet;
  const headings = (read.values[0] ?? []).map(plainHeading);
  const at = columnsOf("Loops").map((column) => headings.indexOf(plainHeading(fullHeading(column))));
  const blocks = sheet.blocks.map((block) => {
    if (block.kind !== "table" || block.name !== loopsTable) return block;
    const rows = block.rows.map((cells, index) => {
      const row = loops[index]?.row;
      const typed = row === undefined ? undefined : read.values[row - read.row];
      if (typed === undefined) return cells;
      return cells.map((cell, column) => {
        if (block.columns[column]?.key === "key") return cell;
        const text = String(typed[at[column] ?? -1] ?? "");
        return text === "" ? ({ kind: "blank" } as const) : ({ kind: "text", text } as const);
      });
    });
    return { ...block, rows };
  });
  return { ...sheet, blocks };
}
