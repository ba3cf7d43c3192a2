import { legalText } from "../../report/legal-text.js";
import type { Block, Cell, Format, Sheet, TableColumn, Validation } from "../../report/model.js";
import {
  columnsOf,
  fullHeading,
  type SurveyColumn,
  type SurveySheetName,
  shownUnit,
  surveySheets,
} from "../../survey/columns.js";
import type { Survey } from "../../survey/survey.js";
import { keySheet } from "./key-sheet.js";
import { type SheetRow, settingsReady, siteRows, tableRows } from "./survey-rows.js";

/** Empty rows that stand ready below what is filled in. */
const spareRows: Readonly<Record<Exclude<SurveySheetName, "Site">, number>> = {
  Panels: 8,
  Loops: 120,
  "Old zones": 80,
  "Radio tests": 40,
  "Price book": 30,
  "Input modules": 6,
  Labour: 6,
  Settings: 6,
  "Finished jobs": 60,
};

const numeric = new Set(["number", "money"]);

/** Everything that may be typed is text, so that 22/4 stays no date and 01 keeps its zero; plain figures are numbers. */
function formatOf(column: SurveyColumn): Format {
  if (column.kind === "money") return "decimal";
  if (numeric.has(column.kind)) return "general";
  return column.column === "notes" || column.column === "description" || column.column === "meaning"
    ? "wrapped"
    : "text";
}

/** What the cell says when it is chosen, at most the 255 characters that spreadsheets show. */
function promptOf(column: SurveyColumn): string {
  const example = column.example === "" ? "" : ` Such as ${column.example}.`;
  return `${column.meaning}.${example}`.slice(0, 250);
}

/** Signals and logarithms of hours lie below 0; nothing else does. */
function leastOf({ sheet, column, unit }: SurveyColumn): number {
  if (unit === "dBm") return -150;
  return sheet === "Finished jobs" && column === "second" ? -1e9 : 0;
}

function validationOf(column: SurveyColumn): Validation {
  const message = promptOf(column);
  if (column.kind === "choice" || column.kind === "yesNo")
    return { kind: "list", values: column.allowed ?? [], message };
  if (column.kind === "money") return { kind: "number", minimum: 0, message };
  if (column.kind === "number") return { kind: "number", minimum: leastOf(column), message };
  return { kind: "text", longest: 2000, message };
}

function tableColumn(column: SurveyColumn): TableColumn {
  const unit = shownUnit(column);
  return {
    key: column.column,
    heading: column.heading,
    ...(unit === undefined ? {} : { unit }),
    format: formatOf(column),
    width: column.width,
    // The key is ours: it stays locked, so that edits keep hanging on the right row.
    ...(column.column === "key" ? {} : { input: validationOf(column) }),
  };
}

function cellOf(column: SurveyColumn, value: string | number | undefined): Cell {
  if (value === undefined || value === "") return { kind: "blank" };
  if (numeric.has(column.kind) && typeof value === "number") return { kind: "number", value };
  return { kind: "text", text: legalText(String(value)) };
}

const tableNames: Readonly<Record<SurveySheetName, string>> = {
  Site: "survey_site",
  Panels: "survey_panels",
  Loops: "survey_loops",
  "Old zones": "survey_old_zones",
  "Radio tests": "survey_radio_tests",
  "Price book": "survey_price_book",
  "Input modules": "survey_input_modules",
  Labour: "survey_labour",
  Settings: "survey_settings",
  "Finished jobs": "survey_finished_jobs",
};

function tableSheet(
  sheet: Exclude<SurveySheetName, "Site">,
  name: string,
  rows: readonly SheetRow[],
  spare: number,
): Sheet {
  const columns = columnsOf(sheet);
  const blank = columns.map((): Cell => ({ kind: "blank" }));
  const filled = rows.map((row) => columns.map((column) => cellOf(column, row[column.column])));
  const block: Block = {
    kind: "table",
    name: tableNames[sheet],
    columns: columns.map(tableColumn),
    rows: [...filled, ...Array.from({ length: spare }, () => blank)],
    whenEmpty: "",
    filter: true,
  };
  return {
    name,
    blocks: [block],
    orientation: "landscape",
    headingOf: tableNames[sheet],
    frozenColumns: sheet === "Loops" ? 3 : 1,
    protection: "locked",
    part: "input",
  };
}

/** Site stands as a list: what is asked, the answer, a note, and what belongs there. */
function siteSheet(name: string, survey: Survey | undefined): Sheet {
  const answers = survey === undefined ? [] : siteRows(survey);
  const text = (words: string): Cell => (words === "" ? { kind: "blank" } : { kind: "text", text: words });
  const asked = columnsOf("Site").map((column) => {
    const answer = answers.find((one) => one.column === column.column)?.value;
    return [
      text(fullHeading(column)),
      text(answer === undefined ? "" : String(answer)),
      text(""),
      text(promptOf(column)),
    ];
  });
  const others = answers
    .filter(({ column }) => column === undefined)
    .map(({ item, value }) => [text(item), text(String(value)), text(""), text("")]);
  const spare = Array.from({ length: 10 }, () => [text(""), text(""), text(""), text("")]);
  const free = (message: string): Validation => ({ kind: "text", longest: 2000, message });
  const block: Block = {
    kind: "table",
    name: tableNames.Site,
    columns: [
      {
        key: "item",
        heading: "Item",
        format: "text",
        width: 26,
        input: free("What the line is about; further lines of your own are kept as typed"),
      },
      { key: "value", heading: "Value", format: "text", width: 34, input: free("The answer") },
      { key: "note", heading: "Note", format: "wrapped", width: 40, input: free("Anything beside it") },
      { key: "belongs", heading: "What belongs there", format: "wrapped", width: 60 },
    ],
    rows: [...asked, ...others, ...spare],
    whenEmpty: "",
  };
  return {
    name,
    blocks: [block],
    orientation: "landscape",
    headingOf: tableNames.Site,
    frozenColumns: 1,
    protection: "locked",
    part: "input",
  };
}

/**
 * The survey's sheets as plain data, filled in from a survey or blank; the key sheet stands first. Another workbook
 * can carry them under a prefix ("Survey Loops"), and the reader finds them there again.
 */
export function surveySheetModels(input: {
  readonly survey?: Survey;
  readonly prefix?: string;
  /** Empty rows below the filled ones; absent = ready for a usual job. */
  readonly spare?: number;
  /** Settings of the survey that nobody gave. */
  readonly assumedSettings?: readonly string[];
}): readonly Sheet[] {
  const { survey, prefix = "", spare, assumedSettings = [] } = input;
  const sheets = surveySheets.map((sheet) => {
    if (sheet === "Site") return siteSheet(`${prefix}${sheet}`, survey);
    const ready = sheet === "Settings" ? settingsReady({ settings: {} }) : [];
    const rows = survey === undefined ? ready : tableRows(sheet, survey, assumedSettings);
    return tableSheet(sheet, `${prefix}${sheet}`, rows, spare ?? spareRows[sheet]);
  });
  return [keySheet(`${prefix}Key`), ...sheets];
}
