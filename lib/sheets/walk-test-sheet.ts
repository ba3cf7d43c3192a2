import type { Sheet } from "../report/model.js";
import { column, handwriting, number, paragraph, text, title, wrapped } from "./cells.js";
import type { SheetInput } from "./sheet-input.js";

/** A line for every opening and detector: how to try it, what the control should show, what it did show. */
export function walkTestSheet({ estimate }: SheetInput): Sheet | undefined {
  const { lines, without, settleSeconds } = estimate.cutOver.walkTest;
  const { doNotTouch, readAgainFirst } = estimate.cutOver;
  if (lines.length === 0) return undefined;
  const givenUp = without.filter(({ name }) => !doNotTouch.includes(name)).map(({ name }) => name);
  return {
    name: "Walk test",
    orientation: "landscape",
    headingOf: "walk_test",
    blocks: [
      title("Walk test: every opening once"),
      ...(doNotTouch.length === 0 ? [] : [paragraph(`Do not touch ${doNotTouch.join(", ")}: not tried here.`, "stop")]),
      paragraph(
        `Account on test first. Try each line alone, see it at the control, see it restore. Wait ${settleSeconds} s after power before the first one. What differs is written down and left.`,
        "note",
      ),
      ...(givenUp.length === 0 ? [] : [paragraph(`No line, given up and signed for: ${givenUp.join(", ")}.`)]),
      ...(readAgainFirst.length === 0
        ? []
        : [paragraph(`No line before they were read again: ${readAgainFirst.join(", ")}.`, "warning")]),
      {
        kind: "table",
        name: "walk_test",
        whenEmpty: "",
        rowHeight: 22,
        columns: [
          column("line", "Line", "count", 6),
          column("loop", "Loop", "wrapped", 16),
          column("zone", "Zone", "wrapped", 22),
          column("what", "What", "wrapped", 17),
          column("place", "Place", "wrapped", 18),
          column("medium", "By", "text", 9),
          column("how", "Try", "wrapped", 26),
          column("rest", "At rest", "wrapped", 18),
          column("tried", "While tried", "wrapped", 24),
          column("found", "Found", "text", 12),
          column("time", "Time", "text", 8),
          column("initials", "Initials", "text", 9),
        ],
        rows: lines.map((line) => [
          number(line.number),
          wrapped(line.name),
          wrapped(line.zone),
          wrapped(line.what),
          wrapped(line.place),
          text(line.medium),
          wrapped(line.how),
          wrapped(line.atRest),
          wrapped(line.tried),
          handwriting,
          handwriting,
          handwriting,
        ]),
      },
    ],
  };
}
