import { printablePlan, type Survey, surveySheetModels } from "../loopwright.js";
import { alone, type ExcelConnection, type OnProgress, requireExcel } from "../sheet/connection.js";
import { ExcelProblem } from "../sheet/excel-problem.js";
import { readSurveySheets } from "../sheet/read-survey-sheets.js";
import { type ReportWritten, writeReport } from "../sheet/write-report.js";

export interface SurveySetUp {
  readonly connection: ExcelConnection;
  /** Day of issue, YYYY-MM-DD. */
  readonly date: string;
  readonly paper?: "A4" | "Letter";
  /** Fills the tables in, for example from a file that was opened; blank tables when absent. */
  readonly survey?: Survey;
  readonly onProgress?: OnProgress;
}

/** Names of the survey's sheets in a workbook that is to hold report sheets too. */
export const surveyPrefix = "Survey ";

/**
 * "Set up the survey": adds the key and every survey table that is missing. Tables that stand keep what was typed and
 * only get the columns they lack.
 * @throws {@link ExcelProblem} in words; a given survey is refused where the workbook holds loops already.
 */
export function setUpSurvey(input: SurveySetUp): Promise<ReportWritten> {
  const { connection, date, paper = "A4", survey, onProgress } = input;
  return alone(connection, async () => {
    requireExcel(connection);
    if (survey !== undefined) await requireNoLoops(connection);
    const sheets = surveySheetModels({ prefix: surveyPrefix, ...(survey === undefined ? {} : { survey }) });
    const plan = printablePlan({
      title: "Survey",
      job: survey?.site.name ?? "Survey",
      revision: "survey, void if a later one exists",
      date,
      currency: survey?.site.currency ?? "USD",
      paper,
      sheets,
    });
    const noPictures = () => Promise.reject(new Error("the survey has no pictures"));
    return writeReport({ connection, plan, renderPicture: noPictures, ...(onProgress ? { onProgress } : {}) });
  });
}

/** Rows of two surveys must not be mixed: both call their first loop R001. */
async function requireNoLoops(connection: ExcelConnection): Promise<void> {
  const { tables } = await readSurveySheets({ connection });
  const loops = tables.get("survey_loops");
  const filled = (loops?.values.slice(1) ?? []).some((row) => row.some((cell) => String(cell ?? "").trim() !== ""));
  if (!filled) return;
  throw new ExcelProblem(
    "surveyThere",
    `This workbook holds a survey already, on the sheet ${loops?.sheet}. Open a new workbook for another one.`,
  );
}
