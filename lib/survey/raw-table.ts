import type { Query } from "../problems/query.js";
import { cellText } from "../quantities/typed-cell.js";
import type { DecimalMark } from "../quantities/typed-number.js";
import { type CellReaders, cellReaders } from "./cell-readers.js";
import { columnsOf, type SurveySheetName } from "./columns.js";
import { type HeadingMapping, type HeadingMatch, mapHeadings } from "./map-headings.js";
import type { TypedCell, TypedSheet } from "./survey.js";
import { SurveyRefused } from "./survey-refused.js";
import { wordsOf } from "./words.js";

/** One row with its cells by our column names. */
export interface RawRow {
  readonly row: number;
  readonly cells: ReadonlyMap<string, TypedCell>;
  /** Cells under headings that were not understood. */
  readonly spare: readonly { readonly heading: string; readonly text: string }[];
}

/** A table whose headings are understood and whose cells are not read yet. */
export interface RawTable {
  readonly sheet: SurveySheetName;
  /** The sheet's or file's own name, for messages. */
  readonly name: string;
  /** Heading of each of our columns as typed, with what it says of units. */
  readonly headings: ReadonlyMap<string, HeadingMatch>;
  readonly rows: readonly RawRow[];
  readonly matches: readonly HeadingMatch[];
  readonly queries: readonly Query[];
  /** Sign before the decimals, when the table's own numbers show only one of the two. */
  readonly decimalMark?: DecimalMark;
  /** Read every cell of the table through these. */
  readonly readers: CellReaders;
}

/** The sign that clearly stands before decimals somewhere in the table (5.57, 13,5), when only one of them does. */
export function decimalMarkOf(rows: readonly RawRow[]): { readonly decimalMark?: DecimalMark } {
  const texts = rows.flatMap(({ cells }) => [...cells.values()].filter((cell) => typeof cell === "string"));
  const point = texts.some((text) => /(?<![\d.,])\d+\.\d{1,2}(?![\d.,/])/.test(text));
  const comma = texts.some((text) => /(?<![\d.,])\d+,\d{1,2}(?![\d.,/])/.test(text));
  return point === comma ? {} : { decimalMark: point ? "." : "," };
}

const isEmpty = (cell: TypedCell | undefined) => cell === undefined || cell === null || cellText(cell) === "";
const textsOf = (cells: readonly TypedCell[]) => Array.from(cells, (cell) => cellText(cell ?? null));

/** The row that reads most like headings, among the first 30 that hold anything. */
function headingRow(typed: TypedSheet, sheet: SurveySheetName, mapping: HeadingMapping) {
  let best: { readonly index: number; readonly score: number; readonly matches: readonly HeadingMatch[] } | null = null;
  for (const [index, { cells }] of typed.rows.slice(0, 30).entries()) {
    const matches = mapHeadings({ sheet, name: typed.sheet, headings: textsOf(cells), mapping });
    const score = matches.reduce(
      (sum, { column, how }) => sum + (column === null ? 0 : how === "words inside" ? 1 : 3),
      0,
    );
    if (score > 0 && (best === null || score > best.score)) best = { index, score, matches };
  }
  return best;
}

/** Sites named in a column of their own, beside our columns. */
function siteNames(matches: readonly HeadingMatch[], typed: TypedSheet, after: number): ReadonlySet<string> {
  const names = new Set<string>();
  const column = matches.find(({ heading }) =>
    /^(site|site id|site name|job|job no|job name|building)$/.test(wordsOf(heading).join(" ")),
  );
  if (column === undefined || column.column !== null) return names;
  for (const { cells } of typed.rows.slice(after)) {
    const text = cellText(cells[column.position] ?? null);
    if (text !== "") names.add(text.toLowerCase());
  }
  return names;
}

function refuseTwoSites(typed: TypedSheet, matches: readonly HeadingMatch[], index: number): void {
  const names = siteNames(matches, typed, index + 1);
  if (names.size > 1) {
    const some = [...names].slice(0, 3).join(", ");
    throw new SurveyRefused(
      "twoSites",
      `${typed.sheet} holds rows of ${names.size} sites (${some}). Hand in one sheet per site.`,
    );
  }
  const headings = textsOf(typed.rows[index]?.cells ?? []).filter((text) => text !== "");
  for (const { row, cells } of typed.rows.slice(index + 1)) {
    const texts = new Set(textsOf(cells).map((text) => text.toLowerCase()));
    const same = headings.filter((heading) => texts.has(heading.toLowerCase())).length;
    if (headings.length >= 3 && same >= headings.length * 0.7) {
      throw new SurveyRefused(
        "twoSites",
        `${typed.sheet}, row ${row}: the headings stand here a second time, as if two surveys were put into one sheet. Hand in one sheet per site, or delete that row if it is one site.`,
      );
    }
  }
}

function refuseMissing(typed: TypedSheet, sheet: SurveySheetName, matches: readonly HeadingMatch[]): void {
  const missing = columnsOf(sheet).filter(
    ({ needed, column }) => needed && !matches.some((match) => match.column === column),
  );
  if (missing.length === 0) return;
  const spare = matches.filter(({ column }) => column === null).map(({ heading }) => `"${heading}"`);
  const first = missing[0];
  const example = JSON.stringify({
    [typed.sheet]: { [spare[0]?.slice(1, -1) ?? "your heading"]: first?.column ?? "" },
  });
  throw new SurveyRefused(
    "missingHeadings",
    `${typed.sheet}: no heading was understood as ${missing.map(({ column, meaning }) => `${column} (${meaning.toLowerCase()})`).join(", ")}. ` +
      `${spare.length > 0 ? `Not understood: ${spare.join(", ")}. ` : ""}Rename the heading, or hand in a mapping file such as ${example} with --map.`,
  );
}

/** Whether one sheet could be this table: a heading row with every needed column. */
export function fitsTable(typed: TypedSheet, sheet: SurveySheetName, mapping: HeadingMapping = {}): boolean {
  const found = headingRow(typed, sheet, mapping);
  return (
    found !== null &&
    columnsOf(sheet).every(({ needed, column }) => !needed || found.matches.some((match) => match.column === column))
  );
}

/**
 * Understands the headings of one sheet and sorts its cells under our columns. Blank rows are left out.
 * @throws {@link SurveyRefused} no headings, needed ones missing, two sites in one sheet.
 */
export function rawTable(typed: TypedSheet, sheet: SurveySheetName, mapping: HeadingMapping = {}): RawTable {
  const found = headingRow(typed, sheet, mapping);
  if (found === null) {
    const needed = columnsOf(sheet)
      .filter((column) => column.needed)
      .map(({ heading }) => `"${heading}"`);
    throw new SurveyRefused(
      "missingHeadings",
      `${typed.sheet}: ${typed.rows.length === 0 ? "the sheet is empty" : "no row of headings was found"}. ${sheet} needs at least the headings ${needed.join(", ")}; "loopwright new" writes a sheet with all of them.`,
    );
  }
  refuseTwoSites(typed, found.matches, found.index);
  refuseMissing(typed, sheet, found.matches);
  const headings = new Map<string, HeadingMatch>();
  for (const match of found.matches) if (match.column !== null) headings.set(match.column, match);
  const rows = typed.rows.slice(found.index + 1).flatMap(({ row, cells }): RawRow[] => {
    const byColumn = new Map<string, TypedCell>();
    const spare: { heading: string; text: string }[] = [];
    for (const { position, column, heading, how } of found.matches) {
      const cell = cells[position];
      if (isEmpty(cell) || how === "left out") continue;
      if (column !== null) byColumn.set(column, cell ?? null);
      else spare.push({ heading, text: cellText(cell) });
    }
    const blank = [...byColumn.keys()].every((column) => column === "key") && spare.length === 0;
    return blank ? [] : [{ row, cells: byColumn, spare }];
  });
  return {
    sheet,
    name: typed.sheet,
    headings,
    rows,
    matches: found.matches,
    queries: headingQueries(typed.sheet, found.matches, typed.rows[found.index]?.row ?? null),
    ...decimalMarkOf(rows),
    readers: cellReaders(),
  };
}

function headingQueries(name: string, matches: readonly HeadingMatch[], row: number | null): readonly Query[] {
  return matches.flatMap(({ heading, column, how }): Query[] => {
    if (column !== null || how === "left out") return [];
    return [
      {
        sheet: name,
        row,
        column: heading,
        typed: heading,
        message: "This heading was not understood; its cells are kept in the notes. Rename it or map it with --map.",
      },
    ];
  });
}
