/// <reference types="office-js" />
import { ExcelProblem } from "./excel-problem.js";

/** Excel as the add-in reaches it; taken from the window only when something is to be done. */
export interface ExcelConnection {
  readonly excel: typeof Excel;
  /** Whether Excel knows a requirement set of ExcelApi, for example "1.13". */
  readonly supports: (version: string) => boolean;
}

/** What is reported while work goes on: `done` of `total`, never falling within one command. */
export interface WorkProgress {
  readonly words: string;
  readonly done: number;
  readonly total: number;
}
export type OnProgress = (progress: WorkProgress) => void;

/** Tables that grow and shrink in place and merged cells need it; every Excel that runs this add-in's pane has it. */
export const leastVersion = "1.13";

/** From this requirement set on, everything one command writes is one step of Undo. */
const undoGroupVersion = "1.20";

/** The Excel around this page. Outside Excel there is none. */
export function currentExcel(): ExcelConnection {
  if (typeof Excel === "undefined" || typeof Office === "undefined") {
    throw new ExcelProblem("notInExcel", "This needs Excel: open the pane from Excel's ribbon.");
  }
  return {
    excel: Excel,
    supports: (version) => Office.context.requirements.isSetSupported("ExcelApi", version),
  };
}

/** Refuses an Excel that is too old for the sheets, before anything is touched. */
export function requireExcel(connection: ExcelConnection): void {
  if (connection.supports(leastVersion)) return;
  throw new ExcelProblem(
    "excelTooOld",
    `This Excel knows less than ExcelApi ${leastVersion}, which the sheets need. Update Excel, use Excel on the web, or open the file in the pane in a browser.`,
  );
}

/**
 * Runs a batch and says what Excel refused in words. `writes`: one step of Undo where Excel can, and a cell that is
 * opened for editing in the middle of it delays the rest instead of breaking it off.
 */
export async function runInExcel<T>(
  connection: ExcelConnection,
  work: (context: Excel.RequestContext) => Promise<T>,
  { writes = false }: { readonly writes?: boolean } = {},
): Promise<T> {
  const options: Excel.RunOptions = {
    ...(writes ? { delayForCellEdit: true } : {}),
    ...(writes && connection.supports(undoGroupVersion) ? { mergeUndoGroup: true } : {}),
  };
  try {
    return await connection.excel.run(options, work);
  } catch (error) {
    throw ExcelProblem.from(error);
  }
}

const atWork = new WeakSet<object>();

/** One command at a time: the pane's button and the ribbon's must not write over each other. */
export async function alone<T>(connection: ExcelConnection, work: () => Promise<T>): Promise<T> {
  const { excel } = connection;
  if (atWork.has(excel)) {
    throw new ExcelProblem("busy", "The workbook is still being worked on. Wait until it is done, then run it again.");
  }
  atWork.add(excel);
  try {
    return await work();
  } finally {
    atWork.delete(excel);
  }
}
