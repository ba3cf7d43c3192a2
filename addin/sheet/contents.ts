import type { Area, PlannedCell, PlannedSheet, PlannedTable } from "../loopwright.js";
import { numberFormat } from "../loopwright.js";
import { type WireValue, wireNumber, wireText } from "./wire-value.js";

/** A table as it is to stand. */
export interface WantedTable {
  readonly name: string;
  /** With heading and totals row. */
  readonly area: Area;
  readonly totalsRow: boolean;
  readonly filter: boolean;
  readonly headings: readonly string[];
}

/**
 * What a sheet is to hold, as rectangles from cell A1 on; null leaves a cell as it is. Everything is worked out before
 * the first request is sent.
 */
export interface SheetContents {
  readonly name: string;
  readonly rows: number;
  readonly columns: number;
  readonly values: readonly (readonly WireValue[])[];
  readonly formulas: readonly (readonly (string | null)[])[];
  readonly formats: readonly (readonly (string | null)[])[];
  readonly tables: readonly WantedTable[];
}

/** The format a planned cell gets: a formula in a cell of format text would stay text. */
export function formatOf(cell: PlannedCell, currency: string): string {
  const formula = cell.content.kind === "formula" && (cell.format === "text" || cell.format === "wrapped");
  return formula ? "General" : numberFormat(cell.format, currency);
}

/** Everything the sheet holds, from its first cell on; what is printed may be less. */
export function wholeArea({ printArea, cells }: PlannedSheet): Area {
  const end = { bottom: printArea.bottom, right: printArea.right };
  for (const { row, column } of cells) {
    end.bottom = Math.max(end.bottom, row);
    end.right = Math.max(end.right, column);
  }
  return { top: 1, left: 1, ...end };
}

/** Contents of a planned sheet. */
export function plannedContents(sheet: PlannedSheet, currency: string): SheetContents {
  const { bottom: rows, right: columns } = wholeArea(sheet);
  const grid = <T>(): (T | null)[][] => Array.from({ length: rows }, () => new Array<T | null>(columns).fill(null));
  const values = grid<Exclude<WireValue, null>>();
  const formulas = grid<string>();
  const formats = grid<string>();
  const put = <T>(to: (T | null)[][], { row, column }: PlannedCell, value: T) => {
    const line = to[row - 1];
    if (line !== undefined) line[column - 1] = value;
  };
  for (const cell of sheet.cells) {
    const format = formatOf(cell, currency);
    if (format !== "General") put(formats, cell, format);
    const { content } = cell;
    if (content.kind === "text") put(values, cell, wireText(content.text, format));
    else if (content.kind === "number") put(values, cell, wireNumber(content.value, `${sheet.name} row ${cell.row}`));
    else if (content.kind === "formula") put(formulas, cell, `=${content.text}`);
  }
  for (const width of sheet.columnWidths) wireNumber(width, `${sheet.name}, a column's width`);
  for (const height of sheet.rowHeights.values()) wireNumber(height, `${sheet.name}, a row's height`);
  return { name: sheet.name, rows, columns, values, formulas, formats, tables: sheet.tables.map(wantedTable) };
}

function wantedTable({ name, area, totalsRow, filter, columns }: PlannedTable): WantedTable {
  return { name, area, totalsRow, filter, headings: columns.map(({ heading }) => heading) };
}
