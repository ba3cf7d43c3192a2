/// <reference types="office-js" />
import type { Area } from "../loopwright.js";
import type { SheetContents } from "./contents.js";
import { type WireValue, wireText } from "./wire-value.js";

/** A table that stands in the workbook. */
export interface LiveTable {
  readonly name: string;
  readonly sheet: string;
  readonly area: Area;
  readonly totalsRow: boolean;
  readonly filter: boolean;
  /** Cells as values, heading row first. */
  readonly values: readonly (readonly unknown[])[];
}

/** A sheet that stands in the workbook and that we may write to. */
export interface LiveSheet {
  readonly name: string;
  readonly protected: boolean;
  readonly ours: boolean;
  /** Area with contents; absent when empty. */
  readonly used?: Area;
  readonly firstCell: unknown;
  /** What stands there now, to be put back when writing fails. */
  readonly contents: SheetContents;
  readonly charts: readonly string[];
  readonly shapes: readonly string[];
}

/** What was found in the workbook before anything is written. */
export interface LiveWorkbook {
  /** All sheets in order. */
  readonly sheetNames: readonly string[];
  readonly tables: readonly LiveTable[];
  readonly sheets: ReadonlyMap<string, LiveSheet>;
  readonly names: ReadonlyMap<string, string>;
  readonly eventsOn: boolean;
}

/** Name that stands, hidden, on every sheet that the add-in writes. */
export const sheetMark = "loopwright_sheet";

/** So many cells are read in one answer: Excel on the web hands out 5 MB. */
const cellsPerAnswer = 40_000;

/** Reads what stands in the workbook: all names of sheets and tables, and the contents of the sheets asked for. */
export async function liveWorkbook(
  context: Excel.RequestContext,
  wanted: (names: { readonly sheets: readonly string[]; readonly tableSheets: ReadonlyMap<string, string> }) => {
    readonly sheets: readonly string[];
    readonly tables: readonly string[];
  },
): Promise<LiveWorkbook> {
  const { workbook, runtime } = context;
  const sheets = workbook.worksheets.load("items/name");
  const tables = workbook.tables.load("items/name,items/showTotals,items/showFilterButton,items/worksheet/name");
  const names = workbook.names.load("items/name,items/formula");
  runtime.load("enableEvents");
  await context.sync();

  const sheetNames = sheets.items.map(({ name }) => name);
  const tableSheets = new Map(tables.items.map(({ name, worksheet }) => [name, worksheet.name]));
  const asked = wanted({ sheets: sheetNames, tableSheets });
  const there = asked.sheets.filter((name) => sheetNames.includes(name)).map((name) => lookAt(context, name));
  const tableRanges = tables.items
    .filter(({ name, worksheet }) => asked.tables.includes(name) || asked.sheets.includes(worksheet.name))
    .map((table) => ({ table, range: table.getRange().load("rowIndex,columnIndex,rowCount,columnCount") }));
  await context.sync();

  let cells = 0;
  for (const { range } of tableRanges.filter(({ table }) => asked.tables.includes(table.name))) {
    cells += range.rowCount * range.columnCount;
    if (cells > cellsPerAnswer) await context.sync();
    if (cells > cellsPerAnswer) cells = range.rowCount * range.columnCount;
    range.load("values");
  }
  for (const { used } of there) {
    if (used.isNullObject) continue;
    cells += used.cellCount * 3;
    if (cells > cellsPerAnswer) await context.sync();
    if (cells > cellsPerAnswer) cells = used.cellCount * 3;
    used.load("values,formulas,numberFormat");
  }
  await context.sync();

  const liveTables = tableRanges.map(({ table, range }): LiveTable => {
    const { rowIndex, columnIndex, rowCount, columnCount } = range;
    return {
      name: table.name,
      sheet: table.worksheet.name,
      area: areaOf(rowIndex, columnIndex, rowCount, columnCount),
      totalsRow: table.showTotals,
      filter: table.showFilterButton,
      values: asked.tables.includes(table.name) ? range.values : [],
    };
  });
  return {
    sheetNames,
    tables: liveTables,
    sheets: new Map(there.map((one) => [one.name, liveSheet(one, liveTables)])),
    names: new Map(names.items.map(({ name, formula }) => [name, String(formula)])),
    eventsOn: runtime.enableEvents,
  };
}

export const areaOf = (rowIndex: number, columnIndex: number, rows: number, columns: number): Area => ({
  top: rowIndex + 1,
  left: columnIndex + 1,
  bottom: rowIndex + rows,
  right: columnIndex + columns,
});

function lookAt(context: Excel.RequestContext, name: string) {
  const sheet = context.workbook.worksheets.getItem(name);
  return {
    name,
    used: sheet.getUsedRangeOrNullObject(true).load("rowIndex,columnIndex,rowCount,columnCount,cellCount"),
    protection: sheet.protection.load("protected"),
    charts: sheet.charts.load("items/name"),
    shapes: sheet.shapes.load("items/name"),
    mark: sheet.names.getItemOrNullObject(sheetMark).load("name"),
  };
}

function liveSheet(found: ReturnType<typeof lookAt>, tables: readonly LiveTable[]): LiveSheet {
  const { name, used, protection, charts, shapes, mark } = found;
  const empty = used.isNullObject;
  return {
    name,
    protected: protection.protected,
    ours: !mark.isNullObject,
    ...(empty ? {} : { used: areaOf(used.rowIndex, used.columnIndex, used.rowCount, used.columnCount) }),
    firstCell: empty || used.rowIndex > 0 || used.columnIndex > 0 ? "" : used.values[0]?.[0],
    contents: empty
      ? { name, rows: 0, columns: 0, values: [], formulas: [], formats: [], tables: [] }
      : contentsNow(found, tables),
    charts: charts.items.map((chart) => chart.id),
    shapes: shapes.items.map((shape) => shape.id),
  };
}

/** The sheet's present contents in the form in which they can be written again. */
function contentsNow({ name, used }: ReturnType<typeof lookAt>, tables: readonly LiveTable[]): SheetContents {
  const pad = <T>(rows: readonly (readonly T[])[]): (T | null)[][] => [
    ...Array.from({ length: used.rowIndex }, () => new Array<T | null>(used.columnIndex + used.columnCount).fill(null)),
    ...rows.map((row) => [...new Array<T | null>(used.columnIndex).fill(null), ...row]),
  ];
  const formulaAt = (row: number, column: number): string | null => {
    const formula: unknown = used.formulas[row]?.[column];
    // Text that looks like a formula reads the same in both; a formula never shows itself.
    return typeof formula === "string" && formula.startsWith("=") && formula !== used.values[row]?.[column]
      ? formula
      : null;
  };
  const values = used.values.map((row, at) =>
    row.map((value: unknown, column): WireValue => {
      if (formulaAt(at, column) !== null || value === "") return null;
      if (typeof value === "string") return wireText(value, String(used.numberFormat[at]?.[column]));
      return typeof value === "number" || typeof value === "boolean" ? value : null;
    }),
  );
  const own = tables.filter(({ sheet }) => sheet === name);
  return {
    name,
    rows: used.rowIndex + used.rowCount,
    columns: used.columnIndex + used.columnCount,
    values: pad(values),
    formulas: pad(used.values.map((row, at) => row.map((_, column) => formulaAt(at, column)))),
    formats: pad(
      used.numberFormat.map((row) => row.map((format: unknown) => (format === "General" ? null : String(format)))),
    ),
    tables: own.map(({ name: table, area, totalsRow, filter }) => {
      const headings = used.values[area.top - 1 - used.rowIndex] ?? [];
      const first = area.left - 1 - used.columnIndex;
      return {
        name: table,
        area,
        totalsRow,
        filter,
        headings: headings.slice(first, first + area.right - area.left + 1).map(String),
      };
    }),
  };
}
