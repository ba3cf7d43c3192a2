import {
  type CancelSignal,
  completedSurvey,
  type Estimate,
  estimateJob,
  estimateReport,
  NoEstimate,
  packsWantedIn,
  planRecordIn,
  printablePlan,
  readHeldPlan,
  readSurvey,
  type Solve,
  type SurveyRead,
  surveySheetModels,
} from "../loopwright.js";
import { alone, type ExcelConnection, type OnProgress, requireExcel } from "../sheet/connection.js";
import type { RenderPicture } from "../sheet/draw.js";
import { ExcelProblem } from "../sheet/excel-problem.js";
import { readSurveySheets, type SurveyInWorkbook } from "../sheet/read-survey-sheets.js";
import { type ReportWritten, writeReport } from "../sheet/write-report.js";
import { loopsAsTheyStand } from "./loops-as-they-stand.js";
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
  /** Cuts the search for the plan short: the best so far is written. */
  readonly signal?: CancelSignal;
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
 * "Work out the estimate": reads the survey tables, works everything out anew (pins and packs wanted hold), then writes
 * the report sheets beside them. The sheet Changes lists what became different since the estimate before.
 * @throws {@link ExcelProblem} and the library's own SurveyRefused and NoEstimate, each in words.
 */
export function workOutEstimate(input: EstimateInWorkbook): Promise<EstimateWritten> {
  return alone(input.connection, async () => estimateIn(input, await foundIn(input), false));
}

/**
 * "Rebuild the sheets": writes the report sheets again from the plan that the workbook carries, with today's prices and
 * hours from the survey tables and the packs wanted on the Bill; treatments, modules and orders stay.
 * @throws as {@link workOutEstimate}, and where the workbook carries no plan or the survey no longer fits it.
 */
export function rebuildSheets(input: EstimateInWorkbook): Promise<EstimateWritten> {
  return alone(input.connection, async () => {
    const found = await foundIn(input);
    if (planRecordIn(found.former) === undefined) {
      throw new ExcelProblem("noFormerPlan", "This workbook carries no plan yet. Work out the estimate first.");
    }
    return estimateIn(input, found, true);
  });
}

async function foundIn({ connection, onProgress }: EstimateInWorkbook): Promise<SurveyInWorkbook> {
  requireExcel(connection);
  onProgress?.({ words: "Reading the survey", done: 0, total: wholeWay });
  const found = await readSurveySheets({ connection });
  if (found.sheets.length > 0) return found;
  throw new ExcelProblem(
    "noSurvey",
    "This workbook holds no survey. Set up the survey, fill in the loops, then run it again.",
  );
}

/** Steps of a command as they are reported: reading, the plan up to its share, the rest writing. */
const wholeWay = 100;
const planFrom = 5;
const writingFrom = 40;

async function estimateIn(input: EstimateInWorkbook, found: SurveyInWorkbook, hold: boolean): Promise<EstimateWritten> {
  const { connection, date, renderPicture, solve, seconds, signal, paper = "A4", onProgress } = input;
  const read = readSurvey({ sheets: found.sheets });
  const record = planRecordIn(found.former);
  const before = record === undefined ? undefined : readHeldPlan(record);
  const packsWanted = packsWantedIn(found.former);
  const planning = (words: string) => onProgress?.({ words, done: planFrom, total: wholeWay });
  planning("Working out the plan");
  const estimate = await estimateJob({
    survey: read.survey,
    hold,
    packsWanted,
    onProgress: ({ stage }) => planning(`Working out the plan: ${stage}`),
    ...(before === undefined ? {} : { before }),
    ...(solve === undefined ? {} : { solve }),
    ...(seconds === undefined ? {} : { seconds }),
    ...(signal === undefined ? {} : { signal }),
  }).catch((error: unknown) => {
    throw hold && error instanceof NoEstimate ? planOutgrown(error) : error;
  });
  const revision = (before?.revision ?? 0) + 1;
  const plan = planOf({ estimate, read, found, date, paper, packsWanted, revision });
  const written = await writeReport({
    connection,
    plan,
    renderPicture,
    tables: found.tables,
    loopRows: read.survey.loops.map(({ row }) => row),
    onProgress: ({ words, done, total }) =>
      onProgress?.({ words, done: writingFrom + ((wholeWay - writingFrom) * done) / total, total: wholeWay }),
  });
  return { estimate, written };
}

/** The survey was edited so that the carried plan cannot stand: said in this add-in's words. */
function planOutgrown(error: NoEstimate): ExcelProblem {
  const [, fault] = /\((.+)\): run again/s.exec(error.message) ?? [];
  return new ExcelProblem(
    "planOutgrown",
    `The plan in this workbook no longer fits the survey${fault === undefined ? "" : ` (${fault})`}. Work out the estimate instead of rebuilding the sheets.`,
    error,
  );
}

/** The printable plan of an estimate with its survey tables, as the file has it. */
function planOf(given: {
  readonly estimate: Estimate;
  readonly read: SurveyRead;
  readonly found: SurveyInWorkbook;
  readonly date: string;
  readonly paper: "A4" | "Letter";
  readonly packsWanted: Readonly<Record<string, number>>;
  readonly revision: number;
}) {
  const { estimate, read, found, ...rest } = given;
  const { survey, headings } = read;
  const surveySheets = surveySheetModels({
    survey: completedSurvey({ estimate, survey }),
    prefix: surveyPrefix,
    spare: spareRows,
  })
    .filter(({ name }) => name !== `${surveyPrefix}Key`)
    .map((sheet) => loopsAsTheyStand({ sheet: { ...sheet, printed: "none" }, loops: survey.loops, found }));
  return printablePlan(estimateReport({ estimate, survey, headings, surveySheets, ...rest }));
}
