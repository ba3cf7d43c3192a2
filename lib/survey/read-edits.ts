import { field } from "./read-tables.js";
import type { RowReader } from "./row-reader.js";
import type { LoopEdits } from "./survey.js";

/** What the estimator wrote beside a row; kept over every re-run. */
export function readEdits(row: RowReader): LoopEdits {
  const ohms = (column: string) => row.parsed(column, row.readers.ohms)?.reading;
  const treatments = [
    "keep",
    "fitEol",
    "changeEol",
    "repair",
    "rewire",
    "split",
    "wireless",
    "measureAgain",
    "retire",
    "excluded",
  ] as const;
  const forbid = row
    .known("forbid")
    ?.split(/[,;]\s*/)
    .map((word) => word.trim())
    .filter((word) => word !== "");
  for (const word of forbid ?? []) {
    if (!treatments.some((treatment) => treatment === word))
      row.ask("forbid", `"${word}" is no treatment. Known: ${treatments.join(", ")}.`);
  }
  return {
    ...field("pinTreatment", row.choice("pinTreatment", treatments)),
    ...field("forbid", forbid),
    ...field("supplyCure", row.choice("supplyCure", ["joints", "heavierPair", "ownPair", "localSupply"])),
    ...field("estimatorNote", row.text("estimatorNote")),
    ...field("asLeftClosed", ohms("asLeftClosed")),
    ...field("asLeftOpened", ohms("asLeftOpened")),
    ...field("repairOutcome", row.choice("repairOutcome", ["repaired", "notRepaired", "notTried"])),
    ...field("hoursSpent", row.number("hoursSpent", { least: 0, most: 1000 })),
    ...field("seenBy", row.text("seenBy")),
    ...field("seenWhat", row.text("seenWhat")),
  };
}
