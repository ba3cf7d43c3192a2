import type { Query } from "../problems/query.js";
import { cellText } from "../quantities/typed-cell.js";
import type { RawTable } from "./raw-table.js";

/** The stable name of every row, in row order, and the questions it raised. */
export interface RowKeys {
  readonly keys: readonly string[];
  readonly queries: readonly Query[];
}

/**
 * Keeps the keys that stand in the sheet and gives new ones (R001 …) above the highest; a key that stands there a
 * second time is replaced and asked about, because edits could otherwise go to the wrong row.
 */
export function rowKeys(table: RawTable): RowKeys {
  const typed = table.rows.map(({ cells }) => cellText(cells.get("key") ?? null));
  const numbers = typed.map((key) => Number(/^R(\d{1,6})$/.exec(key)?.[1] ?? 0));
  let next = Math.max(0, ...numbers) + 1;
  const seen = new Set<string>();
  const queries: Query[] = [];
  const fresh = () => `R${String(next++).padStart(3, "0")}`;
  const keys = typed.map((key, index) => {
    if (key !== "" && !seen.has(key)) {
      seen.add(key);
      return key;
    }
    const given = fresh();
    if (key !== "") {
      queries.push({
        sheet: table.name,
        row: table.rows[index]?.row ?? null,
        column: table.headings.get("key")?.heading ?? "key",
        typed: key,
        message: `The key ${key} stands in two rows, as a copied row leaves it. This row is ${given} now; check that its edits belong to it.`,
        key: given,
      });
    }
    seen.add(given);
    return given;
  });
  return { keys, queries };
}
