import { LENGTH_UNIT, metersPerUnit } from "./length-unit.js";
import { notMeasured, type Parsed, read, unreadable } from "./parsed.js";
import { type CellTyped, cellText, isDateCell, isNothing } from "./typed-cell.js";
import { type DecimalMark, NUMBER, typedNumber } from "./typed-number.js";

/** One-way length along the cable as typed. */
export interface TypedRun {
  /** [m] */
  readonly meters: number;
  /** The range the typing itself shows; equal to `meters` when one plain number was typed. [m] */
  readonly lowMeters: number;
  readonly highMeters: number;
  /** Always false: the surveyor wrote it. Callers that fill in a default write true. */
  readonly assumed: false;
  /** "~", "?" or "about" stood beside it. */
  readonly approximate: boolean;
  /** Words beside the number, kept for the notes ("total", "all round"). */
  readonly words: readonly string[];
}

export interface RunOptions {
  /** What a bare number is, where the heading or the sheet says so. Without it a bare number is a question. */
  readonly bareUnit?: "ft" | "m";
  readonly decimalMark?: DecimalMark;
  /** Reads a unit text that the table of length units does not know. [m] */
  readonly metersFromText?: (text: string) => number | undefined;
}

/** Longer than any run inside one building: a slip of unit or digit. [m] */
const LONGEST_METERS = 3000;
const EXPECTED = "write the one-way length along the cable with its unit, such as 55 ft, 21 m or 35-55 ft";
const PIECE = new RegExp(String.raw`(${NUMBER})\s?(${LENGTH_UNIT})?\.?(?![\w.])`, "giu");
const FEET_INCHES = /(\d+)\s?(?:'|ft\.?|feet|foot)\s?-?\s?(\d+(?:\.\d+)?)\s?(?:"|''|in\.?|inch(?:es)?)(?!\w)/gi;

/**
 * Reads the run of a cable: `55'`, `~120`, `21 m`, `35-55`, `330 total`, `250?`, `5' 6"`, `120 yd`, and what `metersFromText` knows. [m]
 * @example parseRun("55'"); // { ok: true, value: { meters: 16.764, … } }
 */
export function parseRun(cell: CellTyped, options: RunOptions = {}): Parsed<TypedRun> {
  const typed = cellText(cell);
  if (isNothing(typed)) return notMeasured();
  if (isDateCell(cell) || typeof cell === "boolean") {
    return unreadable({ typed, expected: `a spreadsheet made this of something typed; ${EXPECTED}` });
  }
  const text = typed.replace(
    FEET_INCHES,
    (_, feet: string, inches: string) => `${Number(feet) + Number(inches) / 12} ft`,
  );
  const pieces = [...text.matchAll(PIECE)];
  const rest = text.replace(PIECE, " # ");
  if (pieces.length === 0 || /\d/.test(rest)) {
    const meters = options.metersFromText?.(text);
    if (meters !== undefined) return checked(typed, [meters], false, [], []);
    return unreadable({ typed, expected: EXPECTED });
  }
  if (/^\s*-\s*#/.test(rest)) return unreadable({ typed, expected: `a length is never below 0; ${EXPECTED}` });
  const unknown = wordAfterBareNumber(text, pieces);
  if (unknown !== undefined) {
    const meters = options.metersFromText?.(text);
    if (meters !== undefined) return checked(typed, [meters], false, [], []);
    return unreadable({ typed, expected: `"${unknown}" is no unit of length known here; ${EXPECTED}` });
  }
  const known = lengths(typed, pieces, typeof cell === "number" ? { ...options, decimalMark: "." } : options);
  if ("message" in known) return unreadable({ typed, expected: known.message });
  const joint = rest.replace(/^[^#]*#|#[^#]*$/g, "").trim();
  const approximate = /~|≈|\?|\b(about|approx\w*|ca|circa|est\w*|roughly|ish|guess\w*)\b/i.test(rest);
  const remarks = [...known.remarks];
  if (/\?/.test(rest)) remarks.push(`"${typed}" carries a question mark: measure or pace the run.`);
  if (/\btotal\b/i.test(rest)) {
    remarks.push(
      `"${typed}" was read as the one-way run along the cable; write half of it if out and back were counted.`,
    );
  }
  const words = wordsOf(rest);
  if (pieces.length === 1) return checked(typed, known.meters, approximate, words, remarks);
  if (pieces.length === 2 && /^(-+|to|\.\.+|or|and)$/i.test(joint)) {
    return checked(typed, known.meters, approximate, words, remarks);
  }
  if (/^(\+|\+\s*#\s*)+\+?$/.test(joint.replace(/\s+/g, " "))) {
    const sum = known.meters.reduce((a, b) => a + b, 0);
    return checked(typed, [sum], approximate, words, [...remarks, `"${typed}" was added up as one run.`]);
  }
  return unreadable({ typed, expected: `several numbers stand there; ${EXPECTED}` });
}

/** Words that may follow a number without being a unit. */
const WORDS_AFTER =
  /^(to|or|and|total|all|around|round|est\w*|guess\w*|approx\w*|about|ish|max|min|long|run|away|one|each|via|both|up|down|by|over|plus|in|at|from|of)$/i;

/** The word right after a number that makes its unit doubtful; words that may stand there are no such word. */
function wordAfterBareNumber(text: string, pieces: readonly RegExpMatchArray[]): string | undefined {
  for (const piece of pieces) {
    const behind = text.slice((piece.index ?? 0) + piece[0].length);
    // "3 in conduit" is no three inches.
    if (/^in$/i.test(piece[2] ?? "") && /^\s*[a-z]/i.test(behind)) return "in";
    if (piece[2] !== undefined) continue;
    const word = /^\s*([\p{L}%°]+)/u.exec(behind)?.[1];
    if (word !== undefined && !WORDS_AFTER.test(word)) return word;
  }
  return undefined;
}

function lengths(
  typed: string,
  pieces: readonly RegExpMatchArray[],
  { bareUnit, decimalMark }: RunOptions,
): { readonly meters: readonly number[]; readonly remarks: readonly string[] } | { readonly message: string } {
  const lastUnit = [...pieces].reverse().find((piece) => piece[2] !== undefined)?.[2];
  const meters: number[] = [];
  const remarks: string[] = [];
  for (const piece of pieces) {
    const number = typedNumber(piece[1] ?? "", decimalMark);
    if (number === undefined) return { message: `"${piece[1]}" is no number; ${EXPECTED}` };
    const unit = piece[2] ?? lastUnit ?? bareUnit;
    if (unit === undefined) {
      return { message: `nothing says whether this is feet or metres; write ${piece[1]} ft or ${piece[1]} m` };
    }
    const factor = metersPerUnit(unit);
    if (factor === undefined) return { message: `"${unit}" is no unit of length; ${EXPECTED}` };
    if (number.doubt !== undefined) remarks.push(number.doubt);
    meters.push(number.value * factor);
  }
  return meters.length === 0 ? { message: `${typed}: ${EXPECTED}` } : { meters, remarks };
}

function checked(
  typed: string,
  list: readonly number[],
  approximate: boolean,
  words: readonly string[],
  remarks: readonly string[],
): Parsed<TypedRun> {
  const lowMeters = Math.min(...list);
  const highMeters = Math.max(...list);
  if (!(highMeters <= LONGEST_METERS) || !(lowMeters >= 0)) {
    return unreadable({ typed, expected: `a run is 0 to ${LONGEST_METERS} m; check the unit and the digits` });
  }
  const meters = (lowMeters + highMeters) / 2;
  return read({ meters, lowMeters, highMeters, assumed: false, approximate, words }, remarks);
}

function wordsOf(rest: string): readonly string[] {
  const words = rest
    .replace(/#|\b(to|or|and|ish|about|approx\w*|ca|circa|est\w*)\b\.?/gi, " ")
    .replace(/[^\p{L}\p{M}' ]/gu, " ")
    .replace(/\s+/g, " ")
    .trim();
  return words === "" ? [] : [words];
}
