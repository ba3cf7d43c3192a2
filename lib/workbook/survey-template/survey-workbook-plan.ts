import { type PrintablePlan, printablePlan } from "../../report/printable-plan.js";
import type { Survey } from "../../survey/survey.js";
import { demoTables } from "./demo-tables.js";
import { surveySheetModels } from "./survey-sheets.js";

/** What the survey workbook is made from. */
export interface SurveyWorkbookInput {
  readonly survey?: Survey;
  /** "demo" fills price book, modules, labour and settings with our invented ones where the survey has none. */
  readonly prefill?: "demo";
  /** Day of issue, YYYY-MM-DD. */
  readonly date: string;
  readonly paper?: "A4" | "Letter";
}

/** The survey workbook, blank or filled in from a survey, ready to be written. */
export function surveyWorkbookPlan({ survey, prefill, date, paper = "A4" }: SurveyWorkbookInput): PrintablePlan {
  const filled = prefill === "demo" ? withDemoTables(survey) : survey;
  return printablePlan({
    title: "Survey",
    job: filled?.site.name ?? "Survey",
    revision: "survey, void if a later one exists",
    date,
    currency: filled?.site.currency ?? "USD",
    paper,
    sheets: surveySheetModels(filled === undefined ? {} : { survey: filled }),
  });
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
