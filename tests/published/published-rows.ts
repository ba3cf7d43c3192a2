import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";

/** Rows of one table of printed values, by heading; at least `least` of them, or the test that asked stops. */
export function publishedRows(file: string, least: number): Record<string, string>[] {
  const path = new URL(`../../reference-data/published/${file}`, import.meta.url);
  const rows = parse(readFileSync(path, "utf8"), { columns: true, trim: true }) as Record<string, string>[];
  if (rows.length < least) throw new Error(`${file}: ${rows.length} rows, expected at least ${least}`);
  return rows;
}

/** A printed number; stops the test where the cell holds none. */
export function printed(row: Record<string, string>, column: string): number {
  const text = row[column] ?? "";
  const value = Number(text);
  if (text === "" || !Number.isFinite(value)) throw new Error(`${column}: "${text}" is no printed number`);
  return value;
}

/** Relative difference, computed against printed. [1] */
export function offBy(computed: number, printedValue: number): number {
  return Math.abs(computed / printedValue - 1);
}
