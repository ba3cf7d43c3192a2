import { finite, isError, nearlyEqual, numberOf, textOf, type Value } from "./evaluate-values.js";

/** Plus, minus, times, divided by. Differences of nearly equal numbers are 0, as spreadsheets have it. */
export function arithmetic(operator: "+" | "-" | "*" | "/", left: Value, right: Value): Value {
  const one = numberOf(left);
  if (typeof one !== "number") return one;
  const other = numberOf(right);
  if (typeof other !== "number") return other;
  switch (operator) {
    case "+":
      return one !== 0 && nearlyEqual(one, -other) ? 0 : finite(one + other);
    case "-":
      return one !== 0 && nearlyEqual(one, other) ? 0 : finite(one - other);
    case "*":
      return finite(one * other);
    case "/":
      return other === 0 ? { error: "#DIV/0!" } : finite(one / other);
  }
}

/** Two values set one behind the other as text. */
export function joined(left: Value, right: Value): Value {
  if (isError(left)) return left;
  return isError(right) ? right : textOf(left) + textOf(right);
}

/** Order of two values: numbers before text before truth values; text without regard to case; empty fits any kind. */
export function orderOf(left: Exclude<Value, object>, right: Exclude<Value, object>): number {
  const one = left ?? emptyLike(right);
  const other = right ?? emptyLike(left);
  if (typeof one === "number" && typeof other === "number") return nearlyEqual(one, other) ? 0 : one - other;
  if (typeof one === "string" && typeof other === "string") {
    const [upper, otherUpper] = [one.toUpperCase(), other.toUpperCase()];
    return upper === otherUpper ? 0 : upper < otherUpper ? -1 : 1;
  }
  if (typeof one === "boolean" && typeof other === "boolean") return Number(one) - Number(other);
  return rank(one) - rank(other);
}

const rank = (value: number | string | boolean): number =>
  typeof value === "number" ? 0 : typeof value === "string" ? 1 : 2;

function emptyLike(other: number | string | boolean | null): number | string | boolean {
  return typeof other === "string" ? "" : typeof other === "boolean" ? false : 0;
}

/** A comparison's truth value. */
export function compare(operator: "=" | "<>" | "<" | "<=" | ">" | ">=", left: Value, right: Value): Value {
  if (isError(left)) return left;
  if (isError(right)) return right;
  const order = orderOf(left, right);
  switch (operator) {
    case "=":
      return order === 0;
    case "<>":
      return order !== 0;
    case "<":
      return order < 0;
    case "<=":
      return order <= 0;
    case ">":
      return order > 0;
    case ">=":
      return order >= 0;
  }
}
