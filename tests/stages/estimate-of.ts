import { readFileSync } from "node:fs";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { estimateJob } from "../../lib/estimate/estimate-job.js";
import { solveWithHighs } from "../../lib/solver/highs.js";
import type { SurveySheetName } from "../../lib/survey/columns.js";
import { readSurvey } from "../../lib/survey/read-survey.js";
import type { Survey } from "../../lib/survey/survey.js";
import { readFileSheets } from "../../lib/workbook/read/read-file.js";

const root = new URL("../..", import.meta.url).pathname;

/** Loose sheets of a site in the repository as a survey. */
export function surveyOf(folder: string, files: Readonly<Partial<Record<SurveySheetName, string>>>): Survey {
  const sheets = Object.entries(files).flatMap(([as, name]) => {
    const [typed] = readFileSheets({ name, bytes: readFileSync(`${root}${folder}/${name}`) });
    return typed ? [{ typed, as: as as SurveySheetName }] : [];
  });
  return readSurvey({ sheets }).survey;
}

export const boathouse = (): Survey =>
  surveyOf("reference-data/demo/boathouse", {
    Loops: "loops.csv",
    Site: "site.csv",
    "Old zones": "old-zones.csv",
    "Radio tests": "radio-tests.csv",
  });

export const house = (): Survey =>
  surveyOf("tests/fixtures/sites", {
    Loops: "site_a_loops.csv",
    Site: "site_a_site.csv",
    "Radio tests": "site_a_radio.csv",
  });

export const clinic = (): Survey =>
  surveyOf("tests/fixtures/sites", {
    Loops: "site_b_loops.csv",
    Site: "site_b_site.csv",
    "Old zones": "site_b_oldzones.csv",
    "Radio tests": "site_b_radio.csv",
  });

/** The estimate of a survey with the real solver. */
export const estimateOf = (survey: Survey): Promise<Estimate> =>
  estimateJob({ survey, solve: solveWithHighs, seconds: 20 });

/** The quick plan only: no solver, no options. */
export const quickEstimateOf = (survey: Survey): Promise<Estimate> => estimateJob({ survey });
