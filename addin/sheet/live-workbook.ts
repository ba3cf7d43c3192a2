/// <reference types="office-js" />
import { type Area, areaAddress } from "../loopwright.js";
import type { SheetContents } from "./contents.js";
import { areaOf, type CellsRead, placeOfRange, readCells } from "./read-cells.js";
import { type WireValue, wireText } from "./wire-value.js";

/** A table that stands in the workbook. */
export interface LiveTable {
  readonly name: string;
  readonly sheet: string;
  readonly area: Area;
  readonly totalsRow: boolean;
  readonly filter: boolean;
  /** Cells as values, heading row first, without a totals row; empty for tables that were not asked for. */
  readonly values: readonly (readonly unknown[])[];
  /** The same cells as formulas; a cell without one shows its value here too. */
  readonly formulas: readonly (readonly unknown[])[];
}

/** A sheet that stands in the workbook and that may be written to. */
export interface LiveSheet {
  readonly name: string;
  /** How it is protected; absent = not. */
  readonly protection?: Excel.WorksheetProtectionOptions;
  readonly ours: boolean;
  /** Area with contents; absent when empty. */
  readonly used?: Area;
  readonly firstCell: unknown;
  /** What stands there now, to be put back when writing fails. */
  readonly contents: SheetContents;
  /** Merged cells as addresses; null where Excel would not say. */
  readonly merges: readonly string[] | null;
  readonly charts: readonly string[];
  readonly shapes: readonly string[];
}

/** Names of sheets and tables, before any contents are read. */
export interface LiveNames {
  /** All sheets in order. */
  readonly sheetNames: readonly string[];
  /** Sheet of each table. */
  readonly tableSheets: ReadonlyMap<string, string>;
  /** Our sheets, each with the name it was written under. */
  readonly marks: ReadonlyMap<string, string>;
}

/** What was found in the workbook before anything is written. */
export interface LiveWorkbook extends LiveNames {
  readonly tables: readonly LiveTable[];
  readonly sheets: ReadonlyMap<string, LiveSheet>;
  readonly names: ReadonlyMap<string, string>;
  readonly eventsOn: boolean;
  /** No sheet can be added or renamed. */
  readonly structureLocked: boolean;
}

/** Name that stands, hidden, on every sheet that the add-in writes. */
export const sheetMark = "loopwright_sheet";

/** What the mark holds: the name under which the sheet was written. */
export const markFormula = (plannedName: string): string => `="${plannedName.replaceAll('"', '""')}"`;

const markedName = (formula: string): string =>
  /^="(.*)"$/s
    .exec(formula)?.[1]
    ?.replaceAll('""', '"')
    .replace(/^report$/, "") ?? "";

/** Marks of all sheets; asked for with the given names, there after the next sync. */
export function askMarks(context: Excel.RequestContext, sheetNames: readonly string[]) {
  const asked = sheetNames.map((name) => ({
    name,
    mark: context.workbook.worksheets.getItem(name).names.getItemOrNullObject(sheetMark).load("formula"),
  }));
  return (): ReadonlyMap<string, string> =>
    new Map(asked.flatMap(({ name, mark }) => (mark.isNullObject ? [] : [[name, markedName(String(mark.formula))]])));
}

/** Reads what stands in the workbook: all names of sheets and tables, and the contents of those asked for. */
export async function liveWorkbook(
  context: Excel.RequestContext,
  wanted: (names: LiveNames) => { readonly sheets: readonly string[]; readonly tables: readonly string[] },
): Promise<LiveWorkbook> {
  const { workbook, runtime } = context;
  const sheets = workbook.worksheets.load("items/name");
  const tables = workbook.tables.load("items/name,items/showTotals,items/showFilterButton,items/worksheet/name");
  const names = workbook.names.load("items/name,items/formula");
  const lock = workbook.protection.load("protected");
  runtime.load("enableEvents");
  await context.sync();

  const sheetNames = sheets.items.map(({ name }) => name);
  const marks = askMarks(context, sheetNames);
  const ranges = tables.items.map((table) => ({ table, range: table.getRange().load(placeOfRange) }));
  await context.sync();

  const tableSheets = new Map(tables.items.map(({ name, worksheet }) => [name, worksheet.name]));
  const liveNames: LiveNames = { sheetNames, tableSheets, marks: marks() };
  const asked = wanted(liveNames);
  const there = asked.sheets.filter((name) => sheetNames.includes(name)).map((name) => lookAt(context, name));
  if (there.length > 0) await context.sync();

  const tableCells = await readCells(
    context,
    ranges
      .filter(({ table }) => asked.tables.includes(table.name))
      .map(({ table, range }) => ({
        sheet: table.worksheet.name,
        area: withoutTotals(areaOf(range), table.showTotals),
        facts: ["values", "formulas"] as const,
      })),
  );
  const read = new Map(
    ranges
      .filter(({ table }) => asked.tables.includes(table.name))
      .map(({ table }, index) => [table.name, tableCells[index]]),
  );
  const liveTables = ranges.map(
    ({ table, range }): LiveTable => ({
      name: table.name,
      sheet: table.worksheet.name,
      area: areaOf(range),
      totalsRow: table.showTotals,
      filter: table.showFilterButton,
      values: read.get(table.name)?.values ?? [],
      formulas: read.get(table.name)?.formulas ?? [],
    }),
  );
  const filled = there.filter(({ used }) => !used.isNullObject);
  const cells = await readCells(
    context,
    filled.map(({ name, used }) => ({
      sheet: name,
      area: areaOf(used),
      facts: ["values", "formulas", "numberFormat"] as const,
    })),
  );
  const contents = new Map(filled.map(({ name }, index) => [name, cells[index]]));
  const merges = await readMerges(context, filled);
  return {
    ...liveNames,
    tables: liveTables,
    sheets: new Map(
      there.map((one) => [
        one.name,
        liveSheet(one, contents.get(one.name), merges.get(one.name), liveNames, liveTables),
      ]),
    ),
    names: new Map(names.items.map(({ name, formula }) => [name, String(formula)])),
    eventsOn: runtime.enableEvents,
    structureLocked: lock.protected,
  };
}

const withoutTotals = (area: Area, totalsRow: boolean): Area =>
  totalsRow ? { ...area, bottom: area.bottom - 1 } : area;

function lookAt(context: Excel.RequestContext, name: string) {
  const sheet = context.workbook.worksheets.getItem(name);
  return {
    name,
    used: sheet.getUsedRangeOrNullObject(true).load(placeOfRange),
    protection: sheet.protection.load("protected,options"),
    charts: sheet.charts.load("items/name"),
    shapes: sheet.shapes.load("items/name"),
  };
}

/** Excel names at most 512 merged areas of one range; no report sheet merges more than two in a row. */
const rowsPerMergeQuestion = 200;

/** Merged cells of the sheets, as addresses. A sheet with too many for Excel to name is left out. */
async function readMerges(
  context: Excel.RequestContext,
  sheets: readonly { readonly name: string; readonly used: Excel.Range }[],
): Promise<ReadonlyMap<string, readonly string[]>> {
  if (sheets.length === 0) return new Map();
  const bands = sheets.flatMap(({ name, used }) => {
    const { bottom: lastRow, right: lastColumn } = areaOf(used);
    // Merged cells may reach beyond those that hold something.
    const whole = { top: 1, left: 1, bottom: lastRow + 20, right: lastColumn + 20 };
    const count = Math.ceil(whole.bottom / rowsPerMergeQuestion);
    return Array.from({ length: count }, (_, index) => {
      const top = index * rowsPerMergeQuestion + 1;
      const bottom = Math.min(whole.bottom, top + rowsPerMergeQuestion - 1);
      const range = context.workbook.worksheets.getItem(name).getRange(areaAddress({ ...whole, top, bottom }));
      return { name, merged: range.getMergedAreasOrNullObject().load("areaCount") };
    });
  });
  try {
    await context.sync();
    const areas = bands
      .filter(({ merged }) => !merged.isNullObject)
      .map(({ name, merged }) => ({ name, areas: merged.areas.load("items/address") }));
    if (areas.length > 0) await context.sync();
    return new Map(
      sheets.map(({ name }) => [
        name,
        [
          ...new Set(
            areas
              .filter((one) => one.name === name)
              .flatMap((one) => one.areas.items.map(({ address }) => address.replace(/^.*!/s, ""))),
          ),
        ],
      ]),
    );
  } catch {
    return new Map();
  }
}

type Facts = CellsRead<"values" | "formulas" | "numberFormat">;

function liveSheet(
  found: ReturnType<typeof lookAt>,
  cells: Facts | undefined,
  merges: readonly string[] | undefined,
  { marks }: LiveNames,
  tables: readonly LiveTable[],
): LiveSheet {
  const { name, used, protection, charts, shapes } = found;
  const empty = used.isNullObject || cells === undefined;
  return {
    name,
    ...(protection.protected ? { protection: protection.options } : {}),
    ours: marks.has(name),
    ...(empty ? {} : { used: areaOf(used) }),
    firstCell: empty || used.rowIndex > 0 || used.columnIndex > 0 ? "" : cells.values[0]?.[0],
    contents: empty
      ? { name, rows: 0, columns: 0, values: [], formulas: [], formats: [], tables: [] }
      : contentsNow(name, areaOf(used), cells, tables),
    merges: empty ? [] : (merges ?? null),
    charts: charts.items.map((chart) => chart.id),
    shapes: shapes.items.map((shape) => shape.id),
  };
}

/** The sheet's present contents in the form in which they can be written again. */
function contentsNow(name: string, used: Area, cells: Facts, tables: readonly LiveTable[]): SheetContents {
  const [above, before] = [used.top - 1, used.left - 1];
  const pad = <T>(rows: readonly (readonly T[])[]): (T | null)[][] => [
    ...Array.from({ length: above }, () => new Array<T | null>(used.right).fill(null)),
    ...rows.map((row) => [...new Array<T | null>(before).fill(null), ...row]),
  ];
  const formulaAt = (row: number, column: number): string | null => {
    const formula = cells.formulas[row]?.[column];
    // Text that looks like a formula reads the same in both; a formula never shows itself.
    return typeof formula === "string" && formula.startsWith("=") && formula !== cells.values[row]?.[column]
      ? formula
      : null;
  };
  const values = cells.values.map((row, at) =>
    row.map((value, column): WireValue => {
      if (formulaAt(at, column) !== null || value === "") return null;
      if (typeof value === "string") return wireText(value, String(cells.numberFormat[at]?.[column]));
      return typeof value === "number" || typeof value === "boolean" ? value : null;
    }),
  );
  return {
    name,
    rows: used.bottom,
    columns: used.right,
    values: pad(values),
    formulas: pad(cells.values.map((row, at) => row.map((_, column) => formulaAt(at, column)))),
    formats: pad(cells.numberFormat.map((row) => row.map((format) => (format === "General" ? null : String(format))))),
    tables: tables
      .filter(({ sheet }) => sheet === name)
      .map(({ name: table, area, totalsRow, filter }) => {
        const headings = cells.values[area.top - used.top] ?? [];
        const first = area.left - used.left;
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
