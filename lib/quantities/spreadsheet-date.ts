import type { CellTyped } from "./typed-cell.js";

/** Day and month of a date, whatever the year. */
export interface DayAndMonth {
  readonly day: number;
  readonly month: number;
}

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
/** Serial numbers of the years 1982 to 2064: a gauge or a count is never that large. */
const FIRST_SERIAL = 30_000;
const LAST_SERIAL = 60_000;

/** Day and month of a spreadsheet's date serial (day 25569 is 1 January 1970). */
function fromSerial(serial: number): DayAndMonth | undefined {
  if (!(serial >= FIRST_SERIAL && serial <= LAST_SERIAL)) return undefined;
  const date = new Date((Math.floor(serial) - 25_569) * 86_400_000);
  return { day: date.getUTCDate(), month: date.getUTCMonth() + 1 };
}

function checked(day: number, month: number): DayAndMonth | undefined {
  return day >= 1 && day <= 31 && month >= 1 && month <= 12 ? { day, month } : undefined;
}

/**
 * The date that a spreadsheet made of something typed: `{ isoDate }`, a serial number, or its text
 * ("22-Apr", "Apr-22", "4/22/2026", "22.04.2026"). Undefined when the cell is no date.
 * @example spreadsheetDate("22-Apr"); // { day: 22, month: 4 }
 */
export function spreadsheetDate(cell: CellTyped): DayAndMonth | undefined {
  if (typeof cell === "number") return fromSerial(cell);
  const text = typeof cell === "object" && cell !== null ? cell.isoDate : typeof cell === "string" ? cell.trim() : "";
  const iso = /^(\d{4})-(\d\d)-(\d\d)(?:[T ][\d:.]*(?:Z|[+-]\d\d:?\d\d)?)?$/.exec(text);
  if (iso !== null) return checked(Number(iso[3]), Number(iso[2]));
  if (/^\d{5}(\.0+)?$/.test(text)) return fromSerial(Number(text));
  const named = /^(?:(\d{1,2})[-/ .]*([a-z]{3,9})|([a-z]{3,9})[-/ .]*(\d{1,2}))(?:[-/ ,.]+(?:\d{2}|\d{4}))?$/i.exec(
    text,
  );
  if (named !== null) {
    const month = MONTHS.indexOf((named[2] ?? named[3] ?? "").slice(0, 3).toLowerCase()) + 1;
    return checked(Number(named[1] ?? named[4]), month);
  }
  const numeric = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$/.exec(text);
  if (numeric === null) return undefined;
  const [a, b] = [Number(numeric[1]), Number(numeric[2])];
  return a > 12 ? checked(a, b) : checked(b, a);
}
