/// <reference types="office-js" />
import {
  isoDateOf,
  plainText,
  planRecordName,
  type SheetToRead,
  type TypedCell,
  type TypedSheet,
} from "../loopwright.js";
import { type ExcelConnection, runInExcel } from "./connection.js";
import { surveySheetOf } from "./merge-survey.js";

/** What the open workbook says. */
export interface SurveyInWorkbook {
  /** The survey tables, or every sheet that shows when the workbook has none. */
  readonly sheets: readonly SheetToRead[];
  /** Sheets of a former estimate that a new one takes something from. */
  readonly former: readonly TypedSheet[];
}

/** Sheets of a former estimate: packs wanted, and the plan to hold or to compare with. */
const formerSheets = ["Bill", planRecordName];

/** Reads the survey out of the open workbook; nothing is changed. */
export function readSurveySheets({ connection }: { readonly connection: ExcelConnection }): Promise<SurveyInWorkbook> {
  return runInExcel(connection, async (context) => {
    const { workbook } = context;
    const tables = workbook.tables.load("items/name,items/worksheet/name");
    const worksheets = workbook.worksheets.load("items/name,items/visibility");
    await context.sync();
    const ours = tables.items.filter(({ name }) => surveySheetOf(name) !== undefined);
    const survey = ours.some(({ name }) => surveySheetOf(name) === "Loops");
    const former = worksheets.items.filter(({ name }) => formerSheets.includes(name));
    const loose = survey ? [] : worksheets.items.filter(({ visibility }) => visibility === "Visible");
    const ask = (range: Excel.Range) => range.load("values,numberFormat,rowIndex");
    const tableRanges = (survey ? ours : []).map((table) => ({ table, range: ask(table.getRange()) }));
    const used = (sheet: Excel.Worksheet) => ({ sheet, range: ask(sheet.getUsedRangeOrNullObject(true)) });
    const formerRanges = former.map(used);
    const looseRanges = loose.filter((sheet) => !former.includes(sheet)).map(used);
    await context.sync();
    return {
      sheets: [
        ...tableRanges.map(({ table, range }): SheetToRead => {
          const as = surveySheetOf(table.name);
          const typed = typedSheet(table.worksheet.name, range);
          return as === undefined ? { typed } : { typed, as };
        }),
        ...looseRanges.flatMap(({ sheet, range }) =>
          range.isNullObject ? [] : [{ typed: typedSheet(sheet.name, range) }],
        ),
      ],
      former: formerRanges.flatMap(({ sheet, range }) => (range.isNullObject ? [] : [typedSheet(sheet.name, range)])),
    };
  });
}

function typedSheet(sheet: string, range: Excel.Range): TypedSheet {
  return {
    sheet,
    rows: range.values.map((values, row) => ({
      row: range.rowIndex + row + 1,
      cells: values.map((value: unknown, column) => typedCell(value, String(range.numberFormat[row]?.[column] ?? ""))),
    })),
  };
}

/** A cell as a surveyor's cell: empty is null, a day number under a date format is a date, as when a file is read. */
function typedCell(value: unknown, format: string): TypedCell {
  if (typeof value === "number") {
    const isoDate = showsDay(format) ? isoDateOf(value, false) : null;
    return isoDate === null ? value : { isoDate };
  }
  if (typeof value === "boolean") return value;
  return typeof value !== "string" || value === "" ? null : plainText(value);
}

/** Whether a number format shows a day: a d, y or spelt month outside quotes, brackets and escapes. */
function showsDay(format: string): boolean {
  const bare = format.replace(/"[^"]*"|\[[^\]]*\]|\\.|_.|\*./g, "");
  return !/general/i.test(bare) && (/[dy]/i.test(bare) || /m{3,}|^m+[^hs]*$/i.test(bare));
}
