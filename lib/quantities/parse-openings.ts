import { notMeasured, type Parsed, read, unreadable } from "./parsed.js";
import { type CellTyped, cellText, isDateCell, isNothing } from "./typed-cell.js";

/** Moving leaves and devices that each need proving, as typed. */
export interface TypedOpenings {
  /** Sum of the numbers typed. */
  readonly count: number;
  /** Each number typed, in order ("5+1" → 5, 1). */
  readonly parts: readonly number[];
  /** What was added in words ("3 + gb" → "gb"): a device on the loop that is no opening and is not in the count. */
  readonly others: readonly string[];
  /** A question mark stood beside it. */
  readonly assumed: boolean;
}

/** More than any loop holds: a slip. */
const MOST_OPENINGS = 200;
const EXPECTED = "write how many leaves and devices open on their own, such as 3 or 5+1";

/**
 * Reads a count of openings: `1`, `5+1`, `3 + gb`, `1?`. A lone `?` is not known.
 * @example parseOpenings("5+1"); // { ok: true, value: { count: 6, parts: [5, 1], others: [], assumed: false } }
 */
export function parseOpenings(cell: CellTyped): Parsed<TypedOpenings> {
  const typed = cellText(cell);
  if (isNothing(typed)) return notMeasured();
  if (isDateCell(cell) || typeof cell === "boolean") {
    return unreadable({
      typed,
      expected: `a spreadsheet made this of something typed; format the cell as text and ${EXPECTED}`,
    });
  }
  const parts: number[] = [];
  const others: string[] = [];
  for (const piece of typed.split(/\+|&|\band\b/i).map((text) => text.replace(/\?/g, "").trim())) {
    const counted = /^(?:x\s?)?(\d{1,4})(?:\.0+)?(?:\s?x)?(?:\s+([\p{L}\p{M}' /-]+))?$/u.exec(piece);
    if (counted?.[1] !== undefined) {
      parts.push(Number(counted[1]));
    } else if (/^[\p{L}\p{M}' /-]+$/u.test(piece)) {
      others.push(piece);
    } else {
      return unreadable({ typed, expected: EXPECTED });
    }
  }
  const count = parts.reduce((sum, part) => sum + part, 0);
  if (parts.length === 0) return unreadable({ typed, expected: EXPECTED });
  if (count > MOST_OPENINGS)
    return unreadable({ typed, expected: `one loop holds at most ${MOST_OPENINGS}; ${EXPECTED}` });
  const assumed = typed.includes("?");
  const remarks = assumed ? [`"${typed}" carries a question mark: count the openings on this loop.`] : [];
  if (/\b(double|dbl|pair|pr|french|leaf|leaves)\b/i.test(typed)) {
    remarks.push(`"${typed}" was read as ${count}: count every moving leaf, a double door as 2.`);
  }
  for (const other of others) {
    remarks.push(
      `"${other}" is counted as a device of its own beside ${count} openings; write 1 for it if it opens like them.`,
    );
  }
  return read({ count, parts, others, assumed }, remarks);
}
