import { jobTables } from "../estimate/demo-tables.js";
import type { Estimate } from "../estimate/estimate.js";
import { heldPlan } from "../estimate/held-plan.js";
import { learnedLabour } from "../estimate/learning-of.js";
import { jobSettings } from "../price-book/job-settings.js";
import type { Report, Sheet } from "../report/model.js";
import type { HeadingMatch } from "../survey/map-headings.js";
import type { Survey } from "../survey/survey.js";
import { aboutSheet } from "./about-sheet.js";
import { basisSheet } from "./basis-sheet.js";
import { billSheet } from "./bill-sheet.js";
import { carrySheet } from "./carry-sheet.js";
import { cautionsSheet } from "./cautions-sheet.js";
import { changesSheet } from "./changes-sheet.js";
import { checksSheet } from "./checks-sheet.js";
import { cutOverSheet } from "./cut-over-sheet.js";
import { handOverSheet } from "./hand-over-sheet.js";
import { labelsSheet } from "./labels-sheet.js";
import { labourSheet } from "./labour-sheet.js";
import { learnedSheet } from "./learned-sheet.js";
import { loopCardsSheet } from "./loop-cards-sheet.js";
import { loopsSheet } from "./loops-sheet.js";
import { measureNextSheet } from "./measure-next-sheet.js";
import { optionsSheet } from "./options-sheet.js";
import { ordersSheet } from "./orders-sheet.js";
import type { PacksWanted } from "./packs-wanted.js";
import { planRecordSheet } from "./plan-record-sheet.js";
import { planValuesSheet } from "./plan-values-sheet.js";
import { priceLinesSheet, priceSheet } from "./price-sheet.js";
import { queriesSheet } from "./queries-sheet.js";
import { quoteSheet } from "./quote-sheet.js";
import { radioSheet } from "./radio-sheet.js";
import { hasDemoPrices, type SheetInput } from "./sheet-input.js";
import { summarySheet } from "./summary-sheet.js";
import { supplySheet } from "./supply-sheet.js";
import { terminalsSheet } from "./terminals-sheet.js";
import { walkTestSheet } from "./walk-test-sheet.js";
import { zoneScheduleSheet } from "./zone-schedule-sheet.js";

/** What the content of the estimate workbook is made from. */
export interface EstimateReportInput {
  readonly estimate: Estimate;
  readonly survey: Survey;
  /** How loose headings were understood. */
  readonly headings: readonly HeadingMatch[];
  /**
   * The survey tables that ride along, from the completed survey: tables survey_loops, survey_price_book,
   * survey_labour, survey_settings and survey_input_modules, which formulas read.
   */
  readonly surveySheets: readonly Sheet[];
  readonly paper: "A4" | "Letter";
  /** Day of issue, YYYY-MM-DD. */
  readonly date: string;
  /** Packs the purchaser wrote into a former estimate; they stand in the new one again. */
  readonly packsWanted?: PacksWanted;
  /** Number of the issue, from 1. */
  readonly revision?: number;
}

/**
 * The estimate workbook as plain data: sheets for estimator, purchaser, technician and owner, each left out where it
 * would be empty, then the survey tables with every edit, so that the estimate can be run on the workbook again.
 */
export function estimateReport(given: EstimateReportInput): Report {
  const { estimate, survey, paper, date, surveySheets } = given;
  const revision = `revision ${given.revision ?? 1} of ${date}, void if older`;
  const tables = jobTables(survey);
  const input: SheetInput = {
    estimate,
    survey,
    headings: given.headings,
    surveySheets,
    job: jobSettings({ given: survey.settings }).settings,
    labour: learnedLabour(tables.labour, estimate.learning),
    priceBook: tables.priceBook,
    packsWanted: given.packsWanted ?? {},
    demoPrices: hasDemoPrices({ estimate, survey }),
    date,
    revision,
  };
  const sheets = [
    summarySheet(input),
    queriesSheet(input),
    loopsSheet(input),
    measureNextSheet(input),
    terminalsSheet(input),
    loopCardsSheet(input, paper),
    labelsSheet(input),
    walkTestSheet(input),
    zoneScheduleSheet(input),
    cutOverSheet(input),
    handOverSheet(input),
    supplySheet(input),
    radioSheet(input),
    billSheet(input),
    ordersSheet(input),
    carrySheet(input),
    labourSheet(input),
    priceSheet(input),
    optionsSheet(input),
    quoteSheet(input),
    changesSheet(input),
    learnedSheet(input),
    cautionsSheet(input),
    checksSheet(input),
    priceLinesSheet(input),
    planValuesSheet(input),
    basisSheet(input),
    planRecordSheet(heldPlan({ estimate, revision: given.revision ?? 1, date })),
    ...surveySheets,
  ].filter((sheet) => sheet !== undefined);
  return {
    title: "Estimate",
    job: (estimate.site.name ?? "site not named").slice(0, 80),
    revision,
    date,
    currency: estimate.currency,
    paper,
    sheets: [
      aboutSheet(
        input,
        sheets.map(({ name }) => name),
      ),
      ...sheets,
    ],
  };
}
