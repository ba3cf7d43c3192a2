/** One field of a CSV line; null is empty. */
export type CsvField = string | number | null;

/**
 * CSV text (RFC 4180: commas, quotes doubled, CR LF) that no spreadsheet runs: text that begins with = + - @, a tab or a
 * carriage return, also behind spaces or in full-width form, gets a ' in front. Numbers stay numbers, so that negative
 * amounts are not marked. A byte order mark in front lets every spreadsheet read it as UTF-8.
 * @example csvText([["code", "=1+1"], ["R-22", -3]]); // "\ufeffcode,'=1+1\r\nR-22,-3\r\n"
 */
export function csvText(rows: readonly (readonly CsvField[])[]): string {
  return `\ufeff${rows.map((row) => `${row.map(field).join(",")}\r\n`).join("")}`;
}

function field(value: CsvField): string {
  if (value === null) return "";
  if (typeof value === "number") return Number.isFinite(value) ? String(value) : "";
  const text = harmless(value);
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Text a spreadsheet takes for a formula or command, made plain by a leading '. */
export function harmless(text: string): string {
  // Some programs drop spaces and control marks, or fold full-width signs, before they look for a formula.
  return /^[\s\ufeff\u200b]*[=+\-@＝＋－＠]|^[\t\r\n|%]/.test(text) ? `'${text}` : text;
}
