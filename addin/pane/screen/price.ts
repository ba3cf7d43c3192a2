import { formatHours } from "../../loopwright-screen.js";
import { driverWords } from "./answers.js";
import { dataTable } from "./data-table.js";
import { type Child, el, help, list } from "./elements.js";
import { rangePicture } from "./range-picture.js";
import { type Estimated, loopsInWords } from "./shown.js";

/** Causes listed with their share. */
const mostCauses = 12;

/** How wide the price is and why, then what it is made of. */
export function price(shown: Estimated): readonly Child[] {
  return [...range(shown), ...made(shown), ...lineByLine(shown), ...terms(shown)];
}

function range(shown: Estimated): readonly Child[] {
  const { estimate, formats } = shown;
  const { p10Cents, p50Cents, p90Cents, meanCents, totalCents, likelySumCents, drivers } = estimate.price;
  if (p10Cents === null || p50Cents === null || p90Cents === null) {
    return [el("p", {}, "The range was not worked out.")];
  }
  return [
    rangePicture(shown),
    dataTable({
      caption: "Price with tax",
      columns: [{ words: "Where it may end" }, { words: "Price", figures: true }],
      rows: [
        { cells: ["1 job of 10 ends below (P10)", formats.roundMoney(p10Cents)] },
        { cells: ["half end below (P50)", formats.roundMoney(p50Cents)] },
        { cells: ["9 of 10 end below (P90)", formats.roundMoney(p90Cents)] },
        { cells: ["Mean of such jobs", formats.roundMoney(meanCents)] },
        { cells: ["Quoted", formats.money(totalCents)], total: true },
        { cells: ["Sum of the most likely, never quoted", formats.roundMoney(likelySumCents)] },
      ],
    }),
    help(
      "range",
      "Why is the most likely sum lower?",
      "Adding up what is most likely of each loop leaves out what goes wrong somewhere in nearly every job, and a fault costs more than its absence saves. The mean has it in.",
    ),
    dataTable({
      caption: "What makes the range wide",
      columns: [
        { words: "Cause" },
        { words: "Brings by itself", figures: true },
        { words: "Share of the width", figures: true },
      ],
      rows: drivers.slice(0, mostCauses).map((driver) => ({
        cells: [
          driverWords(estimate.loops, driver),
          `± ${formats.roundMoney(driver.sdCents)}`,
          shareBar(driver.varianceShare),
        ],
      })),
    }),
  ];
}

/** A share in words with a bar beside it. */
function shareBar(share: number): Child {
  const percent = Math.round(share * 100);
  const bar = el("span", { class: "bar", "aria-hidden": "true" });
  bar.style.setProperty("--share", `${percent}%`);
  return el("span", { class: "with-bar" }, percent === 0 ? "under 1 %" : `${percent} %`, bar);
}

function made({ estimate, formats }: Estimated): readonly Child[] {
  const { byClass, costCents, sellCents, taxCents, totalCents, marginFraction, markupFraction } = estimate.price;
  const words = (name: string) => name.replace(/([A-Z])/g, " $1").toLowerCase();
  return [
    dataTable({
      caption: "What it is made of",
      columns: [
        { words: "Class" },
        { words: "Our cost", figures: true },
        { words: "Margin", figures: true },
        { words: "Markup", figures: true },
        { words: "Price before tax", figures: true },
        { words: "Tax", figures: true },
      ],
      rows: [
        ...byClass.map((one) => ({
          cells: [
            words(one.class),
            formats.money(one.costCents),
            formats.rate(one.marginFraction),
            formats.rate(one.markupFraction),
            formats.money(one.sellCents),
            formats.money(one.taxCents),
          ],
        })),
        {
          total: true,
          cells: [
            "Together",
            formats.money(costCents),
            formats.rate(marginFraction),
            formats.rate(markupFraction),
            formats.money(sellCents),
            formats.money(taxCents),
          ],
        },
      ],
    }),
    el("p", { class: "figure" }, `${formats.money(totalCents)} with tax`),
    help(
      "margin",
      "Margin or markup?",
      "Margin is the share of the price, markup the share on the cost: (price − cost) ÷ price and (price − cost) ÷ cost. A margin of 35 % is a markup of 53.8 %.",
    ),
  ];
}

function lineByLine({ estimate, formats }: Estimated): readonly Child[] {
  const { price: priced, labour, loops } = estimate;
  return [
    closed(
      "price lines",
      `Line by line (${priced.lines.length})`,
      dataTable({
        caption: "Every line of cost with its margin and tax",
        columns: [
          { words: "Line" },
          { words: "Quantity", figures: true },
          { words: "Our cost", figures: true },
          { words: "Price", figures: true },
          { words: "Tax", figures: true },
          { words: "For loops" },
        ],
        rows: priced.lines.map((line) => ({
          cells: [
            line.description,
            formats.count(line.quantity),
            formats.money(line.costCents),
            formats.money(line.sellCents),
            formats.money(line.taxCents),
            loopsInWords(loops, line.loops),
          ],
        })),
      }),
    ),
    closed(
      "labour lines",
      `Hours (${labour.length} tasks)`,
      dataTable({
        caption: "Hours by task: low, likely, high",
        columns: [
          { words: "Task" },
          { words: "Count", figures: true },
          { words: "Low", figures: true },
          { words: "Likely", figures: true },
          { words: "High", figures: true },
        ],
        rows: labour.map((line) => ({
          cells: [
            line.words,
            formats.count(line.count),
            formatHours(line.lowHours),
            formatHours(line.likelyHours),
            formatHours(line.highHours),
          ],
        })),
      }),
    ),
  ];
}

function terms({ estimate, formats }: Estimated): readonly Child[] {
  const { stages, clauses, validDays } = estimate.quote;
  return [
    closed(
      "terms",
      "Terms of the quote",
      list(stages.map(({ stage, cents }) => `${formats.money(cents)} ${stage}`)),
      el("p", {}, `Valid for ${validDays} days.`),
      el("ol", {}, ...clauses.map(({ words }) => el("li", { class: "as-typed" }, words))),
    ),
    closed("basis", "Sources and assumptions", list(estimate.basis)),
  ];
}

const closed = (keep: string, words: string, ...content: readonly Child[]): HTMLElement =>
  el("details", { "data-keep-open": keep }, el("summary", { "data-keep": keep }, words), ...content);
