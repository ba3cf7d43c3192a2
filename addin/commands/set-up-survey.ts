import { printablePlan, type Survey, surveySheetModels } from "../loopwright.js";
import type { ExcelConnection, OnProgress } from "../sheet/connection.js";
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
 */
export function setUpSurvey({
  connection,
  date,
  paper = "A4",
  survey,
  onProgress,
}: SurveySetUp): Promise<ReportWritten> {
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
}
