/// <reference types="office-js" />
import { columnsOf, type PlannedSheet, type PlannedTable, type SurveySheetName, surveySheets } from "../loopwright.js";
import { type Batch, bytesPerAction } from "./batch.js";
import { formatOf } from "./contents.js";
import type { LiveTable } from "./live-workbook.js";
import { type WireValue, wireBytes, wireNumber, wireText } from "./wire-value.js";

/** Name of the table behind each survey sheet. */
export const surveyTableName = (sheet: SurveySheetName): string => `survey_${sheet.toLowerCase().replaceAll(" ", "_")}`;

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
}

const plain = (heading: unknown): string => String(heading).trim().toLowerCase();
const shown = (value: unknown): string => String(value ?? "").trim();

/**
 * Compares a planned survey table with the one that stands: rows by their key, columns by their heading. What the user
 * typed stays; keys are given, values the reader settled are written as the report uses them, borrowed rows are added.
 * `rows` are the sheet rows of the planned loops, for those that have no key yet.
 */
export function mergeOf(
  planned: { readonly sheet: PlannedSheet; readonly table: PlannedTable; readonly currency: string },
  live: LiveTable,
  rows: readonly number[],
): SurveyMerge {
  const { table, sheet, currency } = planned;
  const kind = surveySheetOf(table.name);
  const headings = (live.values[0] ?? []).map(plain);
  const newColumns = table.columns
    .map(({ heading }) => heading)
    .filter((heading) => !headings.includes(plain(heading)));
  const none = { table: table.name, sheet: live.sheet, newColumns, cells: new Map(), newRows: [] };
  const identity = kind === undefined ? undefined : identities[kind];
  if (kind === undefined || identity === undefined) return none;

  const keyAt = identity.map((column) => columnsOf(kind).findIndex((one) => one.column === column));
  const wanted = plannedRows(sheet, table, currency);
  const body = live.values.slice(1);
  const allHeadings = [...headings, ...newColumns.map(plain)];
  const at = table.columns.map(({ heading }) => allHeadings.indexOf(plain(heading)));
  const standing = new Map(body.map((row, index) => [keyOf(keyAt.map((column) => row[at[column] ?? -1])), index]));
  const free = freeRows(body);
  const cells = new Map<string, WireValue[]>();
  const newRows: WireValue[][] = [];
  wanted.forEach((row, index) => {
    const key = keyOf(keyAt.map((column) => row[column]?.shown));
    if (key === "") return;
    const byPlace = kind === "Loops" ? (rows[index] ?? 0) - live.area.top - 1 : -1;
    const found = standing.get(key) ?? (byPlace >= 0 && byPlace < body.length ? byPlace : free.shift());
    if (found === undefined) {
      newRows.push(allHeadings.map((_, column) => row[at.indexOf(column)]?.value ?? ""));
      return;
    }
    row.forEach((cell, column) => {
      const heading = table.columns[column]?.heading ?? "";
      if (cell === undefined || cell.shown === shown(body[found]?.[at[column] ?? -1])) return;
      const values = cells.get(heading) ?? new Array<WireValue>(body.length).fill(null);
      values[found] = cell.value;
      cells.set(heading, values);
    });
  });
  return { ...none, cells, newRows };
}

const keyOf = (parts: readonly unknown[]): string => {
  const texts = parts.map(shown);
  return texts[0] === "" ? "" : JSON.stringify(texts);
};

/** Empty rows behind the last filled one, in order. */
function freeRows(body: readonly (readonly unknown[])[]): number[] {
  let last = body.length;
  while (last > 0 && (body[last - 1] ?? []).every((cell) => shown(cell) === "")) last--;
  return Array.from({ length: body.length - last }, (_, index) => last + index);
}

interface PlannedValue {
  readonly value: WireValue;
  readonly shown: string;
}

/** Filled cells of the planned table's rows; absent where the plan has nothing to say. */
function plannedRows(
  sheet: PlannedSheet,
  table: PlannedTable,
  currency: string,
): readonly (readonly (PlannedValue | undefined)[])[] {
  const { area } = table;
  const rows = Array.from({ length: area.bottom - area.top }, () =>
    new Array<PlannedValue | undefined>(area.right - area.left + 1).fill(undefined),
  );
  for (const cell of sheet.cells) {
    const row = rows[cell.row - area.top - 1];
    if (row === undefined || cell.column < area.left || cell.column > area.right) continue;
    const { content } = cell;
    if (content.kind === "text") {
      row[cell.column - area.left] = {
        value: wireText(content.text, formatOf(cell, currency)),
        shown: content.text.trim(),
      };
    } else if (content.kind === "number") {
      row[cell.column - area.left] = { value: wireNumber(content.value, table.name), shown: String(content.value) };
    }
  }
  return rows;
}

/** Carries a merge out, columns by their heading. */
export async function writeMerge(batch: Batch, merge: SurveyMerge, live: LiveTable): Promise<void> {
  const table = batch.context.workbook.tables.getItem(merge.table);
  for (const heading of merge.newColumns) {
    await batch.room(bytesPerAction + live.values.length * 4);
    table.columns.add(undefined, [[`'${heading}`], ...live.values.slice(1).map(() => [""])]);
  }
  for (const [heading, values] of merge.cells) {
    const column = values.map((value) => [value]);
    await batch.room(bytesPerAction * 3 + wireBytes(column));
    table.columns.getItem(heading).getDataBodyRange().values = column as WireValue[][];
  }
  if (merge.newRows.length === 0) return;
  await batch.room(bytesPerAction * 2 + wireBytes(merge.newRows));
  table.rows.add(
    undefined,
    merge.newRows.map((row) => row.map((cell) => cell ?? "")),
  );
}
