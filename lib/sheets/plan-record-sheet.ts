import type { HeldPlan } from "../estimate/held-plan.js";
import type { Sheet } from "../report/model.js";
import type { TypedSheet } from "../survey/survey.js";
import { column, paragraph, text, title } from "./cells.js";

/** Name of the sheet, by which a later run finds it. */
export const planRecordName = "Plan record";

/** Longest piece of the record in one cell; a spreadsheet cell holds 32,767 characters. */
const longestPiece = 30_000;
const marker = "piece";

/** The plan as a record for a later run: held with --hold-plan, or compared with for the list of changes. */
export function planRecordSheet(held: HeldPlan): Sheet {
  const record = JSON.stringify(held);
  const pieces = Array.from({ length: Math.ceil(record.length / longestPiece) }, (_, index) =>
    record.slice(index * longestPiece, (index + 1) * longestPiece),
  );
  return {
    name: planRecordName,
    part: "working",
    printed: "none",
    columnWidths: [10, 90],
    blocks: [
      title("Plan record"),
      paragraph(
        "For the next run on this workbook: the plan as it was, so that it can be held or compared. Not for reading; leave it as it is.",
        "note",
      ),
      {
        kind: "table",
        name: "plan_record",
        plain: true,
        whenEmpty: "",
        columns: [column("piece", "Piece", "text", 10), column("record", "Record", "text", 90)],
        rows: pieces.map((piece, index) => [text(`${marker} ${index + 1}`), text(piece)]),
      },
    ],
  };
}

/** The record's text put together again; undefined where the workbook carries none. */
export function planRecordIn(sheets: readonly TypedSheet[]): string | undefined {
  const sheet = sheets.find((one) => one.sheet === planRecordName);
  if (!sheet) return undefined;
  const pieces = sheet.rows.flatMap(({ cells }) => {
    const at = cells.findIndex((cell) => typeof cell === "string" && cell.startsWith(`${marker} `));
    const piece = cells[at + 1];
    return at >= 0 && typeof piece === "string" ? [piece] : [];
  });
  return pieces.length === 0 ? undefined : pieces.join("");
}
