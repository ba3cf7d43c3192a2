/// <reference types="office-js" />
import { type Area, areaAddress, fixedAddress, type PrintablePlan, quotedSheet, styleBook } from "../loopwright.js";
import { Batch, bytesPerAction } from "./batch.js";
import { type ExcelConnection, type OnProgress, requireExcel, runInExcel } from "./connection.js";
import { wholeArea } from "./contents.js";
import { type DrawnPicture, type RenderPicture, writeCharts, writePictures } from "./draw.js";
import { ExcelProblem } from "./excel-problem.js";
import { type LiveWorkbook, markFormula, sheetMark } from "./live-workbook.js";
import { lockSheet, unlockSheets } from "./locks.js";
import { writeLinks, writeLooks, writeSetUp } from "./looks.js";
import { writeMerge } from "./merge-survey.js";
import { writePage } from "./page.js";
import { type PreparedReport, prepareReport, type SheetToWrite } from "./prepare-report.js";
import type { TableAsRead } from "./read-survey-sheets.js";
import { restore } from "./restore.js";
import { placeTables, standingOf, writeFormats, writeFormulas, writeValues } from "./write-contents.js";

/** What is written, and where to. */
export interface ReportToWrite {
  readonly connection: ExcelConnection;
  readonly plan: PrintablePlan;
  readonly renderPicture: RenderPicture;
  /** The survey tables as they were read; absent = standing ones only get the columns they lack. */
  readonly tables?: ReadonlyMap<string, TableAsRead>;
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
  /** Cells of the survey that were typed into while the work went on: they keep what was typed. */
  readonly keptTyped: number;
}

/** How far writing came, for what has to be said when it breaks off. */
type Stage = "contents" | "looks";

/**
 * Writes a printable plan into the open workbook: report sheets in place, survey tables that stand already only where
 * something is missing. Everything is worked out before anything is written: first the contents of all sheets, then
 * their looks; when something fails, what stood before is put back. Sheets of the workbook are never deleted, text never
 * becomes a formula.
 * @throws {@link ExcelProblem} in words, before anything is changed or after it was put back.
 */
export async function writeReport(input: ReportToWrite): Promise<ReportWritten> {
  const { connection, plan, renderPicture, onProgress = () => undefined } = input;
  requireExcel(connection);
  const steps = plan.sheets.length * 3 + 3;
  let done = 0;
  const say = (words: string) => onProgress({ words, done: Math.min(done++, steps), total: steps });
  say("Looking at the workbook");
  const prepared = await runInExcel(connection, (context) => prepareReport(context, input));
  say("Drawing pictures");
  const pictures: DrawnPicture[] = [];
  for (const { planned } of prepared.sheets) {
    for (const { area, picture } of planned.pictures) {
      pictures.push({ sheet: planned.name, area, picture, png: await renderPicture(picture) });
    }
  }
  await runInExcel(connection, (context) => carryOut(context, prepared, pictures, say), { writes: true });
  onProgress({ words: "Written", done: steps, total: steps });
  const { sheets, added, merges } = prepared;
  return {
    added,
    rebuilt: sheets.map(({ planned }) => planned.name).filter((name) => !added.includes(name)),
    kept: merges.map(({ table }) => table.sheet),
    keptTyped: merges.reduce((sum, { merge }) => sum + merge.keptTyped, 0),
  };
}

/** Writes, or leaves the workbook as it was. */
async function carryOut(
  context: Excel.RequestContext,
  prepared: PreparedReport,
  pictures: readonly DrawnPicture[],
  say: (words: string) => void,
): Promise<void> {
  const { before, renames, live, sheets, merges } = prepared;
  const written = sheets.map(({ planned }) => planned.name);
  const touched = [...written, ...merges.map(({ table }) => table.sheet)];
  const formerName = (name: string) => renames.find(({ to }) => to === name)?.from ?? name;
  await unlockSheets(context, before, touched.map(formerName));
  let stage: Stage = "contents";
  try {
    context.runtime.enableEvents = false;
    for (const { from, to } of renames) context.workbook.worksheets.getItem(from).name = to;
    if (renames.length > 0) await context.sync();
    const batch = new Batch(context);
    await writeContents(batch, prepared, say);
    stage = "looks";
    await writeAppearance(batch, prepared, pictures, say);
    await batch.room(bytesPerAction * (touched.length + 2));
    for (const { planned } of sheets) {
      if (planned.locked) lockSheet(context.workbook.worksheets.getItem(planned.name));
    }
    for (const name of new Set(merges.map(({ table }) => table.sheet))) {
      const protection = live.sheets.get(name)?.protection;
      if (protection !== undefined) lockSheet(context.workbook.worksheets.getItem(name), protection);
    }
    context.workbook.application.calculate("Full");
    await batch.send();
  } catch (error) {
    throw await takenBack(context, prepared, touched, stage, error);
  } finally {
    context.runtime.enableEvents = before.eventsOn;
    await context.sync().catch(() => undefined);
  }
}

/** Tables, texts and figures of every sheet, then names, then formulas: these may speak of every sheet and table. */
async function writeContents(batch: Batch, prepared: PreparedReport, say: (words: string) => void): Promise<void> {
  const { plan, live, sheets, merges } = prepared;
  addSheets(batch.context, prepared);
  for (const merge of merges) {
    say(`Keeping ${merge.table.sheet}`);
    await writeMerge(batch, merge);
  }
  for (const { planned, contents, live: there } of sheets) {
    say(`Tables and texts: ${planned.name}`);
    if (there !== undefined) await clearMerges(batch, { planned, contents, live: there });
    await placeTables(batch, contents, standingOf(there, live.tables));
    await writeFormats(batch, contents);
    await writeValues(batch, contents);
  }
  await writeNames(batch, plan, live);
  for (const { planned, contents } of sheets) {
    say(`Formulas: ${planned.name}`);
    await writeFormulas(batch, contents);
  }
  await batch.send();
}

async function writeAppearance(
  batch: Batch,
  { plan, sheets }: PreparedReport,
  pictures: readonly DrawnPicture[],
  say: (words: string) => void,
): Promise<void> {
  const styles = styleBook(plan.currency);
  for (const sheet of sheets) {
    const { planned, contents } = sheet;
    say(`Looks: ${planned.name}`);
    await clearLooks(batch, sheet);
    await writeLinks(batch, planned, contents);
    await writeLooks(batch, planned, styles);
    await writeSetUp(batch, planned);
    await writeCharts(batch, planned, plan.currency);
    await writePage(batch, planned, plan);
  }
  await writePictures(batch, pictures);
}

/** Adds the sheets that are missing, each behind the planned one before it, and marks all as ours. */
function addSheets(context: Excel.RequestContext, { plan, live, sheets, added }: PreparedReport): void {
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
    const { names } = worksheets.getItem(planned.name);
    if (there?.ours) names.getItem(sheetMark).formula = markFormula(planned.name);
    else names.add(sheetMark, markFormula(planned.name)).visible = false;
  }
}

/** Covered cells of merged ranges take no values: what was merged comes apart first. Number formats begin anew. */
async function clearMerges(batch: Batch, { planned, live }: SheetToWrite): Promise<void> {
  await batch.room(bytesPerAction * 2);
  const range = wholeRange(batch, { planned, live });
  range.unmerge();
  // One value for the whole range; the library's types know only arrays.
  range.numberFormat = "General" as unknown as string[][];
}

/** Takes off a sheet everything but its contents and its tables. */
async function clearLooks(batch: Batch, { planned, contents, live }: SheetToWrite): Promise<void> {
  if (live === undefined) return;
  const sheet = batch.context.workbook.worksheets.getItem(planned.name);
  await batch.room(bytesPerAction * (8 + live.charts.length + live.shapes.length));
  for (const chart of live.charts) sheet.charts.getItem(chart).delete();
  for (const shape of live.shapes) sheet.shapes.getItem(shape).delete();
  const range = wholeRange(batch, { planned, live });
  range.conditionalFormats.clearAll();
  range.dataValidation.clear();
  range.clear("Hyperlinks");
  range.clear("Formats");
  sheet.horizontalPageBreaks.removePageBreaks();
  sheet.freezePanes.unfreeze();
  // They went with the other formats.
  await writeFormats(batch, contents);
}

/** Everything the sheet holds or held. */
function wholeRange(batch: Batch, { planned, live }: Pick<SheetToWrite, "planned" | "live">): Excel.Range {
  const area = bothAreas(wholeArea(planned), live?.used);
  return batch.context.workbook.worksheets.getItem(planned.name).getRange(areaAddress(area));
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
  prepared: PreparedReport,
  touched: readonly string[],
  stage: Stage,
  cause: unknown,
): Promise<unknown> {
  const problem = ExcelProblem.from(cause);
  const code = problem instanceof ExcelProblem ? problem.code : "notWritten";
  const why = problem instanceof Error ? problem.message : String(problem);
  let looksKept: boolean;
  try {
    ({ looksKept } = await restore(context, prepared));
  } catch (error) {
    return new ExcelProblem(
      code,
      `${why} Writing broke off and could not be taken back: do not use the sheets ${touched.join(", ")} before it has been run again.`,
      error,
    );
  }
  const words =
    stage === "contents" && looksKept
      ? "The workbook stands as before."
      : "Everything in the cells stands as before; colours, lines, pictures and charts of the report sheets may be missing until it has been run again.";
  return new ExcelProblem(code, `${why} ${words}`, cause);
}
