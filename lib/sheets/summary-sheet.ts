import { summaryOf } from "../estimate/summary.js";
import { formatMoney } from "../quantities/format-money.js";
import { binary, literal, named } from "../report/formula.js";
import type { Block, Cell, KeyValueRow, Role, Sheet } from "../report/model.js";
import { formulaCell, line, paragraph, text, title, warnWhen, wrapped } from "./cells.js";
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
      { kind: "keyValue", rows: moneyRows(input) },
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
          ...(estimate.changes.length === 0 ? [] : [line("Changes", changesLink(estimate.changes.length))]),
        ],
      },
    ],
  };
}

const changesLink = (count: number): Cell => ({
  kind: "link",
  text: `${count} since the issue before: see the sheet Changes`,
  sheet: "Changes",
});

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

/** Figures that follow every edit; beside them what the plan says of the range, and what is held back. */
function moneyRows({ estimate }: SheetInput): readonly KeyValueRow[] {
  const { price, currency, holds } = estimate;
  const { p10Cents, p90Cents } = price;
  const shown = (cents: number) => formatMoney({ cents, currency });
  const range =
    p10Cents === null || p90Cents === null
      ? "how wide its range is was not worked out"
      : `8 jobs of 10 like this end between ${shown(p10Cents)} and ${shown(p90Cents)} with tax: ${shown(p90Cents - p10Cents)} wide (as planned)`;
  const held = holds.length === 0 ? {} : { note: "on hold: strip-out of the old control is not in it" };
  return [
    line("Price with tax", formulaCell(named("JobTotal"), "money", "total"), { note: range }),
    line("Before tax", formulaCell(named("JobSell"), "money"), held),
    line("Our cost", formulaCell(named("JobCost"), "money"), {
      note: "live, like the price: follows prices, packs, hours and rates",
    }),
    line("Margin", formulaCell(named("JobMargin"), "rate"), { note: "of the price" }),
    line("Markup", formulaCell(named("JobMarkup"), "rate"), { note: "on cost: the same money" }),
  ];
}
