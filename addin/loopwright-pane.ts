// What the pane takes from the library, as types: the code behind them runs in the pane's worker.
export type { Estimate, EstimatedLoop } from "../lib/estimate/estimate.js";
export type { Summary } from "../lib/estimate/summary.js";
export type { Place, Query } from "../lib/problems/query.js";
export type { SurveySheetName } from "../lib/survey/columns.js";
export type { HeadingMatch } from "../lib/survey/map-headings.js";
export type { Survey, SurveyLoop } from "../lib/survey/survey.js";
