import { type Area, overlaps } from "./addresses.js";
import type { Formula } from "./formula.js";
import { call, wholeColumn } from "./formula.js";
import type {
  Block,
  CachedValue,
  Cell,
  ChartBlock,
  Format,
  Highlight,
  KeyValueBlock,
  KeyValueRow,
  PictureBlock,
  Report,
  Role,
  Sheet,
  TableBlock,
  TableColumn,
  Validation,
} from "./model.js";
import { linePoints, linesOfText, rowPoints } from "./text-lines.js";

/** A cell that has its address. */
export interface PlacedCell {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly cell: Cell;
  readonly format: Format;
  readonly role: Role;
  readonly locked: boolean;
  /** The formula it shows, its own or its column's. */
  readonly formula?: Formula;
  readonly cached?: CachedValue;
  /** Table and data row (from 0) that "this row" means here. */
  readonly inRow?: { readonly table: string; readonly index: number };
  /** Words right behind a column of figures, which are set to the right: they keep off them. */
  readonly afterFigures?: boolean;
}

/** Where a table stands. */
export interface PlacedTable {
  readonly sheet: string;
  readonly block: TableBlock;
  /** Texts of the heading cells, as structured references name them. */
  readonly headings: readonly string[];
  readonly headingRow: number;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly totalsRow: number | null;
  readonly left: number;
  readonly columnIndex: ReadonlyMap<string, number>;
  /** Data cells by row, then column. */
  readonly cells: readonly (readonly PlacedCell[])[];
  readonly totals: readonly (PlacedCell | undefined)[];
}

/** A validation and the cells it holds for. */
export interface PlacedValidation {
  readonly area: Area;
  readonly validation: Validation;
}

/** A highlight and the cells it holds for; `table` tells what "this row" means. */
export interface PlacedHighlight {
  readonly area: Area;
  readonly highlight: Highlight;
  readonly table?: string;
}

/** A picture or chart over the cells of its area. */
export interface PlacedDrawing {
  readonly area: Area;
  readonly block: PictureBlock | ChartBlock;
}

/** One sheet with addresses. */
export interface PlacedSheet {
  readonly sheet: Sheet;
  readonly columnWidths: readonly number[];
  readonly rowHeights: ReadonlyMap<number, number>;
  readonly cells: readonly PlacedCell[];
  readonly merges: readonly Area[];
  /** Rows after which a page ends. */
  readonly breaks: readonly number[];
  readonly drawings: readonly PlacedDrawing[];
  readonly validations: readonly PlacedValidation[];
  readonly highlights: readonly PlacedHighlight[];
  /** What stands where, for the overlap check. */
  readonly occupied: readonly { readonly area: Area; readonly what: string }[];
  readonly lastRow: number;
  readonly lastColumn: number;
}

/** The report with addresses. */
export interface Layout {
  readonly report: Report;
  readonly sheets: readonly PlacedSheet[];
  readonly tables: ReadonlyMap<string, PlacedTable>;
  readonly named: ReadonlyMap<string, PlacedCell>;
  /** Top left cell of blocks with an id and of tables, by {@link blockKey}. */
  readonly blocks: ReadonlyMap<string, { readonly row: number; readonly column: number }>;
  /** Names of tables and cells that came twice, and sizes that do not fit; {@link checkReport} reports them. */
  readonly clashes: readonly { readonly sheet: string; readonly message: string }[];
}

/** Key of a block in {@link Layout.blocks}. */
export const blockKey = (sheet: string, block: string): string => `${sheet}\n${block}`;

/** Mark in front of a heading or label whose cells are to be filled in; it survives black-and-white printing. */
export const inputMark = "✎";

/** Roles whose text keeps off the frame or the bar at its left. */
export const indentedRoles: ReadonlySet<Role> = new Set(["note", "warning", "stop", "input", "handwriting"]);
/** What one step of indent takes of a cell. [characters] */
const indentCharacters = 1.5;
/** Roles that are set in bold type. */
const boldRoles: ReadonlySet<Role> = new Set(["columnHeading", "figureHeading", "total", "warning", "stop"]);
/** Room above and below the text of a row with several lines. [points] */
const morePoints = 4;

const defaultWidth = 14;
/** A column's width in pixels at 100 %, for the default font. */
const columnPixels = (characters: number): number => Math.round(characters * 7 + 5);
const rowPixels = 20;

/** The heading cell's text: input mark, heading, unit in brackets. */
export function headingText(column: TableColumn): string {
  const mark = column.input === undefined ? "" : `${inputMark} `;
  return `${mark}${column.heading}${column.unit === undefined ? "" : ` (${column.unit})`}`;
}

/** Whether a column holds words and the one before it figures. */
const isAfterFigures = (block: TableBlock, index: number): boolean =>
  index > 0 && isText(block.columns[index]) && !isText(block.columns[index - 1]);

const isText = (column: TableColumn | undefined): boolean => column?.format === "text" || column?.format === "wrapped";

function defaultFormat(cell: Cell): Format {
  if (cell.kind === "money") return "money";
  if (cell.kind === "date") return "date";
  return cell.kind === "number" || cell.kind === "formula" || cell.kind === "calculated" ? "general" : "text";
}

/** Columns a list of blocks needs, counted from its own first column. */
function columnsNeeded(blocks: readonly Block[]): number {
  let needed = 1;
  for (const block of blocks) {
    if (block.kind === "table") needed = Math.max(needed, block.columns.length);
    if (block.kind === "keyValue") {
      const noted = block.rows.some((row) => row.note !== undefined) ? (block.noteColumns ?? 1) : 0;
      needed = Math.max(needed, (block.labelColumns ?? 1) + (block.valueColumns ?? 1) + noted);
    }
    if (block.kind === "beside") {
      for (const part of block.parts) needed = Math.max(needed, part.column - 1 + columnsNeeded(part.blocks));
    }
  }
  return needed;
}

/** Widens the sheet's columns to what its tables ask for. */
function gatherWidths(blocks: readonly Block[], left: number, widths: number[]): void {
  for (const block of blocks) {
    if (block.kind === "table") {
      block.columns.forEach((column, index) => {
        widths[left - 1 + index] = Math.max(widths[left - 1 + index] ?? 0, column.width);
      });
    }
    if (block.kind === "beside") {
      for (const part of block.parts) gatherWidths(part.blocks, left + part.column - 1, widths);
    }
  }
}

function sheetWidths(sheet: Sheet): number[] {
  const widths: number[] = [...(sheet.columnWidths ?? [])];
  gatherWidths(sheet.blocks, 1, widths);
  const needed = Math.max(widths.length, columnsNeeded(sheet.blocks));
  return Array.from({ length: needed }, (_, index) => widths[index] ?? defaultWidth);
}

type Draft<T> = { -readonly [K in keyof T]: T[K] };

/** Collects one sheet while its blocks are set one under the other. */
class SheetSetter {
  readonly cells: PlacedCell[] = [];
  readonly merges: Area[] = [];
  readonly breaks: number[] = [];
  readonly drawings: PlacedDrawing[] = [];
  readonly validations: PlacedValidation[] = [];
  readonly highlights: PlacedHighlight[] = [];
  readonly occupied: { area: Area; what: string }[] = [];
  readonly rowHeights = new Map<number, number>();
  readonly widths: number[];
  lastRow = 1;
  lastColumn: number;

  readonly sheet: Sheet;
  readonly tables: Map<string, PlacedTable>;
  readonly named: Map<string, PlacedCell>;
  readonly blocks: Map<string, { row: number; column: number }>;
  readonly clashes: { sheet: string; message: string }[];

  constructor(sheet: Sheet, shared: Pick<SheetSetter, "tables" | "named" | "blocks" | "clashes">) {
    this.sheet = sheet;
    this.tables = shared.tables;
    this.named = shared.named;
    this.blocks = shared.blocks;
    this.clashes = shared.clashes;
    this.widths = sheetWidths(sheet);
    this.lastColumn = this.widths.length;
  }

  /** Sets blocks from `row` down, between two columns; gives the first free row. */
  setBlocks(blocks: readonly Block[], row: number, left: number, right: number): number {
    let next = row;
    for (const block of blocks) next = this.setBlock(block, next, left, right);
    return next;
  }

  private setBlock(block: Block, row: number, left: number, right: number): number {
    if ("id" in block && block.id !== undefined) this.remember(block.id, row, left);
    switch (block.kind) {
      case "title":
        return this.setTitle(block.text, block.level, row, left, right);
      case "paragraph":
        return this.setParagraph(block, row, left, right);
      case "keyValue":
        return this.setKeyValue(block, row, left, right);
      case "table":
        return this.setTable(block, row, left);
      case "picture":
      case "chart":
        return this.setDrawing(block, row, left);
      case "pageBreak":
        if (row > 1) this.breaks.push(row - 1);
        return row;
      case "space":
        return row + block.rows;
      case "beside":
        return this.setBeside(block, row, left, right);
    }
  }

  private remember(id: string, row: number, column: number): void {
    const key = blockKey(this.sheet.name, id);
    if (this.blocks.has(key)) this.clash(`two blocks are called "${id}"`);
    this.blocks.set(key, { row, column });
  }

  private clash(message: string): void {
    this.clashes.push({ sheet: this.sheet.name, message });
  }

  private occupy(area: Area, what: string): void {
    this.occupied.push({ area, what });
    this.lastRow = Math.max(this.lastRow, area.bottom);
    this.lastColumn = Math.max(this.lastColumn, area.right);
  }

  private stretch(row: number, points: number): void {
    this.rowHeights.set(row, Math.min(409, Math.max(this.rowHeights.get(row) ?? rowPoints, points)));
  }

  private charactersOf(left: number, right: number): number {
    let sum = 0;
    for (let column = left; column <= right; column++) sum += this.widths[column - 1] ?? defaultWidth;
    return sum;
  }

  private place(
    at: { row: number; column: number },
    cell: Cell,
    defaults: { format: Format; role: Role; locked: boolean },
    more: {
      formula?: Formula;
      cached?: CachedValue;
      inRow?: { table: string; index: number };
      afterFigures?: boolean;
    } = {},
  ): PlacedCell {
    const placed: Draft<PlacedCell> = {
      sheet: this.sheet.name,
      row: at.row,
      column: at.column,
      cell,
      format: cell.format ?? defaults.format,
      role: cell.role ?? (cell.kind === "link" ? "link" : defaults.role),
      locked: defaults.locked,
    };
    const formula = cell.kind === "formula" ? cell.formula : more.formula;
    const cached = cell.kind === "formula" || cell.kind === "calculated" ? cell.cached : more.cached;
    if (formula !== undefined) placed.formula = formula;
    if (cached !== undefined) placed.cached = cached;
    if (more.inRow !== undefined) placed.inRow = more.inRow;
    if (more.afterFigures === true) placed.afterFigures = true;
    this.cells.push(placed);
    return placed;
  }

  private merge(area: Area): void {
    if (area.right > area.left || area.bottom > area.top) this.merges.push(area);
  }

  private setTitle(text: string, level: 1 | 2 | 3, row: number, left: number, right: number): number {
    const role: Role = level === 1 ? "title" : level === 2 ? "heading" : "subheading";
    const area = { top: row, left, bottom: row, right };
    this.place({ row, column: left }, { kind: "text", text }, { format: "wrapped", role, locked: true });
    this.merge(area);
    this.occupy(area, `title "${text}"`);
    const scale = level === 1 ? 1.6 : level === 2 ? 1.2 : 1;
    const lines = linesOfText({ text, widthCharacters: this.charactersOf(left, right) / scale, bold: true });
    this.stretch(row, lines * linePoints * scale + 3);
    return row + 1;
  }

  private setParagraph(block: Extract<Block, { kind: "paragraph" }>, row: number, left: number, right: number): number {
    const last = block.columns === undefined ? right : left + block.columns - 1;
    const area = { top: row, left, bottom: row, right: last };
    const placed = this.place({ row, column: left }, block.cell, { format: "wrapped", role: "body", locked: true });
    this.merge(area);
    this.occupy(area, "paragraph");
    if (block.name !== undefined) this.nameCell(block.name, placed);
    for (const highlight of block.highlights ?? []) this.highlights.push({ area, highlight });
    this.stretchFor(placed, this.charactersOf(left, last));
    return row + (block.tight === true ? 1 : 2);
  }

  private stretchFor(placed: PlacedCell, widthCharacters: number): void {
    const cell = placed.cell;
    const text = cell.kind === "text" || cell.kind === "link" ? cell.text : String(placed.cached ?? "");
    if (placed.format !== "wrapped" || text === "") return;
    const indented = indentedRoles.has(placed.role) || placed.afterFigures === true;
    const inside = widthCharacters - (indented ? indentCharacters : 0);
    const lines = linesOfText({ text, widthCharacters: inside, bold: boldRoles.has(placed.role) });
    this.stretch(placed.row, lines * linePoints + (lines > 1 ? morePoints : 0));
  }

  private nameCell(name: string, placed: PlacedCell): void {
    if (this.named.has(name)) this.clash(`two cells are called "${name}"`);
    this.named.set(name, placed);
  }

  private setKeyValue(block: KeyValueBlock, row: number, left: number, right: number): number {
    const valueLeft = left + (block.labelColumns ?? 1);
    const noteLeft = valueLeft + (block.valueColumns ?? 1);
    const noteRight = block.noteColumns === undefined ? Math.max(right, noteLeft) : noteLeft + block.noteColumns - 1;
    const noted = block.rows.some((line) => line.note !== undefined);
    block.rows.forEach((line, index) => {
      this.setKeyValueRow(line, row + index, { left, valueLeft, noteLeft, noteRight });
    });
    const bottom = row + Math.max(1, block.rows.length) - 1;
    this.occupy({ top: row, left, bottom, right: noted ? noteRight : noteLeft - 1 }, "key–value block");
    return bottom + 2;
  }

  private setKeyValueRow(
    line: KeyValueRow,
    row: number,
    at: { left: number; valueLeft: number; noteLeft: number; noteRight: number },
  ): void {
    const label = line.input === undefined ? line.label : `${inputMark} ${line.label}`;
    const labelCell: Cell = { kind: "text", text: label };
    const placedLabel = this.place({ row, column: at.left }, labelCell, {
      format: "wrapped",
      role: "label",
      locked: true,
    });
    this.merge({ top: row, left: at.left, bottom: row, right: at.valueLeft - 1 });
    this.stretchFor(placedLabel, this.charactersOf(at.left, at.valueLeft - 1));
    const value = this.place({ row, column: at.valueLeft }, line.cell, {
      format: defaultFormat(line.cell),
      role: line.input === undefined ? "body" : "input",
      locked: line.input === undefined,
    });
    const valueArea = { top: row, left: at.valueLeft, bottom: row, right: at.noteLeft - 1 };
    this.merge(valueArea);
    this.stretchFor(value, this.charactersOf(at.valueLeft, at.noteLeft - 1));
    if (line.name !== undefined) this.nameCell(line.name, value);
    if (line.input !== undefined) this.validations.push({ area: valueArea, validation: line.input });
    for (const highlight of line.highlights ?? []) this.highlights.push({ area: valueArea, highlight });
    if (line.note === undefined) return;
    const noteCell: Cell = { kind: "text", text: line.note };
    const note = this.place({ row, column: at.noteLeft }, noteCell, { format: "wrapped", role: "note", locked: true });
    this.merge({ top: row, left: at.noteLeft, bottom: row, right: at.noteRight });
    this.stretchFor(note, this.charactersOf(at.noteLeft, at.noteRight));
  }

  private setTable(block: TableBlock, row: number, left: number): number {
    if (this.tables.has(block.name)) this.clash(`two tables are called "${block.name}"`);
    this.remember(block.name, row, left);
    const headings = block.columns.map(headingText);
    headings.forEach((text, index) => {
      this.place(
        { row, column: left + index },
        { kind: "text", text },
        { format: "wrapped", role: isText(block.columns[index]) ? "columnHeading" : "figureHeading", locked: true },
        { afterFigures: isAfterFigures(block, index) },
      );
      const width = (this.widths[left + index - 1] ?? defaultWidth) - (block.filter === true ? 2 : 0);
      this.stretch(row, linesOfText({ text, widthCharacters: width, bold: true }) * linePoints + 2);
    });
    const firstRow = row + 1;
    const cells = this.dataRows(block).map((line, index) => this.setTableRow(block, line, index, firstRow, left));
    const lastRow = row + cells.length;
    const totalsRow = block.columns.some((column) => column.total !== undefined) ? lastRow + 1 : null;
    const totals = totalsRow === null ? [] : this.setTotals(block, totalsRow, left);
    this.tables.set(block.name, {
      sheet: this.sheet.name,
      block,
      headings,
      headingRow: row,
      firstRow,
      lastRow,
      totalsRow,
      left,
      columnIndex: new Map(block.columns.map((column, index) => [column.key, index])),
      cells,
      totals,
    });
    this.noteRules(block, { firstRow, lastRow, left });
    const bottom = totalsRow ?? lastRow;
    this.occupy({ top: row, left, bottom, right: left + block.columns.length - 1 }, `table ${block.name}`);
    return bottom + 2;
  }

  /** The rows, or one blank row that says why there are none. */
  private dataRows(block: TableBlock): readonly (readonly Cell[])[] {
    if (block.rows.length > 0) return block.rows;
    return [
      block.columns.map((_, index) =>
        index === 0 ? { kind: "text", text: block.whenEmpty, role: "note", format: "text" } : { kind: "blank" },
      ),
    ];
  }

  private setTableRow(
    block: TableBlock,
    line: readonly Cell[],
    index: number,
    firstRow: number,
    left: number,
  ): PlacedCell[] {
    const row = firstRow + index;
    const inRow = { table: block.name, index };
    if (line.length !== block.columns.length) {
      this.clash(`table ${block.name}, row ${index + 1}: ${line.length} cells for ${block.columns.length} columns`);
    }
    if (block.rowHeight !== undefined) this.stretch(row, block.rowHeight);
    return block.columns.map((column, columnIndex) => {
      const cell: Cell = line[columnIndex] ?? { kind: "blank" };
      const placed = this.place(
        { row, column: left + columnIndex },
        cell,
        {
          format: column.format,
          role: column.role ?? (column.input === undefined ? "body" : "input"),
          locked: column.input === undefined,
        },
        {
          inRow,
          afterFigures: isAfterFigures(block, columnIndex),
          ...(cell.kind === "calculated" && column.formula !== undefined ? { formula: column.formula } : {}),
        },
      );
      this.stretchFor(placed, this.widths[left + columnIndex - 1] ?? defaultWidth);
      return placed;
    });
  }

  private setTotals(block: TableBlock, row: number, left: number): (PlacedCell | undefined)[] {
    return block.columns.map((column, index) => {
      const at = { row, column: left + index };
      const defaults = { format: column.format, role: "total" as const, locked: true };
      const total = column.total;
      if (total === undefined) {
        this.place(at, { kind: "blank" }, defaults);
        return undefined;
      }
      if (total.kind === "label") return this.place(at, { kind: "text", text: total.text }, defaults);
      // The sum of money is rounded to the cent: adding floating amounts leaves traces behind the second decimal.
      const sum = call("SUM", wholeColumn(block.name, column.key));
      const summed = column.format === "money" ? call("ROUND", sum, { kind: "literal", value: 2 }) : sum;
      const formula = total.kind === "sum" ? summed : total.formula;
      const cell: Cell =
        total.cached === undefined ? { kind: "formula", formula } : { kind: "formula", formula, cached: total.cached };
      return this.place(at, cell, defaults);
    });
  }

  private noteRules(block: TableBlock, at: { firstRow: number; lastRow: number; left: number }): void {
    const areaOf = (index: number): Area => ({
      top: at.firstRow,
      left: at.left + index,
      bottom: at.lastRow,
      right: at.left + index,
    });
    block.columns.forEach((column, index) => {
      if (column.input !== undefined) this.validations.push({ area: areaOf(index), validation: column.input });
    });
    for (const highlight of block.highlights ?? []) {
      const keys = highlight.columns ?? block.columns.map((column) => column.key);
      for (const key of keys) {
        const index = block.columns.findIndex((column) => column.key === key);
        if (index < 0) this.clash(`table ${block.name}: highlight of unknown column "${key}"`);
        else this.highlights.push({ area: areaOf(index), highlight, table: block.name });
      }
    }
  }

  private setDrawing(block: PictureBlock | ChartBlock, row: number, left: number): number {
    const rows = Math.max(1, Math.ceil(block.heightPixels / rowPixels));
    let right = left;
    let room = columnPixels(this.widths[left - 1] ?? defaultWidth);
    while (room < block.widthPixels && right < 16_384) {
      right += 1;
      room += columnPixels(this.widths[right - 1] ?? 9);
    }
    const area = { top: row, left, bottom: row + rows - 1, right };
    this.drawings.push({ area, block });
    this.occupy(area, block.kind);
    return row + rows + 1;
  }

  private setBeside(block: Extract<Block, { kind: "beside" }>, row: number, left: number, right: number): number {
    let lowest = row;
    block.parts.forEach((part, index) => {
      const next = block.parts[index + 1];
      const partLeft = left + part.column - 1;
      const partRight = next === undefined ? Math.max(right, partLeft) : left + next.column - 2;
      lowest = Math.max(lowest, this.setBlocks(part.blocks, row, partLeft, Math.max(partLeft, partRight)));
    });
    return lowest;
  }

  finish(): PlacedSheet {
    for (const { area } of this.drawings) {
      // Drawings hang on cells: rows under them must have the height that was counted on.
      for (let row = area.top; row <= area.bottom; row++)
        if (!this.rowHeights.has(row)) this.rowHeights.set(row, rowPoints);
    }
    return {
      sheet: this.sheet,
      columnWidths: Array.from({ length: this.lastColumn }, (_, index) => this.widths[index] ?? 9),
      rowHeights: this.rowHeights,
      cells: this.cells,
      merges: this.merges,
      breaks: this.breaks,
      drawings: this.drawings,
      validations: this.validations,
      highlights: this.highlights,
      occupied: this.occupied,
      lastRow: this.lastRow,
      lastColumn: this.lastColumn,
    };
  }
}

/**
 * Gives every block of a report its place. Blocks stand one under the other with a free row between; titles stand
 * directly above what follows. Nothing is refused here: {@link checkReport} tells what does not fit.
 */
export function layOut(report: Report): Layout {
  const shared = {
    tables: new Map<string, PlacedTable>(),
    named: new Map<string, PlacedCell>(),
    blocks: new Map<string, { row: number; column: number }>(),
    clashes: [] as { sheet: string; message: string }[],
  };
  const sheets = report.sheets.map((sheet) => {
    const setter = new SheetSetter(sheet, shared);
    setter.setBlocks(sheet.blocks, 1, 1, setter.widths.length);
    return setter.finish();
  });
  return { report, sheets, ...shared };
}

/** Height of blocks set one under the other on a sheet of given column widths, to see what fits a page. [points] */
export function heightOf(blocks: readonly Block[], columnWidths: readonly number[]): number {
  const shared = { tables: new Map(), named: new Map(), blocks: new Map(), clashes: [] };
  const setter = new SheetSetter({ name: "height", blocks, columnWidths }, shared);
  const end = setter.setBlocks(blocks, 1, 1, setter.widths.length);
  const { rowHeights } = setter.finish();
  let points = 0;
  for (let row = 1; row < end; row++) points += rowHeights.get(row) ?? rowPoints;
  return points;
}

/** Pairs of things that share a cell, in reading order. */
export function overlappingBlocks(sheet: PlacedSheet): readonly { readonly one: string; readonly other: string }[] {
  const sorted = [...sheet.occupied].sort((one, other) => one.area.top - other.area.top);
  const found: { one: string; other: string }[] = [];
  sorted.forEach((first, index) => {
    for (let at = index + 1; at < sorted.length; at++) {
      const second = sorted[at];
      if (second === undefined || second.area.top > first.area.bottom) break;
      if (overlaps(first.area, second.area)) found.push({ one: first.what, other: second.what });
    }
  });
  return found;
}
