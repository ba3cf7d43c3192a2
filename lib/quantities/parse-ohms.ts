import { type ConditionedReading, isWordProblem, ohmsPart, withoutRating } from "./ohms-part.js";
import type { OhmsReading } from "./ohms-reading.js";
import { notMeasured, type Parsed, read, unreadable } from "./parsed.js";
import { type CellTyped, cellText, isDateCell, isNothing } from "./typed-cell.js";
import type { DecimalMark } from "./typed-number.js";

/** What an ohms cell says. */
export interface TypedOhms {
  /**
   * The reading to reckon with: the one taken plainly, or with the detector's supply on where both were typed.
   * Absent when the cell only says what the reading did ("jumps").
   */
  readonly reading?: OhmsReading;
  /** Taken with the meter leads swapped. */
  readonly reversed?: OhmsReading;
  /** Taken while the detector had its supply. */
  readonly powered?: OhmsReading;
  /** Taken while it had none: says nothing of the loop when the output opens without supply. */
  readonly unpowered?: OhmsReading;
  readonly behaviour?: NonNullable<OhmsReading["behaviour"]>;
  /** The value holds for each of several resistors ("5.6k ea"). */
  readonly each: boolean;
  /** Words beside the numbers that the reader did not need; kept for the notes. */
  readonly words: readonly string[];
}

export interface OhmsOptions {
  /** The closed reading of the same row, for "same" and "no change". */
  readonly sameAs?: OhmsReading;
  readonly decimalMark?: DecimalMark;
}

const EXPECTED = "write ohms such as 47, 2.2k, 1.2M, a range such as 5.9-6.4k, or OL for over-range";
const SAME = /^(same|no change|unchanged|nc|as closed|as shut|same as (closed|shut|secure)|ditto|")\.?!*$/i;

/**
 * Reads a cell of ohms: `2.2k`, `2k2`, `5.57 K`, `5,710`, `<1`, `47 jumps to 80ish`, `5.9-6.4k drifting`, `OL`, `0L`,
 * `∞`, `OL (pwr off) / 12.2 with pwr`, `5.58k / OL rev`, `same`. A bare number is ohms. [Ω]
 * @example parseOhms("2k2"); // { ok: true, value: { reading: { ohms: 2200, lowOhms: 2200, highOhms: 2200 }, … } }
 */
export function parseOhms(cell: CellTyped, options: OhmsOptions = {}): Parsed<TypedOhms> {
  const typed = cellText(cell);
  if (isNothing(typed)) return notMeasured();
  if (isDateCell(cell) || typeof cell === "boolean") {
    return unreadable({
      typed,
      expected: `a spreadsheet made this of something typed; format the cell as text and ${EXPECTED}`,
    });
  }
  if (SAME.test(typed)) {
    if (options.sameAs !== undefined) return read({ reading: options.sameAs, each: false, words: [] });
    return unreadable({ typed, expected: `there is no closed reading to be the same as; ${EXPECTED}` });
  }
  const unrated = withoutRating(typed);
  const text = unrated.text
    .replace(/\bw\/o\b/gi, "without")
    .replace(/\bw\/\s*/gi, "with ")
    .replace(/\bo\/l\b/gi, "OL");
  const parts: ConditionedReading[] = [];
  for (const piece of text.split(/[/;]/)) {
    const part = ohmsPart(piece.trim(), typeof cell === "number" ? "." : options.decimalMark);
    if (isWordProblem(part)) return unreadable({ typed, expected: `${part.problem}; ${EXPECTED}` });
    parts.push(part);
  }
  return combined(typed, parts, unrated.ratings);
}

function combined(typed: string, parts: readonly ConditionedReading[], ratings: readonly string[]): Parsed<TypedOhms> {
  const remarks = parts.flatMap((part) => part.remarks);
  const words = [...parts.flatMap((part) => part.words), ...ratings];
  const of = (condition: ConditionedReading["condition"]) =>
    parts.filter((part) => part.condition === condition && part.reading !== undefined);
  for (const condition of ["plain", "powered", "unpowered", "reversed"] as const) {
    if (of(condition).length > 1) {
      return unreadable({
        typed,
        expected: "two readings and no word which is which; write one, or OL (pwr off) / 12.2 with pwr",
      });
    }
  }
  const [plain, powered, unpowered, reversed] = (["plain", "powered", "unpowered", "reversed"] as const).map(
    (condition) => of(condition)[0]?.reading,
  );
  const behaviour = parts.find((part) => part.behaviour !== undefined)?.behaviour;
  const reading = plain ?? powered ?? unpowered;
  if (reading === undefined && reversed === undefined && behaviour === undefined) {
    return unreadable({ typed, expected: EXPECTED });
  }
  if (plain === undefined && powered !== undefined && unpowered !== undefined) {
    remarks.push("Read with and without supply: the reading with supply is used.");
  } else if (plain === undefined && powered === undefined && unpowered !== undefined) {
    remarks.push("Read without supply only: power the detector and read again.");
  }
  if (reading === undefined && behaviour !== undefined) {
    remarks.push("No number was written: write the lowest and the highest reading seen, such as 47-80.");
  }
  return read(
    {
      ...(reading === undefined ? {} : { reading }),
      ...(reversed === undefined ? {} : { reversed }),
      ...(powered === undefined ? {} : { powered }),
      ...(unpowered === undefined ? {} : { unpowered }),
      ...(behaviour === undefined ? {} : { behaviour }),
      each: parts.some((part) => part.each),
      words,
    },
    remarks,
  );
}
