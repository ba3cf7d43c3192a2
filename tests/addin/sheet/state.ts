import { addressOf, type Box } from "../../excel-host/cells.js";
import type { ExcelHost } from "../../excel-host/excel-host.js";
import type { Sheet } from "../../excel-host/sheet.js";

/** All cells of a sheet that hold something, by address. */
export function cellsOf(sheet: Sheet): ReadonlyMap<string, { readonly shown: unknown; readonly format: string }> {
  const used = sheet.cells.used();
  const found = new Map<string, { shown: unknown; format: string }>();
  if (used === undefined) return found;
  for (let row = used.top; row <= used.bottom; row++) {
    for (let column = used.left; column <= used.right; column++) {
      const content = sheet.cells.content(row, column);
      if (content === undefined) continue;
      const box = { top: row, left: column, bottom: row, right: column };
      found.set(addressOf(box), { shown: content.formula ?? content.value, format: sheet.formatAt(row, column) });
    }
  }
  return found;
}

/** What a person would find in the workbook: sheets, cells, formats of filled cells, tables, merged cells, names, locks. */
export function stateOf(host: ExcelHost) {
  return {
    sheets: host.book.sheets.map((sheet) => ({
      name: sheet.name,
      locked: sheet.protected !== undefined,
      cells: Object.fromEntries(cellsOf(sheet)),
      tables: sheet.tables
        .map(({ name, box, totals }) => `${name} ${addressOf(box)} ${totals}`)
        .sort((a, b) => a.localeCompare(b)),
      merges: sheet.merges.map(addressOf).sort((a, b) => a.localeCompare(b)),
    })),
    names: [...host.book.names.values()].map((bag) => `${bag.get("Name")} ${bag.get("Formula")}`).sort(),
    eventsOn: host.book.runtime.get("EnableEvents"),
  };
}

export function sheetOf(host: ExcelHost, name: string): Sheet {
  const sheet = host.book.sheets.find((one) => one.name === name);
  if (sheet === undefined) throw new Error(`no sheet ${name}: ${host.book.sheets.map((one) => one.name).join(", ")}`);
  return sheet;
}

/** Column and row (from 0) of a table's cell, by heading (without its mark) and by what stands in another column. */
export function cellIn(sheet: Sheet, table: string, heading: string, key: readonly [string, string | number]): Box {
  const found = sheet.tables.find(({ name }) => name === table);
  if (found === undefined) throw new Error(`no table ${table} on ${sheet.name}`);
  const headings = found.headings().map((one) => one.replace(/^✎ /, ""));
  const column = found.box.left + headings.indexOf(heading);
  const keyColumn = found.box.left + headings.indexOf(key[0]);
  if (!headings.includes(heading) || !headings.includes(key[0]))
    throw new Error(`no such heading: ${headings.join(", ")}`);
  for (let row = found.body.top; row <= found.body.bottom; row++) {
    if (sheet.cells.content(row, keyColumn)?.value === key[1])
      return { top: row, left: column, bottom: row, right: column };
  }
  throw new Error(`no row with ${key[1]} under ${key[0]}`);
}

export const valueAt = (sheet: Sheet, box: Box): unknown => {
  const content = sheet.cells.content(box.top, box.left);
  return content?.formula ?? content?.value ?? "";
};

/** What the user types into a cell; formulas of theirs are not looked into. */
export function typeInto(sheet: Sheet, box: Box, value: string | number): void {
  sheet.cells.write(box.top, box.left, { value });
}
