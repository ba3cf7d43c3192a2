import type { PacksWanted } from "../estimate/held-plan.js";
import type { TypedSheet } from "../survey/survey.js";

export type { PacksWanted };

const bare = (cell: unknown): string =>
  typeof cell === "string" ? cell.replace(/^✎\s*/u, "").trim().toLowerCase() : "";

/**
 * Reads the column Packs wanted back from the Bill of a former estimate, so that a new one can carry it on. Empty
 * where there is no such sheet or nothing was written there.
 */
export function packsWantedIn(sheets: readonly TypedSheet[]): PacksWanted {
  const bill = sheets.find(({ sheet }) => sheet === "Bill");
  if (bill === undefined) return {};
  const head = bill.rows.findIndex(({ cells }) => cells.some((cell) => bare(cell) === "packs wanted"));
  const headings = bill.rows[head]?.cells.map(bare) ?? [];
  const [code, wanted] = [headings.indexOf("code"), headings.indexOf("packs wanted")];
  if (code < 0 || wanted < 0) return {};
  return Object.fromEntries(
    bill.rows.slice(head + 1).flatMap(({ cells }): [string, number][] => {
      const [name, packs] = [cells[code], cells[wanted]];
      const whole = typeof packs === "number" && Number.isInteger(packs) && packs >= 0;
      return (typeof name === "string" || typeof name === "number") && whole ? [[String(name), packs]] : [];
    }),
  );
}
