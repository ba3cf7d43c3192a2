import { call, type Formula, literal } from "../report/formula.js";
import { legalText } from "../report/legal-text.js";
import type { Block, Cell, Format, Highlight, KeyValueRow, Role, TableColumn } from "../report/model.js";

const styled = (format: Format | undefined, role: Role | undefined) => ({
  ...(format === undefined ? {} : { format }),
  ...(role === undefined ? {} : { role }),
});

/** Nothing. */
export const blank: Cell = { kind: "blank" };
/** A cell to write on by hand. */
export const handwriting: Cell = { kind: "blank", role: "handwriting" };
/** A cell of a column that has one formula. */
export const calculated: Cell = { kind: "calculated" };

/** Words; nothing when there are none. */
export function text(words: string | null | undefined, role?: Role, format?: Format): Cell {
  if (words === undefined || words === null || words === "") return { kind: "blank", ...styled(format, role) };
  return { kind: "text", text: legalText(words), ...styled(format, role) };
}

/** Words that may run over several lines. */
export const wrapped = (words: string | null | undefined, role?: Role): Cell => text(words, role, "wrapped");

/** A number; nothing when there is none. */
export function number(value: number | null | undefined, format?: Format, role?: Role): Cell {
  if (value === undefined || value === null) return { kind: "blank", ...styled(format, role) };
  return { kind: "number", value, ...styled(format, role) };
}

/** An amount in integer cents; a unit price with parts of a cent is written as the number it is. */
export function money(cents: number, role?: Role): Cell {
  if (!Number.isSafeInteger(cents)) return { kind: "number", value: cents / 100, ...styled("money", role) };
  return { kind: "money", cents, ...styled(undefined, role) };
}

/**
 * Money to the cent, halves away from zero, as the library rounds it. The inner ROUND takes off the binary noise of a
 * product that is half a cent in decimal: 752.5 × 647.8 is 487469.5, but a little less in binary.
 */
export const toCents = (amount: Formula): Formula => call("ROUND", call("ROUND", amount, literal(9)), literal(2));

/** A formula of this one cell. */
export const formulaCell = (formula: Formula, format: Format, role?: Role): Cell => ({
  kind: "formula",
  formula,
  ...styled(format, role),
});

export const title = (words: string, level: 1 | 2 | 3 = 1): Block => ({ kind: "title", text: words, level });
export const paragraph = (words: string, role?: Role): Block => ({ kind: "paragraph", cell: wrapped(words, role) });

/** A column of a table with what nearly every column needs. */
export function column(
  key: string,
  heading: string,
  format: Format,
  width: number,
  more: Partial<Omit<TableColumn, "key" | "heading" | "format" | "width">> = {},
): TableColumn {
  return { key, heading, format, width, ...more };
}

/** A line of label and value. */
export function line(label: string, cell: Cell, more: Partial<Omit<KeyValueRow, "label" | "cell">> = {}): KeyValueRow {
  return { label, cell, ...more };
}

/** Turns a cell into a warning while a formula holds. */
export const warnWhen = (when: Formula): readonly Highlight[] => [{ when, role: "warning" }];
