import type { EstimatedLoop } from "../estimate/estimate.js";
import type { Block, Cell, Sheet } from "../report/model.js";
import { treatmentWords } from "../treatments/treatment.js";
import { column, line, money, paragraph, text, title, wrapped } from "./cells.js";
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
        "A verdict is what the readings make likely, to the nearest 5 %. Proved counts openings whose own opening was seen on the meter; a kept loop stays provisional until all are. Costs us is what the loop causes by itself with what may still go wrong, before its share of modules and of work common to the job. Pin or forbid a treatment on the sheet Survey Loops.",
        "note",
      ),
      {
        kind: "table",
        name: "loops",
        filter: true,
        whenEmpty: "No loops.",
        columns: [
          column("row", "Row", "text", 5),
          column("key", "Key", "text", 6),
          column("panel", "Panel", "text", 6),
          column("loop", "Loop", "text", 6),
          column("tag", "Tag", "wrapped", 12),
          column("reading", "Read", "wrapped", 13),
          column("verdict", "Verdict", "wrapped", 32),
          column("sure", "How sure", "text", 10),
          column("proved", "Proved", "text", 8),
          column("treatment", "In the plan", "wrapped", 13),
          column("recommended", "By itself", "wrapped", 13),
          column("reason", "Why", "wrapped", 52),
          column("cost", "Costs us, expected", "money", 13),
        ],
        rows: input.estimate.loops.map((loop) => loopRow(input, loop)),
      },
      ...cannotTellBlocks(input),
    ],
  };
}

function loopRow(input: SheetInput, loop: EstimatedLoop): readonly Cell[] {
  const left = isExcluded(loop);
  return [
    text(String(loop.row)),
    text(loop.key),
    text(loop.panel),
    text(loop.loop),
    wrapped(loop.tag),
    wrapped(left ? "" : readingWords(surveyLoopOf(input, loop))),
    wrapped(verdictWords(loop)),
    text(surenessWords(loop)),
    text(left ? "" : provedWords(loop)),
    wrapped(treatmentOf(loop), left ? "stop" : undefined),
    wrapped(loop.recommended === loop.treatment ? "the same" : treatmentWords[loop.recommended]),
    wrapped(left ? loop.facts.map(({ words }) => words).join(" ") : loop.reason),
    left ? text("") : money(loop.cost.costCents),
  ];
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
  return [title("What these readings cannot tell", 2), { kind: "keyValue", labelColumns: 6, valueColumns: 7, rows }];
}
