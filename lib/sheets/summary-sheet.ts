import { summaryOf } from "../estimate/summary.js";
import { formatMoney } from "../quantities/format-money.js";
import { binary, literal, named } from "../report/formula.js";
import type { Block, KeyValueRow, Role, Sheet } from "../report/model.js";
import { blank, formulaCell, line, paragraph, text, title, warnWhen, wrapped } from "./cells.js";
import { planAgeCell, statusCell } from "./checks-sheet.js";
import { demoPriceWords, type SheetInput } from "./sheet-input.js";

/** The first screen: what must not be touched, what stays, what it costs, what to read next, what to order today. */
export function summarySheet(input: SheetInput): Sheet {
  const { estimate } = input;
  const summary = summaryOf(estimate);
  const open = estimate.queries.length;
  return {
    name: "Summary",
    orientation: "landscape",
    columnWidths: [20, 18, 100],
    blocks: [
      title(estimate.site.name ?? "Estimate"),
      ...(input.demoPrices ? [paragraph(demoPriceWords, "warning")] : []),
      answers("Do not touch", summary.doNotTouch, "stop"),
      answers("What stays", summary.stays),
      { kind: "keyValue", rows: [...moneyRows(input), ...rangeRows(input)] },
      answers("Read next", summary.measureNext),
      answers("Order today", summary.orderToday),
      {
        kind: "keyValue",
        valueColumns: 2,
        rows: [
          line("Checks", statusCell(), { highlights: warnWhen(binary(named("FailedChecks"), ">", literal(0))) }),
          line("Plan", planAgeCell(), { highlights: warnWhen(binary(named("EditCount"), ">", literal(0))) }),
          line(
            "Queries",
            open === 0
              ? text("none open")
              : { kind: "link", text: `${open} open: see the sheet Queries`, sheet: "Queries" },
          ),
        ],
      },
    ],
  };
}

function answers(label: string, lines: readonly string[], role?: Role): Block {
  return {
    kind: "keyValue",
    valueColumns: 2,
    rows: lines.map((words, index): KeyValueRow => line(index === 0 ? label : " ", wrapped(shortened(words), role))),
  };
}

/** The first screen holds two lines of each list; the rest stands on its own sheet. */
const longest = 230;
function shortened(words: string): string {
  if (words.length <= longest || !words.includes(",")) return words;
  const cut = words.slice(0, longest).replace(/,[^,]*$/, "");
  const left = words.slice(cut.length).split(",").length - 1;
  return `${cut} and ${left} more: see the sheet Loops`;
}

/** Figures that follow every edit. */
function moneyRows({ estimate }: SheetInput): readonly KeyValueRow[] {
  const { p10Cents, p90Cents } = estimate.price;
  return [
    line("Price with tax", formulaCell(named("JobTotal"), "money", "total"), {
      note:
        p10Cents === null || p90Cents === null
          ? "live: follows prices, quantities and rates"
          : "live; the range beside it is the plan's",
    }),
    line("Before tax", formulaCell(named("JobSell"), "money")),
    line("Our cost", formulaCell(named("JobCost"), "money")),
    line("Margin", formulaCell(named("JobMargin"), "rate"), { note: "of the price" }),
    line("Markup", formulaCell(named("JobMarkup"), "rate"), { note: "on cost: the same money" }),
  ];
}

/** What of the cost answer is no live figure: how wide the range is, holds. */
function rangeRows({ estimate }: SheetInput): readonly KeyValueRow[] {
  const { price, currency, holds } = estimate;
  const { p10Cents, p90Cents } = price;
  const shown = (cents: number) => formatMoney({ cents, currency });
  const range =
    p10Cents === null || p90Cents === null
      ? "not worked out"
      : `8 jobs of 10 like this end between ${shown(p10Cents)} and ${shown(p90Cents)} with tax: ${shown(p90Cents - p10Cents)} wide.`;
  const held =
    holds.length === 0 ? [] : ["On hold: strip-out of the old control is not priced until the hold is lifted."];
  return [range, ...held].map((words, index) => line(index === 0 ? "Range" : " ", blank, { note: words }));
}
