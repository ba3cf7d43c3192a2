import { type Child, el } from "./elements.js";

/** One column of a table. */
export interface TableColumn {
  readonly words: string;
  /** Figures stand to the right. */
  readonly figures?: boolean;
}

/** A row; the first cell names it. */
export interface TableRow {
  readonly cells: readonly Child[];
  readonly total?: boolean;
  readonly marked?: boolean;
}

/**
 * A real table. Where the pane is narrow each row becomes a block with its headings beside the values; the roles are
 * written out because that would take them away.
 */
export function dataTable(given: {
  readonly caption: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  readonly hideCaption?: boolean;
}): HTMLTableElement {
  const { caption, columns, rows, hideCaption = false } = given;
  return el(
    "table",
    { role: "table" },
    el("caption", { class: hideCaption ? "unseen" : undefined }, caption),
    el(
      "thead",
      { role: "rowgroup" },
      el(
        "tr",
        { role: "row" },
        ...columns.map(({ words, figures }) =>
          el("th", { role: "columnheader", scope: "col", class: figures ? "figures" : undefined }, words),
        ),
      ),
    ),
    el("tbody", { role: "rowgroup" }, ...rows.map((row) => tableRow(columns, row))),
  );
}

function tableRow(columns: readonly TableColumn[], { cells, total, marked }: TableRow): HTMLTableRowElement {
  const looks = [...(total ? ["total"] : []), ...(marked ? ["marked"] : [])].join(" ");
  return el(
    "tr",
    { role: "row", class: looks === "" ? undefined : looks },
    ...cells.map((cell, index) => {
      const column = columns[index];
      const shared = { class: column?.figures ? "figures" : undefined, "data-heading": column?.words ?? "" };
      return index === 0
        ? el("th", { role: "rowheader", scope: "row", ...shared }, cell)
        : el("td", { role: "cell", ...shared }, cell);
    }),
  );
}
