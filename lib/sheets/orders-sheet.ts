import type { Order } from "../purchasing/order-records.js";
import { binary, named, thisRow, totalsOf } from "../report/formula.js";
import type { Block, Sheet } from "../report/model.js";
import {
  calculated,
  column,
  formulaCell,
  line,
  money,
  number,
  paragraph,
  text,
  title,
  toCents,
  wrapped,
} from "./cells.js";
import { demoPriceWords, loopsShort, type SheetInput } from "./sheet-input.js";
import { lookUpHere } from "./survey-tables.js";

/** Name of the cell with the shipping of order number `index`. */
export const shippingName = (index: number): string => `OrderShipping${index + 1}_`;
/** Name of the table of order number `index`. */
export const orderTable = (index: number): string => `order_${index + 1}_lines`;

/** One order for each supplier, ready to be sent, with the loops each line is for. */
export function ordersSheet(input: SheetInput): Sheet | undefined {
  const { orders } = input.estimate;
  if (orders.length === 0) return undefined;
  return {
    name: "Orders",
    orientation: "landscape",
    blocks: [
      title("Orders"),
      ...(input.demoPrices ? [paragraph(demoPriceWords, "warning")] : []),
      paragraph("One order for the whole job from each supplier. Packs and prices follow the sheet Bill.", "note"),
      ...orders.flatMap((order, index) => orderBlocks(input, order, index)),
    ],
  };
}

function orderBlocks(input: SheetInput, order: Order, index: number): readonly Block[] {
  const name = orderTable(index);
  const dated = order.lines.some(({ late, orderBy }) => late || orderBy !== undefined);
  const band = order.radioBand === undefined ? "" : `, radio band ${order.radioBand}`;
  const dates = [
    ...(order.orderBy === undefined ? [] : [`order by ${order.orderBy}`]),
    ...(order.needBy === undefined ? [] : [`on site by ${order.needBy}`]),
  ];
  return [
    title(`${order.supplier}${band}${dates.length === 0 ? "" : `: ${dates.join(", ")}`}`, 2),
    {
      kind: "table",
      name,
      whenEmpty: "Nothing to order here.",
      columns: [
        column("code", "Code", "text", 14),
        column("description", "Description", "wrapped", 40, { total: { kind: "label", text: "Goods" } }),
        column("loops", "For loops", "wrapped", 34),
        ...(dated ? [column("late", "Order by", "wrapped", 14)] : []),
        column("unit", "Unit", "text", 8),
        column("packs", "Packs", "general", 9, { formula: lookUpHere("bill", "packs", "code") }),
        column("packSize", "Pack size", "general", 9),
        column("quantity", "Quantity", "general", 10, {
          formula: binary(thisRow("packs"), "*", thisRow("packSize")),
        }),
        column("unitPrice", "Unit price", "money", 13, { formula: lookUpHere("bill", "unitPrice", "code") }),
        column("line", "Line", "money", 14, {
          formula: toCents(binary(thisRow("quantity"), "*", thisRow("unitPrice"))),
          total: { kind: "sum" },
        }),
      ],
      rows: order.lines.map((each) => [
        text(each.code),
        wrapped(each.description),
        wrapped(loopsShort(input, each.loops)),
        ...(dated ? [wrapped(each.late ? "later than the first day" : (each.orderBy ?? ""))] : []),
        text(each.unit),
        calculated,
        number(each.packSize),
        calculated,
        calculated,
        calculated,
      ]),
    },
    {
      kind: "keyValue",
      labelColumns: 2,
      valueColumns: 2,
      noteColumns: 4,
      rows: [
        line("Shipping of this order", money(order.shippingCents), { name: shippingName(index) }),
        line(
          "Order with shipping",
          formulaCell(binary(totalsOf(name, "line"), "+", named(shippingName(index))), "money", "total"),
        ),
      ],
    },
  ];
}
