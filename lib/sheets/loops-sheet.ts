import type { Block, Cell, Sheet } from "../report/model.js";
import { treatmentWords } from "../treatments/treatment.js";
import { column, line, paragraph, text, title, wrapped } from "./cells.js";
import { provedWords, readingWords, surenessWords, treatmentOf, verdictWords } from "./loop-words.js";
import { isExcluded, loopsShort, type SheetInput, surveyLoopOf } from "./sheet-input.js";

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
          column("row", "Row", "text", 6),
          column("key", "Key", "text", 7),
          column("panel", "Panel", "text", 8),
          column("loop", "Loop", "text", 7),
          column("tag", "Tag", "wrapped", 12),
          column("reading", "Read", "wrapped", 16),
          column("verdict", "Verdict", "wrapped", 40),
          column("sure", "How sure", "text", 10),
          column("proved", "Openings proved", "text", 10),
          column("recommended", "By itself", "wrapped", 16),
          column("treatment", "In the plan", "wrapped", 18),
          column("reason", "Why", "wrapped", 72),
        ],
        rows: input.estimate.loops.map((loop): readonly Cell[] => {
          const role = isExcluded(loop) ? ("stop" as const) : undefined;
          return [
            text(String(loop.row)),
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
            wrapped(isExcluded(loop) ? loop.facts.map(({ words }) => words).join(" ") : loop.reason),
          ];
        }),
      },
      ...cannotTellBlocks(input),
    ],
  };
}

/** How many openings are proved stands in a column of its own. */
const isNoCount = (words: string): boolean => !words.startsWith("Each opened reading proves");

/** What no reading of this kind can tell, each sentence once for all loops it holds for. */
function cannotTellBlocks(input: SheetInput): readonly Block[] {
  const told = input.estimate.loops.filter((loop) => !isExcluded(loop));
  const keysOf = new Map<string, string[]>();
  for (const { key, cannotTell } of told) {
    for (const words of cannotTell.filter(isNoCount)) keysOf.set(words, [...(keysOf.get(words) ?? []), key]);
  }
  if (keysOf.size === 0) return [];
  const rows = [...keysOf].map(([words, keys]) =>
    line(keys.length === told.length ? "every loop" : loopsShort(input, keys), wrapped(words)),
  );
  return [title("What these readings cannot tell", 2), { kind: "keyValue", labelColumns: 6, valueColumns: 6, rows }];
}
