import type { Formula, Reference } from "./formula.js";
import { formulaText } from "./formula-text.js";
import { type ArgumentKind, argumentKind, spreadsheetFunctions } from "./functions.js";
import type { Layout, PlacedCell } from "./layout.js";
import { textProblem } from "./legal-text.js";

/** Longest formula a spreadsheet takes. [characters] */
const longestFormula = 8192;
const deepestNesting = 60;
/** Longest text constant inside a formula. [characters] */
const longestLiteral = 255;

/** What is wrong with a formula that stands in the given table row (or outside any); empty when nothing is. */
export function checkFormula(layout: Layout, formula: Formula, inRow: PlacedCell["inRow"]): readonly string[] {
  const messages: string[] = [];
  visit(formula, "value", 0);
  if (messages.length === 0) {
    const style = { layout, sheet: "", references: "structured" } as const;
    const text = formulaText(formula, inRow === undefined ? style : { ...style, inRow });
    if (text.length > longestFormula)
      messages.push(`the formula has ${text.length} characters, at most ${longestFormula}`);
  }
  return messages;

  function visit(part: Formula, wanted: ArgumentKind, depth: number): void {
    if (depth > deepestNesting) {
      if (!messages.includes("the formula is nested too deep")) messages.push("the formula is nested too deep");
      return;
    }
    if (wanted === "range" && !(part.kind === "reference" && part.to.kind === "column")) {
      messages.push("a whole table column is needed here");
      return;
    }
    switch (part.kind) {
      case "literal":
        visitLiteral(part.value);
        return;
      case "reference":
        visitReference(part.to, wanted);
        return;
      case "negate":
        visit(part.of, wanted === "array" ? "array" : "value", depth + 1);
        return;
      case "binary":
        visit(part.left, wanted === "array" ? "array" : "value", depth + 1);
        visit(part.right, wanted === "array" ? "array" : "value", depth + 1);
        return;
      case "call":
        visitCall(part, depth);
    }
  }

  function visitCall(part: Extract<Formula, { kind: "call" }>, depth: number): void {
    if (!Object.hasOwn(spreadsheetFunctions, part.name)) {
      messages.push(`the function ${String(part.name)} is not on the list`);
      return;
    }
    const { least, most } = spreadsheetFunctions[part.name];
    const count = part.arguments.length;
    const pairs = part.name === "COUNTIFS" ? count % 2 === 0 : part.name === "SUMIFS" ? count % 2 === 1 : true;
    if (count < least || count > most || !pairs) messages.push(`${part.name} does not take ${count} arguments`);
    part.arguments.forEach((argument, index) => {
      visit(argument, argumentKind(part.name, index), depth + 1);
    });
    sameLength(part);
    emptyCriterion(part);
  }

  /** Programs disagree on empty cells at the end of a column: LibreOffice 7.4 leaves them out of COUNTIFS. */
  function emptyCriterion(part: Extract<Formula, { kind: "call" }>): void {
    if (!/^(COUNT|SUM)IFS?$/.test(part.name)) return;
    const empty = part.arguments.some(
      (argument) => argument.kind === "literal" && (argument.value === "" || argument.value === "="),
    );
    if (empty) messages.push(`${part.name} must not look for empty cells; programs disagree on them`);
  }

  /** Columns that are walked through together must have the same number of rows. */
  function sameLength(part: Extract<Formula, { kind: "call" }>): void {
    if (!["SUMIF", "SUMIFS", "COUNTIFS", "SUMPRODUCT"].includes(part.name)) return;
    const lengths = new Set(
      part.arguments.flatMap((argument) =>
        argument.kind === "reference" && argument.to.kind === "column"
          ? [layout.tables.get(argument.to.table)?.cells.length]
          : [],
      ),
    );
    if (lengths.size > 1) messages.push(`the columns of ${part.name} have different numbers of rows`);
  }

  function visitLiteral(value: number | string | boolean): void {
    if (typeof value === "number" && !Number.isFinite(value)) messages.push(`the constant is ${value}`);
    if (typeof value !== "string") return;
    const problem = textProblem(value, longestLiteral);
    if (problem !== undefined) messages.push(problem);
  }

  function visitReference(to: Reference, wanted: ArgumentKind): void {
    if (to.kind === "named") {
      if (!layout.named.has(to.name)) messages.push(`there is no cell named "${to.name}"`);
      return;
    }
    if (to.kind === "thisRow" && inRow === undefined) {
      messages.push(`"this row" of "${to.column}" means nothing outside a table`);
      return;
    }
    const name = to.kind === "thisRow" ? (inRow?.table ?? "") : to.table;
    const table = layout.tables.get(name);
    const index = table?.columnIndex.get(to.column);
    if (table === undefined || index === undefined) {
      messages.push(`there is no column "${to.column}" in a table "${name}"`);
    } else if (to.kind === "totals" && table.totals[index] === undefined) {
      messages.push(`column "${to.column}" of table "${name}" has no total`);
    } else if (to.kind === "column" && wanted === "value") {
      messages.push(`a whole column ("${to.column}") cannot stand where one value is needed`);
    }
  }
}
