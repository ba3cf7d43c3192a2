import { writeWorkbook } from "../write/write-workbook.js";
import { type SurveyWorkbookInput, surveyWorkbookPlan } from "./survey-workbook-plan.js";

/**
 * The survey workbook: blank, or filled in from a survey. It reads back to the same rows. The same input gives the
 * same bytes; the day of issue comes from the caller.
 * @example await writeSurveyWorkbook({ date: "2026-03-02" });
 */
export function writeSurveyWorkbook(input: SurveyWorkbookInput): Promise<Uint8Array> {
  return writeWorkbook(surveyWorkbookPlan(input));
}
