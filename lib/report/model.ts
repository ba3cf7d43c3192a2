import type { Formula } from "./formula.js";

/** How a value is shown. The writer knows what each means in its program; nothing else here says anything of fonts. */
export type Format =
  | "text"
  | "wrapped"
  | "general"
  | "count"
  | "decimal"
  | "money"
  | "ohms"
  | "hours"
  | "minutes"
  | "percent"
  | "rate"
  | "meters"
  | "volts"
  | "milliamps"
  | "date";

/** What a cell is for. Every role differs from "body" by more than colour, because these sheets are printed in black. */
export type Role =
  | "body"
  | "title"
  | "heading"
  | "subheading"
  | "columnHeading"
  /** Heading over a column of figures, set to the right like them. */
  | "figureHeading"
  | "label"
  | "note"
  | "input"
  | "total"
  | "warning"
  | "stop"
  | "handwriting"
  | "link";

/** What a formula cell can show. */
export type CachedValue = number | string | boolean;

interface Styled {
  readonly format?: Format;
  readonly role?: Role;
}

/** One cell as plain data. */
export type Cell = Styled &
  (
    | { readonly kind: "blank" }
    | { readonly kind: "text"; readonly text: string }
    | { readonly kind: "number"; readonly value: number }
    /** Shown as whole currency units; kept here in integer cents. [cents] */
    | { readonly kind: "money"; readonly cents: number }
    /** A calendar day, YYYY-MM-DD. */
    | { readonly kind: "date"; readonly iso: string }
    /** `cached` is what our engine says the cell shows, in the sheet's unit (money in currency units). */
    | { readonly kind: "formula"; readonly formula: Formula; readonly cached?: CachedValue }
    /** A cell of a column that has one formula for all its rows. */
    | { readonly kind: "calculated"; readonly cached?: CachedValue }
    /** Jumps to a sheet, or to a table or block on it. */
    | { readonly kind: "link"; readonly text: string; readonly sheet: string; readonly block?: string }
  );

/** What may be typed into an input cell, and what to say when something else is. */
export type Validation = { readonly message: string } & (
  | { readonly kind: "list"; readonly values: readonly string[] }
  | { readonly kind: "listFrom"; readonly table: string; readonly column: string }
  | { readonly kind: "number"; readonly minimum?: number; readonly maximum?: number; readonly whole?: boolean }
  | { readonly kind: "text"; readonly longest: number }
);

/** Cells take another role while a condition holds. */
export interface Highlight {
  readonly when: Formula;
  readonly role: "warning" | "stop" | "input" | "total" | "note";
  /** Keys of the table columns that change; all columns when absent. */
  readonly columns?: readonly string[];
}

/** What stands under a column in the totals row. */
export type ColumnTotal =
  | { readonly kind: "label"; readonly text: string }
  | { readonly kind: "sum"; readonly cached?: number }
  | { readonly kind: "formula"; readonly formula: Formula; readonly cached?: CachedValue };

/** One column of a table. */
export interface TableColumn {
  /** How formulas name the column. */
  readonly key: string;
  readonly heading: string;
  /** Printed in brackets behind the heading. */
  readonly unit?: string;
  readonly format: Format;
  readonly role?: Role;
  /** Characters of the normal font. */
  readonly width: number;
  /** One formula for all rows; the rows then hold "calculated" cells. */
  readonly formula?: Formula;
  /** Makes the column's data cells unlocked and marks the heading. */
  readonly input?: Validation;
  readonly total?: ColumnTotal;
}

/** A table: columns with unit and style, rows of cells, perhaps totals. */
export interface TableBlock {
  readonly kind: "table";
  /** Name in formulas, unique in the report. */
  readonly name: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly Cell[])[];
  /** Stands in the first column when there are no rows: a spreadsheet table needs at least one. */
  readonly whenEmpty: string;
  /** True for printed forms: cells only, no spreadsheet table behind them. */
  readonly plain?: boolean;
  /** Shows filter buttons in the heading. */
  readonly filter?: boolean;
  /** Least height of a data row, for sheets that are written on by hand. [points] */
  readonly rowHeight?: number;
  readonly highlights?: readonly Highlight[];
}

/** One line of a key–value block. */
export interface KeyValueRow {
  readonly label: string;
  readonly cell: Cell;
  /** Makes the value cell a named cell. */
  readonly name?: string;
  /** Unit, reason or source beside the value. */
  readonly note?: string;
  /** Makes the value an unlocked input. */
  readonly input?: Validation;
  readonly highlights?: readonly Highlight[];
}

/** Labels with one value each. */
export interface KeyValueBlock {
  readonly kind: "keyValue";
  readonly id?: string;
  readonly rows: readonly KeyValueRow[];
  /** Sheet columns that label, value and note take. Each at least 1; default 1, 1 and the rest of the width. */
  readonly labelColumns?: number;
  readonly valueColumns?: number;
  readonly noteColumns?: number;
}

/** A picture, drawn from SVG. */
export interface PictureBlock {
  readonly kind: "picture";
  readonly id?: string;
  readonly svg: string;
  readonly widthPixels: number;
  readonly heightPixels: number;
  /** What the picture shows, for a reader who cannot see it. */
  readonly alt: string;
}

/** Points at one column of a table. */
export interface ColumnOf {
  readonly table: string;
  readonly column: string;
}

/** A chart of table columns that stays alive in the workbook. */
export interface ChartBlock {
  readonly kind: "chart";
  readonly id?: string;
  readonly chart: "bar" | "stackedBar" | "line";
  readonly title: string;
  readonly categories: ColumnOf;
  readonly series: readonly ColumnOf[];
  /** Line charts only: a shaded band from `low` upwards by `spread`. */
  readonly band?: { readonly low: ColumnOf; readonly spread: ColumnOf };
  readonly categoryTitle?: string;
  readonly valueTitle?: string;
  readonly widthPixels: number;
  readonly heightPixels: number;
  readonly alt: string;
}

/** What a sheet is made of, from top to bottom. */
export type Block =
  | { readonly kind: "title"; readonly id?: string; readonly text: string; readonly level: 1 | 2 | 3 }
  | {
      readonly kind: "paragraph";
      readonly id?: string;
      readonly cell: Cell;
      /** Without a free row behind it, for the lines of a list. */
      readonly tight?: boolean;
      /** Sheet columns it runs across; the whole width when absent. */
      readonly columns?: number;
      readonly name?: string;
      readonly highlights?: readonly Highlight[];
    }
  | KeyValueBlock
  | TableBlock
  | PictureBlock
  | ChartBlock
  | { readonly kind: "pageBreak" }
  | { readonly kind: "space"; readonly rows: number }
  /** Blocks side by side: each part starts at its own sheet column (1 = first). */
  | {
      readonly kind: "beside";
      readonly parts: readonly { readonly column: number; readonly blocks: readonly Block[] }[];
    };

/** One sheet. */
export interface Sheet {
  readonly name: string;
  readonly blocks: readonly Block[];
  /** Least widths of the sheet's columns from the first on; tables may widen them. [characters] */
  readonly columnWidths?: readonly number[];
  readonly orientation?: "portrait" | "landscape";
  /** Keeps the rows down to this table's heading in view, and repeats the heading on every printed page. */
  readonly headingOf?: string;
  /** Columns from the left that stay in view. */
  readonly frozenColumns?: number;
  /** "open" leaves the whole sheet editable; everything else is locked except inputs. */
  readonly protection?: "locked" | "open";
  /** "none" for sheets of the screen: nothing of them is printed with the workbook. */
  readonly printed?: "all" | "none";
  /** Colour of the sheet's tab; the name tells the same in words. */
  readonly part?: "input" | "working" | "output";
}

/** A whole report, before it has addresses. */
export interface Report {
  readonly title: string;
  /** Printed at the top of every page. */
  readonly job: string;
  /** Printed at the bottom of every page, for example "revision 2, void if older". */
  readonly revision: string;
  /** Day of issue, YYYY-MM-DD. */
  readonly date: string;
  /** Three-letter code of the one currency. */
  readonly currency: string;
  readonly paper: "A4" | "Letter";
  readonly sheets: readonly Sheet[];
}
