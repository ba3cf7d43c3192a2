import type { FunctionName } from "./functions.js";

/** What a formula points at, by name: addresses exist only after layout. */
export type Reference =
  /** The cell of a key–value row that carries this name. */
  | { readonly kind: "named"; readonly name: string }
  /** All data cells of one table column, without heading and totals. */
  | { readonly kind: "column"; readonly table: string; readonly column: string }
  /** The cell of this column in the same row; only inside a table. */
  | { readonly kind: "thisRow"; readonly column: string }
  /** The totals cell under a table column. */
  | { readonly kind: "totals"; readonly table: string; readonly column: string };

/** The two-sided operators; all of them mean the same in every spreadsheet we write for. */
export type Operator = "+" | "-" | "*" | "/" | "&" | "=" | "<>" | "<" | "<=" | ">" | ">=";

/** A formula as a tree. It is written as text, and worked out by {@link evaluate}, from the same tree. */
export type Formula =
  | { readonly kind: "literal"; readonly value: number | string | boolean }
  | { readonly kind: "reference"; readonly to: Reference }
  | { readonly kind: "binary"; readonly operator: Operator; readonly left: Formula; readonly right: Formula }
  | { readonly kind: "negate"; readonly of: Formula }
  | { readonly kind: "call"; readonly name: FunctionName; readonly arguments: readonly Formula[] };

/** A constant in a formula. Rates and prices do not belong here: give them a named cell. */
export const literal = (value: number | string | boolean): Formula => ({ kind: "literal", value });

/** The named cell of a key–value row. */
export const named = (name: string): Formula => ({ kind: "reference", to: { kind: "named", name } });

/** This row's cell of a column, given by its key. */
export const thisRow = (column: string): Formula => ({ kind: "reference", to: { kind: "thisRow", column } });

/** All data cells of a table's column. */
export const wholeColumn = (table: string, column: string): Formula => ({
  kind: "reference",
  to: { kind: "column", table, column },
});

/** The totals cell of a table's column. */
export const totalsOf = (table: string, column: string): Formula => ({
  kind: "reference",
  to: { kind: "totals", table, column },
});

/** One of the allowed spreadsheet functions. */
export const call = (name: FunctionName, ...parts: readonly Formula[]): Formula => ({
  kind: "call",
  name,
  arguments: parts,
});

/** Two formulas joined by an operator. */
export const binary = (left: Formula, operator: Operator, right: Formula): Formula => ({
  kind: "binary",
  operator,
  left,
  right,
});

/** The formula with its sign changed. */
export const negate = (of: Formula): Formula => ({ kind: "negate", of });
