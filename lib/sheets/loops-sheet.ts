import type { Cell, Sheet } from "../report/model.js";
import { treatmentWords } from "../treatments/treatment.js";
import { column, number, paragraph, text, title, wrapped } from "./cells.js";
import { provedWords, readingWords, surenessWords, treatmentOf, verdictWords } from "./loop-words.js";
import { isExcluded, type SheetInput, surveyLoopOf } from "./sheet-input.js";

/** One row for each loop: what was read, what it is and how sure, what is done about it and why. */
export function loopsSheet(input: SheetInput): Sheet {
  return {
    name: "Loops",
    orientation: "landscape",
    headingOf: "loops",
    frozenColumns: 4,
    blocks: [
      title("Loops"),
      paragraph(
        "A verdict is what the readings make likely, to the nearest 5 %. Proved counts openings whose own opening was seen on the meter; a kept loop stays provisional until all are. Pin or forbid a treatment on the sheet Survey Loops.",
        "note",
      ),
      {
        kind: "table",
        name: "loops",
        filter: true,
        whenEmpty: "No loops.",
        columns: [
          column("row", "Row", "count", 6),
          column("key", "Key", "text", 7),
          column("panel", "Panel", "text", 8),
          column("loop", "Loop", "text", 7),
          column("tag", "Tag", "wrapped", 12),
          column("reading", "Read", "wrapped", 16),
          column("verdict", "Verdict", "wrapped", 26),
          column("sure", "How sure", "text", 10),
          column("proved", "Openings proved", "text", 10),
          column("recommended", "By itself", "wrapped", 16),
          column("treatment", "In the plan", "wrapped", 18),
          column("reason", "Why", "wrapped", 64),
        ],
        highlights: [],
        rows: input.estimate.loops.map((loop): readonly Cell[] => {
          const role = isExcluded(loop) ? ("stop" as const) : undefined;
          return [
            number(loop.row),
            text(loop.key),
            text(loop.panel),
            text(loop.loop),
            wrapped(loop.tag),
            wrapped(isExcluded(loop) ? "" : readingWords(surveyLoopOf(input, loop))),
            wrapped(verdictWords(loop)),
            text(surenessWords(loop)),
            text(isExcluded(loop) ? "" : provedWords(loop)),
            wrapped(treatmentWords[loop.recommended]),
            wrapped(treatmentOf(loop), role),
            wrapped(isExcluded(loop) ? loop.facts.map(({ words }) => words).join(" ") : reasonWords(loop)),
          ];
        }),
      },
    ],
  };
}

function reasonWords({ reason, cannotTell }: SheetInput["estimate"]["loops"][number]): string {
  return [reason, ...(cannotTell.length === 0 ? [] : [`Cannot be told: ${cannotTell.join(" ")}`])].join(" ");
}
