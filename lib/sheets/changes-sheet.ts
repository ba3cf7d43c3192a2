import type { EstimateChange } from "../estimate/held-plan.js";
import type { Sheet } from "../report/model.js";
import { column, handwriting, line, money, paragraph, text, title, wrapped } from "./cells.js";
import { demoPriceWords, type SheetInput } from "./sheet-input.js";

const kinds: Readonly<Record<EstimateChange["what"], string>> = {
  treatment: "Treatment",
  material: "Material",
  price: "Price",
};

/** Change order: what became different since the issue this workbook was run on; left out where nothing did. */
export function changesSheet(input: SheetInput): Sheet | undefined {
  const { changes } = input.estimate;
  if (changes.length === 0) return undefined;
  return {
    name: "Changes",
    headingOf: "changes",
    blocks: [
      title("Changes since the issue before"),
      ...(input.demoPrices ? [paragraph(demoPriceWords, "warning")] : []),
      paragraph("For the change order: agree it with the owner before the changed work begins.", "note"),
      {
        kind: "table",
        name: "changes",
        whenEmpty: "",
        columns: [
          column("what", "What", "text", 14),
          column("words", "Change", "wrapped", 78),
          column("amount", "More or less", "money", 16),
        ],
        rows: changes.map(({ what, words, cents }) => [
          text(kinds[what]),
          wrapped(words),
          cents === null ? text("") : money(cents),
        ]),
      },
      {
        kind: "keyValue",
        rows: [line("Agreed by, day", handwriting)],
      },
    ],
  };
}
