import {
  completedSurvey,
  type Estimate,
  estimateJob,
  estimateReport,
  packsWantedIn,
  planRecordIn,
  printablePlan,
  readHeldPlan,
  readSurvey,
  type Solve,
  type SurveyRead,
  surveySheetModels,
} from "../loopwright.js";
import type { ExcelConnection, OnProgress } from "../sheet/connection.js";
import type { RenderPicture } from "../sheet/draw.js";
import { ExcelProblem } from "../sheet/excel-problem.js";
import { readSurveySheets, type SurveyInWorkbook } from "../sheet/read-survey-sheets.js";
import { type ReportWritten, writeReport } from "../sheet/write-report.js";
import { surveyPrefix } from "./set-up-survey.js";

export interface EstimateInWorkbook {
  readonly connection: ExcelConnection;
  /** Day of issue, YYYY-MM-DD. */
  readonly date: string;
  readonly renderPicture: RenderPicture;
  /** The exact solver; absent = the quick plan, labelled as unproved. */
  readonly solve?: Solve;
  /** Most time for the plan. [s] */
  readonly seconds?: number;
  readonly paper?: "A4" | "Letter";
  readonly onProgress?: OnProgress;
}

/** What was worked out and written. */
export interface EstimateWritten {
  readonly estimate: Estimate;
  readonly written: ReportWritten;
}

/** Empty rows below each borrowed survey table, for rows found later. */
const spareRows = 2;

/**
 * "Work out the estimate": reads the survey tables, works everything out, then writes the report sheets beside them.
 * @throws {@link ExcelProblem} and the library's own SurveyRefused and NoEstimate, each in words.
 */
export async function workOutEstimate(input: EstimateInWorkbook): Promise<EstimateWritten> {
  return estimateIn(input, await readSurveySheets(input), false);
}

/**
 * "Rebuild the sheets": writes the report sheets again from the plan that the workbook carries, with today's prices and
 * hours from the survey tables; treatments, modules and orders stay.
 */
export async function rebuildSheets(input: EstimateInWorkbook): Promise<EstimateWritten> {
  const found = await readSurveySheets(input);
  if (planRecordIn(found.former) === undefined) {
    throw new ExcelProblem("noFormerPlan", "This workbook carries no plan yet. Work out the estimate first.");
  }
  return estimateIn(input, found, true);
}

async function estimateIn(input: EstimateInWorkbook, found: SurveyInWorkbook, hold: boolean): Promise<EstimateWritten> {
  const { connection, date, renderPicture, solve, seconds, paper = "A4", onProgress } = input;
  if (found.sheets.length === 0) {
    throw new ExcelProblem(
      "noSurvey",
      "This workbook holds no survey. Set up the survey, fill in the loops, then run it again.",
    );
  }
  const read = readSurvey({ sheets: found.sheets });
  const record = planRecordIn(found.former);
  const before = record === undefined ? undefined : readHeldPlan(record);
  const packsWanted = packsWantedIn(found.former);
  onProgress?.({ words: "Working out the plan", done: 0, total: 1 });
  const estimate = await estimateJob({
    survey: read.survey,
    hold,
    packsWanted,
    ...(before === undefined ? {} : { before }),
    ...(solve === undefined ? {} : { solve }),
    ...(seconds === undefined ? {} : { seconds }),
  });
  const plan = planOf({ estimate, read, date, paper, packsWanted, revision: (before?.revision ?? 0) + 1 });
  const written = await writeReport({
    connection,
    plan,
    renderPicture,
    loopRows: read.survey.loops.map(({ row }) => row),
    ...(onProgress ? { onProgress } : {}),
  });
  return { estimate, written };
}

/** The printable plan of an estimate with its survey tables, as the file has it. */
function planOf(given: {
  readonly estimate: Estimate;
  readonly read: SurveyRead;
  readonly date: string;
  readonly paper: "A4" | "Letter";
  readonly packsWanted: Readonly<Record<string, number>>;
  readonly revision: number;
}) {
  const { estimate, read, ...rest } = given;
  const { survey, headings } = read;
  const surveySheets = surveySheetModels({
    survey: completedSurvey({ estimate, survey }),
    prefix: surveyPrefix,
    spare: spareRows,
  }).filter(({ name }) => name !== `${surveyPrefix}Key`);
  return printablePlan(estimateReport({ estimate, survey, headings, surveySheets, ...rest }));
}
