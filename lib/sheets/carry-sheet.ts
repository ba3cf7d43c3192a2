import type { CarriedSpare } from "../estimate/carry-of.js";
import { formatMoney } from "../quantities/format-money.js";
import { formatPercentOnPaper } from "../quantities/format-percent-on-paper.js";
import type { Sheet } from "../report/model.js";
import { column, number, paragraph, text, title, wrapped } from "./cells.js";
import { loopsShort, type SheetInput } from "./sheet-input.js";

/** Spare devices to carry beside the bill, so that a loop that proves other than it read needs no second trip. */
export function carrySheet(input: SheetInput): Sheet | undefined {
  const { carry } = input.estimate;
  const lines = carry?.lines.filter(({ carry: count }) => count > 0) ?? [];
  if (carry === null || lines.length === 0) return undefined;
  const words = (code: string) => input.priceBook.find((row) => row.code === code)?.description ?? code;
  return {
    name: "Carry",
    orientation: "landscape",
    headingOf: "carry",
    blocks: [
      title("Spares to carry for one trip"),
      paragraph(
        `Beside the bill: order on sale or return, take along, send back what is not needed. It is not in the price; what coming back costs on average is ${formatMoney({ cents: carry.expectedReturnCents, currency: input.estimate.currency })}. Chance that no second trip is needed for want of these: ${formatPercentOnPaper(carry.noSecondTrip.low)}; wanted ${formatPercentOnPaper(input.job.confidenceOneTrip)}.`,
      ),
      {
        kind: "table",
        name: "carry",
        whenEmpty: "",
        columns: [
          column("code", "Code", "text", 14),
          column("words", "Description", "wrapped", 30),
          column("loops", "In case of loops", "wrapped", 30),
          column("enough", "Chance it suffices", "text", 18),
          column("carry", "Carry", "count", 9),
          column("van", "On the van", "count", 9),
          column("order", "Order besides", "wrapped", 26),
          column("most", "Most needed", "count", 13),
        ],
        rows: lines.map((line) => [
          text(line.code),
          wrapped(words(line.code)),
          wrapped(loopsShort(input, line.loops)),
          text(formatPercentOnPaper(Math.min(1, line.enough))),
          number(line.carry),
          number(line.fromVan),
          wrapped(orderWords(line, input.estimate.currency)),
          number(line.mostNeed),
        ]),
      },
    ],
  };
}

function orderWords({ order }: CarriedSpare, currency: string): string {
  if (order === null) return "";
  const { supplier, packs, packSize, lineCents } = order;
  return `${packs} × ${packSize} from ${supplier}, ${formatMoney({ cents: lineCents, currency })}`;
}
