import { formatPercentOnPaper } from "../../loopwright-screen.js";
import { dataTable } from "./data-table.js";
import { button, type Child, el, help } from "./elements.js";
import { type Estimated, loopsInWords } from "./shown.js";

/** One order list for each supplier, what the van gives, what to carry for one trip. */
export function orders(shown: Estimated): readonly Child[] {
  const { estimate, state, act } = shown;
  return [
    el("p", {}, "One order for the whole job from each supplier, in whole packs, less what the van has."),
    estimate.orders.length > 0 &&
      button({
        words: "Save the order lists (CSV)",
        keep: "orders csv",
        disabled: state.progress !== null,
        click: () => act.save(() => act.engine.exportOrdersCsv()),
      }),
    ...(estimate.orders.length === 0 ? [el("p", {}, "Nothing to order.")] : []),
    ...estimate.orders.map((order) => supplierOrder(shown, order)),
    ...van(shown),
    ...carry(shown),
  ];
}

function supplierOrder({ estimate, formats }: Estimated, order: Estimated["estimate"]["orders"][number]): HTMLElement {
  const { supplier, lines, goodsCents, shippingCents, totalCents, orderBy, needBy, radioBand } = order;
  const notes = [
    ...(radioBand === undefined ? [] : [`radio band ${radioBand}`]),
    ...(orderBy === undefined ? [] : [`order by ${orderBy}`]),
    ...(needBy === undefined ? [] : [`on site by ${needBy}`]),
  ];
  const late = lines.some((line) => line.late);
  return el(
    "section",
    {},
    el("h3", {}, supplier),
    notes.length > 0 && el("p", { class: "small" }, notes.join(" · ")),
    late && el("p", { class: "notice warn" }, "Some articles cannot be there on the first day: they are marked late."),
    dataTable({
      caption: `Order to ${supplier}`,
      hideCaption: true,
      columns: [
        { words: "Article" },
        { words: "Code" },
        { words: "Packs", figures: true },
        { words: "In a pack", figures: true },
        { words: "Price", figures: true },
        { words: "For loops" },
      ],
      rows: [
        ...lines.map((line) => ({
          cells: [
            line.late ? `${line.description} (late)` : line.description,
            line.code,
            formats.count(line.packs),
            `${formats.count(line.packSize)} ${line.unit}`,
            formats.money(line.lineCents),
            loopsInWords(estimate.loops, line.loops),
          ],
        })),
        { cells: ["Goods", "", "", "", formats.money(goodsCents), ""] },
        { cells: ["Shipping", "", "", "", formats.money(shippingCents), ""] },
        { cells: ["Order with shipping", "", "", "", formats.money(totalCents), ""], total: true },
      ],
    }),
  );
}

function van({ estimate, formats }: Estimated): readonly Child[] {
  const taken = estimate.bill.filter(({ fromStock }) => fromStock > 0);
  if (taken.length === 0) return [];
  return [
    el("h3", {}, "From the van"),
    dataTable({
      caption: "Taken from stock",
      hideCaption: true,
      columns: [{ words: "Article" }, { words: "Take", figures: true }, { words: "For loops" }],
      rows: taken.map((line) => ({
        cells: [
          line.description,
          `${formats.count(line.fromStock)} ${line.unit}`,
          loopsInWords(estimate.loops, line.loops),
        ],
      })),
    }),
  ];
}

function carry({ estimate, formats }: Estimated): readonly Child[] {
  const lines = estimate.carry?.lines.filter((line) => line.carry > 0) ?? [];
  if (estimate.carry === null || lines.length === 0) return [];
  const words = (code: string) => estimate.bill.find((line) => line.code === code)?.description ?? code;
  return [
    el("h3", {}, "Spares to carry for one trip"),
    el(
      "p",
      {},
      `Beside the orders, brought back where not needed. Chance that no second trip is needed for want of these: ${formatPercentOnPaper(Math.min(1, estimate.carry.noSecondTrip.low))}.`,
    ),
    help(
      "carry",
      "Why carry more than was ordered?",
      "A loop may prove other than it read: a repair that does not hold becomes wireless. The spares are counted over all such loops together.",
    ),
    dataTable({
      caption: "Spares to carry",
      hideCaption: true,
      columns: [
        { words: "Article" },
        { words: "Carry", figures: true },
        { words: "Chance it suffices", figures: true },
        { words: "In case of loops" },
      ],
      rows: lines.map((line) => ({
        cells: [
          words(line.code),
          formats.count(line.carry),
          formatPercentOnPaper(Math.min(1, line.enough)),
          loopsInWords(estimate.loops, line.loops),
        ],
      })),
    }),
  ];
}
