import type { EstimatedLoop } from "../estimate/estimate.js";
import { loopName } from "../estimate/summary.js";
import { binary, call, type Formula, named } from "../report/formula.js";
import type { Block, KeyValueRow, Sheet } from "../report/model.js";
import { type Treatment, treatmentWords } from "../treatments/treatment.js";
import { column, formulaCell, line, number, paragraph, title, toCents, wrapped } from "./cells.js";
import { demoPriceWords, type SheetInput } from "./sheet-input.js";

/** What the owner signs: scope by treatment, price and when it is due, clauses from the loops' state, what is left out. */
export function quoteSheet(input: SheetInput): Sheet {
  const { estimate } = input;
  const { clauses, stages, exclusions } = estimate.quote;
  return {
    name: "Quote",
    columnWidths: [40, 62, 14],
    blocks: [
      title(`Quote: ${estimate.site.name ?? "taking over the wired alarm loops"}`),
      ...(input.demoPrices ? [paragraph(demoPriceWords, "warning")] : []),
      paragraph(`Day ${input.date}. For ${estimate.loops.length} loops of the old alarm as read on the survey.`),
      title("What is done", 2),
      scopeTable(estimate.loops),
      title("Price", 2),
      {
        kind: "keyValue",
        rows: [
          line("Before tax", formulaCell(named("JobSell"), "money")),
          line("Tax", formulaCell(named("JobTax"), "money")),
          line("Price with tax", formulaCell(named("JobTotal"), "money", "total")),
          ...stages.map(({ stage }, index): KeyValueRow => {
            const due = line(`Due ${stage}`, formulaCell(dueAt(index, stages.length), "money"), {
              name: dueName(index),
            });
            return due;
          }),
        ],
      },
      title("Terms", 2),
      ...clauses.filter(({ id }) => id !== "demoPrices").map(({ words }, index) => listed(`${index + 1}. ${words}`)),
      { kind: "space", rows: 1 },
      title("Not in this price", 2),
      ...exclusions.map((words) => listed(`– ${words}`)),
      { kind: "space", rows: 1 },
      title("Accepted", 2),
      {
        kind: "table",
        name: "accepted",
        plain: true,
        whenEmpty: "",
        rowHeight: 30,
        columns: [
          column("name", "Name", "text", 40, { role: "handwriting" }),
          column("signature", "Signature", "text", 62, { role: "handwriting" }),
          column("day", "Day", "text", 14, { role: "handwriting" }),
        ],
        rows: [[{ kind: "blank" }, { kind: "blank" }, { kind: "blank" }]],
      },
    ],
  };
}

const listed = (words: string): Block => ({ kind: "paragraph", cell: wrapped(words), tight: true });

/** Name of the cell with the share of payment stage number `index`; it stands on Price. */
export const stageShareName = (index: number): string => `StageShare${index + 1}_`;
const dueName = (index: number): string => `StageDue${index + 1}_`;

/** A stage's share of the total; the last one takes what is left, so that the stages add up to it. */
function dueAt(index: number, count: number): Formula {
  if (index < count - 1) return toCents(binary(named("JobTotal"), "*", named(stageShareName(index))));
  const before = Array.from({ length: index }, (_, at): Formula => named(dueName(at)));
  return call(
    "ROUND",
    before.reduce((left, part) => binary(left, "-", part), named("JobTotal")),
    { kind: "literal", value: 2 },
  );
}

function scopeTable(loops: readonly EstimatedLoop[]): Block {
  const kinds = (Object.keys(treatmentWords) as Treatment[]).filter((kind) =>
    loops.some(({ treatment }) => treatment === kind),
  );
  return {
    kind: "table",
    name: "quote_scope",
    plain: true,
    whenEmpty: "Nothing.",
    columns: [
      column("what", "Treatment", "wrapped", 36),
      column("which", "Which", "wrapped", 62),
      column("count", "Loops", "count", 14),
    ],
    rows: kinds.map((kind) => {
      const own = loops.filter(({ treatment }) => treatment === kind);
      return [wrapped(treatmentWords[kind]), wrapped(own.map(loopName).join(", ")), number(own.length)];
    }),
  };
}
