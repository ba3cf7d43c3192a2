import type { Estimate } from "../estimate/estimate.js";
import { jobSettings } from "../price-book/job-settings.js";
import { estimateReport } from "../sheets/estimate-report.js";
import type { PacksWanted } from "../sheets/packs-wanted.js";
import { completedSurvey } from "../sheets/sheet-input.js";
import type { HeadingMatch } from "../survey/map-headings.js";
import type { Survey } from "../survey/survey.js";
import { surveySheetModels } from "./survey-template/survey-sheets.js";

/** What the estimate workbook is written from. */
export interface EstimateWorkbookInput {
  readonly estimate: Estimate;
  readonly survey: Survey;
  readonly headings: readonly HeadingMatch[];
  readonly paper?: "A4" | "Letter";
  /** Day of issue, YYYY-MM-DD; today when left out. */
  readonly date?: string;
  readonly revision?: number;
  /** Packs the purchaser wrote into a former estimate, see `packsWantedIn`. */
  readonly packsWanted?: PacksWanted;
}

/** Empty rows below each survey table, for rows found later. */
const spareRows = 2;

/** The estimate as content, with the survey tables it was reckoned with. */
export function estimateWorkbookReport(input: EstimateWorkbookInput) {
  const { estimate, survey, headings, paper = "A4", revision, packsWanted } = input;
  const surveySheets = surveySheetModels({
    survey: completedSurvey({ estimate, survey }),
    prefix: "Survey ",
    spare: spareRows,
    assumedSettings: jobSettings({ given: survey.settings }).assumed,
  })
    .filter(({ name }) => name !== "Survey Key")
    .map((sheet) => ({ ...sheet, printed: "none" as const }));
  return estimateReport({
    estimate,
    survey,
    headings,
    surveySheets,
    paper,
    date: input.date ?? new Date().toISOString().slice(0, 10),
    ...(revision === undefined ? {} : { revision }),
    ...(packsWanted === undefined ? {} : { packsWanted }),
  });
}
