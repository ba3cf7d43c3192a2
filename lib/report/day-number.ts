/**
 * Spreadsheet number of a calendar day: whole days since 30 December 1899, right from 1 March 1900 on.
 * Undefined when the text is not a day of the calendar, written YYYY-MM-DD.
 * @example dayNumber("2024-02-29"); // 45351
 */
export function dayNumber(iso: string): number | undefined {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  if (parts === null) return undefined;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  const moment = new Date(Date.UTC(year, month - 1, day));
  if (moment.getUTCMonth() !== month - 1 || moment.getUTCDate() !== day) return undefined;
  const number = Math.round((moment.getTime() - Date.UTC(1899, 11, 30)) / 86_400_000);
  return number >= 61 ? number : undefined;
}
