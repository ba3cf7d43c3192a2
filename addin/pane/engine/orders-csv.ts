import { type CsvField, csvText, type Estimate } from "../../loopwright-job.js";

const headings = [
  "Supplier",
  "Code",
  "Description",
  "For loops",
  "Order by",
  "Packs",
  "Pack size",
  "Quantity",
  "Unit",
  "Unit price",
  "Line",
];

/**
 * The order list of all suppliers as one table: a row for each line, a row for the shipping of each order. Amounts in
 * whole units of the job's currency; text that a spreadsheet would run is made plain.
 */
export function ordersCsv({ orders, loops, currency }: Estimate): string {
  const nameOf = new Map(loops.map(({ key, panel, loop }) => [key, `${panel} ${loop}`]));
  const rows = orders.flatMap(({ supplier, lines, shippingCents }): CsvField[][] => [
    ...lines.map((line): CsvField[] => [
      supplier,
      line.code,
      line.description,
      line.loops.length === 0 ? "whole job" : line.loops.map((key) => nameOf.get(key) ?? key).join("; "),
      line.late ? "later than the first day" : (line.orderBy ?? null),
      line.packs,
      line.packSize,
      line.quantity,
      line.unit,
      line.unitCents / 100,
      line.lineCents / 100,
    ]),
    [supplier, null, "Shipping of this order", null, null, null, null, null, null, null, shippingCents / 100],
  ]);
  return csvText([headings.map((heading) => (heading === "Line" ? `Line (${currency})` : heading)), ...rows]);
}
