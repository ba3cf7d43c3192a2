import { readFileSync } from "node:fs";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { estimateJob } from "../../lib/estimate/estimate-job.js";
import { solveWithHighs } from "../../lib/solver/highs.js";
import type { SurveySheetName } from "../../lib/survey/columns.js";
import type { HeadingMatch } from "../../lib/survey/map-headings.js";
import { readSurvey, type SheetToRead } from "../../lib/survey/read-survey.js";
import type { Survey } from "../../lib/survey/survey.js";
import { readFileSheets } from "../../lib/workbook/read/read-file.js";

const folder = new URL("../../reference-data/demo/boathouse/", import.meta.url);
const files: readonly (readonly [string, SurveySheetName])[] = [
  ["loops.csv", "Loops"],
  ["site.csv", "Site"],
  ["old-zones.csv", "Old zones"],
  ["radio-tests.csv", "Radio tests"],
];

/** The demo's loose sheets, as the command reads them. */
export function demoSheets(): readonly SheetToRead[] {
  return files.flatMap(([name, as]) => {
    const bytes = new Uint8Array(readFileSync(new URL(name, folder)));
    return readFileSheets({ name, bytes }).map((typed) => ({ typed, as }));
  });
}

/** Survey and estimate of the demo, from its sheets on disk. */
export async function demoEstimate(): Promise<{
  readonly survey: Survey;
  readonly headings: readonly HeadingMatch[];
  readonly estimate: Estimate;
}> {
  const { survey, headings } = readSurvey({ sheets: demoSheets() });
  const estimate = await estimateJob({ survey, solve: solveWithHighs, seconds: 20 });
  return { survey, headings, estimate };
}

/** The day every test issues its workbook on. */
export const issued = "2026-05-04";
