import { plainText } from "../quantities/typed-cell.js";
import { headingWords } from "../reference/generated/heading-words.js";
import { columnsOf, fullHeading, type SurveySheetName, surveySheets } from "./columns.js";
import { SurveyRefused } from "./survey-refused.js";
import { phraseAt, wordsOf } from "./words.js";

/** How a typed heading was understood; shown to the user. */
export interface HeadingMatch {
  /** Sheet or file as the user knows it. */
  readonly sheet: string;
  readonly heading: string;
  /** Position in the row, 0-based. */
  readonly position: number;
  /** Our column, or null when nothing fits; its text is then kept in the notes. */
  readonly column: string | null;
  readonly how: "mapping file" | "our heading" | "same words" | "words inside" | "not understood" | "left out";
  /** Unit that the heading itself states for bare numbers. */
  readonly unit?: HeadingUnit;
}

export type HeadingUnit = "ft" | "m" | "k" | "F" | "A";

/** {sheet: {typed heading: our column}}; an empty column leaves that heading out. */
export type HeadingMapping = Readonly<Record<string, Readonly<Record<string, string>>>>;

const units: readonly (readonly [RegExp, HeadingUnit])[] = [
  [/\b(ft|feet|foot)\b|['′]$/i, "ft"],
  [/\b(m|metres?|meters?)\b/i, "m"],
  [/\b(k(ilo)?\s?(Ω|ohms?))|\(k\)|\bin k\b/iu, "k"],
  [/°F\b|\bdeg F\b|\(F\)/i, "F"],
  [/\((A|amps?)\)/i, "A"],
];

/** The heading without its unit, which would hide its words. */
function bareHeading(heading: string): string {
  return plainText(heading)
    .replace(/\[[^\]]*\]|\(write[^)]*\)/gi, " ")
    .replace(/\(?\b(ft|feet|metres?|meters?|dBm)\b\)?|\((m|A|V|F|C|k|kΩ|Ω|mA)\)|°[CF]|kΩ|Ω/giu, " ");
}

interface Candidate {
  readonly position: number;
  readonly column: string;
  readonly score: number;
  readonly how: HeadingMatch["how"];
}

/** The words of every row of the table, split once. */
const phrasesOf = new Map<string, readonly { readonly column: string; readonly phrase: readonly string[] }[]>();
for (const { sheet, column, words } of headingWords) {
  const split = words.map((text) => ({ column, phrase: wordsOf(text) }));
  phrasesOf.set(sheet, [...(phrasesOf.get(sheet) ?? []), ...split]);
}

/** Our headings as they are compared, by sheet. */
const ownHeadings = new Map<SurveySheetName, readonly { readonly column: string; readonly key: string }[]>(
  surveySheets.map((sheet) => [
    sheet,
    columnsOf(sheet).map((one) => ({ column: one.column, key: headingKey(fullHeading(one)) })),
  ]),
);

function candidatesFor(sheet: SurveySheetName, heading: string, position: number): readonly Candidate[] {
  const list: Candidate[] = [];
  const typedKey = headingKey(heading);
  for (const { column, key } of ownHeadings.get(sheet) ?? []) {
    if (key === typedKey) list.push({ position, column, score: 1000, how: "our heading" });
    else if (heading.trim() === column) list.push({ position, column, score: 200, how: "same words" });
  }
  const whole = wordsOf(heading);
  const bare = wordsOf(bareHeading(heading));
  for (const { column, phrase } of phrasesOf.get(sheet) ?? []) {
    const same = [whole, bare].some((typed) => typed.length === phrase.length && phraseAt(typed, phrase) === 0);
    if (same) list.push({ position, column, score: 100 + phrase.length, how: "same words" });
    else if (phraseAt(bare, phrase) >= 0 && (phrase.length >= 2 || bare.length === 2)) {
      list.push({ position, column, score: phrase.length * 10 - bare.length, how: "words inside" });
    }
  }
  return list;
}

/** The user's own mapping for one sheet, under the file's name or ours, checked against our columns. */
function ownMapping(sheet: SurveySheetName, name: string, mapping: HeadingMapping): ReadonlyMap<string, string> {
  const own = new Map<string, string>();
  for (const [key, headings] of Object.entries(mapping)) {
    const same = (other: string) => wordsOf(key).join(" ") === wordsOf(other).join(" ");
    if (!same(sheet) && !same(name)) continue;
    for (const [typed, column] of Object.entries(headings)) {
      if (column !== "" && !columnsOf(sheet).some((one) => one.column === column)) {
        const known = columnsOf(sheet).map((one) => one.column);
        throw new SurveyRefused(
          "badMapping",
          `Mapping file, ${key}, "${typed}": "${column}" is no column of ${sheet}. Columns: ${known.join(", ")}.`,
        );
      }
      own.set(headingKey(typed), column);
    }
  }
  return own;
}

/** Headings are compared without case and without the mark that our workbook puts before input columns. */
function headingKey(heading: string): string {
  return plainText(heading).replace(/^✎\s*/u, "").toLowerCase();
}

/**
 * Finds our column for each heading by its meaning: the user's mapping first, then our own heading, then words of
 * reference-data/heading-words. A column is given once; what is left over is "not understood" and kept in the notes.
 * @throws {@link SurveyRefused} when the mapping names a column that does not exist.
 */
export function mapHeadings(input: {
  readonly sheet: SurveySheetName;
  /** The sheet's or file's own name. */
  readonly name: string;
  readonly headings: readonly string[];
  readonly mapping?: HeadingMapping;
}): readonly HeadingMatch[] {
  const { sheet, name, headings, mapping = {} } = input;
  const own = ownMapping(sheet, name, mapping);
  const taken = new Map<number, Candidate>();
  const used = new Set<string>();
  headings.forEach((heading, position) => {
    const column = own.get(headingKey(heading));
    if (column === undefined) return;
    taken.set(position, { position, column, score: 0, how: column === "" ? "left out" : "mapping file" });
    used.add(column);
  });
  const candidates = headings.flatMap((heading, position) =>
    heading === "" ? [] : candidatesFor(sheet, heading, position),
  );
  candidates.sort((a, b) => b.score - a.score || a.position - b.position);
  for (const candidate of candidates) {
    if (taken.has(candidate.position) || used.has(candidate.column)) continue;
    taken.set(candidate.position, candidate);
    used.add(candidate.column);
  }
  return headings.flatMap((heading, position): HeadingMatch[] => {
    if (heading === "") return [];
    const match = taken.get(position);
    const unit = units.find(([pattern]) => pattern.test(heading.replace(/\(write[^)]*\)/i, "")))?.[1];
    return [
      {
        sheet: name,
        heading,
        position,
        column: match === undefined || match.column === "" ? null : match.column,
        how: match?.how ?? "not understood",
        ...(unit === undefined ? {} : { unit }),
      },
    ];
  });
}
