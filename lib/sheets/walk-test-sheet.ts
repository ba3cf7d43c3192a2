import type { Cell, Sheet } from "../report/model.js";
import { column, handwriting, paragraph, text, title, wrapped } from "./cells.js";
import { bandOf, openedWords, zoneName } from "./loop-words.js";
import { isExcluded, isHandsOff, isWired, type SheetInput, surveyLoopOf } from "./sheet-input.js";

/** A line for every opening: what the control should show, what it did show. */
export function walkTestSheet(input: SheetInput): Sheet | undefined {
  const loops = input.estimate.loops.filter(
    (loop) => !isExcluded(loop) && !isHandsOff(loop) && loop.treatment !== "retire",
  );
  const rows = loops.flatMap((loop): (readonly Cell[])[] => {
    const survey = surveyLoopOf(input, loop);
    const openings = Math.max(1, loop.openingsProved.total);
    return Array.from({ length: openings }, (_, index) => [
      text(loop.panel),
      text(loop.loop),
      wrapped(loop.tag),
      wrapped(zoneName(loop)),
      wrapped(survey?.place),
      text(`${index + 1} of ${openings}`),
      wrapped(
        isWired(loop) && loop.expectedAsLeft !== null
          ? `${bandOf(loop.expectedAsLeft.shut)}; opened: ${openedWords(loop)}`
          : "wireless: see it at the control",
      ),
      handwriting,
      handwriting,
      handwriting,
    ]);
  });
  if (rows.length === 0) return undefined;
  return {
    name: "Walk test",
    orientation: "landscape",
    headingOf: "walk_test",
    blocks: [
      title("Walk test: every opening once"),
      paragraph(
        "Account on test first. Open each opening alone, see it at the control, shut it, see it restore. Hold-up: owner present, centre told. Wait 60 s after power before the first one.",
        "note",
      ),
      {
        kind: "table",
        name: "walk_test",
        whenEmpty: "",
        rowHeight: 22,
        columns: [
          column("panel", "Panel", "text", 8),
          column("loop", "Loop", "text", 7),
          column("tag", "Tag", "wrapped", 14),
          column("zone", "Zone", "wrapped", 24),
          column("place", "Place", "wrapped", 18),
          column("opening", "Opening", "text", 9),
          column("expect", "Expect shut; opened", "wrapped", 44),
          column("opened", "Seen opened", "text", 12),
          column("restored", "Seen restored", "text", 12),
          column("initials", "Initials", "text", 10),
        ],
        rows,
      },
    ],
  };
}
