import { columnLetters, fixedAddress, fixedArea, quotedSheet } from "./addresses.js";
import type { Formula, Operator, Reference } from "./formula.js";
import type { Layout, PlacedTable } from "./layout.js";

/** How a formula is to be written. */
export interface FormulaStyle {
  readonly layout: Layout;
  /** Sheet the formula stands on. */
  readonly sheet: string;
  /**
   * "structured" names tables and named cells, as a person would type them; "addresses" writes A1 references only, as
   * conditional formats and validations need them.
   */
  readonly references: "structured" | "addresses";
  /** Table and data row (from 0) the formula stands in. */
  readonly inRow?: { readonly table: string; readonly index: number };
}

const strength: Readonly<Record<Operator, number>> = {
  "=": 1,
  "<>": 1,
  "<": 1,
  "<=": 1,
  ">": 1,
  ">=": 1,
  "&": 2,
  "+": 3,
  "-": 3,
  "*": 4,
  "/": 4,
};

/**
 * The formula as a spreadsheet stores it, without the leading "=". Brackets are set only where the order needs them.
 * @example formulaText(binary(named("Rate"), "*", thisRow("hours")), style); // Rate*Labour[[#This Row],[Hours]]
 */
export function formulaText(formula: Formula, style: FormulaStyle): string {
  switch (formula.kind) {
    case "literal":
      return literalText(formula.value);
    case "reference":
      return referenceText(formula.to, style);
    case "negate":
      return `-${bracketed(formula.of, 6, style)}`;
    case "binary": {
      const own = strength[formula.operator];
      // Equal strength on the right always takes brackets: a−(b−c) and comparisons of comparisons need them.
      return `${bracketed(formula.left, own, style)}${formula.operator}${bracketed(formula.right, own + 1, style)}`;
    }
    case "call":
      return `${formula.name}(${formula.arguments.map((part) => formulaText(part, style)).join(",")})`;
  }
}

function bracketed(formula: Formula, least: number, style: FormulaStyle): string {
  const text = formulaText(formula, style);
  return strengthOf(formula) < least ? `(${text})` : text;
}

function strengthOf(formula: Formula): number {
  if (formula.kind === "binary") return strength[formula.operator];
  if (formula.kind === "negate") return 5;
  return formula.kind === "literal" && typeof formula.value === "number" && formula.value < 0 ? 5 : 7;
}

function literalText(value: number | string | boolean): string {
  if (typeof value === "string") return `"${value.replaceAll('"', '""')}"`;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return String(value).toUpperCase();
}

function referenceText(to: Reference, style: FormulaStyle): string {
  if (to.kind === "named") {
    const cell = style.layout.named.get(to.name);
    if (cell === undefined || style.references === "structured") return to.name;
    return `${onSheet(cell.sheet, style)}${fixedAddress(cell.row, cell.column)}`;
  }
  const name = to.kind === "thisRow" ? (style.inRow?.table ?? "") : to.table;
  const table = style.layout.tables.get(name);
  const index = table?.columnIndex.get(to.column);
  if (table === undefined || index === undefined) return "#REF!";
  return style.references === "structured" && table.block.plain !== true
    ? structured(to.kind, table, index)
    : addressed(to.kind, table, index, style);
}

function structured(kind: "column" | "thisRow" | "totals", table: PlacedTable, index: number): string {
  // Headings hold none of the characters that would need escaping here: checkReport refuses them.
  const column = table.headings[index] ?? "";
  const name = table.block.name;
  if (kind === "column") return `${name}[${column}]`;
  return `${name}[[${kind === "thisRow" ? "#This Row" : "#Totals"}],[${column}]]`;
}

function addressed(
  kind: "column" | "thisRow" | "totals",
  table: PlacedTable,
  index: number,
  style: FormulaStyle,
): string {
  const column = table.left + index;
  const sheet = onSheet(table.sheet, style);
  if (kind === "totals") return `${sheet}${fixedAddress(table.totalsRow ?? table.lastRow, column)}`;
  if (kind === "thisRow") return `${sheet}$${columnLetters(column)}${table.firstRow + (style.inRow?.index ?? 0)}`;
  return `${sheet}${fixedArea({ top: table.firstRow, left: column, bottom: table.lastRow, right: column })}`;
}

const onSheet = (sheet: string, style: FormulaStyle): string => (sheet === style.sheet ? "" : `${quotedSheet(sheet)}!`);
