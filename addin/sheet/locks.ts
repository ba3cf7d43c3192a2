/// <reference types="office-js" />
import { ExcelProblem } from "./excel-problem.js";
import type { LiveWorkbook } from "./live-workbook.js";

/** What stays allowed on our locked sheets. */
const ourOptions: Excel.WorksheetProtectionOptions = {
  allowFormatColumns: true,
  allowFormatRows: true,
  allowSort: true,
  allowAutoFilter: true,
};

/**
 * Locks a sheet without a password: it keeps formulas from slips of the hand, not from their owner. `options`: as the
 * sheet was locked before.
 */
export function lockSheet(sheet: Excel.Worksheet, options: Excel.WorksheetProtectionOptions = ourOptions): void {
  sheet.protection.protect(options);
}

/**
 * Takes the locks of these sheets off, all or none.
 * @throws {@link ExcelProblem} when one has a password: it is the user's.
 */
export async function unlockSheets(
  context: Excel.RequestContext,
  live: LiveWorkbook,
  names: readonly string[],
): Promise<void> {
  const { worksheets } = context.workbook;
  const locked = [...new Set(names)].filter((name) => live.sheets.get(name)?.protection !== undefined);
  if (locked.length === 0) return;
  for (const name of locked) worksheets.getItem(name).protection.unprotect();
  try {
    await context.sync();
  } catch (error) {
    const states = locked.map((name) => worksheets.getItem(name).protection.load("protected"));
    await context.sync();
    const still = locked.find((_, index) => states[index]?.protected);
    locked.forEach((name, index) => {
      if (!states[index]?.protected) lockSheet(worksheets.getItem(name), live.sheets.get(name)?.protection);
    });
    await context.sync();
    if (still === undefined) throw error;
    throw new ExcelProblem(
      "protected",
      `The sheet ${still} is protected with a password. Remove it under Review, then run it again. Nothing was changed.`,
      error,
    );
  }
}
