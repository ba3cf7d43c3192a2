import type { Format } from "../../report/model.js";

/** Number formats with every literal in quotes, so that no reader takes a letter for part of a date. */
const formats: Readonly<Record<Exclude<Format, "money">, string>> = {
  text: "@",
  wrapped: "@",
  general: "General",
  count: "0",
  decimal: "#,##0.00",
  ohms: '[>=1000000]0.00,,"\u00a0MΩ";[>=1000]0.00,"\u00a0kΩ";0.0"\u00a0Ω"',
  hours: '0.0"\u00a0h"',
  minutes: '0"\u00a0min"',
  percent: "0%",
  rate: "0.00%",
  meters: '0.0"\u00a0m"',
  volts: '0.00"\u00a0V"',
  milliamps: '0.0"\u00a0mA"',
  date: "yyyy-mm-dd",
};

/** The spreadsheet's number format of a format token. Money carries the currency's code. */
export function numberFormat(format: Format, currency: string): string {
  return format === "money" ? `#,##0.00"\u00a0${currency}";-#,##0.00"\u00a0${currency}"` : formats[format];
}

/** Formats whose cells are set to the right, as figures are. */
export const isFigure = (format: Format): boolean => format !== "text" && format !== "wrapped";
