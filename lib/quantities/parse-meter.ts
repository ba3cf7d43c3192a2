import { notMeasured, type Parsed, read, unreadable } from "./parsed.js";
import { type CellTyped, cellText, isNothing } from "./typed-cell.js";

/** What a cell says about the meter. Absent = not written. */
export interface TypedMeter {
  /** Accuracy as a share of the reading. [% of reading] */
  readonly percent?: number;
  /** Accuracy in steps of the last digit. [counts] */
  readonly counts?: number;
  /** Full scale of the display. [counts] */
  readonly displayCounts?: number;
  /** Resistance of the leads held together. [Ω] */
  readonly leadOhms?: number;
  readonly leadsZeroed?: boolean;
  readonly words: string;
}

const EXPECTED = "write the ohms accuracy and the leads, such as 0.8 % + 3, leads 0.3 not zeroed";

/**
 * Reads what was written about the meter: `handheld 0.8% + 3`, `leads 0.3 not zeroed`, `0.8%+3, leads zeroed`,
 * `4000 counts`. The percentage is of the reading; the number after + counts in the last digit.
 * @example parseMeter("handheld 0.8% + 3"); // { ok: true, value: { percent: 0.8, counts: 3, words: "handheld 0.8% + 3" } }
 */
export function parseMeter(cell: CellTyped): Parsed<TypedMeter> {
  const typed = cellText(cell);
  if (isNothing(typed)) return notMeasured();
  const number = (digits: string | undefined) => (digits === undefined ? undefined : Number(digits.replace(",", ".")));
  const accuracy = /(\d+(?:[.,]\d+)?)\s?%(?:\s?(?:of )?(?:rdg|reading))?(?:\s?\+\s?(\d{1,3})(?![\d.,%]))?/i.exec(typed);
  const percent = number(accuracy?.[1]);
  const counts = number(accuracy?.[2]);
  const displayCounts = number(/(\d{4,6})[\s-]?(?:counts?|cts)\b/i.exec(typed)?.[1]);
  const leadOhms = number(/\bleads?\b\D{0,12}?(\d+(?:[.,]\d+)?)/i.exec(typed)?.[1]);
  const zeroed = /\b(not|un|no)[\s-]?(zero|null)(ed)?\b|\b(zero|null)ed:? no\b/i.test(typed)
    ? false
    : /\b(zero|null)(ed)?\b|\brel\b/i.test(typed)
      ? true
      : undefined;
  if ([percent, displayCounts, leadOhms, zeroed].every((fact) => fact === undefined))
    return unreadable({ typed, expected: EXPECTED });
  if (percent !== undefined && !(percent <= 20))
    return unreadable({ typed, expected: `an accuracy is 0 to 20 %; ${EXPECTED}` });
  if (leadOhms !== undefined && leadOhms > 10) {
    return unreadable({
      typed,
      expected: `leads of ${leadOhms} Ω are broken; hold them together, read again and ${EXPECTED}`,
    });
  }
  const remarks: string[] = [];
  if (percent !== undefined && counts === undefined) {
    remarks.push(
      `"${typed}" gives no counts of the last digit: write the accuracy as the maker does, such as 0.8 % + 3.`,
    );
  }
  if (leadOhms !== undefined && zeroed === undefined) {
    remarks.push(`"${typed}" does not say whether the leads were zeroed before the readings.`);
  }
  return read(
    {
      ...(percent === undefined ? {} : { percent }),
      ...(counts === undefined ? {} : { counts }),
      ...(displayCounts === undefined ? {} : { displayCounts }),
      ...(leadOhms === undefined ? {} : { leadOhms }),
      ...(zeroed === undefined ? {} : { leadsZeroed: zeroed }),
      words: typed,
    },
    remarks,
  );
}
