import { type SurveyColumnsRow, surveyColumns } from "../reference/generated/survey-columns.js";

/** The sheets of a survey, in the order in which they stand in the workbook. */
export const surveySheets = [
  "Site",
  "Panels",
  "Loops",
  "Old zones",
  "Radio tests",
  "Price book",
  "Input modules",
  "Labour",
  "Settings",
  "Finished jobs",
] as const;
export type SurveySheetName = (typeof surveySheets)[number];

/** JSON key of each sheet. */
export const sheetJsonKeys: Readonly<Record<SurveySheetName, string>> = {
  Site: "site",
  Panels: "panels",
  Loops: "loops",
  "Old zones": "oldZones",
  "Radio tests": "radioTests",
  "Price book": "priceBook",
  "Input modules": "inputModules",
  Labour: "labour",
  Settings: "settings",
  "Finished jobs": "finishedJobs",
};

/** One column of a survey sheet; for Site, one item of the list that stands down the sheet. */
export type SurveyColumn = SurveyColumnsRow;

const bySheet: ReadonlyMap<string, readonly SurveyColumn[]> = new Map(
  surveySheets.map((sheet) => [sheet, surveyColumns.filter((column) => column.sheet === sheet)]),
);

/** The columns of one sheet, in order; see reference-data/survey-columns. */
export function columnsOf(sheet: SurveySheetName): readonly SurveyColumn[] {
  return bySheet.get(sheet) ?? [];
}

const unitless = new Set(["text", "count", "1", "currency", "list of count"]);

/** Unit that stands in brackets behind the heading, and holds for bare numbers below it. */
export const shownUnit = (column: SurveyColumn): string | undefined =>
  unitless.has(column.unit) ? undefined : column.unit;

/** The heading as our workbook writes it: words and unit, without the mark of input columns. */
export function fullHeading(column: SurveyColumn): string {
  const unit = shownUnit(column);
  return unit === undefined ? column.heading : `${column.heading} (${unit})`;
}

/** What a cell of this column should hold, for messages. */
export function expectedIn(sheet: SurveySheetName, column: string): string {
  const found = surveyColumns.find((one) => one.sheet === sheet && one.column === column);
  if (found === undefined) return "text";
  if (found.allowed !== undefined) return `one of ${found.allowed.join(", ")}`;
  return found.example === "" ? found.meaning : `${found.meaning}, such as ${found.example}`;
}
