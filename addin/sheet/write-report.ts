/// <reference types="office-js" />
import {
  type Area,
  areaAddress,
  fixedAddress,
  type PlannedSheet,
  type PrintablePlan,
  quotedSheet,
  styleBook,
} from "../loopwright.js";
import { Batch, bytesPerAction } from "./batch.js";
import { type ExcelConnection, type OnProgress, requireExcel, runInExcel } from "./connection.js";
import { plannedContents, type SheetContents, wholeArea } from "./contents.js";
import { type DrawnPicture, type RenderPicture, writeCharts, writePictures } from "./draw.js";
import { ExcelProblem } from "./excel-problem.js";
import { type LiveSheet, type LiveTable, type LiveWorkbook, liveWorkbook, sheetMark } from "./live-workbook.js";
import { writeLinks, writeLooks, writeSetUp } from "./looks.js";
import { mergeOf, type SurveyMerge, surveySheetOf, writeMerge } from "./merge-survey.js";
import { lockSheet, writePage } from "./page.js";
import { restore } from "./restore.js";
import { placeTables, standingOf, writeFormulas, writeValues } from "./write-contents.js";

/** What is written, and where to. */
export interface ReportToWrite {
  readonly connection: ExcelConnection;
  readonly plan: PrintablePlan;
  readonly renderPicture: RenderPicture;
  /** Sheet rows of the survey's loops, in the survey's order: they find rows that have no key yet. */
  readonly loopRows?: readonly number[];
  readonly onProgress?: OnProgress;
}

/** What was done. */
export interface ReportWritten {
  readonly added: readonly string[];
  readonly rebuilt: readonly string[];
  /** Survey sheets that stood already and kept what was typed. */
  readonly kept: readonly string[];
}

/** Everything that is worked out before the first request that writes. */
interface Prepared {
  readonly plan: PrintablePlan;
  readonly live: LiveWorkbook;
  /** Report sheets, and survey sheets that do not stand yet. */
  readonly sheets: readonly {
    readonly planned: PlannedSheet;
    readonly contents: SheetContents;
    readonly live: LiveSheet | undefined;
  }[];
  readonly merges: readonly { readonly merge: SurveyMerge; readonly table: LiveTable }[];
  readonly pictures: readonly DrawnPicture[];
  readonly added: readonly string[];
}

/**
 * Writes a printable plan into the open workbook: report sheets in place, survey tables that stand already only where
 * something is missing. Everything is worked out before anything is written; when writing fails, what stood before is
 * put back. Sheets are never deleted, text never becomes a formula.
 * @throws {@link ExcelProblem} in words, before anything is changed or after it was put back.
 */
export async function writeReport(input: ReportToWrite): Promise<ReportWritten> {
  const { connection, plan, renderPicture, onProgress = () => undefined } = input;
  requireExcel(connection);
  const steps = plan.sheets.length * 3 + 2;
  let done = 0;
  const say = (words: string) => onProgress({ words, done: done++, total: steps });
  say("Drawing pictures");
  const pictures: DrawnPicture[] = [];
  for (const { name, pictures: all } of plan.sheets) {
    for (const { area, picture } of all) {
      pictures.push({ sheet: name, area, picture, png: await renderPicture(picture) });
    }
  }
  return runInExcel(connection, async (context) => {
    say("Looking at the workbook");
    const found = await look(context, plan);
    const prepared = prepare({ plan, live: found, pictures, loopRows: input.loopRows ?? [] });
    await unlock(context, prepared);
    const written = prepared.sheets.map(({ planned }) => planned.name);
    const touched = [...written, ...prepared.merges.map(({ table }) => table.sheet)];
    try {
      context.runtime.enableEvents = false;
      await write(context, prepared, say);
    } catch (error) {
      throw await takenBack(context, found, touched, error);
    } finally {
      context.runtime.enableEvents = found.eventsOn;
      await context.sync().catch(() => undefined);
    }
    return {
      added: prepared.added,
      rebuilt: written.filter((name) => !prepared.added.includes(name)),
      kept: prepared.merges.map(({ table }) => table.sheet),
    };
  });
}

/** Standard name of a survey sheet beside the one it has among report sheets: "Loops" and "Survey Loops". */
const surveyPrefix = "Survey ";

/** Looks at the workbook; survey sheets under their plain names move aside for report sheets. */
async function look(context: Excel.RequestContext, plan: PrintablePlan): Promise<LiveWorkbook> {
  const inputs = plan.sheets.filter(({ part }) => part === "input");
  const wanted = ({
    sheets,
    tableSheets,
  }: {
    readonly sheets: readonly string[];
    readonly tableSheets: ReadonlyMap<string, string>;
  }) => {
    for (const { name, tables } of inputs) {
      for (const table of tables) {
        const stands = tableSheets.get(table.name);
        if (stands !== undefined && stands !== name && `${surveyPrefix}${stands}` === name && !sheets.includes(name)) {
          context.workbook.worksheets.getItem(stands).name = name;
        }
      }
    }
    return {
      sheets: plan.sheets.map(({ name }) => name),
      tables: inputs.flatMap(({ tables }) => tables.map(({ name }) => name)),
    };
  };
  const first = await liveWorkbook(context, wanted);
  const renamed = inputs.some(({ name, tables }) =>
    tables.some((table) =>
      first.tables.some(
        (live) => live.name === table.name && live.sheet !== name && `${surveyPrefix}${live.sheet}` === name,
      ),
    ),
  );
  return renamed ? liveWorkbook(context, wanted) : first;
}

function prepare(given: {
  readonly plan: PrintablePlan;
  readonly live: LiveWorkbook;
  readonly pictures: readonly DrawnPicture[];
  readonly loopRows: readonly number[];
}): Prepared {
  const { plan, live, pictures, loopRows } = given;
  const merges: { merge: SurveyMerge; table: LiveTable }[] = [];
  const sheets: { planned: PlannedSheet; contents: SheetContents; live: LiveSheet | undefined }[] = [];
  for (const planned of plan.sheets) {
    const [own] = planned.tables;
    const stands =
      own && planned.part === "input" && surveySheetOf(own.name)
        ? live.tables.find(({ name }) => name === own.name)
        : undefined;
    if (own !== undefined && stands !== undefined) {
      merges.push({
        merge: mergeOf({ sheet: planned, table: own, currency: plan.currency }, stands, loopRows),
        table: stands,
      });
      continue;
    }
    const there = live.sheets.get(planned.name);
    if (there !== undefined) requireOurs(planned, there, live);
    sheets.push({ planned, contents: plannedContents(planned, plan.currency), live: there });
  }
  for (const { planned } of sheets) {
    for (const { name } of planned.tables) {
      const elsewhere = live.tables.find((table) => table.name === name && table.sheet !== planned.name);
      if (elsewhere !== undefined)
        throw taken(`The table ${name} stands on the sheet ${elsewhere.sheet}. Rename that table, then run it again.`);
    }
  }
  const added = sheets.filter((sheet) => sheet.live === undefined).map(({ planned }) => planned.name);
  return { plan, live, sheets, merges, pictures, added };
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
  const foreign = live.protected ? undefined : tables.find((table) => !known(table));
  if (foreign !== undefined) {
    throw taken(
      `The table ${foreign.name} stands on the sheet ${live.name}, which is rebuilt. Move it to a sheet of its own, then run it again.`,
    );
  }
}

/** Takes our own locks off; a lock with a password is the user's and ends the run. */
async function unlock(context: Excel.RequestContext, { sheets, merges, live }: Prepared): Promise<void> {
  const names = [...sheets.map(({ planned }) => planned.name), ...merges.map(({ table }) => table.sheet)];
  const locked = [...new Set(names)].filter((name) => live.sheets.get(name)?.protected);
  if (locked.length === 0) return;
  const { worksheets } = context.workbook;
  for (const name of locked) worksheets.getItem(name).protection.unprotect();
  try {
    await context.sync();
  } catch (error) {
    const states = locked.map((name) => worksheets.getItem(name).protection.load("protected"));
    await context.sync();
    const still = locked.find((_, index) => states[index]?.protected);
    locked.forEach((name, index) => {
      if (!states[index]?.protected) lockSheet(worksheets.getItem(name));
    });
    await context.sync();
    if (still === undefined) throw error;
    throw new ExcelProblem(
      "protected",
      `The sheet ${still} is protected with a password. Remove it under Review, then run it again.`,
      error,
    );
  }
}

async function write(context: Excel.RequestContext, prepared: Prepared, say: (words: string) => void): Promise<void> {
  const { plan, live, sheets, merges, pictures } = prepared;
  const batch = new Batch(context);
  addSheets(context, prepared);
  for (const { merge, table } of merges) {
    say(`Keeping ${table.sheet}`);
    await writeMerge(batch, merge, table);
  }
  for (const { planned, contents, live: there } of sheets) {
    say(`Tables and texts: ${planned.name}`);
    await clearSheet(batch, planned, there);
    await placeTables(batch, contents, standingOf(there, live.tables));
    await writeLinks(batch, planned);
    await writeValues(batch, contents);
  }
  await writeNames(batch, plan, live);
  for (const { planned, contents } of sheets) {
    say(`Formulas: ${planned.name}`);
    await writeFormulas(batch, contents);
  }
  const styles = styleBook(plan.currency);
  for (const { planned } of sheets) {
    say(`Looks: ${planned.name}`);
    await writeLooks(batch, planned, styles);
    await writeSetUp(batch, planned);
    await writeCharts(batch, planned, plan.currency);
    await writePage(batch, planned, plan);
  }
  const writable = new Set(sheets.map(({ planned }) => planned.name));
  await writePictures(
    batch,
    pictures.filter(({ sheet }) => writable.has(sheet)),
  );
  await batch.room(bytesPerAction * (sheets.length + merges.length + 2));
  for (const { planned } of sheets) {
    if (planned.locked) lockSheet(context.workbook.worksheets.getItem(planned.name));
  }
  for (const { table } of merges) {
    if (live.sheets.get(table.sheet)?.protected) lockSheet(context.workbook.worksheets.getItem(table.sheet));
  }
  context.workbook.application.calculate("Full");
  await batch.send();
}

/** Adds the sheets that are missing, each behind the planned one before it, and marks them as ours. */
function addSheets(context: Excel.RequestContext, { plan, live, sheets, added }: Prepared): void {
  const { worksheets } = context.workbook;
  const order = [...live.sheetNames];
  let behind = -1;
  for (const { name } of plan.sheets) {
    if (!added.includes(name)) {
      behind = Math.max(behind, order.indexOf(name));
      continue;
    }
    behind++;
    order.splice(behind, 0, name);
    worksheets.add(name).position = behind;
  }
  for (const { planned, live: there } of sheets) {
    if (there?.ours) continue;
    const mark = worksheets.getItem(planned.name).names.add(sheetMark, '="report"');
    mark.visible = false;
  }
}

/** Takes off a sheet everything but its contents and its tables. */
async function clearSheet(batch: Batch, planned: PlannedSheet, live: LiveSheet | undefined): Promise<void> {
  if (live === undefined) return;
  const sheet = batch.context.workbook.worksheets.getItem(planned.name);
  await batch.room(bytesPerAction * (8 + live.charts.length + live.shapes.length));
  for (const chart of live.charts) sheet.charts.getItem(chart).delete();
  for (const shape of live.shapes) sheet.shapes.getItem(shape).delete();
  const range = sheet.getRange(areaAddress(bothAreas(wholeArea(planned), live.used)));
  range.unmerge();
  range.conditionalFormats.clearAll();
  range.dataValidation.clear();
  range.clear("Hyperlinks");
  range.clear("Formats");
  sheet.horizontalPageBreaks.removePageBreaks();
  sheet.freezePanes.unfreeze();
}

const bothAreas = (one: Area, other: Area | undefined): Area =>
  other === undefined
    ? one
    : {
        top: Math.min(one.top, other.top),
        left: Math.min(one.left, other.left),
        bottom: Math.max(one.bottom, other.bottom),
        right: Math.max(one.right, other.right),
      };

async function writeNames(batch: Batch, plan: PrintablePlan, live: LiveWorkbook): Promise<void> {
  const { names } = batch.context.workbook;
  await batch.room(bytesPerAction * plan.names.length);
  for (const { name, sheet, row, column } of plan.names) {
    const formula = `=${quotedSheet(sheet)}!${fixedAddress(row, column)}`;
    const before = [...live.names.keys()].find((one) => one.toLowerCase() === name.toLowerCase());
    if (before === undefined) names.add(name, formula);
    else if (live.names.get(before) !== formula) names.getItem(before).formula = formula;
  }
}

/** Puts back what stood before and says so; says plainly when that failed too. */
async function takenBack(
  context: Excel.RequestContext,
  before: LiveWorkbook,
  touched: readonly string[],
  cause: unknown,
): Promise<unknown> {
  const problem = ExcelProblem.from(cause);
  const code = problem instanceof ExcelProblem ? problem.code : "notWritten";
  const why = problem instanceof Error ? problem.message : String(problem);
  try {
    await restore(context, before, touched);
  } catch (error) {
    return new ExcelProblem(
      code,
      `${why} Writing broke off and could not be taken back: do not use the sheets ${touched.join(", ")} before it has been run again.`,
      error,
    );
  }
  return new ExcelProblem(code, `${why} The workbook stands as before.`, cause);
}
