import type { Sheet } from "../report/model.js";
import { column, handwriting, money, number, paragraph, text, title, wrapped } from "./cells.js";
import { isExcluded, type SheetInput } from "./sheet-input.js";

/** Readings that are worth their time, as a walking list by panel, with room to write the answer. */
export function measureNextSheet(input: SheetInput): Sheet | undefined {
  const rows = input.estimate.loops
    .filter((loop) => !isExcluded(loop))
    .flatMap((loop) => loop.next.filter(({ net }) => net > 0).map((next) => ({ loop, next })));
  if (rows.length === 0) return undefined;
  const panels = [...new Set(rows.map(({ loop }) => loop.panel))];
  rows.sort((a, b) => panels.indexOf(a.loop.panel) - panels.indexOf(b.loop.panel) || b.next.net - a.next.net);
  return {
    name: "Measure next",
    orientation: "landscape",
    headingOf: "measure_next",
    blocks: [
      title("Readings worth taking before the plan is final"),
      paragraph(
        "Volts before ohms on every pair, both conductors lifted. Expected saving is what the answer is worth on average; the surest money stands first for each panel. Write the answers on Survey Loops and run the estimate again.",
        "note",
      ),
      {
        kind: "table",
        name: "measure_next",
        whenEmpty: "",
        rowHeight: 26,
        columns: [
          column("panel", "Panel", "text", 8),
          column("loop", "Loop", "text", 8),
          column("tag", "Tag", "wrapped", 16),
          column("words", "Reading", "wrapped", 60),
          column("minutes", "Time", "minutes", 9),
          column("saving", "Expected saving", "money", 14),
          column("answer", "Answer", "text", 22, { role: "handwriting" }),
        ],
        rows: rows.map(({ loop, next }) => [
          text(loop.panel),
          text(loop.loop),
          wrapped(loop.tag),
          wrapped(next.words),
          number(Math.max(1, Math.round(next.minutes))),
          money(Math.round(next.saving * 100)),
          handwriting,
        ]),
      },
    ],
  };
}
