// What the pane's engine takes from the library in the page itself: types, and next to nothing to load. The code that
// works things out runs in the pane's worker.
export { today } from "../lib/command/today.js";
export type { Estimate, EstimatedLoop } from "../lib/estimate/estimate.js";
export type { Summary } from "../lib/estimate/summary.js";
export type { Place, Query } from "../lib/problems/query.js";
export { columnsOf, fullHeading, type SurveySheetName } from "../lib/survey/columns.js";
export type { HeadingMatch } from "../lib/survey/map-headings.js";
export type { Survey, SurveyLoop } from "../lib/survey/survey.js";
