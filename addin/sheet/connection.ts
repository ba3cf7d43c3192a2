/// <reference types="office-js" />
import { ExcelProblem } from "./excel-problem.js";

/** Excel as the add-in reaches it; taken from the window only when something is to be done. */
export interface ExcelConnection {
  readonly excel: typeof Excel;
  /** Whether Excel knows a requirement set of ExcelApi, for example "1.13". */
  readonly supports: (version: string) => boolean;
}

/** What is reported while work goes on. `done` of `total` steps. */
export interface WorkProgress {
  readonly words: string;
  readonly done: number;
  readonly total: number;
}
export type OnProgress = (progress: WorkProgress) => void;

/** Images, charts by series, print set-up and address lists need it. */
const leastVersion = "1.9";

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

/** Runs a batch and says what Excel refused in words. */
export async function runInExcel<T>(
  connection: ExcelConnection,
  work: (context: Excel.RequestContext) => Promise<T>,
): Promise<T> {
  const options: Excel.RunOptions = connection.supports("1.20") ? { mergeUndoGroup: true } : {};
  try {
    return await connection.excel.run(options, work);
  } catch (error) {
    throw ExcelProblem.from(error);
  }
}
