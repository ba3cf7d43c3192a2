/// <reference types="office-js" />
import {
  areaAddress,
  columnsOf,
  type PlannedSheet,
  type PlannedTable,
  type SurveySheetName,
  surveySheets,
} from "../loopwright.js";
import { type Batch, bytesPerAction } from "./batch.js";
import { formatOf } from "./contents.js";
import type { LiveTable } from "./live-workbook.js";
import type { TableAsRead } from "./read-survey-sheets.js";
import { type WireValue, wireBytes, wireNumber, wireText } from "./wire-value.js";

/** Name of the table behind each survey sheet. */
const surveyTableName = (sheet: SurveySheetName): string => `survey_${sheet.toLowerCase().replaceAll(" ", "_")}`;

/** A heading without the mark of an input column, for comparing. */
export const plainHeading = (heading: unknown): string => String(heading).replace(/^✎\s*/u, "").trim().toLowerCase();

/** Survey sheet of a table's name. */
export const surveySheetOf = (table: string): SurveySheetName | undefined =>
  surveySheets.find((sheet) => surveyTableName(sheet) === table);

/** Columns by which rows of a survey table are known again. Tables not named here are never written once they stand. */
const identities: Partial<Readonly<Record<SurveySheetName, readonly string[]>>> = {
  Loops: ["key"],
  "Price book": ["code", "fromQuantity"],
  "Input modules": ["type"],
  Labour: ["task"],
  Settings: ["setting"],
};

/** What a survey table that stands already gets: new columns, cells that were settled, rows at its end. */
export interface SurveyMerge {
  readonly table: string;
  readonly sheet: string;
  readonly newColumns: readonly string[];
  /** By heading: one value for each row of data that stands; null leaves the cell. */
  readonly cells: ReadonlyMap<string, readonly WireValue[]>;
  readonly newRows: readonly (readonly WireValue[])[];
  /** Cells that were to be written but were typed into since the survey was read: they keep what was typed. */
  readonly keptTyped: number;
}

/** A survey table that stands, with what it gets. */
export interface TableToMerge {
  readonly merge: SurveyMerge;
  readonly table: LiveTable;
}

/** What a merge is made from. */
export interface MergeInput {
  readonly sheet: PlannedSheet;
  readonly table: PlannedTable;
  readonly currency: string;
  readonly live: LiveTable;
  /** The table as the survey was read from it; absent = only missing columns are added. */
  readonly read?: TableAsRead;
  /** Sheet rows of the planned loops, for rows that have no key of their own yet. */
  readonly loopRows: readonly number[];
}

const plain = plainHeading;
const shown = (value: unknown): string => String(value ?? "").trim();
const same = (one: readonly unknown[], other: readonly unknown[] | undefined): boolean =>
  other !== undefined && one.length === other.length && one.every((cell, index) => cell === other[index]);

/**
 * Compares a planned survey table with the one that stands: rows by their key, columns by their heading, wherever they
 * were moved to. What the user typed stays: a loop gets its key and nothing else; prices, modules,
 * hours and settings are completed, and figures typed as text become the figures that were read. A cell that changed
 * since the survey was read is left as it is.
 */
export function mergeOf(input: MergeInput): SurveyMerge {
  const { table, live, read } = input;
  const kind = surveySheetOf(table.name);
  const headings = (live.values[0] ?? []).map(plain);
  const newColumns = table.columns
    .map(({ heading }) => heading)
    .filter((heading) => !headings.includes(plain(heading)));
  const none = { table: table.name, sheet: live.sheet, newColumns, cells: new Map(), newRows: [], keptTyped: 0 };
  const identity = kind === undefined ? undefined : identities[kind];
  if (kind === undefined || identity === undefined || read === undefined) return none;

  const columns = columnsOf(kind).map(({ column }) => column);
  const identityAt = identity.map((column) => columns.indexOf(column));
  const allHeadings = [...headings, ...newColumns.map(plain)];
  const at = table.columns.map(({ heading }) => allHeadings.indexOf(plain(heading)));
  const [liveBody, readBody] = [live.values.slice(1), read.values.slice(1)];
  const readHeadings = (read.values[0] ?? []).map(plain);
  const readAt = table.columns.map(({ heading }) => readHeadings.indexOf(plain(heading)));
  const liveRows = rowsByKey(
    liveBody,
    identityAt.map((column) => at[column] ?? -1),
  );
  const readRows = rowsByKey(
    readBody,
    identityAt.map((column) => readAt[column] ?? -1),
  );
  const free = freeRows(liveBody);
  const cells = new Map<string, WireValue[]>();
  const newRows: WireValue[][] = [];
  let keptTyped = 0;

  plannedRows(input).forEach((row, index) => {
    const key = keyOf(identityAt.map((column) => row[column]?.shown));
    if (key === "") return;
    const byPlace = kind === "Loops" ? (input.loopRows[index] ?? 0) - read.row - 1 : -1;
    const known = readRows.get(key) ?? (readBody[byPlace] === undefined ? undefined : byPlace);
    if (known === undefined) {
      // Borrowed: it stands nowhere yet, unless somebody has entered it meanwhile.
      if (liveRows.has(key)) return;
      const place = free.shift();
      if (place === undefined) newRows.push(allHeadings.map((_, column) => row[at.indexOf(column)]?.value ?? ""));
      for (const [column, cell] of row.entries()) {
        if (place !== undefined && cell !== undefined) put(place, column, cell.value);
      }
      return;
    }
    const before = readBody[known] ?? [];
    const found = liveRows.get(key) ?? (same(before, liveBody[known]) ? known : undefined);
    if (found === undefined) return;
    row.forEach((cell, column) => {
      const now = liveBody[found]?.[at[column] ?? -1] ?? "";
      if (isFormula(found, at[column] ?? -1)) return;
      const value = settled({
        kind,
        column: columns[column] ?? "",
        inIdentity: identityAt.includes(column),
        cell,
        now,
      });
      if (value === undefined) return;
      if (now === (before[readAt[column] ?? -1] ?? "")) put(found, column, value);
      else keptTyped++;
    });
  });
  return { ...none, cells, newRows, keptTyped };

  /** A formula of the user's own: what it gives may change again. */
  function isFormula(row: number, column: number): boolean {
    const formula = live.formulas[row + 1]?.[column];
    return typeof formula === "string" && formula.startsWith("=") && formula !== liveBody[row]?.[column];
  }

  function put(row: number, column: number, value: WireValue): void {
    const heading = String(live.values[0]?.[at[column] ?? -1] ?? table.columns[column]?.heading);
    const values = cells.get(heading) ?? new Array<WireValue>(liveBody.length).fill(null);
    values[row] = value;
    cells.set(heading, values);
  }
}

/** What a standing cell is to become; undefined = it stays. */
function settled(given: {
  readonly kind: SurveySheetName;
  readonly column: string;
  readonly inIdentity: boolean;
  readonly cell: PlannedValue | undefined;
  readonly now: unknown;
}): WireValue | undefined {
  const { kind, column, inIdentity, cell, now } = given;
  if (cell === undefined) return undefined;
  if (kind === "Loops") return column !== "key" || cell.shown === shown(now) ? undefined : cell.value;
  // Formulas look rows up by these and reckon with figures: both must stand there as they were read.
  if (inIdentity || typeof cell.value === "number") return cell.bare === now ? undefined : cell.value;
  return shown(now) === "" ? cell.value : undefined;
}

const keyOf = (parts: readonly unknown[]): string => {
  const texts = parts.map((part) => {
    const text = shown(part);
    return text !== "" && Number.isFinite(Number(text)) ? String(Number(text)) : text;
  });
  // A price without a quantity holds from the first piece on, as the reader takes it.
  return texts[0] === "" ? "" : JSON.stringify([texts[0], ...texts.slice(1).map((text) => text || "1")]);
};

/** Rows by their key; of two with the same, the first holds, as for the reader. */
function rowsByKey(body: readonly (readonly unknown[])[], columns: readonly number[]): ReadonlyMap<string, number> {
  const rows = new Map<string, number>();
  body.forEach((row, index) => {
    const key = keyOf(columns.map((column) => row[column]));
    if (key !== "" && !rows.has(key)) rows.set(key, index);
  });
  return rows;
}

/** Empty rows behind the last filled one, in order. */
function freeRows(body: readonly (readonly unknown[])[]): number[] {
  let last = body.length;
  while (last > 0 && (body[last - 1] ?? []).every((cell) => shown(cell) === "")) last--;
  return Array.from({ length: body.length - last }, (_, index) => last + index);
}

interface PlannedValue {
  readonly value: WireValue;
  /** As Excel would have it, without the apostrophe. */
  readonly bare: string | number;
  readonly shown: string;
}

/** Filled cells of the planned table's rows; absent where the plan has nothing to say. */
function plannedRows({ sheet, table, currency }: MergeInput): readonly (readonly (PlannedValue | undefined)[])[] {
  const { area } = table;
  const rows = Array.from({ length: area.bottom - area.top }, () =>
    new Array<PlannedValue | undefined>(area.right - area.left + 1).fill(undefined),
  );
  for (const cell of sheet.cells) {
    const row = rows[cell.row - area.top - 1];
    if (row === undefined || cell.column < area.left || cell.column > area.right) continue;
    const { content } = cell;
    if (content.kind === "text") {
      const { text } = content;
      row[cell.column - area.left] = {
        value: wireText(text, formatOf(cell, currency)),
        bare: text,
        shown: text.trim(),
      };
    } else if (content.kind === "number") {
      const value = wireNumber(content.value, table.name);
      row[cell.column - area.left] = { value, bare: value, shown: String(value) };
    }
  }
  return rows;
}

/** Carries a merge out, columns by their heading. */
export async function writeMerge(batch: Batch, { merge, table: live }: TableToMerge): Promise<void> {
  const table = batch.context.workbook.tables.getItem(merge.table);
  // Cells and rows come in as many pieces as one request needs; a totals row of the user's stands back meanwhile.
  const totals = live.totalsRow && (merge.newRows.length > 0 || merge.newColumns.length > 0);
  if (totals) table.showTotals = false;
  const body = live.values.slice(1);
  for (const heading of merge.newColumns) {
    await batch.room(bytesPerAction + body.length * 5);
    table.columns.add(undefined, [[wireText(heading, "General")], ...body.map(() => [""])]);
  }
  for (const [heading, values] of merge.cells) {
    const column = values.map((value) => [value]);
    await batch.room(bytesPerAction * 3 + wireBytes(column));
    table.columns.getItem(heading).getDataBodyRange().values = column as WireValue[][];
  }
  for (let first = 0; first < merge.newRows.length; first += rowsPerPiece) {
    const rows = merge.newRows.slice(first, first + rowsPerPiece).map((row) => row.map((cell) => cell ?? ""));
    await batch.room(bytesPerAction * 2 + wireBytes(rows));
    table.rows.add(undefined, rows);
  }
  if (totals) table.showTotals = true;
}

const rowsPerPiece = 200;

/** Takes a merge back: the table gets its old size, every cell that was written what it held. */
export async function undoMerge(batch: Batch, { merge, table: live }: TableToMerge): Promise<void> {
  const sheet = batch.context.workbook.worksheets.getItem(live.sheet);
  const table = batch.context.workbook.tables.getItem(merge.table);
  const grew = merge.newRows.length > 0 || merge.newColumns.length > 0;
  const { area, values } = live;
  const standing = live.totalsRow ? { ...area, bottom: area.bottom - 1 } : area;
  await batch.room(bytesPerAction * 8);
  if (grew) {
    table.showTotals = false;
    table.resize(sheet.getRange(areaAddress(standing)));
    const { top, left, bottom, right } = standing;
    const [last, lastColumn] = [bottom + merge.newRows.length, right + merge.newColumns.length];
    if (last > bottom) {
      sheet.getRange(areaAddress({ top: bottom + 1, left, bottom: last, right: lastColumn })).clear("Contents");
    }
    if (lastColumn > right) {
      sheet.getRange(areaAddress({ top, left: right + 1, bottom, right: lastColumn })).clear("Contents");
    }
  }
  const headings = (values[0] ?? []).map(String);
  for (const [heading, written] of merge.cells) {
    const at = headings.indexOf(heading);
    if (at < 0) continue;
    const column = written.map((value, row) => {
      const was = values[row + 1]?.[at];
      if (value === null) return [null];
      return [typeof was === "string" ? wireText(was, "General") : (was as WireValue)];
    });
    await batch.room(bytesPerAction * 3 + wireBytes(column));
    table.columns.getItem(heading).getDataBodyRange().values = column as WireValue[][];
  }
  if (grew && live.totalsRow) table.showTotals = true;
}
