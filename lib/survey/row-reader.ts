import type { Query } from "../problems/query.js";
import { type OhmsOptions, parseOhms, type TypedOhms } from "../quantities/parse-ohms.js";
import type { Parsed } from "../quantities/parsed.js";
import { cellText, isNothing } from "../quantities/typed-cell.js";
import { typedNumber } from "../quantities/typed-number.js";
import type { CellReaders, NumberMark } from "./cell-readers.js";
import { columnsOf, expectedIn } from "./columns.js";
import type { RawRow, RawTable } from "./raw-table.js";
import type { TypedCell } from "./survey.js";

/** The cell letter by letter, only without blanks around it. */
export function verbatim(cell: TypedCell): string {
  if (cell === null) return "";
  return typeof cell === "object" ? cell.isoDate : String(cell).trim();
}

/** Reads the cells of one row and collects a query for everything that is not settled. */
export class RowReader {
  readonly #table: RawTable;
  readonly #row: RawRow;
  readonly #key: string | undefined;
  readonly queries: Query[] = [];

  constructor(table: RawTable, row: RawRow, key?: string) {
    this.#table = table;
    this.#row = row;
    this.#key = key;
  }

  /** Readers that remember the cells of this table. */
  get readers(): CellReaders {
    return this.#table.readers;
  }

  cell(column: string): TypedCell {
    return this.#row.cells.get(column) ?? null;
  }

  /** The cell as typed; undefined when nothing stands there. */
  text(column: string): string | undefined {
    const text = verbatim(this.cell(column));
    return text === "" ? undefined : text;
  }

  /** The same, but a dash or question mark is nothing too. */
  known(column: string): string | undefined {
    const text = this.text(column);
    return text === undefined || isNothing(text) ? undefined : text;
  }

  /** Whether the column stands under our own heading, whose unit then holds for bare numbers. */
  isOurHeading(column: string): boolean {
    return this.#table.headings.get(column)?.how === "our heading";
  }

  headingOf(column: string): string {
    return (
      this.#table.headings.get(column)?.heading ??
      columnsOf(this.#table.sheet).find((one) => one.column === column)?.heading ??
      column
    );
  }

  /** A question that only somebody on site can answer: a reading, a look at the device. */
  askOnSite(column: string, message: string): void {
    this.ask(column, message, undefined, true);
  }

  ask(column: string | null, message: string, typed?: string, onSite = false): void {
    this.queries.push({
      sheet: this.#table.name,
      row: this.#row.row,
      column: column === null ? null : this.headingOf(column),
      typed: typed ?? (column === null ? "" : (this.text(column) ?? "")),
      message,
      ...(this.#key === undefined ? {} : { key: this.#key }),
      ...(onSite ? { asksOnSite: true as const } : {}),
    });
  }

  /** A cell through one of the readers of quantities/; its remarks and its failure become queries. */
  parsed<T>(column: string, parse: (cell: TypedCell, mark: NumberMark) => Parsed<T>): T | undefined {
    const cell = this.cell(column);
    if (cell === null) return undefined;
    const answer = parse(this.#withHeadingUnit(column, cell), this.#mark(cell));
    if (!answer.ok) {
      this.ask(column, answer.message);
      return undefined;
    }
    for (const remark of answer.remarks) this.ask(column, remark);
    return answer.value;
  }

  /** A cell of ohms; words beside the number that nobody understands are asked about. */
  ohms(column: string, options: OhmsOptions = {}, text?: string): TypedOhms | undefined {
    const value = this.parsed(column, (cell, mark) => {
      const answer = this.readers.ohms(text ?? cell, mark);
      // Only "same" needs the reading it is the same as, and cannot be read without it.
      return answer.ok || options.sameAs === undefined ? answer : parseOhms(text ?? cell, { ...options, ...mark });
    });
    if (value !== undefined && value.words.length > 0 && value.reading !== undefined) {
      this.ask(
        column,
        `"${value.words.join(", ")}" beside the number was not understood and not used. Move it to the notes, or write the reading with its unit.`,
      );
    }
    return value;
  }

  /** A cell that is a number has a point; else what the table shows of its writer's habit. */
  #mark(cell: TypedCell): NumberMark {
    if (typeof cell === "number") return { decimalMark: "." };
    return this.#table.decimalMark === undefined ? {} : { decimalMark: this.#table.decimalMark };
  }

  /** A bare number takes the unit that the typed heading states. */
  #withHeadingUnit(column: string, cell: TypedCell): TypedCell {
    const unit = this.#table.headings.get(column)?.unit;
    const text = cellText(cell);
    if (unit === undefined || typedNumber(text.replace(/^[~<>≈]\s*/, "")) === undefined) return cell;
    return unit === "k"
      ? `${text}k`
      : unit === "A" || unit === "F" || unit === "ft" || unit === "m"
        ? `${text} ${unit}`
        : cell;
  }

  /** A plain number; words beside it are not accepted. */
  number(
    column: string,
    range: { readonly least?: number; readonly most?: number; readonly whole?: boolean } = {},
  ): number | undefined {
    const text = this.known(column);
    if (text === undefined) return undefined;
    const negative = /^-/.test(text);
    const found = typedNumber(text.replace(/^[-+]/, "").replace(/%$/, ""), this.#mark(this.cell(column)).decimalMark);
    const value =
      found === undefined ? undefined : (negative ? -found.value : found.value) / (text.endsWith("%") ? 100 : 1);
    const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY, whole = false } = range;
    if (value === undefined || value < least || value > most || (whole && !Number.isInteger(value))) {
      const bounds = [
        Number.isFinite(least) ? `at least ${least}` : "",
        Number.isFinite(most) ? `at most ${most}` : "",
      ].filter((bound) => bound !== "");
      this.ask(
        column,
        `Expected ${whole ? "a whole number" : "a number"}${bounds.length > 0 ? `, ${bounds.join(" and ")}` : ""} (${expectedIn(this.#table.sheet, column)}). The cell was not used.`,
      );
      return undefined;
    }
    if (found?.doubt !== undefined) this.ask(column, found.doubt);
    return value;
  }

  /** One of a few words, written in any case and with or without spaces. */
  choice<const T extends string>(
    column: string,
    allowed: readonly T[],
    others: Readonly<Record<string, NoInfer<T>>> = {},
  ): T | undefined {
    const text = this.known(column);
    if (text === undefined) return undefined;
    const bare = (word: string) => word.toLowerCase().replace(/[^\p{L}\p{N}]/gu, "");
    const same =
      allowed.find((word) => bare(word) === bare(text)) ??
      Object.entries(others).find(([word]) => bare(word) === bare(text))?.[1];
    if (same === undefined) this.ask(column, `Expected one of ${allowed.join(", ")}. The cell was not used.`);
    return same;
  }

  yesNo(column: string): boolean | undefined {
    const word = this.choice(column, ["yes", "no"], {
      y: "yes",
      n: "no",
      true: "yes",
      false: "no",
      x: "yes",
      "1": "yes",
      "0": "no",
      on: "yes",
      off: "no",
    });
    return word === undefined ? undefined : word === "yes";
  }
}
