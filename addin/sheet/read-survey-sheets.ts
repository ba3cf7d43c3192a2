/// <reference types="office-js" />
import {
  isoDateOf,
  plainText,
  planRecordName,
  type SheetToRead,
  type SurveySheetName,
  type TypedCell,
  type TypedSheet,
} from "../loopwright.js";
import { type ExcelConnection, runInExcel } from "./connection.js";
import { askMarks } from "./live-workbook.js";
import { surveySheetOf } from "./merge-survey.js";
import { areaOf, type CellsRead, placeOfRange, readCells } from "./read-cells.js";

/** A survey table as it was read: what the user wrote since is told by comparing with it. */
export interface TableAsRead {
  readonly sheet: string;
  /** Row of the headings on the sheet. */
  readonly row: number;
  /** Cells as Excel has them, heading row first, without a totals row. */
  readonly values: readonly (readonly unknown[])[];
}

/** What the open workbook says. */
export interface SurveyInWorkbook {
  /** The survey tables, or every sheet that shows when the workbook has none. */
  readonly sheets: readonly SheetToRead[];
  /** Sheets of a former estimate that a new one takes something from. */
  readonly former: readonly TypedSheet[];
  /** The survey tables by name; empty when the survey was read from loose sheets. */
  readonly tables: ReadonlyMap<string, TableAsRead>;
}

/** Sheets of a former estimate: packs wanted, and the plan to hold or to compare with; with their tables, if any. */
const formerSheets: Readonly<Record<string, string | null>> = { Bill: "bill", [planRecordName]: null };

/** One rectangle to be read, and what it is. */
interface Source {
  readonly sheet: string;
  readonly range: Excel.Range;
  readonly totals: boolean;
  readonly as?: SurveySheetName;
  readonly table?: string;
  readonly former?: string;
}

/**
 * Reads the survey out of the open workbook; nothing is changed. Tables are found by name and our sheets by their
 * hidden mark, wherever they were moved to and whatever their sheets are called by now.
 * @throws {@link ExcelProblem} in words.
 */
export function readSurveySheets({ connection }: { readonly connection: ExcelConnection }): Promise<SurveyInWorkbook> {
  return runInExcel(connection, async (context) => {
    const sources = await sourcesIn(context);
    const there = sources.filter(({ range }) => !range.isNullObject);
    const cells = await readCells(
      context,
      there.map(({ sheet, range, totals }) => {
        const area = areaOf(range);
        return {
          sheet,
          area: totals ? { ...area, bottom: area.bottom - 1 } : area,
          facts: ["values", "numberFormat"] as const,
        };
      }),
    );
    const sheets: SheetToRead[] = [];
    const former: TypedSheet[] = [];
    const tables = new Map<string, TableAsRead>();
    for (const [index, source] of there.entries()) {
      const read = cells[index];
      if (read === undefined) continue;
      const row = source.range.rowIndex + 1;
      const typed = typedSheet(source.former ?? source.sheet, row, read);
      if (source.former !== undefined) former.push(typed);
      else sheets.push(source.as === undefined ? { typed } : { typed, as: source.as });
      if (source.table !== undefined) tables.set(source.table, { sheet: source.sheet, row, values: read.values });
    }
    return { sheets, former, tables };
  });
}

async function sourcesIn(context: Excel.RequestContext): Promise<readonly Source[]> {
  const { workbook } = context;
  const tables = workbook.tables.load("items/name,items/showTotals,items/worksheet/name");
  const worksheets = workbook.worksheets.load("items/name,items/visibility");
  await context.sync();
  const askedMarks = askMarks(
    context,
    worksheets.items.map(({ name }) => name),
  );
  const byTable = tables.items.flatMap((table): Source[] => {
    const as = surveySheetOf(table.name);
    const range = () => table.getRange().load(placeOfRange);
    const place = { sheet: table.worksheet.name, totals: table.showTotals };
    if (as !== undefined) return [{ ...place, as, table: table.name, range: range() }];
    const former = Object.entries(formerSheets).find(([, name]) => name === table.name)?.[0];
    return former === undefined ? [] : [{ ...place, former, range: range() }];
  });
  const bySheet = worksheets.items.map((sheet) => ({
    name: sheet.name,
    visible: sheet.visibility === "Visible",
    range: sheet.getUsedRangeOrNullObject(true).load(placeOfRange),
  }));
  await context.sync();
  const marks = askedMarks();
  const survey = byTable.some(({ as }) => as === "Loops");
  const formerByTable = byTable.filter(({ former }) => former !== undefined);
  const formerBySheet = Object.keys(formerSheets).flatMap((former): Source[] => {
    if (formerByTable.some((one) => one.former === former)) return [];
    const found = bySheet.find(({ name }) => name === former) ?? bySheet.find(({ name }) => marks.get(name) === former);
    return found === undefined ? [] : [{ sheet: found.name, range: found.range, totals: false, former }];
  });
  const loose = bySheet.flatMap(({ name, visible, range }): Source[] => {
    const taken = marks.has(name) || [...formerByTable, ...formerBySheet].some(({ sheet }) => sheet === name);
    return survey || taken || !visible ? [] : [{ sheet: name, range, totals: false }];
  });
  return [
    ...(survey ? byTable.filter(({ as }) => as !== undefined) : []),
    ...loose,
    ...formerByTable,
    ...formerBySheet,
  ];
}

function typedSheet(sheet: string, row: number, cells: CellsRead<"values" | "numberFormat">): TypedSheet {
  return {
    sheet,
    rows: cells.values.map((values, index) => ({
      row: row + index,
      cells: values.map((value, column) => typedCell(value, String(cells.numberFormat[index]?.[column] ?? ""))),
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
