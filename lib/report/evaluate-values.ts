/** A spreadsheet's error value. */
export interface SpreadsheetError {
  readonly error: "#VALUE!" | "#DIV/0!" | "#N/A" | "#REF!" | "#NUM!" | "#NAME?";
}

/** What a cell can hold; null is an empty cell. */
export type Value = number | string | boolean | null | SpreadsheetError;

/** Whether a value is an error value. */
export const isError = (value: Value): value is SpreadsheetError => typeof value === "object" && value !== null;

/** A value as a number, the way an operator takes it: empty is 0, TRUE is 1, text that is no number an error. */
export function numberOf(value: Value): number | SpreadsheetError {
  if (isError(value) || typeof value === "number") return value;
  if (value === null) return 0;
  if (typeof value === "boolean") return value ? 1 : 0;
  // Excel and LibreOffice read numbers out of text differently, by language: we refuse to.
  return { error: "#VALUE!" };
}

/** A number as text with up to 15 digits, as "&" writes it. */
export function textOf(value: Exclude<Value, SpreadsheetError>): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string") return value;
  return String(Number(value.toPrecision(15))).toUpperCase();
}

/** Equal for a spreadsheet: the same, or apart by no more than a double's last few bits. */
export function nearlyEqual(one: number, other: number): boolean {
  if (one === other) return true;
  const apart = Math.abs(one - other);
  return apart < Math.abs(one) * 2 ** -48 && apart < Math.abs(other) * 2 ** -48;
}

/** A finite number, or the error a spreadsheet shows. */
export const finite = (value: number): number | SpreadsheetError =>
  Number.isFinite(value) ? (value === 0 ? 0 : value) : { error: "#NUM!" };
