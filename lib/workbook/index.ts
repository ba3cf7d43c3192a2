// Workbooks in and out: "loopwright/workbook". Runs in Node; the reader guards against hostile files.
export { tableCsv } from "./csv/table-csv.js";
export { estimateWorkbook } from "./estimate-workbook.js";
export { FileRefused, type FileRefusedCode } from "./read/file-refused.js";
export { readFileInWorker } from "./read/in-worker.js";
export { readFileSheets } from "./read/read-file.js";
export { writeSurveyWorkbook } from "./survey-template/write-survey-workbook.js";
