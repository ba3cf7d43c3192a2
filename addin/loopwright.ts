// Everything the add-in takes from the library, in one place.

export type { Estimate } from "../lib/estimate/estimate.js";
export { type EstimateInput, estimateJob, NoEstimate } from "../lib/estimate/estimate-job.js";
export { readHeldPlan } from "../lib/json-input/held-plan-input.js";
export type { CancelSignal, Solve } from "../lib/plan/milp-model.js";
export { InputError } from "../lib/problems/input-error.js";
export { type Area, areaAddress, cellAddress, fixedAddress, quotedSheet } from "../lib/report/addresses.js";
export type { PictureBlock, Role, Sheet } from "../lib/report/model.js";
export {
  type PlannedCell,
  type PlannedChart,
  type PlannedSeries,
  type PlannedSheet,
  type PlannedTable,
  type PlannedValidation,
  type PrintablePlan,
  printablePlan,
} from "../lib/report/printable-plan.js";
export { estimateReport } from "../lib/sheets/estimate-report.js";
export { packsWantedIn } from "../lib/sheets/packs-wanted.js";
export { planRecordIn, planRecordName } from "../lib/sheets/plan-record-sheet.js";
export { completedSurvey } from "../lib/sheets/sheet-input.js";
export { columnsOf, fullHeading, type SurveySheetName, surveySheets } from "../lib/survey/columns.js";
export { readSurvey, type SheetToRead, type SurveyRead } from "../lib/survey/read-survey.js";
export type { Survey, TypedCell, TypedSheet } from "../lib/survey/survey.js";
export { SurveyRefused } from "../lib/survey/survey-refused.js";
export { isoDateOf, plainText } from "../lib/workbook/read/read-sheet-xml.js";
export { surveySheetModels } from "../lib/workbook/survey-template/survey-sheets.js";
export { numberFormat } from "../lib/workbook/write/formats.js";
export { highlightStyle, type StyleBook, styleBook } from "../lib/workbook/write/styles.js";
