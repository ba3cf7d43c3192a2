import type { BillLine } from "../estimate/estimate.js";
import type { WireSpool } from "../purchasing/cut-wire.js";
import type { Order, OrderLine } from "../purchasing/order-records.js";
import { formatMoney } from "../quantities/format-money.js";
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

/** Orders by supplier, ready to be sent; what the van gives; which spool gives which loop's wire. */
export function ordersSheet(input: SheetInput): Sheet | undefined {
  const { orders, bill, cuts } = input.estimate;
  const fromVan = bill.filter(({ fromStock }) => fromStock > 0);
  if (orders.length === 0 && fromVan.length === 0) return undefined;
  return {
    name: "Orders",
    orientation: "landscape",
    blocks: [
      title("Orders"),
      ...(input.demoPrices ? [paragraph(demoPriceWords, "warning")] : []),
      paragraph(
        "One order for the whole job from each supplier. Packs and prices follow the sheet Bill. An alternate is the same article elsewhere, its price at this quantity; shipping is extra.",
        "note",
      ),
      ...orders.flatMap((order, index) => orderBlocks(input, order, index)),
      ...vanBlocks(input, fromVan),
      ...cutBlocks(input, cuts),
    ],
  };
}

/** What is taken along from the van, so that nobody orders it. */
function vanBlocks(input: SheetInput, lines: readonly BillLine[]): readonly Block[] {
  if (lines.length === 0) return [];
  return [
    title("From the van: not ordered", 2),
    {
      kind: "table",
      name: "from_van",
      whenEmpty: "",
      columns: [
        column("code", "Code", "text", 14),
        column("description", "Description", "wrapped", 40),
        column("loops", "For loops", "wrapped", 34),
        column("unit", "Unit", "text", 8),
        column("take", "Take", "general", 9),
      ],
      rows: lines.map((line) => [
        text(line.code),
        wrapped(line.description),
        wrapped(loopsShort(input, line.loops)),
        text(line.unit),
        number(line.fromStock),
      ]),
    },
  ];
}

/** The cut list: every length in one piece from the spool named. */
function cutBlocks(input: SheetInput, spools: readonly WireSpool[]): readonly Block[] {
  if (spools.length === 0) return [];
  return [
    title("Cut list: wire", 2),
    paragraph("Each loop's length in one piece from the spool named, longest first; no joint in a run.", "note"),
    {
      kind: "table",
      name: "cut_list",
      whenEmpty: "",
      columns: [
        column("code", "Code", "text", 14),
        column("spool", "Spool", "wrapped", 40),
        column("loop", "For loop", "wrapped", 34),
        column("unit", "Unit", "text", 8),
        column("cut", "Cut", "general", 9),
        column("left", "Then left", "general", 9),
      ],
      rows: spools.flatMap((spool) => {
        const name = `${spool.fromStock ? "van" : "bought"}, spool ${spool.number}, ${plain(spool.holds)} ${spool.unit}`;
        let left = spool.holds;
        return spool.cuts.map(({ loop, quantity }) => {
          left -= quantity;
          return [
            text(spool.code),
            wrapped(name),
            wrapped(loopsShort(input, loop === undefined ? [] : [loop])),
            text(spool.unit),
            number(plain(quantity)),
            number(plain(Math.max(0, left))),
          ];
        });
      }),
    },
  ];
}

const plain = (length: number): number => Math.round(length * 10) / 10;

/** The bill's line of an order line: its own where an article is bought in more than one place. */
function billIdOf({ estimate }: SheetInput, { supplier }: Order, line: OrderLine): string {
  const own = estimate.bill.filter(({ code }) => code === line.code);
  return own.find((one) => one.supplier === supplier && one.packSize === line.packSize)?.id ?? line.code;
}

function alternatesOf({ estimate }: SheetInput, { alternates }: OrderLine): string {
  const { currency } = estimate;
  return alternates
    .map(({ code, supplier, unitCents, packSize, leadDays, sameArticle }) => {
      const price = formatMoney({ cents: Math.round(unitCents), currency });
      const other = sameArticle ? "" : `${code}, `;
      return `${other}${supplier}: ${price} each, packs of ${packSize}, ${leadDays} days`;
    })
    .join("; ");
}

function orderBlocks(input: SheetInput, order: Order, index: number): readonly Block[] {
  const name = orderTable(index);
  const dated = order.lines.some(({ late, orderBy }) => late || orderBy !== undefined);
  const alternates = order.lines.some((line) => line.alternates.length > 0);
  const band = order.radioBand === undefined ? "" : `, radio band ${order.radioBand}`;
  const slowest = Math.max(...order.lines.map(({ leadDays }) => leadDays));
  const dates = [
    ...(order.orderBy === undefined
      ? [`order ${slowest} working days before the first day on site`]
      : [`order by ${order.orderBy}`]),
    ...(order.needBy === undefined ? [] : [`needed on site by ${order.needBy}`]),
  ];
  return [
    title(`${order.supplier}${band}: ${dates.join(", ")}`, 2),
    {
      kind: "table",
      name,
      whenEmpty: "Nothing to order here.",
      columns: [
        column("code", "Code", "text", 14),
        column("description", "Description", "wrapped", 40, { total: { kind: "label", text: "Goods" } }),
        column("loops", "For loops", "wrapped", alternates ? 26 : 34),
        column("lead", dated ? "Order by" : "Lead, working days", "wrapped", dated ? 14 : 9),
        ...(alternates ? [column("alternates", "Alternates", "wrapped", 30)] : []),
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
        text(billIdOf(input, order, each)),
        wrapped(each.description),
        wrapped(loopsShort(input, each.loops)),
        dated
          ? wrapped(each.late ? "later than the first day" : (each.orderBy ?? ""))
          : number(each.leadDays, "general"),
        ...(alternates ? [wrapped(alternatesOf(input, each))] : []),
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
