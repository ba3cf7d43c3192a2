/// <reference types="office-js" />
import type { PlannedSheet, PrintablePlan } from "../loopwright.js";
import { plannedContents, type SheetContents } from "./contents.js";
import { ExcelProblem } from "./excel-problem.js";
import { type LiveSheet, type LiveTable, type LiveWorkbook, liveWorkbook } from "./live-workbook.js";
import { mergeOf, surveySheetOf, type TableToMerge } from "./merge-survey.js";
import type { TableAsRead } from "./read-survey-sheets.js";
import { type Rename, renamed, renamesFor } from "./renames.js";

/** A sheet to be written, with what it is to hold and what stands there. */
export interface SheetToWrite {
  readonly planned: PlannedSheet;
  readonly contents: SheetContents;
  readonly live: LiveSheet | undefined;
}

/** Everything that is worked out before the first request that writes. */
export interface PreparedReport {
  readonly plan: PrintablePlan;
  /** The workbook as it stands. */
  readonly before: LiveWorkbook;
  readonly renames: readonly Rename[];
  /** The workbook as it will stand once the sheets are renamed. */
  readonly live: LiveWorkbook;
  /** Report sheets, and survey sheets that do not stand yet. */
  readonly sheets: readonly SheetToWrite[];
  readonly merges: readonly TableToMerge[];
  readonly added: readonly string[];
}

/** What a report is prepared from. */
export interface ReportToPrepare {
  readonly plan: PrintablePlan;
  /** The survey tables as they were read; absent = standing ones only get the columns they lack. */
  readonly tables?: ReadonlyMap<string, TableAsRead>;
  /** Sheet rows of the survey's loops, in the survey's order. */
  readonly loopRows?: readonly number[];
}

/**
 * Looks at the workbook and works out everything that is to be written; changes nothing.
 * @throws {@link ExcelProblem} when a sheet or table of the user's own is in the way, or no sheet can be added.
 */
export async function prepareReport(context: Excel.RequestContext, input: ReportToPrepare): Promise<PreparedReport> {
  const { plan, tables: read, loopRows = [] } = input;
  let renames: readonly Rename[] = [];
  const before = await liveWorkbook(context, (names) => {
    renames = renamesFor(plan, names);
    const wanted = new Set(plan.sheets.map(({ name }) => renames.find(({ to }) => to === name)?.from ?? name));
    const tables = plan.sheets.filter(({ part }) => part === "input").flatMap((sheet) => sheet.tables);
    for (const { name } of tables) {
      const sheet = names.tableSheets.get(name);
      if (sheet !== undefined) wanted.add(sheet);
    }
    return { sheets: [...wanted], tables: tables.map(({ name }) => name) };
  });
  const live = renamed(before, renames);
  const merges: TableToMerge[] = [];
  const sheets: SheetToWrite[] = [];
  for (const planned of plan.sheets) {
    const own = planned.part === "input" ? planned.tables.find(({ name }) => surveySheetOf(name)) : undefined;
    const table = own && live.tables.find(({ name }) => name === own.name);
    if (own !== undefined && table !== undefined) {
      const asRead = read?.get(own.name);
      const given = { sheet: planned, table: own, currency: plan.currency, live: table, loopRows };
      merges.push({ merge: mergeOf(asRead === undefined ? given : { ...given, read: asRead }), table });
      continue;
    }
    const there = live.sheets.get(planned.name);
    if (there !== undefined) requireOurs(planned, there, live);
    sheets.push({ planned, contents: plannedContents(planned, plan.currency), live: there });
  }
  for (const { planned } of sheets) requireTablesFree(planned, live);
  const added = sheets.filter((sheet) => sheet.live === undefined).map(({ planned }) => planned.name);
  if (live.structureLocked && added.length + renames.length > 0) {
    throw new ExcelProblem(
      "protected",
      "The structure of the workbook is protected, so that no sheet can be added. Take the protection off under Review, then run it again.",
    );
  }
  return { plan, before, renames, live, sheets, merges, added };
}

const taken = (words: string) => new ExcelProblem("nameTaken", words);
const withoutDigits = (name: string): string => name.replace(/\d+/g, "#");

/** Refuses to write over a sheet of the user's own. */
function requireOurs(planned: PlannedSheet, live: LiveSheet, workbook: LiveWorkbook): void {
  const plannedTables = new Set(planned.tables.map(({ name }) => withoutDigits(name)));
  const tables = workbook.tables.filter(({ sheet }) => sheet === live.name);
  const known = (table: LiveTable) => plannedTables.has(withoutDigits(table.name));
  const title = planned.cells.find(({ row, column }) => row === 1 && column === 1)?.content;
  const sameTitle = title?.kind === "text" && title.text === live.firstCell;
  if (!(live.ours || live.used === undefined || sameTitle || tables.some(known))) {
    throw taken(
      `A sheet named ${live.name} stands in the workbook that was not made here. Rename it, then run it again.`,
    );
  }
  const foreign = live.protection ? undefined : tables.find((table) => !known(table));
  if (foreign !== undefined) {
    throw taken(
      `The table ${foreign.name} stands on the sheet ${live.name}, which is rebuilt. Move it to a sheet of its own, then run it again.`,
    );
  }
}

function requireTablesFree(planned: PlannedSheet, live: LiveWorkbook): void {
  for (const { name } of planned.tables) {
    const elsewhere = live.tables.find(
      (table) => table.name.toLowerCase() === name.toLowerCase() && table.sheet !== planned.name,
    );
    if (elsewhere !== undefined)
      throw taken(`The table ${name} stands on the sheet ${elsewhere.sheet}. Rename that table, then run it again.`);
  }
}
