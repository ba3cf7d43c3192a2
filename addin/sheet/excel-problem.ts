export type ExcelProblemCode =
  | "notInExcel"
  | "excelTooOld"
  | "cellEdit"
  | "protected"
  | "nameTaken"
  | "busy"
  | "noSurvey"
  | "surveyThere"
  | "noFormerPlan"
  | "planOutgrown"
  | "tooLarge"
  | "notWritten";

/** Why nothing came of it in Excel, in words for the person in front of it. */
export class ExcelProblem extends Error {
  override readonly name = "ExcelProblem";
  readonly code: ExcelProblemCode;
  constructor(code: ExcelProblemCode, message: string, cause?: unknown) {
    super(message, cause === undefined ? {} : { cause });
    this.code = code;
  }

  /** Excel's own error in words; anything that did not come from Excel is passed on as it is. */
  static from(error: unknown): unknown {
    if (error instanceof ExcelProblem || !isExcelError(error)) return error;
    const { code, message } = error;
    const known = words[code];
    if (known !== undefined) return new ExcelProblem(known[0], known[1], error);
    return new ExcelProblem("notWritten", `Excel refused it: ${message} (${code}). Run it again.`, error);
  }
}

const words: Readonly<Record<string, readonly [ExcelProblemCode, string]>> = {
  InvalidOperationInCellEditMode: [
    "cellEdit",
    "A cell is still being edited. Press Enter or Esc in the sheet, then run it again.",
  ],
  AccessDenied: [
    "protected",
    "A sheet or the workbook is protected with a password. Remove it under Review, then run it again.",
  ],
  ApiNotFound: ["excelTooOld", "This Excel is too old for what the sheets need. Update it, or use Excel on the web."],
  RequestPayloadSizeLimitExceeded: ["tooLarge", "One step was larger than Excel takes. Split the survey by panel."],
  ResponsePayloadSizeLimitExceeded: ["tooLarge", "A sheet is larger than Excel hands out. Split the survey by panel."],
};

/** Errors of Excel's client carry a code and what it was doing; they come from another realm in tests. */
const isExcelError = (error: unknown): error is { readonly code: string; readonly message: string } =>
  typeof error === "object" &&
  error !== null &&
  "debugInfo" in error &&
  "code" in error &&
  typeof error.code === "string" &&
  "message" in error &&
  typeof error.message === "string";
