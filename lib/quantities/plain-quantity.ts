import { notMeasured, type Parsed, read, unreadable } from "./parsed.js";
import { type CellTyped, cellText, isDateCell, isNothing } from "./typed-cell.js";
import { type DecimalMark, NUMBER, typedNumber } from "./typed-number.js";

/** One number with its unit and the words around it. */
export interface PlainQuantity {
  readonly number: number;
  /** Lowest and highest number typed; both are `number` unless a range was typed. */
  readonly low: number;
  readonly high: number;
  /** The unit as typed, lower case; "" for a bare number. */
  readonly unit: string;
  readonly words: readonly string[];
}

export interface PlainQuantityOptions {
  /** Made once by {@link quantityPattern}. */
  readonly pattern: RegExp;
  /** What to write, for messages. */
  readonly expected: string;
  readonly mayBeNegative?: boolean;
  /** Phrases with digits of their own that say nothing of the quantity ("after 10 min"). */
  readonly ignore?: RegExp;
  readonly decimalMark?: DecimalMark | undefined;
}

/** A unit that stands behind the number and was not among those expected: the value is of another kind. */
const OTHER_UNIT =
  /^\s*(?:(?:m?v|vdc|vac|volts?|m?a|amps?|ft|feet|m|cm|mm|yd|in|hz|awg|w|va|ah|ohms?|k|Ω|h|hrs?|hours?|min|s|c|f|kg|lb|dbm?)(?![\p{L}\d])|[%°$€£'"])/iu;

/** One number or a range with an optional unit; `units` are the lower-case spellings that may stand behind, as a pattern. */
export function quantityPattern(units: string): RegExp {
  const unit = `\\s?(?:(?<UNIT>${units})(?![\\p{L}\\d]))?`;
  return new RegExp(
    `(?<![\\w.,])(?<sign>[-+]?)\\s?(?<first>${NUMBER})${unit.replace("UNIT", "one")}` +
      `(?:\\s?(?:-|to|\\.\\.+)\\s?(?<second>${NUMBER})${unit.replace("UNIT", "two")})?(?![\\d.,]*\\d)`,
    "iu",
  );
}

/** Reads one number or a range a-b, an optional sign and unit, and words; any second number is a question. */
export function plainQuantity(cell: CellTyped, options: PlainQuantityOptions): Parsed<PlainQuantity> {
  const typed = cellText(cell);
  if (isNothing(typed)) return notMeasured();
  const refused = unreadable({ typed, expected: options.expected });
  if (isDateCell(cell) || typeof cell === "boolean") {
    return unreadable({ typed, expected: `a spreadsheet made this of something typed; ${options.expected}` });
  }
  const text = options.ignore === undefined ? typed : typed.replace(options.ignore, " ");
  const match = options.pattern.exec(text);
  const groups = match?.groups ?? {};
  if (match === null || groups["first"] === undefined) return refused;
  const after = text.slice(match.index + match[0].length);
  const rest = `${text.slice(0, match.index)} # ${after}`;
  if (/\d/.test(rest) || /^[\p{L}%°]/u.test(after) || OTHER_UNIT.test(after)) return refused;
  const mark = typeof cell === "number" ? "." : options.decimalMark;
  const first = typedNumber(groups["first"], mark);
  const second = groups["second"] === undefined ? first : typedNumber(groups["second"], mark);
  if (first === undefined || second === undefined) return refused;
  const sign = groups["sign"] === "-" ? -1 : 1;
  const [a, b] = [sign * first.value, sign * second.value];
  if (!options.mayBeNegative && sign < 0 && a !== 0)
    return unreadable({ typed, expected: `it is never below 0; ${options.expected}` });
  const remarks = [first, second].flatMap(({ doubt }, i) =>
    doubt === undefined || (i === 1 && second === first) ? [] : [doubt],
  );
  if (rest.includes("?")) remarks.push(`"${typed}" carries a question mark: measure it again.`);
  const words = rest
    .replace(/[^\p{L}\p{M}' ]/gu, " ")
    .replace(/\s+/g, " ")
    .trim();
  return read(
    {
      number: a === b ? a + 0 : (a + b) / 2,
      low: Math.min(a, b),
      high: Math.max(a, b),
      unit: (groups["two"] ?? groups["one"] ?? "").toLowerCase(),
      words: words === "" ? [] : [words],
    },
    remarks,
  );
}
