import type { Sheet } from "../report/model.js";
import { column, paragraph, title, wrapped } from "./cells.js";
import type { SheetInput } from "./sheet-input.js";

/** Cautions that apply to this job, in the order of the job; holds first. */
export function cautionsSheet({ estimate }: SheetInput): Sheet | undefined {
  const { cautions, holds } = estimate;
  if (cautions.length === 0 && holds.length === 0) return undefined;
  return {
    name: "Cautions",
    headingOf: "cautions",
    blocks: [
      title("Cautions, in the order of the job"),
      ...holds.map(({ words }) => paragraph(words, "stop")),
      {
        kind: "table",
        name: "cautions",
        whenEmpty: "None for this job.",
        columns: [
          column("words", "Caution", "wrapped", 66),
          column("when", "When", "wrapped", 22),
          column("who", "Who", "wrapped", 20),
        ],
        rows: cautions.map(({ words, when, who }) => [wrapped(words), wrapped(when), wrapped(who)]),
      },
    ],
  };
}
