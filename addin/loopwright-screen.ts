// What the pane's screen takes from the library at once: words and figures for people. All that reckons runs elsewhere.

export { formatHours } from "../lib/quantities/format-hours.js";
export { formatLength } from "../lib/quantities/format-length.js";
export { formatMoney } from "../lib/quantities/format-money.js";
export { formatOhms } from "../lib/quantities/format-ohms.js";
export { formatPercentOnPaper } from "../lib/quantities/format-percent-on-paper.js";
export { columnsOf, type SurveySheetName, surveySheets } from "../lib/survey/columns.js";
export { type Treatment, treatmentWords } from "../lib/treatments/treatment.js";
