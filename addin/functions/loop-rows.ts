import * as library from "../loopwright-functions.js";
import { refused } from "./arguments.js";

type TypedCell = library.TypedCell;

/** One row of a range and what the survey's own reader made of it. */
export interface ReadRow {
  readonly loop: library.SurveyLoop;
  readonly questions: readonly library.Query[];
}

/** A range with the loops of one job. */
export interface ReadRange {
  /** By position in the range; rows without a loop have none. */
  readonly rows: ReadonlyMap<number, ReadRow>;
  /** Position of the row of headings. */
  readonly headingRow: number;
  /** What concerns the whole range. */
  readonly questions: readonly library.Query[];
}

/** Name that messages give the range. */
const RANGE = "loops";

/** A range as the readers of sheets take it; rows are counted from 1 within the range. */
export function typedRange(name: string, rows: readonly (readonly TypedCell[])[]): library.TypedSheet {
  return { sheet: name, rows: rows.map((cells, index) => ({ row: index + 1, cells })) };
}

/** Heading of one of our columns as our workbook writes it; bare numbers below it are in its unit. */
export function ourHeading(column: string): string {
  const found = library.columnsOf("Loops").find((one) => one.column === column);
  if (found === undefined) throw refused("column", column, "a column of the loops sheet");
  return library.fullHeading(found);
}

/**
 * Reads a range of loops with its headings, exactly as the loops sheet of a survey is read.
 * @throws SurveyRefused when no headings are found or a needed one is missing.
 */
export function readRange(cells: readonly (readonly TypedCell[])[]): ReadRange {
  const table = library.rawTable(typedRange(RANGE, cells), "Loops");
  const { keys } = library.rowKeys(table);
  const heading = table.headings.get("run");
  const stated = heading?.how === "our heading" ? "m" : heading?.unit;
  const unit = library.runUnit({
    sheet: RANGE,
    heading: heading?.heading ?? "run",
    headingUnit: stated === "ft" || stated === "m" ? stated : undefined,
    texts: table.rows.flatMap(({ row, cells: byColumn }) =>
      byColumn.has("run") ? [{ row, text: String(byColumn.get("run")) }] : [],
    ),
  });
  const rows = new Map<number, ReadRow>();
  for (const [index, raw] of table.rows.entries()) {
    const { loop, queries } = library.readLoop(raw, {
      table,
      key: keys[index] ?? "",
      panel: "P1",
      ...(unit.unit === undefined ? {} : { bareUnit: unit.unit }),
    });
    rows.set(raw.row - 1, { loop, questions: queries });
  }
  return { rows, headingRow: headingRowOf(cells, table), questions: [...table.queries, ...unit.queries] };
}

/** The row whose cells are the headings that were understood. */
function headingRowOf(cells: readonly (readonly TypedCell[])[], table: library.RawTable): number {
  const first = table.matches[0];
  if (first === undefined) return 0;
  const texts = table.matches.map(({ position, heading }) => [position, heading] as const);
  return cells.findIndex((row) => texts.every(([position, heading]) => library.cellText(row[position]) === heading));
}

/** The survey that a range of loops and nothing else makes. */
export function surveyOf(
  { rows, questions }: ReadRange,
  tables: Pick<library.Survey, "priceBook" | "inputModules"> & { readonly currency: string },
): library.Survey {
  const loops = [...rows.values()].map(({ loop }) => loop);
  const panels = [...new Set(loops.map(({ panel }) => panel))].map((panel) => ({ panel, typed: {} }));
  const { currency, priceBook, inputModules } = tables;
  return {
    site: { currency, typed: {} },
    panels,
    loops,
    oldZones: [],
    radioTests: [],
    priceBook,
    inputModules,
    labour: [],
    settings: {},
    queries: [...questions, ...[...rows.values()].flatMap((row) => row.questions)],
  };
}
