import type { BillLine } from "../estimate/estimate.js";
import { binary, call, thisRow } from "../report/formula.js";
import type { Sheet } from "../report/model.js";
import { blank, calculated, column, number, paragraph, text, title, toCents, wrapped } from "./cells.js";
import { demoPriceWords, loopsShort, type SheetInput } from "./sheet-input.js";
import { lookUpHere } from "./survey-tables.js";

/** The purchaser's list: what is needed, what the van gives, what is bought, what it costs, for which loops. */
export function billSheet(input: SheetInput): Sheet | undefined {
  const { bill } = input.estimate;
  if (bill.length === 0) return undefined;
  const quantity = binary(binary(thisRow("packs"), "*", thisRow("packSize")), "+", thisRow("van"));
  return {
    name: "Bill",
    orientation: "landscape",
    headingOf: "bill",
    frozenColumns: 2,
    blocks: [
      title("Bill of materials"),
      ...(input.demoPrices ? [paragraph(demoPriceWords, "warning")] : []),
      paragraph(
        "Unit prices come from the sheet Survey Price book: change them there. Write another number of packs under Packs wanted; leave it empty to buy what the plan needs. Line = (packs × pack size + from van) × unit price.",
        "note",
      ),
      {
        kind: "table",
        name: "bill",
        filter: true,
        whenEmpty: "Nothing is needed.",
        columns: [
          column("code", "Code", "text", 13),
          column("description", "Description", "wrapped", 30, { total: { kind: "label", text: "Material" } }),
          column("supplier", "Supplier", "wrapped", 15),
          column("loops", "For loops", "wrapped", 22),
          column("rule", "How the quantity came about", "wrapped", 40),
          column("unit", "Unit", "text", 7),
          column("need", "Need", "general", 8),
          column("van", "From van", "general", 8),
          column("wanted", "Packs wanted", "general", 10, {
            input: { kind: "number", minimum: 0, whole: true, message: "Whole packs; empty = as planned." },
          }),
          column("packs", "Packs", "general", 8, {
            formula: call(
              "IF",
              call("ISBLANK", thisRow("wanted")),
              lookUpHere("plan_bill", "packs", "code"),
              thisRow("wanted"),
            ),
          }),
          column("packSize", "Pack size", "general", 8),
          column("unitPrice", "Unit price", "money", 12, { formula: lookUpHere("plan_bill", "priceNow", "code") }),
          column("line", "Line", "money", 14, {
            formula: toCents(binary(quantity, "*", thisRow("unitPrice"))),
            total: { kind: "sum" },
          }),
        ],
        rows: bill.map((line) => row(input, line)),
      },
    ],
  };
}

function row(input: SheetInput, line: BillLine) {
  return [
    text(line.id),
    wrapped(line.description),
    wrapped(line.supplier ?? (line.fromStock > 0 ? "van" : "")),
    wrapped(loopsShort(input, line.loops)),
    wrapped(line.rule),
    text(line.unit),
    number(line.need),
    number(line.fromStock),
    Object.hasOwn(input.packsWanted, line.id) ? number(input.packsWanted[line.id]) : blank,
    calculated,
    number(line.packSize),
    calculated,
    calculated,
  ];
}
