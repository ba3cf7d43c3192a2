import type { Estimate } from "../../estimate/estimate.js";
import type { PrintablePlan } from "../../report/printable-plan.js";
import { orderTable } from "../../sheets/orders-sheet.js";
import { demoPriceWords } from "../../sheets/sheet-input.js";
import { type CsvField, csvText } from "./csv-text.js";
import { tableRows } from "./table-csv.js";

/**
 * The bill and all orders of an estimate as two CSV files for a purchasing program: headings and figures as on the
 * sheets Bill and Orders. An order's lines name their supplier, its shipping is a line of its own; with demo prices each
 * line says so.
 * @param input.plan the workbook's sheets: {@link printablePlan} of {@link estimateWorkbookReport}
 * @param input.bill input.orders of the estimate they were made of
 * @param input.demo whether prices are the demo's
 */
export function purchaseCsv(input: {
  readonly plan: PrintablePlan;
  readonly bill: Estimate["bill"];
  readonly orders: Estimate["orders"];
  readonly demo: boolean;
}): { readonly bill: string; readonly orders: string } {
  const { plan, orders, demo } = input;
  const bill = input.bill.length === 0 ? [["Code"]] : tableRows(plan, "bill");
  return { bill: csvText(marked(bill, demo)), orders: csvText(marked(orderRows(plan, orders), demo)) };
}

/** Orders need not have the same columns: each heading once, fields under their own. */
function orderRows(plan: PrintablePlan, orders: Estimate["orders"]): CsvField[][] {
  const lines = orders.flatMap(({ supplier, shippingCents }, index) => {
    const [heading = [], ...rows] = tableRows(plan, orderTable(index));
    const shipping = new Map<CsvField, CsvField>([
      ["Description", "Shipping of this order"],
      ["Line", shippingCents / 100],
    ]);
    return [...rows.map((row) => new Map(heading.map((name, k) => [name, row[k] ?? null]))), shipping].map((line) =>
      line.set("Supplier", supplier),
    );
  });
  const headings = [...new Set(["Supplier", ...lines.flatMap((line) => [...line.keys()])])];
  return [headings, ...lines.map((line) => headings.map((name) => line.get(name) ?? null))];
}

const marked = (rows: readonly (readonly CsvField[])[], demo: boolean): readonly (readonly CsvField[])[] =>
  demo ? rows.map((row, index) => [...row, index === 0 ? "Prices" : demoPriceWords]) : rows;
