/// <reference types="office-js" />
import { areaAddress } from "../loopwright.js";
import { Batch } from "./batch.js";
import { type LiveWorkbook, liveWorkbook } from "./live-workbook.js";
import { lockSheet } from "./page.js";
import { placeTables, standingOf, writeFormulas, writeValues } from "./write-contents.js";

/**
 * Takes back what a failed run wrote: sheets it added go, the others get the contents, number formats and tables they
 * had. Colours and lines may stay those of the new report.
 */
export async function restore(
  context: Excel.RequestContext,
  before: LiveWorkbook,
  written: readonly string[],
): Promise<void> {
  const now = await liveWorkbook(context, ({ sheets }) => ({
    sheets: written.filter((name) => sheets.includes(name)),
    tables: [],
  }));
  const { worksheets, names } = context.workbook;
  for (const name of now.names.keys()) if (!before.names.has(name)) names.getItem(name).delete();
  for (const [name, formula] of before.names)
    if (now.names.get(name) !== formula) names.getItem(name).formula = formula;
  for (const [name] of now.sheets) if (!before.sheetNames.includes(name)) worksheets.getItem(name).delete();
  await context.sync();

  const batch = new Batch(context);
  const old = [...before.sheets.values()].filter(({ name }) => now.sheets.has(name));
  for (const { name, contents } of old) {
    const live = now.sheets.get(name);
    const sheet = worksheets.getItem(name);
    if (live?.protected) sheet.protection.unprotect();
    const area = {
      top: 1,
      left: 1,
      bottom: Math.max(1, live?.used?.bottom ?? 1, contents.rows),
      right: Math.max(1, live?.used?.right ?? 1, contents.columns),
    };
    const range = sheet.getRange(areaAddress(area));
    range.unmerge();
    range.numberFormat = Array.from({ length: area.bottom }, () => new Array<string>(area.right).fill("General"));
    await placeTables(batch, contents, standingOf(live, now.tables));
  }
  for (const { contents } of old) await writeValues(batch, contents);
  for (const { contents } of old) await writeFormulas(batch, contents);
  for (const { name, protected: locked } of old) if (locked) lockSheet(worksheets.getItem(name));
  await batch.send();
}
