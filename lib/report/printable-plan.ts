import { InputError } from "../problems/input-error.js";
import type { Area } from "./addresses.js";
import { checkReport } from "./check.js";
import { dayNumber } from "./day-number.js";
import { type Evaluator, evaluate } from "./evaluate.js";
import { isError } from "./evaluate-values.js";
import { formulaText } from "./formula-text.js";
import { blockKey, type Layout, layOut, type PlacedCell, type PlacedSheet, type PlacedTable } from "./layout.js";
import type { CachedValue, ColumnOf, Format, PictureBlock, Report, Role, Validation } from "./model.js";

/** What a cell holds, ready to be written. Money is in currency units, a date a spreadsheet day number. */
export type PlannedContent =
  | { readonly kind: "blank" }
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "number"; readonly value: number }
  /** `text` without the leading "=". */
  | { readonly kind: "formula"; readonly text: string; readonly cached: CachedValue };

/** One cell, ready to be written. */
export interface PlannedCell {
  readonly row: number;
  readonly column: number;
  readonly content: PlannedContent;
  readonly format: Format;
  readonly role: Role;
  readonly locked: boolean;
  /** Stands inside a table, so that the writer can rule lines. */
  readonly inTable: boolean;
  /** Words behind a column of figures, kept off them by an indent. */
  readonly afterFigures?: boolean;
}

/** One column of a planned table. */
export interface PlannedTableColumn {
  readonly heading: string;
  /** Formula of all rows, without "=". */
  readonly formula?: string;
  readonly totalText?: string;
  readonly totalFormula?: string;
}

/** A spreadsheet table over cells that are planned too. */
export interface PlannedTable {
  readonly name: string;
  /** With heading and totals row. */
  readonly area: Area;
  readonly totalsRow: boolean;
  readonly filter: boolean;
  readonly columns: readonly PlannedTableColumn[];
}

/** Cells of a chart's series with their present values. */
export interface PlannedSeries {
  readonly name: string;
  readonly nameAt: { readonly sheet: string; readonly row: number; readonly column: number };
  readonly sheet: string;
  readonly area: Area;
  readonly format: Format;
  readonly values: readonly (number | string | null)[];
}

/** A chart with what it draws. */
export interface PlannedChart {
  readonly chart: "bar" | "stackedBar" | "line";
  readonly title: string;
  readonly categories: PlannedSeries;
  readonly series: readonly PlannedSeries[];
  readonly band?: { readonly low: PlannedSeries; readonly spread: PlannedSeries };
  readonly categoryTitle?: string;
  readonly valueTitle?: string;
  readonly widthPixels: number;
  readonly heightPixels: number;
  readonly alt: string;
  readonly area: Area;
}

/** A validation with its list or limits as a writer needs them. */
export interface PlannedValidation {
  readonly area: Area;
  readonly validation: Validation;
  /** For a list taken from a table: its cells, as A1 text. */
  readonly listCells?: string;
}

/** One sheet, ready to be written. */
export interface PlannedSheet {
  readonly name: string;
  readonly columnWidths: readonly number[];
  readonly rowHeights: ReadonlyMap<number, number>;
  readonly cells: readonly PlannedCell[];
  readonly merges: readonly Area[];
  readonly breaks: readonly number[];
  readonly tables: readonly PlannedTable[];
  readonly links: readonly {
    readonly row: number;
    readonly column: number;
    readonly sheet: string;
    readonly to: Area;
  }[];
  readonly validations: readonly PlannedValidation[];
  /** Conditional formats; `formula` is A1 text for the area's first cell. */
  readonly highlights: readonly { readonly area: Area; readonly formula: string; readonly role: Role }[];
  readonly pictures: readonly { readonly area: Area; readonly picture: PictureBlock }[];
  readonly charts: readonly PlannedChart[];
  /** Rows and columns that stay in view. */
  readonly frozen: { readonly rows: number; readonly columns: number };
  /** Row repeated at the top of every page. */
  readonly repeatedRow?: number;
  readonly printArea: Area;
  readonly orientation: "portrait" | "landscape";
  readonly locked: boolean;
  readonly part: "input" | "working" | "output";
}

/** A report with every address and value settled: all a writer needs, whatever program it writes for. */
export interface PrintablePlan {
  readonly title: string;
  readonly job: string;
  readonly revision: string;
  readonly date: string;
  readonly currency: string;
  readonly paper: "A4" | "Letter";
  readonly sheets: readonly PlannedSheet[];
  /** Named cells. */
  readonly names: readonly {
    readonly name: string;
    readonly sheet: string;
    readonly row: number;
    readonly column: number;
  }[];
}

/**
 * Lays a report out, checks it and settles every value.
 * @throws {@link InputError} when {@link checkReport} finds something; the message names the first few places.
 */
export function printablePlan(report: Report): PrintablePlan {
  const layout = layOut(report);
  const evaluator = evaluate(layout);
  const problems = checkReport(layout, evaluator);
  if (problems.length > 0) {
    const first = problems.slice(0, 5).map(({ sheet, where, message }) => `${sheet} ${where}: ${message}`.trim());
    throw new InputError({
      field: "report",
      got: `${problems.length} problem${problems.length === 1 ? "" : "s"} (${first.join("; ")})`,
      expected: "a report every spreadsheet program can show",
    });
  }
  return {
    title: report.title,
    job: report.job,
    revision: report.revision,
    date: report.date,
    currency: report.currency,
    paper: report.paper,
    sheets: layout.sheets.map((sheet) => planSheet(layout, sheet, evaluator)),
    names: [...layout.named].map(([name, { sheet, row, column }]) => ({ name, sheet, row, column })),
  };
}

function planSheet(layout: Layout, placed: PlacedSheet, evaluator: Evaluator): PlannedSheet {
  const { sheet } = placed;
  const tables = [...layout.tables.values()].filter((table) => table.sheet === sheet.name);
  const heading = sheet.headingOf === undefined ? undefined : layout.tables.get(sheet.headingOf);
  return {
    name: sheet.name,
    columnWidths: placed.columnWidths,
    rowHeights: placed.rowHeights,
    cells: placed.cells.map((cell) => planCell(layout, cell, evaluator)),
    merges: placed.merges,
    breaks: placed.breaks,
    tables: tables.filter((table) => table.block.plain !== true).map((table) => planTable(layout, table)),
    links: placed.cells.flatMap((cell) => planLink(layout, cell)),
    validations: placed.validations.map((each) => planValidation(layout, sheet.name, each)),
    highlights: placed.highlights.map(({ area, highlight, table }) => {
      const style = { layout, sheet: sheet.name, references: "addresses" } as const;
      const row = table === undefined ? style : { ...style, inRow: { table, index: 0 } };
      return { area, formula: formulaText(highlight.when, row), role: highlight.role };
    }),
    pictures: placed.drawings.flatMap(({ area, block }) =>
      block.kind === "picture" ? [{ area, picture: block }] : [],
    ),
    charts: placed.drawings.flatMap(({ area, block }) => {
      if (block.kind !== "chart") return [];
      const { categories, series, band, kind: _kind, id: _id, ...rest } = block;
      const of = (column: ColumnOf): PlannedSeries => planSeries(layout, column, evaluator);
      const bandPart = band === undefined ? {} : { band: { low: of(band.low), spread: of(band.spread) } };
      return [{ ...rest, ...bandPart, area, categories: of(categories), series: series.map(of) }];
    }),
    frozen: { rows: heading?.headingRow ?? 0, columns: sheet.frozenColumns ?? 0 },
    ...(heading === undefined || sheet.printed === "none" ? {} : { repeatedRow: heading.headingRow }),
    printArea: printArea(placed),
    orientation: sheet.orientation ?? "portrait",
    locked: sheet.protection !== "open",
    part: sheet.part ?? "output",
  };
}

/** An empty cell below everything where nothing is to be printed: programs leave an empty page out. */
function printArea({ sheet, lastRow, lastColumn }: PlacedSheet): Area {
  if (sheet.printed !== "none") return { top: 1, left: 1, bottom: lastRow, right: lastColumn };
  return { top: lastRow + 2, left: 1, bottom: lastRow + 2, right: 1 };
}

function planCell(layout: Layout, placed: PlacedCell, evaluator: Evaluator): PlannedCell {
  const { row, column, format, role, locked } = placed;
  const content = planContent(layout, placed, evaluator);
  const inTable = placed.inRow !== undefined;
  const after = placed.afterFigures === true ? { afterFigures: true } : {};
  return { row, column, content, format, role, locked, inTable, ...after };
}

function planContent(layout: Layout, placed: PlacedCell, evaluator: Evaluator): PlannedContent {
  const cell = placed.cell;
  if (placed.formula !== undefined) {
    const style = { layout, sheet: placed.sheet, references: "structured" } as const;
    const text = formulaText(placed.formula, placed.inRow === undefined ? style : { ...style, inRow: placed.inRow });
    const value = placed.cached ?? evaluator.cell(placed);
    // Errors were refused before; a formula never shows "empty".
    return { kind: "formula", text, cached: value === null || isError(value) ? 0 : value };
  }
  switch (cell.kind) {
    case "text":
    case "link":
      return cell.text === "" ? { kind: "blank" } : { kind: "text", text: cell.text };
    case "number":
      return { kind: "number", value: cell.value };
    case "money":
      return { kind: "number", value: cell.cents / 100 };
    case "date":
      return { kind: "number", value: dayNumber(cell.iso) ?? 0 };
    default:
      return { kind: "blank" };
  }
}

function planTable(layout: Layout, table: PlacedTable): PlannedTable {
  const { block } = table;
  const style = { layout, sheet: table.sheet, references: "structured" } as const;
  return {
    name: block.name,
    area: {
      top: table.headingRow,
      left: table.left,
      bottom: table.totalsRow ?? table.lastRow,
      right: table.left + block.columns.length - 1,
    },
    totalsRow: table.totalsRow !== null,
    filter: block.filter === true,
    columns: block.columns.map((column, index): PlannedTableColumn => {
      const total = table.totals[index];
      const totalPart =
        total?.formula !== undefined
          ? { totalFormula: formulaText(total.formula, style) }
          : total?.cell.kind === "text"
            ? { totalText: total.cell.text }
            : {};
      const inRow = { table: block.name, index: 0 };
      const formula = column.formula === undefined ? {} : { formula: formulaText(column.formula, { ...style, inRow }) };
      return { heading: table.headings[index] ?? "", ...formula, ...totalPart };
    }),
  };
}

function planLink(layout: Layout, placed: PlacedCell): PlannedSheet["links"][number][] {
  const cell = placed.cell;
  if (cell.kind !== "link") return [];
  const at = cell.block === undefined ? undefined : layout.blocks.get(blockKey(cell.sheet, cell.block));
  const { row, column } = at ?? { row: 1, column: 1 };
  const to = { top: row, left: column, bottom: row, right: column };
  return [{ row: placed.row, column: placed.column, sheet: cell.sheet, to }];
}

function planValidation(
  layout: Layout,
  sheet: string,
  placed: { area: Area; validation: Validation },
): PlannedValidation {
  const { area, validation } = placed;
  if (validation.kind !== "listFrom") return { area, validation };
  const { table, column } = validation;
  const list = { kind: "reference", to: { kind: "column", table, column } } as const;
  return { area, validation, listCells: formulaText(list, { layout, sheet, references: "addresses" }) };
}

function planSeries(layout: Layout, { table, column }: ColumnOf, evaluator: Evaluator): PlannedSeries {
  const placed = layout.tables.get(table);
  const index = placed?.columnIndex.get(column);
  if (placed === undefined || index === undefined) {
    throw new InputError({ field: "chart", got: `${table}.${column}`, expected: "a column of a table of the report" });
  }
  const at = placed.left + index;
  return {
    name: placed.headings[index] ?? "",
    nameAt: { sheet: placed.sheet, row: placed.headingRow, column: at },
    sheet: placed.sheet,
    area: { top: placed.firstRow, left: at, bottom: placed.lastRow, right: at },
    format: placed.block.columns[index]?.format ?? "general",
    values: placed.cells.map((row) => {
      const cell = row[index];
      const value = cell === undefined ? null : evaluator.cell(cell);
      return typeof value === "number" || typeof value === "string" ? value : null;
    }),
  };
}
