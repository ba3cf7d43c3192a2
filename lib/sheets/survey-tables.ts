import { call, type Formula, thisRow, wholeColumn } from "../report/formula.js";
import type { Cell, Sheet, TableBlock } from "../report/model.js";

/** Names of the survey tables that formulas read. */
export const surveyTable = {
  loops: "survey_loops",
  priceBook: "survey_price_book",
  labour: "survey_labour",
  settings: "survey_settings",
  modules: "survey_input_modules",
} as const;

/** A table of some sheets by its name. */
export function tableNamed(sheets: readonly Sheet[], name: string): TableBlock | undefined {
  for (const { blocks } of sheets) {
    for (const block of blocks) if (block.kind === "table" && block.name === name) return block;
  }
  return undefined;
}

/** The value of a table's column in the row where another column holds this row's key. */
export function lookUp(table: string, wanted: string, keyColumn: string, key: Formula): Formula {
  return call("INDEX", wholeColumn(table, wanted), call("MATCH", key, wholeColumn(table, keyColumn), exactMatch));
}

const exactMatch: Formula = { kind: "literal", value: 0 };

/** The same for this row's own key column of equal name. */
export const lookUpHere = (table: string, wanted: string, keyColumn: string): Formula =>
  lookUp(table, wanted, keyColumn, thisRow(keyColumn));

/** A cell as a formula that joins texts sees it. */
export function shownText(cell: Cell | undefined): string {
  if (cell === undefined) return "";
  if (cell.kind === "text") return cell.text;
  if (cell.kind === "number") return String(cell.value);
  return "";
}

/** Text of each row of a survey table: key, and the given columns joined. */
export function rowTexts(
  table: TableBlock,
  keyColumn: string,
  columns: readonly string[],
  separator: string,
): ReadonlyMap<string, string> {
  const at = (key: string) => table.columns.findIndex((one) => one.key === key);
  return new Map(
    table.rows.flatMap((row): [string, string][] => {
      const key = shownText(row[at(keyColumn)]);
      return key === "" ? [] : [[key, columns.map((one) => shownText(row[at(one)])).join(separator)]];
    }),
  );
}

/** Sum of the numbers in a column, as SUM gives it. */
export function columnSum(table: TableBlock, wanted: string): number {
  const at = table.columns.findIndex(({ key }) => key === wanted);
  return table.rows.reduce((sum, row) => {
    const cell = row[at];
    return sum + (cell?.kind === "number" ? cell.value : cell?.kind === "money" ? cell.cents / 100 : 0);
  }, 0);
}
