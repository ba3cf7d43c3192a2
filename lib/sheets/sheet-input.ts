import { jobTables } from "../estimate/demo-tables.js";
import type { Estimate, EstimatedLoop } from "../estimate/estimate.js";
import { type JobSettings, jobSettings } from "../price-book/job-settings.js";
import type { Sheet } from "../report/model.js";
import type { HeadingMatch } from "../survey/map-headings.js";
import type { LabourUnit, PriceBookRow, Survey, SurveyLoop } from "../survey/survey.js";
import type { PacksWanted } from "./packs-wanted.js";

/** What every sheet of the estimate is built from. */
export interface SheetInput {
  readonly estimate: Estimate;
  readonly survey: Survey;
  readonly headings: readonly HeadingMatch[];
  /** Survey tables that ride along; formulas take prices, hours and rates from them. */
  readonly surveySheets: readonly Sheet[];
  readonly job: JobSettings;
  readonly labour: readonly LabourUnit[];
  readonly priceBook: readonly PriceBookRow[];
  readonly demoPrices: boolean;
  readonly packsWanted: PacksWanted;
  readonly date: string;
  readonly revision: string;
}

/** Name of the setting that says whether the price book in a workbook is still the demo's: 1 yes, 0 no. */
export const demoPricesSetting = "demoPrices";

/** Whether the prices are the demo's, handed in or borrowed: then every sheet with money says so. */
export function hasDemoPrices({ estimate, survey }: { readonly estimate: Estimate; readonly survey: Survey }): boolean {
  return estimate.demoPrices || survey.settings[demoPricesSetting] === 1;
}

/**
 * The survey with every table the estimate was reckoned with, borrowed ones too, so that its workbook holds them and a
 * re-run finds them. What was typed stays as it is.
 */
export function completedSurvey({
  estimate,
  survey,
}: {
  readonly estimate: Estimate;
  readonly survey: Survey;
}): Survey {
  const tables = jobTables(survey);
  const { settings } = jobSettings({ given: survey.settings });
  return {
    ...survey,
    priceBook: tables.priceBook,
    inputModules: tables.inputModules,
    labour: tables.labour,
    settings: {
      ...settings,
      ...survey.settings,
      ...(hasDemoPrices({ estimate, survey }) ? { [demoPricesSetting]: 1 } : {}),
    },
  };
}

/** The survey row of an estimated loop. */
export function surveyLoopOf(input: SheetInput, loop: EstimatedLoop): SurveyLoop | undefined {
  return input.survey.loops.find(({ key }) => key === loop.key);
}

/** Loops by key as people name them, gathered by panel: "P1: 1, 2, 5; P2: 3". Empty = "whole job". */
export function loopsShort(input: SheetInput, keys: readonly string[]): string {
  if (keys.length === 0) return "whole job";
  const byPanel = new Map<string, string[]>();
  for (const { key, panel, loop } of input.estimate.loops) {
    if (!keys.includes(key)) continue;
    byPanel.set(panel, [...(byPanel.get(panel) ?? []), loop]);
  }
  return [...byPanel].map(([panel, loops]) => `${panel}: ${loops.join(", ")}`).join("; ");
}

/** Words at the head of every sheet that shows money. */
export const demoPriceWords = "DEMO PRICES: invented, not to be quoted or ordered from.";

const wiredTreatments = new Set(["keep", "fitEol", "changeEol", "split", "repair", "rewire", "measureAgain"]);

/** Whether the loop ends on a wired input. */
export const isWired = (loop: EstimatedLoop): boolean => wiredTreatments.has(loop.treatment) && loop.input !== null;
/** Whether the pair is not to be worked on before it has been read again: it gets no input, terminal or label yet. */
export const isHandsOff = (loop: EstimatedLoop): boolean =>
  !isExcluded(loop) && loop.treatment === "measureAgain" && loop.input === null;
/** Whether nobody may touch the loop. */
export const isExcluded = ({ treatment, recommended }: EstimatedLoop): boolean =>
  treatment === "excluded" || recommended === "excluded";
