import type { Query } from "../problems/query.js";
import { columnsOf } from "./columns.js";
import type { RawTable } from "./raw-table.js";
import { RowReader, verbatim } from "./row-reader.js";
import type { FinishedJobRow } from "./survey.js";

/**
 * Rows of the sheet of finished jobs. Every row is kept as typed; one that cannot be counted is asked about, one that is
 * not to be used is not.
 */
export function readFinishedJobs(table: RawTable): {
  readonly rows: readonly FinishedJobRow[];
  readonly queries: readonly Query[];
} {
  const queries: Query[] = [];
  const rows = table.rows.map((raw): FinishedJobRow => {
    const row = new RowReader(table, raw);
    const use = row.text("use") === undefined ? true : row.yesNo("use");
    const counts = use === true ? countsOf(row) : null;
    queries.push(...row.queries);
    return { sheet: table.name, row: raw.row, typed: typedCells(row), counts };
  });
  return { rows, queries };
}

function countsOf(row: RowReader): FinishedJobRow["counts"] {
  const job = row.text("job");
  const kind = row.choice("kind", ["loops", "asLeft", "repair", "hours"]);
  const first = figure(row, "first");
  const second = figure(row, "second");
  const third = row.text("third") === undefined && kind !== "hours" ? 0 : figure(row, "third");
  if (job === undefined || kind === undefined || first === undefined || second === undefined || third === undefined) {
    row.ask(
      null,
      "The job, what was counted and its figures are all needed (hours: three); this row was left out of the estimate. Complete it, or write no under Use.",
    );
    return null;
  }
  return { job, finished: row.text("finished") ?? "", kind, name: row.text("name") ?? "", first, second, third };
}

/** A cell that is a number is taken to its last digit; text is read as every number is. */
function figure(row: RowReader, column: string): number | undefined {
  const cell = row.cell(column);
  return typeof cell === "number" && Number.isFinite(cell) ? cell : row.number(column);
}

function typedCells(row: RowReader): FinishedJobRow["typed"] {
  return Object.fromEntries(
    columnsOf("Finished jobs").flatMap(({ column }): [string, string | number][] => {
      const cell = row.cell(column);
      const typed = typeof cell === "number" ? cell : verbatim(cell);
      return typed === "" ? [] : [[column, typed]];
    }),
  );
}
