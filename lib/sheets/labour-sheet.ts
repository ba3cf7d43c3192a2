import { binary, call, type Formula, literal, named, thisRow } from "../report/formula.js";
import type { Sheet } from "../report/model.js";
import { calculated, column, number, paragraph, text, title, toCents, wrapped } from "./cells.js";
import type { SheetInput } from "./sheet-input.js";
import { lookUpHere, surveyTable } from "./survey-tables.js";

/** Hours of the job: unit hours as they stand in the survey, their mean, and what they cost us. */
export function labourSheet(input: SheetInput): Sheet | undefined {
  const { labour, learning } = input.estimate;
  if (labour.length === 0) return undefined;
  const factors = new Map(learning?.hourFactors.map(({ task, factor }) => [task, factor]));
  const learned = labour.some(({ task }) => factors.has(task));
  const hours = (survey: string, planned: string): Formula => {
    const typed = lookUpHere(surveyTable.labour, survey, "task");
    const now = learned ? binary(typed, "*", thisRow("factor")) : typed;
    return call("IFERROR", now, lookUpHere("plan_labour", planned, "task"));
  };
  const spread = binary(binary(thisRow("low"), "+", binary(literal(4), "*", thisRow("likely"))), "+", thisRow("high"));
  return {
    name: "Labour",
    orientation: "landscape",
    headingOf: "labour_lines",
    blocks: [
      title("Labour"),
      paragraph(
        `Unit hours come from the sheet Survey Labour: change them there.${learned ? " The factor is what finished jobs made of them, see the sheet Learned." : ""} Priced with the mean (low + 4 × likely + high) / 6, because work that runs over runs over further than work that ends early.`,
        "note",
      ),
      {
        kind: "table",
        name: "labour_lines",
        whenEmpty: "No work.",
        columns: [
          column("words", "Work", "wrapped", 40, { total: { kind: "label", text: "All work" } }),
          column("task", "Labour unit", "text", 26),
          column("count", "Count", "general", 8),
          ...(learned ? [column("factor", "Learned factor", "decimal", 10)] : []),
          column("low", "Low", "decimal", 9, { unit: "h", formula: hours("lowHours", "low") }),
          column("likely", "Likely", "decimal", 9, { unit: "h", formula: hours("likelyHours", "likely") }),
          column("high", "High", "decimal", 9, { unit: "h", formula: hours("highHours", "high") }),
          column("mean", "Mean", "decimal", 9, { unit: "h", formula: binary(spread, "/", literal(6)) }),
          column("hours", "Hours", "decimal", 10, {
            formula: binary(thisRow("count"), "*", thisRow("mean")),
            total: { kind: "sum" },
          }),
          column("cost", "Cost", "money", 14, {
            formula: toCents(binary(thisRow("hours"), "*", named("LabourRate"))),
            total: { kind: "sum" },
          }),
        ],
        rows: labour.map(({ words, task, count }) => [
          wrapped(words),
          text(task),
          number(count),
          ...(learned ? [number(factors.get(task) ?? 1)] : []),
          calculated,
          calculated,
          calculated,
          calculated,
          calculated,
          calculated,
        ]),
      },
    ],
  };
}
