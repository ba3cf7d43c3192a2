import { orderOf } from "./evaluate-operators.js";
import type { Value } from "./evaluate-values.js";
import { isError } from "./evaluate-values.js";

/** Whether a text meets a pattern in which * stands for any text, ? for one character and ~ takes a mark literally. */
export function matchesText(text: string, pattern: string): boolean {
  let source = "";
  for (let at = 0; at < pattern.length; at++) {
    const mark = pattern.charAt(at);
    const next = pattern.charAt(at + 1);
    if (mark === "~" && (next === "*" || next === "?" || next === "~")) {
      source += `\\${next}`;
      at += 1;
    } else if (mark === "*") source += "[\\s\\S]*";
    else if (mark === "?") source += "[\\s\\S]";
    else source += mark.replace(/[\\^$.|+()[\]{}]/, "\\$&");
  }
  return new RegExp(`^${source}$`, "iu").test(text);
}

/** Whether a cell meets a criterion of COUNTIF and SUMIF: a value, a pattern, or a comparison such as ">5". */
export function matchesCriterion(value: Value, criterion: number | string | boolean | null): boolean {
  if (isError(value)) return false;
  if (typeof criterion !== "string") {
    const wanted = criterion ?? 0;
    return value !== null && typeof value === typeof wanted && orderOf(value, wanted) === 0;
  }
  const parts = /^(<>|<=|>=|=|<|>)?([\s\S]*)$/.exec(criterion);
  const operator = parts?.[1] ?? "=";
  const operand = parts?.[2] ?? "";
  const number = operand.trim() === "" ? Number.NaN : Number(operand);
  if (operator === "=") return equals(value, operand, number);
  if (operator === "<>") return !equals(value, operand, number);
  const wanted = Number.isNaN(number) ? operand : number;
  if (value === null || typeof value !== typeof wanted) return false;
  const order = orderOf(value, wanted);
  return operator === "<" ? order < 0 : operator === "<=" ? order <= 0 : operator === ">" ? order > 0 : order >= 0;
}

function equals(value: Exclude<Value, object>, operand: string, number: number): boolean {
  if (operand === "") return value === null || value === "";
  if (!Number.isNaN(number)) return typeof value === "number" ? orderOf(value, number) === 0 : false;
  return typeof value === "string" && matchesText(value, operand);
}
