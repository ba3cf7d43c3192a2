import { printablePlan } from "../report/printable-plan.js";
import { type EstimateWorkbookInput, estimateWorkbookReport } from "./estimate-workbook-report.js";
import { writeWorkbook } from "./write/write-workbook.js";

export { estimateWorkbookReport };

/** The .xlsx file of an estimate in Node; the same input and day give the same bytes. */
export async function estimateWorkbook(input: EstimateWorkbookInput): Promise<Uint8Array> {
  return writeWorkbook(printablePlan(estimateWorkbookReport(input)));
}
