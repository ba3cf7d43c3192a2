import { dayNumber } from "./day-number.js";
import { callFunction } from "./evaluate-functions.js";
import { arithmetic, compare, joined } from "./evaluate-operators.js";
import { isError, type SpreadsheetError, type Value } from "./evaluate-values.js";
import type { Formula, Reference } from "./formula.js";
import { argumentKind } from "./functions.js";
import type { Layout, PlacedCell } from "./layout.js";

/** Works out cells and formulas of a laid-out report the way a spreadsheet does; never reads cached values. */
export interface Evaluator {
  /** What a cell shows. */
  readonly cell: (cell: PlacedCell) => Value;
  /** What a formula gives, standing in a cell (`inRow` says what "this row" is). */
  readonly formula: (formula: Formula, inRow?: PlacedCell["inRow"]) => Value;
}

const reference: SpreadsheetError = { error: "#REF!" };
const unknownName: SpreadsheetError = { error: "#NAME?" };
const wrongValue: SpreadsheetError = { error: "#VALUE!" };

/** An argument as a function sees it: a scalar worked out, or the cells a reference points at. */
export type Argument =
  | { readonly kind: "value"; readonly value: Value }
  | {
      readonly kind: "cells";
      readonly values: readonly Value[];
      /** Where each text first stands, by {@link positionKey}; worked out once for a whole column. */
      readonly positions?: () => ReadonlyMap<string, number>;
    };

/** A column's cells with their values, kept while one report is worked out: every look-up reads the same ones. */
interface Column {
  readonly values: readonly Value[];
  readonly positions: () => ReadonlyMap<string, number>;
}

/**
 * An evaluator of one laid-out report. Numbers are doubles as in a spreadsheet; a formula that depends on itself gives
 * the error "#REF!".
 */
export function evaluate(layout: Layout): Evaluator {
  const known = new Map<PlacedCell, Value>();
  const open = new Set<PlacedCell>();
  const cellsByColumn = new Map<string, readonly PlacedCell[]>();
  const columns = new Map<readonly PlacedCell[], Column>();

  const cell = (placed: PlacedCell): Value => {
    const before = known.get(placed);
    if (before !== undefined) return before;
    if (open.has(placed)) return reference;
    open.add(placed);
    const value = ownValue(placed);
    open.delete(placed);
    known.set(placed, value);
    return value;
  };

  const ownValue = (placed: PlacedCell): Value => {
    if (placed.formula !== undefined) {
      const value = work(placed.formula, placed.inRow);
      return value === null ? 0 : value;
    }
    const source = placed.cell;
    switch (source.kind) {
      case "text":
      case "link":
        // A text of no characters is written as an empty cell.
        return source.text === "" ? null : source.text;
      case "number":
        return source.value;
      case "money":
        return source.cents / 100;
      case "date":
        return dayNumber(source.iso) ?? wrongValue;
      default:
        return null;
    }
  };

  /** Cells a reference points at; undefined when there is no such thing. */
  const cellsOf = (to: Reference, inRow: PlacedCell["inRow"]): readonly PlacedCell[] | undefined => {
    if (to.kind === "named") {
      const found = layout.named.get(to.name);
      return found === undefined ? undefined : [found];
    }
    const table = layout.tables.get(to.kind === "thisRow" ? (inRow?.table ?? "") : to.table);
    const index = table?.columnIndex.get(to.column);
    if (table === undefined || index === undefined) return undefined;
    if (to.kind === "totals") {
      const total = table.totals[index];
      return total === undefined ? undefined : [total];
    }
    if (to.kind === "thisRow") {
      const found = inRow === undefined ? undefined : table.cells[inRow.index]?.[index];
      return found === undefined ? undefined : [found];
    }
    const name = `${to.table}\n${to.column}`;
    const before = cellsByColumn.get(name);
    if (before !== undefined) return before;
    const cells = table.cells.flatMap((row) => row[index] ?? []);
    cellsByColumn.set(name, cells);
    return cells;
  };

  /** Values of the cells; kept once all of them are settled, which those of a circle never are. */
  const columnOf = (cells: readonly PlacedCell[]): Column => {
    const before = columns.get(cells);
    if (before !== undefined) return before;
    const values = cells.map(cell);
    let positions: ReadonlyMap<string, number> | undefined;
    const column = {
      values,
      positions: () => {
        positions ??= firstPositions(values);
        return positions;
      },
    };
    if (cells.length > 1 && cells.every((placed) => known.has(placed))) columns.set(cells, column);
    return column;
  };

  const work = (formula: Formula, inRow: PlacedCell["inRow"]): Value => {
    switch (formula.kind) {
      case "literal":
        return formula.value;
      case "reference": {
        if (formula.to.kind === "column") return wrongValue;
        const found = cellsOf(formula.to, inRow)?.[0];
        return found === undefined ? unknownName : cell(found);
      }
      case "negate":
        return arithmetic("-", 0, work(formula.of, inRow));
      case "binary":
        return operate(formula.operator, work(formula.left, inRow), work(formula.right, inRow));
      case "call":
        return callWith(formula, inRow);
    }
  };

  const callWith = (formula: Extract<Formula, { kind: "call" }>, inRow: PlacedCell["inRow"]): Value => {
    const parts = formula.arguments;
    if (formula.name === "IF" || formula.name === "IFERROR") return choose(formula.name, parts, inRow);
    if (formula.name === "SUMPRODUCT") return sumOfProducts(parts.map((part) => array(part, inRow)));
    const given = parts.map((part, index): Argument => {
      const kind = argumentKind(formula.name, index);
      const cells = part.kind === "reference" && kind !== "value" ? cellsOf(part.to, inRow) : undefined;
      if (cells !== undefined) return { kind: "cells", ...columnOf(cells) };
      return { kind: "value", value: work(part, inRow) };
    });
    return callFunction(formula.name, given);
  };

  /** IF and IFERROR work out only the branch they need. */
  const choose = (name: "IF" | "IFERROR", parts: readonly Formula[], inRow: PlacedCell["inRow"]): Value => {
    const [first, second, third] = parts;
    if (first === undefined || second === undefined) return wrongValue;
    const value = work(first, inRow);
    if (name === "IFERROR") return isError(value) ? work(second, inRow) : value;
    if (isError(value)) return value;
    if (typeof value === "string" || third === undefined) return wrongValue;
    return work(value === true || (typeof value === "number" && value !== 0) ? second : third, inRow);
  };

  /** A formula worked out cell by cell; a scalar stays one value. */
  const array = (formula: Formula, inRow: PlacedCell["inRow"]): Value | readonly Value[] => {
    if (formula.kind === "reference") {
      const cells = cellsOf(formula.to, inRow);
      if (cells === undefined) return unknownName;
      const [first] = cells;
      return formula.to.kind === "column" || first === undefined ? columnOf(cells).values : cell(first);
    }
    if (formula.kind === "negate") {
      return overArrays(0, array(formula.of, inRow), (left, right) => arithmetic("-", left, right));
    }
    if (formula.kind === "binary") {
      const operator = formula.operator;
      return overArrays(array(formula.left, inRow), array(formula.right, inRow), (left, right) =>
        operate(operator, left, right),
      );
    }
    return work(formula, inRow);
  };

  return { cell, formula: (formula, inRow) => work(formula, inRow) };
}

/** What MATCH compares a text by when it looks for the text itself: upper and lower case are the same to it. */
export const positionKey = (text: string): string => text.toLowerCase();

function firstPositions(values: readonly Value[]): ReadonlyMap<string, number> {
  const positions = new Map<string, number>();
  values.forEach((value, index) => {
    if (typeof value === "string" && !positions.has(positionKey(value))) positions.set(positionKey(value), index);
  });
  return positions;
}

function operate(operator: Extract<Formula, { kind: "binary" }>["operator"], left: Value, right: Value): Value {
  if (isError(left)) return left;
  if (isError(right)) return right;
  switch (operator) {
    case "+":
    case "-":
    case "*":
    case "/":
      return arithmetic(operator, left, right);
    case "&":
      return joined(left, right);
    default:
      return compare(operator, left, right);
  }
}

const isList = (value: Value | readonly Value[]): value is readonly Value[] => Array.isArray(value);

function overArrays(
  left: Value | readonly Value[],
  right: Value | readonly Value[],
  join: (left: Value, right: Value) => Value,
): Value | readonly Value[] {
  if (!isList(left) && !isList(right)) return join(left, right);
  const length = isList(left) ? left.length : isList(right) ? right.length : 0;
  if (isList(left) && isList(right) && left.length !== right.length) return { error: "#N/A" };
  const at = (side: Value | readonly Value[], index: number): Value => (isList(side) ? (side[index] ?? null) : side);
  return Array.from({ length }, (_, index) => join(at(left, index), at(right, index)));
}

function sumOfProducts(arrays: readonly (Value | readonly Value[])[]): Value {
  const lists = arrays.map((each) => (isList(each) ? each : [each]));
  const length = lists[0]?.length ?? 0;
  if (lists.some((list) => list.length !== length)) return wrongValue;
  let sum = 0;
  for (let index = 0; index < length; index++) {
    let product = 1;
    for (const list of lists) {
      const value = list[index] ?? null;
      if (isError(value)) return value;
      product *= typeof value === "number" ? value : 0;
    }
    sum += product;
  }
  return sum;
}
