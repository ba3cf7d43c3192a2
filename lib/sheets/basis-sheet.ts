import type { Sheet } from "../report/model.js";
import { column, text, title, wrapped } from "./cells.js";
import type { SheetInput } from "./sheet-input.js";

/** What the estimate rests on: sources, assumptions, how far the plan is proved. */
export function basisSheet({ estimate }: SheetInput): Sheet | undefined {
  if (estimate.basis.length === 0) return undefined;
  return {
    name: "Basis",
    blocks: [
      title("Basis of this estimate"),
      {
        kind: "table",
        name: "basis",
        whenEmpty: "",
        columns: [column("number", "No.", "text", 6), column("words", "Source or assumption", "wrapped", 100)],
        rows: [
          ...estimate.basis.map((words, index) => [text(String(index + 1)), wrapped(words)]),
          [
            text(String(estimate.basis.length + 1)),
            wrapped(
              "Margin is (price − cost) / price, markup is (price − cost) / cost. Every line is rounded to the cent, halves away from zero; totals add rounded lines.",
            ),
          ],
          [text(String(estimate.basis.length + 2)), wrapped(`Record: ${estimate.schema}.`)],
        ],
      },
    ],
  };
}
