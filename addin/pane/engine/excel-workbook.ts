/// <reference types="office-js" />

import { setUpSurvey } from "../../commands/set-up-survey.js";
import { workOutEstimate } from "../../commands/work-out-estimate.js";
import { cellAddress } from "../../loopwright.js";
import { columnsOf, fullHeading, type Place, type SurveySheetName } from "../../loopwright-pane.js";
import { type ExcelConnection, type OnProgress, runInExcel } from "../../sheet/connection.js";
import type { RenderPicture } from "../../sheet/draw.js";
import { ExcelProblem } from "../../sheet/excel-problem.js";
import { readSurveySheets } from "../../sheet/read-survey-sheets.js";
import type { LoopWish } from "./engine-state.js";
import type { OnShare } from "./jobs.js";
import { solveInWorker } from "./solve-in-worker.js";
import type { WorkbookLink } from "./workbook-link.js";

/** The workbook that Excel shows beside the pane. */
export function excelWorkbook(given: {
  readonly connection: ExcelConnection;
  readonly renderPicture: RenderPicture;
  /** Day on this machine's clock, YYYY-MM-DD. */
  readonly today: () => string;
  readonly solve?: ReturnType<typeof solveInWorker>;
}): WorkbookLink {
  const { connection, renderPicture, today, solve = solveInWorker() } = given;
  return {
    read: async () => {
      const { sheets, former } = await readSurveySheets({ connection });
      const takenAs: Record<string, SurveySheetName> = {};
      for (const { typed, as } of sheets) if (as !== undefined) takenAs[typed.sheet] = as;
      return { sheets: sheets.map(({ typed }) => typed), takenAs, former };
    },
    setUp: async ({ paper, onShare }) => {
      await setUpSurvey({ connection, date: today(), paper, onProgress: sharesOf(onShare) });
    },
    write: async ({ survey, wishes, paper, onShare }) => {
      await writeWishes(connection, survey, wishes);
      const date = today();
      const onProgress = sharesOf(onShare);
      return (await workOutEstimate({ connection, date, renderPicture, solve, paper, onProgress })).estimate;
    },
    show: (place) => showPlace(connection, place),
  };
}

const sharesOf =
  (onShare: OnShare): OnProgress =>
  ({ words, done, total }) =>
    onShare(words, total > 0 ? done / total : null);

const bare = (heading: unknown): string => String(heading).replace(/^✎\s*/u, "").trim().toLowerCase();

/** Position of one of our columns of the loops sheet among headings as they stand, or −1. */
function positionOf(headings: readonly unknown[], column: string): number {
  const ours = columnsOf("Loops").find((one) => one.column === column);
  const names = [column.toLowerCase(), ...(ours === undefined ? [] : [bare(fullHeading(ours))])];
  return headings.findIndex((heading) => names.includes(bare(heading)));
}

/**
 * Where a loop stands now: rows may have been sorted or inserted since they were read. A row that had no key of its own
 * yet, or a copied one, is taken where it was read.
 */
function indexOfKey(keys: readonly string[], key: string, read: number): number {
  const found = keys.indexOf(key);
  if (found >= 0) return found;
  const there = keys[read];
  if (there !== undefined && (there === "" || keys.indexOf(there) < read)) return read;
  throw new ExcelProblem(
    "noSurvey",
    `The row of loop ${key} is no longer where it was read. Read the workbook again, then write the wishes.`,
  );
}

/** Writes the wishes into the pin and forbid columns beside their loops. */
async function writeWishes(
  connection: ExcelConnection,
  survey: Parameters<WorkbookLink["write"]>[0]["survey"],
  wishes: Readonly<Record<string, LoopWish>>,
): Promise<void> {
  const changed = survey.loops.filter(({ key }) => Object.hasOwn(wishes, key));
  const [first] = changed;
  if (first === undefined) return;
  await runInExcel(connection, async (context) => {
    const sheet = context.workbook.worksheets.getItem(first.sheet);
    const used = sheet.getUsedRangeOrNullObject(true).load("values,rowIndex,columnIndex");
    await context.sync();
    const values: readonly (readonly unknown[])[] = used.isNullObject ? [] : used.values;
    const head = values.findIndex((cells) => positionOf(cells, "pinTreatment") >= 0);
    const headings = values[head] ?? [];
    const [pin, forbid] = [positionOf(headings, "pinTreatment"), positionOf(headings, "forbid")];
    if (pin < 0 || forbid < 0) {
      throw new ExcelProblem(
        "noSurvey",
        `The sheet ${first.sheet} has no columns for pinned and forbidden treatments. Set up the survey, then run it again.`,
      );
    }
    const keyAt = positionOf(headings, "key");
    const keys = values.map((cells, index) => (index <= head || keyAt < 0 ? "" : String(cells[keyAt] ?? "").trim()));
    for (const { key, row } of changed) {
      const wish = wishes[key];
      const now = used.rowIndex + 1 + indexOfKey(keys, key, row - used.rowIndex - 1);
      const put = (position: number, text: string) => {
        sheet.getRange(cellAddress(now, used.columnIndex + position + 1)).values = [[text]];
      };
      put(pin, wish?.pin ?? "");
      put(forbid, wish?.forbid.join(", ") ?? "");
    }
    await context.sync();
  });
}

/** Selects the cell, its row or its sheet, as far as the place says. */
function showPlace(connection: ExcelConnection, { sheet: name, row, column }: Place): Promise<boolean> {
  return runInExcel(connection, async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(name);
    const used = sheet.getUsedRangeOrNullObject(true).load("values,rowIndex,columnIndex");
    await context.sync();
    if (sheet.isNullObject) return false;
    sheet.activate();
    const at = used.isNullObject || column === null ? -1 : columnAt(used.values, column);
    if (row !== null || at >= 0) {
      const top = used.isNullObject ? 1 : used.rowIndex + 1;
      sheet.getRange(cellAddress(row ?? top, at < 0 ? 1 : used.columnIndex + at + 1)).select();
    }
    await context.sync();
    return true;
  });
}

/** Where a heading stands, as typed or under our name for it, in the first rows of a sheet. */
function columnAt(values: readonly (readonly unknown[])[], column: string): number {
  const wanted = bare(column);
  for (const cells of values.slice(0, 30)) {
    const typed = cells.findIndex((cell) => bare(cell) === wanted);
    const at = typed >= 0 ? typed : positionOf(cells, column);
    if (at >= 0) return at;
  }
  return -1;
}
