// Workbooks in and out: "loopwright/workbook". Runs in Node; the reader guards against hostile files.
export { checkFile, type FileProblem } from "./check/check-file.js";
export { type CsvField, csvText } from "./csv/csv-text.js";
export { tableCsv } from "./csv/table-csv.js";
export { estimateWorkbook } from "./estimate-workbook.js";
export { type EstimateWorkbookInput, estimateWorkbookReport } from "./estimate-workbook-report.js";
export { FileRefused, type FileRefusedCode } from "./read/file-refused.js";
export { readFileInWorker } from "./read/in-worker.js";
export type { ReadLimits } from "./read/limits.js";
export { type FileToRead, readFileSheets } from "./read/read-file.js";
export { type SurveyWorkbookInput, surveyWorkbookPlan } from "./survey-template/survey-workbook-plan.js";
export { writeSurveyWorkbook } from "./survey-template/write-survey-workbook.js";
export { writeWorkbook } from "./write/write-workbook.js";
