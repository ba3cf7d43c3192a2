import { type Argument, positionKey } from "./evaluate.js";
import { matchesCriterion, matchesText } from "./evaluate-criteria.js";
import { orderOf } from "./evaluate-operators.js";
import { finite, isError, numberOf, type SpreadsheetError, type Value } from "./evaluate-values.js";
import type { FunctionName } from "./functions.js";

const wrongValue: SpreadsheetError = { error: "#VALUE!" };

/** Works out one function call; IF, IFERROR and SUMPRODUCT are {@link evaluate}'s, because they choose what to work out. */
export function callFunction(name: FunctionName, given: readonly Argument[]): Value {
  switch (name) {
    case "SUM":
      return over(numbersIn(given), (numbers) => finite(numbers.reduce((sum, each) => sum + each, 0)));
    case "AVERAGE":
      return over(numbersIn(given), (numbers) =>
        numbers.length === 0
          ? { error: "#DIV/0!" }
          : finite(numbers.reduce((sum, each) => sum + each, 0) / numbers.length),
      );
    case "MAX":
      return over(numbersIn(given), (numbers) => (numbers.length === 0 ? 0 : numbers.reduce((a, b) => Math.max(a, b))));
    case "MIN":
      return over(numbersIn(given), (numbers) => (numbers.length === 0 ? 0 : numbers.reduce((a, b) => Math.min(a, b))));
    case "COUNT":
      return count(given, (value) => typeof value === "number");
    case "COUNTA":
      return count(given, (value) => value !== null);
    case "AND":
    case "OR":
      return over(truthsIn(given), (truths) => {
        if (truths.length === 0) return wrongValue;
        return name === "AND" ? truths.every(Boolean) : truths.some(Boolean);
      });
    case "NOT":
      return oneNumber(given, (number) => number === 0);
    case "ABS":
      return oneNumber(given, Math.abs);
    case "INT":
      return oneNumber(given, (number) => finite(Math.floor(asShown(number))));
    case "SQRT":
      return oneNumber(given, (number) => (number < 0 ? { error: "#NUM!" } : Math.sqrt(number)));
    case "ROUND":
    case "ROUNDUP":
    case "ROUNDDOWN":
      return roundCall(name, given);
    case "ISNUMBER":
      return typeof scalarOf(given[0]) === "number";
    case "ISBLANK":
      return scalarOf(given[0]) === null;
    case "INDEX":
      return indexCall(given);
    case "MATCH":
      return matchCall(given);
    case "COUNTIF":
    case "COUNTIFS":
      return over(rowsThatMatch(given, 0), (rows) => rows.length);
    case "SUMIF": {
      const summed = given[2] ?? given[0];
      return over(rowsThatMatch(given.slice(0, 2), 0), (rows) => sumRows(summed, rows));
    }
    case "SUMIFS":
      return over(rowsThatMatch(given, 1), (rows) => sumRows(given[0], rows));
    default:
      return { error: "#NAME?" };
  }
}

function over<T>(list: readonly T[] | SpreadsheetError, then: (list: readonly T[]) => Value): Value {
  return "error" in list ? list : then(list);
}

const scalarOf = (given: Argument | undefined): Value =>
  given === undefined ? wrongValue : given.kind === "value" ? given.value : (given.values[0] ?? null);

const cellsOf = (given: Argument | undefined): readonly Value[] | undefined =>
  given?.kind === "cells" ? given.values : undefined;

/** Numbers among the arguments: in cells only numbers count, values given directly must be numbers. */
function numbersIn(given: readonly Argument[]): readonly number[] | SpreadsheetError {
  const numbers: number[] = [];
  for (const each of given) {
    if (each.kind === "value") {
      const number = numberOf(each.value);
      if (typeof number !== "number") return number;
      numbers.push(number);
      continue;
    }
    for (const value of each.values) {
      if (isError(value)) return value;
      if (typeof value === "number") numbers.push(value);
    }
  }
  return numbers;
}

function truthsIn(given: readonly Argument[]): readonly boolean[] | SpreadsheetError {
  const truths: boolean[] = [];
  for (const each of given) {
    for (const value of each.kind === "value" ? [each.value] : each.values) {
      if (isError(value)) return value;
      if (typeof value === "boolean") truths.push(value);
      else if (typeof value === "number") truths.push(value !== 0);
      else if (each.kind === "value") {
        if (value !== null) return wrongValue;
        truths.push(false);
      }
    }
  }
  return truths;
}

function count(given: readonly Argument[], counts: (value: Value) => boolean): number {
  return given.flatMap((each) => (each.kind === "value" ? [each.value] : each.values)).filter(counts).length;
}

function oneNumber(given: readonly Argument[], then: (number: number) => Value): Value {
  const number = numberOf(scalarOf(given[0]));
  return typeof number === "number" ? then(number) : number;
}

/** The number a spreadsheet shows with 15 digits: what the last bits of a double add must not push it over an edge. */
const asShown = (number: number): number => Number(number.toPrecision(15));

function roundCall(name: "ROUND" | "ROUNDUP" | "ROUNDDOWN", given: readonly Argument[]): Value {
  const number = numberOf(scalarOf(given[0]));
  const digits = numberOf(scalarOf(given[1]));
  if (typeof number !== "number") return number;
  if (typeof digits !== "number") return digits;
  const scale = 10 ** Math.abs(Math.trunc(digits));
  const scaled = asShown(digits < 0 ? Math.abs(number) / scale : Math.abs(number) * scale);
  const whole = name === "ROUNDUP" ? Math.ceil(scaled) : Math.floor(name === "ROUND" ? scaled + 0.5 : scaled);
  return finite(Math.sign(number) * (digits < 0 ? whole * scale : whole / scale));
}

function indexCall(given: readonly Argument[]): Value {
  const cells = cellsOf(given[0]);
  const position = numberOf(scalarOf(given[1]));
  if (typeof position !== "number") return position;
  const at = Math.trunc(position);
  if (cells === undefined || at === 0) return wrongValue;
  return at < 0 ? wrongValue : at > cells.length ? { error: "#REF!" } : (cells[at - 1] ?? null);
}

/** Position of a value: 0 finds it exactly, 1 the last one not above it in a rising column. */
function matchCall(given: readonly Argument[]): Value {
  const wanted = scalarOf(given[0]);
  const cells = cellsOf(given[1]);
  const way = numberOf(scalarOf(given[2]));
  if (isError(wanted)) return wanted;
  if (typeof way !== "number") return way;
  if (cells === undefined || (way !== 0 && way !== 1)) return wrongValue;
  const notFound: SpreadsheetError = { error: "#N/A" };
  if (wanted === null) return notFound;
  const sameKind = (value: Value): value is number | string | boolean => typeof value === typeof wanted;
  // Numbers are compared nearly, patterns by their marks: only plain text can be looked up straight away.
  if (way === 0 && typeof wanted === "string" && !/[*?~]/.test(wanted)) {
    const at = given[1]?.kind === "cells" ? given[1].positions?.().get(positionKey(wanted)) : undefined;
    if (at !== undefined) return at + 1;
  }
  if (way === 0) {
    const found = cells.findIndex(
      (value) =>
        sameKind(value) &&
        (typeof wanted === "string" ? matchesText(String(value), wanted) : orderOf(value, wanted) === 0),
    );
    return found < 0 ? notFound : found + 1;
  }
  let last = 0;
  cells.forEach((value, index) => {
    if (sameKind(value) && orderOf(value, wanted) <= 0) last = index + 1;
  });
  return last === 0 ? notFound : last;
}

/** Rows (from 0) in which every range, from argument `first` on, meets the criterion behind it. */
function rowsThatMatch(given: readonly Argument[], first: number): readonly number[] | SpreadsheetError {
  const length = cellsOf(given[first])?.length;
  if (length === undefined) return wrongValue;
  const rows = Array.from({ length }, (_, index) => index);
  let kept: number[] = rows;
  for (let at = first; at < given.length; at += 2) {
    const cells = cellsOf(given[at]);
    if (cells === undefined || cells.length !== length) return wrongValue;
    const criterion = scalarOf(given[at + 1]);
    if (isError(criterion)) return criterion;
    kept = kept.filter((row) => matchesCriterion(cells[row] ?? null, criterion));
  }
  return kept;
}

function sumRows(summed: Argument | undefined, rows: readonly number[]): Value {
  const cells = cellsOf(summed);
  if (cells === undefined) return wrongValue;
  let sum = 0;
  for (const row of rows) {
    const value = cells[row] ?? null;
    if (isError(value)) return value;
    if (typeof value === "number") sum += value;
  }
  return finite(sum);
}
