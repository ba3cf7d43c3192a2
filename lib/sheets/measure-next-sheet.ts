import type { EstimatedLoop } from "../estimate/estimate.js";
import type { Sheet } from "../report/model.js";
import { column, handwriting, money, number, paragraph, text, title, wrapped } from "./cells.js";
import { isExcluded, type SheetInput } from "./sheet-input.js";

/** Most readings of one loop, and of the job, that one walk takes. */
const mostOfLoop = 2;
const mostListed = 36;

const bestOf = (next: EstimatedLoop["next"]): EstimatedLoop["next"] =>
  [...next]
    .filter(({ net }) => net > 0)
    .sort((a, b) => b.net - a.net)
    .slice(0, mostOfLoop);

/** Readings that are worth their time, as a walking list by panel, with room to write the answer. */
export function measureNextSheet(input: SheetInput): Sheet | undefined {
  const order = input.estimate.site.panels;
  const worth = input.estimate.loops
    .filter((loop) => !isExcluded(loop))
    .flatMap((loop) => bestOf(loop.next).map((next) => ({ loop, next })))
    .sort((a, b) => b.next.net - a.next.net);
  if (worth.length === 0) return undefined;
  const listed = worth.slice(0, mostListed);
  const at = (loop: EstimatedLoop) => order.indexOf(loop.panel) * 1e6 + input.estimate.loops.indexOf(loop);
  const rows = [...listed].sort((a, b) => at(a.loop) - at(b.loop) || b.next.net - a.next.net);
  const left = worth.length - listed.length;
  return {
    name: "Measure next",
    orientation: "landscape",
    headingOf: "measure_next",
    blocks: [
      title("Readings worth taking before the plan is final"),
      paragraph(
        `Volts before ohms on every pair, both conductors lifted. Expected saving is what the answer is worth on average. In walking order, at most two for each loop${left > 0 ? `; ${left} of less worth are left out` : ""}. Write the answers on Survey Loops and run the estimate again.`,
        "note",
      ),
      {
        kind: "table",
        name: "measure_next",
        whenEmpty: "",
        rowHeight: 22,
        columns: [
          column("panel", "Panel", "text", 8),
          column("loop", "Loop", "text", 8),
          column("tag", "Tag", "wrapped", 16),
          column("words", "Reading", "wrapped", 78),
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
