/// <reference types="office-js" />
import { type Area, areaAddress } from "../loopwright.js";
import { type Batch, bytesPerAction } from "./batch.js";
import type { SheetContents, WantedTable } from "./contents.js";
import type { LiveSheet, LiveTable } from "./live-workbook.js";
import { type WireValue, wireBytes, wireText } from "./wire-value.js";

/** What stands of a sheet before its contents are written. */
export interface Standing {
  readonly used?: Area;
  readonly tables: readonly LiveTable[];
}

/** How much one written rectangle may weigh; larger ones are cut by rows. [bytes] */
const bytesPerPiece = 1_000_000;

/**
 * Empties a sheet's old contents and puts its tables where they are to stand. A table whose heading row stays where it
 * is keeps being the same table, so that formulas of the user that name it go on working; others are made anew.
 */
export async function placeTables(batch: Batch, wanted: SheetContents, standing: Standing): Promise<void> {
  const sheet = batch.context.workbook.worksheets.getItem(wanted.name);
  const kept = standing.tables.filter((table) => wanted.tables.some((one) => staysInPlace(one, table)));
  for (const table of standing.tables) {
    await batch.room(bytesPerAction * 2);
    const live = batch.context.workbook.tables.getItem(table.name);
    if (!kept.includes(table)) live.convertToRange();
    else if (table.totalsRow) live.showTotals = false;
  }
  for (const area of standing.used === undefined ? [] : aroundHeadings(standing.used, kept)) {
    await batch.room(bytesPerAction);
    sheet.getRange(areaAddress(area)).clear("Contents");
  }
  for (const table of wanted.tables) {
    const before = kept.find(({ name }) => name === table.name);
    await (before === undefined ? addTable(batch, sheet, table) : resizeTable(batch, sheet, table, before));
  }
}

/** Whether the table can be kept: same name, same first heading cell. */
const staysInPlace = (wanted: WantedTable, live: LiveTable): boolean =>
  wanted.name === live.name && wanted.area.top === live.area.top && wanted.area.left === live.area.left;

/** The used area without the heading rows of kept tables: emptied headings would be renamed by Excel. */
function aroundHeadings(used: Area, kept: readonly LiveTable[]): readonly Area[] {
  const rows = [...new Set(kept.map(({ area }) => area.top))].sort((a, b) => a - b);
  const areas: Area[] = [];
  let top = used.top;
  for (const row of rows) {
    if (row < used.top || row > used.bottom) continue;
    areas.push({ ...used, top, bottom: row - 1 });
    let left = used.left;
    const inRow = kept.filter(({ area }) => area.top === row).sort((a, b) => a.area.left - b.area.left);
    for (const { area } of inRow) {
      areas.push({ top: row, bottom: row, left, right: area.left - 1 });
      left = area.right + 1;
    }
    areas.push({ top: row, bottom: row, left, right: used.right });
    top = row + 1;
  }
  areas.push({ ...used, top });
  return areas.filter((area) => area.top <= area.bottom && area.left <= area.right);
}

const withoutTotals = ({ area, totalsRow }: WantedTable): Area =>
  totalsRow ? { ...area, bottom: area.bottom - 1 } : area;

async function writeHeadings(batch: Batch, sheet: Excel.Worksheet, { area, headings }: WantedTable): Promise<void> {
  const values = [headings.map((heading) => wireText(heading, "General"))];
  await batch.room(bytesPerAction + wireBytes(values));
  sheet.getRange(areaAddress({ ...area, bottom: area.top })).values = values;
}

async function addTable(batch: Batch, sheet: Excel.Worksheet, wanted: WantedTable): Promise<void> {
  await writeHeadings(batch, sheet, wanted);
  await batch.room(bytesPerAction * 6);
  const table = sheet.tables.add(areaAddress(withoutTotals(wanted)), true);
  table.name = wanted.name;
  table.style = "TableStyleLight1";
  table.showBandedRows = false;
  table.showFilterButton = wanted.filter;
  if (wanted.totalsRow) table.showTotals = true;
}

async function resizeTable(
  batch: Batch,
  sheet: Excel.Worksheet,
  wanted: WantedTable,
  before: LiveTable,
): Promise<void> {
  const table = batch.context.workbook.tables.getItem(wanted.name);
  const to = withoutTotals(wanted);
  const standing = before.totalsRow ? { ...before.area, bottom: before.area.bottom - 1 } : before.area;
  await batch.room(bytesPerAction * 5);
  // Narrower first: a new heading must not meet an old one of the same name on its right.
  if (to.right < standing.right) table.resize(sheet.getRange(areaAddress({ ...standing, right: to.right })));
  await writeHeadings(batch, sheet, wanted);
  if (areaAddress(to) !== areaAddress(standing)) table.resize(sheet.getRange(areaAddress(to)));
  // What stood beside the narrower table's heading.
  if (to.right < standing.right) {
    sheet.getRange(areaAddress({ ...standing, left: to.right + 1, bottom: standing.top })).clear("Contents");
  }
  if (wanted.totalsRow) table.showTotals = true;
}

/** Writes number formats: they must stand before texts that are to stay texts. */
export async function writeFormats(batch: Batch, wanted: SheetContents): Promise<void> {
  await inPieces(batch, wanted, wanted.formats, (range, piece) => {
    // Null leaves a cell as it is; the types of the library know no null.
    range.numberFormat = piece as string[][];
  });
}

/** Writes texts and numbers; formulas follow when every sheet has its tables. */
export async function writeValues(batch: Batch, wanted: SheetContents): Promise<void> {
  await inPieces(batch, wanted, withoutHeadings(wanted), (range, piece) => {
    range.values = piece as WireValue[][];
  });
}

/** Headings were written with their tables; writing them again could rename a column for a moment. */
function withoutHeadings(wanted: SheetContents): readonly (readonly WireValue[])[] {
  return wanted.values.map((row, index) => {
    const own = wanted.tables.filter(({ area }) => area.top === index + 1);
    return own.length === 0
      ? row
      : row.map((value, column) =>
          own.some(({ area }) => column + 1 >= area.left && column + 1 <= area.right) ? null : value,
        );
  });
}

export async function writeFormulas(batch: Batch, wanted: SheetContents): Promise<void> {
  await inPieces(batch, wanted, wanted.formulas, (range, piece) => {
    range.formulas = piece as string[][];
  });
}

/** Hands a grid over in rectangles that leave out its empty margins, each within the size limit. */
async function inPieces<T>(
  batch: Batch,
  { name }: SheetContents,
  grid: readonly (readonly (T | null)[])[],
  write: (range: Excel.Range, piece: (T | null)[][]) => void,
): Promise<void> {
  const sheet = batch.context.workbook.worksheets.getItem(name);
  for (const { top, rows } of pieces(grid)) {
    const filled = rows
      .flatMap((row) => [row.findIndex((cell) => cell !== null), lastFilled(row)])
      .filter((at) => at >= 0);
    const left = Math.min(...filled);
    const right = Math.max(...filled);
    const piece = rows.map((row) => row.slice(left, right + 1));
    await batch.room(bytesPerAction + wireBytes(piece));
    write(sheet.getRangeByIndexes(top, left, piece.length, right - left + 1), piece);
  }
}

function lastFilled<T>(row: readonly (T | null)[]): number {
  for (let at = row.length - 1; at >= 0; at--) if (row[at] !== null) return at;
  return -1;
}

/** Runs of rows that hold something; a few empty rows between are cheaper than another range. */
function pieces<T>(grid: readonly (readonly (T | null)[])[]) {
  const found: { top: number; rows: (readonly (T | null)[])[] }[] = [];
  let bytes = 0;
  let empty = 0;
  grid.forEach((row, index) => {
    if (lastFilled(row) < 0) {
      empty++;
      return;
    }
    const last = found.at(-1);
    const size = wireBytes(row);
    const together = last !== undefined && empty <= 12 && bytes + size <= bytesPerPiece;
    if (together) last.rows.push(...grid.slice(index - empty, index), row);
    else found.push({ top: index, rows: [row] });
    bytes = together ? bytes + size : size;
    empty = 0;
  });
  return found;
}

/** What stands of a sheet that was looked at. */
export const standingOf = (live: LiveSheet | undefined, tables: readonly LiveTable[]): Standing => ({
  ...(live?.used === undefined ? {} : { used: live.used }),
  tables: live === undefined ? [] : tables.filter(({ sheet }) => sheet === live.name),
});
