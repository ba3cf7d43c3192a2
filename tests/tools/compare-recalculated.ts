import { cellAddress } from "../../lib/report/addresses.js";
import type { PlannedCell, PrintablePlan } from "../../lib/report/printable-plan.js";

/** What came of comparing a plan's cached values with a recalculation. */
export interface Comparison {
  /** Formula cells compared. */
  readonly compared: number;
  /** Cells that differ, in words. */
  readonly wrong: readonly string[];
  /** Cells of any kind that show a spreadsheet error. */
  readonly errors: readonly string[];
}

/** Every formula cell's cached value against raw values by sheet: 1e-9 of its size, money to the cent. */
export function compareRecalculated(plan: PrintablePlan, sheets: ReadonlyMap<string, string[][]>): Comparison {
  const wrong: string[] = [];
  let compared = 0;
  for (const sheet of plan.sheets) {
    for (const cell of sheet.cells) {
      if (cell.content.kind !== "formula") continue;
      compared += 1;
      const shown = sheets.get(sheet.name)?.[cell.row - 1]?.[cell.column - 1];
      if (shown === undefined || !agrees(cell, cell.content.cached, shown)) {
        const at = `${sheet.name}!${cellAddress(cell.row, cell.column)}`;
        wrong.push(
          `${at} =${cell.content.text}: cached ${String(cell.content.cached)}, recalculated ${shown ?? "nothing"}`,
        );
      }
    }
  }
  const errors = [...sheets].flatMap(([name, rows]) =>
    rows.flatMap((row, at) =>
      row.filter((text) => /^(#[A-Z/0]+[!?]?|Err:\d+)$/.test(text)).map((text) => `${name} row ${at + 1}: ${text}`),
    ),
  );
  return { compared, wrong, errors };
}

/** A raw value as a number: 19% is 0.19. */
const numberOf = (text: string): number => (text.endsWith("%") ? Number(text.slice(0, -1)) / 100 : Number(text));

function agrees(cell: PlannedCell, cached: number | string | boolean, shown: string): boolean {
  if (typeof cached === "boolean") return shown === (cached ? "TRUE" : "FALSE");
  if (typeof cached === "string") return shown === cached;
  if (shown === "") return false;
  if (cell.format === "money") return Math.round(numberOf(shown) * 100) === Math.round(cached * 100);
  return Math.abs(numberOf(shown) - cached) <= 1e-9 * Math.max(1, Math.abs(cached));
}
