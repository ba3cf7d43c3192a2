/// <reference types="office-js" />
import { areaAddress } from "../loopwright.js";
import { Batch, bytesPerAction } from "./batch.js";
import { type LiveSheet, type LiveWorkbook, liveWorkbook } from "./live-workbook.js";
import { lockSheet } from "./locks.js";
import { undoMerge } from "./merge-survey.js";
import type { PreparedReport } from "./prepare-report.js";
import { placeTables, standingOf, writeFormats, writeFormulas, writeValues } from "./write-contents.js";

/**
 * Takes back what a failed run wrote: sheets it added go, report sheets get the names, contents, number formats, tables,
 * merged cells and locks they had, survey tables what stood in the cells that were written. Colours, lines, pictures and
 * charts stay as the run left them. Nothing else of the workbook is touched.
 */
export async function restore(
  context: Excel.RequestContext,
  { before, renames, sheets, merges, added }: PreparedReport,
): Promise<{ readonly looksKept: boolean }> {
  const names = [...sheets.map(({ planned }) => planned.name), ...merges.map(({ table }) => table.sheet)];
  const now = await liveWorkbook(context, ({ sheetNames }) => ({
    sheets: names.filter((name) => sheetNames.includes(name)),
    tables: [],
  }));
  const { worksheets } = context.workbook;
  const batch = new Batch(context);
  const done = renames.filter(({ to }) => now.sheetNames.includes(to) && !before.sheetNames.includes(to));
  const complete = done.length === renames.length;
  // Renaming comes first of all: where it broke off, no sheet was added and nothing else was written.
  if (complete) for (const name of added) if (now.sheetNames.includes(name)) worksheets.getItem(name).delete();
  for (const { from, to } of [...done].reverse()) worksheets.getItem(to).name = from;
  const formerly = (name: string) => done.find(({ to }) => to === name)?.from ?? name;
  const old = complete
    ? sheets.flatMap(({ planned }) => {
        const stands = now.sheets.get(planned.name);
        const was = added.includes(planned.name) ? undefined : before.sheets.get(formerly(planned.name));
        return was === undefined || stands === undefined ? [] : [{ was, stands }];
      })
    : [];
  for (const [name, { protection }] of now.sheets) {
    if (complete && protection !== undefined && !added.includes(name)) {
      worksheets.getItem(formerly(name)).protection.unprotect();
    }
  }
  for (const { merge, table } of complete ? merges : []) {
    const stands = now.tables.some(({ name }) => name === table.name);
    if (stands) await undoMerge(batch, { merge, table: { ...table, sheet: formerly(table.sheet) } });
  }
  for (const { was, stands } of old) await clearReport(batch, was, stands, now);
  for (const { was } of old) {
    await writeFormats(batch, was.contents);
    await writeValues(batch, was.contents);
  }
  await restoreNames(batch, before, now);
  for (const { was } of old) await writeFormulas(batch, was.contents);
  for (const { was } of old) {
    await batch.room(bytesPerAction * (was.merges?.length ?? 0));
    for (const area of was.merges ?? []) worksheets.getItem(was.name).getRange(area).merge(false);
  }
  await batch.room(bytesPerAction * before.sheets.size);
  for (const [name, { protection }] of before.sheets) {
    const locked = !complete && now.sheets.get(name)?.protection !== undefined;
    if (protection !== undefined && !locked) lockSheet(worksheets.getItem(name), protection);
  }
  await batch.send();
  return { looksKept: old.every(({ was }) => was.merges !== null) };
}

/** Empties a report sheet and puts its old tables back. */
async function clearReport(batch: Batch, was: LiveSheet, stands: LiveSheet, now: LiveWorkbook): Promise<void> {
  const sheet = batch.context.workbook.worksheets.getItem(was.name);
  await batch.room(bytesPerAction * 2);
  const area = {
    top: 1,
    left: 1,
    bottom: Math.max(1, stands.used?.bottom ?? 1, was.contents.rows),
    right: Math.max(1, stands.used?.right ?? 1, was.contents.columns),
  };
  const range = sheet.getRange(areaAddress(area));
  range.unmerge();
  range.numberFormat = "General" as unknown as string[][];
  await placeTables(batch, was.contents, standingOf(stands, now.tables));
}

async function restoreNames(batch: Batch, before: LiveWorkbook, now: LiveWorkbook): Promise<void> {
  const { names } = batch.context.workbook;
  await batch.room(bytesPerAction * (before.names.size + now.names.size));
  for (const name of now.names.keys()) if (!before.names.has(name)) names.getItem(name).delete();
  for (const [name, formula] of before.names) {
    if (!now.names.has(name)) names.add(name, formula);
    else if (now.names.get(name) !== formula) names.getItem(name).formula = formula;
  }
}
