import { printablePlan } from "../../report/printable-plan.js";
import type { Survey } from "../../survey/survey.js";
import { writeWorkbook } from "../write/write-workbook.js";
import { demoTables } from "./demo-tables.js";
import { surveySheetModels } from "./survey-sheets.js";

/**
 * The survey workbook: blank, or filled in from a survey. It reads back to the same rows. The same input gives the
 * same bytes; the day of issue comes from the caller.
 * @example await writeSurveyWorkbook({ date: "2026-03-02" });
 */
export async function writeSurveyWorkbook(input: {
  readonly survey?: Survey;
  /** "demo" fills price book, modules, labour and settings with our invented ones where the survey has none. */
  readonly prefill?: "demo";
  /** Day of issue, YYYY-MM-DD. */
  readonly date: string;
  readonly paper?: "A4" | "Letter";
}): Promise<Uint8Array> {
  const { survey, prefill, date, paper = "A4" } = input;
  const filled = prefill === "demo" ? withDemoTables(survey) : survey;
  const plan = printablePlan({
    title: "Survey",
    job: filled?.site.name ?? "Survey",
    revision: "survey, void if a later one exists",
    date,
    currency: filled?.site.currency ?? "USD",
    paper,
    sheets: surveySheetModels(filled === undefined ? {} : { survey: filled }),
  });
  return writeWorkbook(plan);
}

const blankSurvey: Survey = {
  site: { currency: "USD", typed: {} },
  panels: [],
  loops: [],
  oldZones: [],
  radioTests: [],
  priceBook: [],
  inputModules: [],
  labour: [],
  settings: {},
  queries: [],
};

function withDemoTables(survey: Survey = blankSurvey): Survey {
  const demo = demoTables();
  return {
    ...survey,
    priceBook: survey.priceBook.length > 0 ? survey.priceBook : demo.priceBook,
    inputModules: survey.inputModules.length > 0 ? survey.inputModules : demo.inputModules,
    labour: survey.labour.length > 0 ? survey.labour : demo.labour,
    settings: { ...demo.settings, ...survey.settings },
  };
}
