import { loopName } from "../estimate/summary.js";
import type { PricedLine } from "../pricing/price-job.js";
import type { RangeDriver } from "../pricing/price-range.js";
import { formatMoney } from "../quantities/format-money.js";
import { formatPercentOnPaper } from "../quantities/format-percent-on-paper.js";
import { binary, call, type Formula, literal, named, thisRow, totalsOf, wholeColumn } from "../report/formula.js";
import type { Block, Cell, KeyValueRow, Sheet, TableBlock } from "../report/model.js";
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
  warnWhen,
  wrapped,
} from "./cells.js";
import { stageShareName } from "./quote-sheet.js";
import { demoPriceWords, type SheetInput } from "./sheet-input.js";
import { lookUp } from "./survey-tables.js";

const sum = (...parts: readonly Formula[]): Formula => parts.reduce((before, part) => binary(before, "+", part));
const oneLess = (name: string): Formula => binary(literal(1), "-", named(name));

/** The value a setting has now. */
const rate = (setting: string): Formula => lookUp("plan_rates", "now", "setting", literal(setting));

/**
 * What the job costs us and sells for, live and line by line: cost, cost / (1 − margin), tax on that, each rounded to
 * the cent as the library rounds it, so that a change of a price, a quantity or a rate gives the same cents in both.
 */
export function priceSheet(input: SheetInput): Sheet {
  const edited = binary(named("EditCount"), ">", literal(0));
  return {
    name: "Price",
    columnWidths: [36, 22, 12, 11, 13, 13, 11],
    blocks: [
      title("Price"),
      ...(input.demoPrices ? [paragraph(demoPriceWords, "warning")] : []),
      {
        kind: "paragraph",
        cell: formulaCell(
          call(
            "IF",
            edited,
            literal("Plan is older than these edits: the money below follows the edits, treatments and range do not."),
            literal("Nothing was edited since the plan was made."),
          ),
          "wrapped",
          "note",
        ),
        highlights: warnWhen(edited),
      },
      {
        kind: "beside",
        parts: [
          { column: 1, blocks: [title("Rates", 2), { kind: "keyValue", valueColumns: 1, rows: rateRowsOf(input) }] },
          {
            column: 4,
            blocks: [
              title("Price", 2),
              { kind: "keyValue", id: "price", labelColumns: 2, valueColumns: 2, rows: priceRows },
            ],
          },
        ],
      },
      ...rangeBlocks(input),
      ...moneyChart(input),
    ],
  };
}

/** Every line of the price, for the formulas and for whoever wants to follow them; the bill and the hours say the same. */
export function priceLinesSheet(input: SheetInput): Sheet {
  return {
    name: "Price lines",
    part: "working",
    printed: "none",
    headingOf: "price_lines",
    blocks: [
      title("Price, line by line"),
      ...(input.demoPrices ? [paragraph(demoPriceWords, "warning")] : []),
      linesTable(input.estimate.price.lines),
    ],
  };
}

const rateRows: readonly KeyValueRow[] = [
  line("Labour, one hour", formulaCell(rate("labourCostPerHour"), "money"), { name: "LabourRate" }),
  line("Margin on material", formulaCell(rate("marginMaterial"), "rate"), { name: "MarginMaterial" }),
  line("Margin on labour", formulaCell(rate("marginLabour"), "rate"), { name: "MarginLabour" }),
  line("Freight on material", formulaCell(rate("freight"), "rate"), { name: "FreightRate" }),
  line("Tax on material", formulaCell(rate("taxMaterial"), "rate"), { name: "TaxMaterial" }),
  line("Tax on labour", formulaCell(rate("taxLabour"), "rate"), { name: "TaxLabour" }),
  line("Least labour charged", formulaCell(rate("minimumCallHours"), "hours"), { name: "MinimumHours" }),
  line("Change them on", { kind: "link", text: "Survey Settings", sheet: "Survey Settings" }),
];

/** Rates, and the shares in which the quote falls due. */
function rateRowsOf({ estimate }: SheetInput): readonly KeyValueRow[] {
  const { quote } = estimate;
  const total = quote.stages.reduce((sum, { cents }) => sum + cents, 0);
  const shares = quote.stages.map(({ stage, cents }, index) =>
    line(`Due ${stage}`, number(total === 0 ? 0 : cents / total, "rate"), { name: stageShareName(index) }),
  );
  return [...rateRows, ...shares];
}

const share = (over: string): Formula =>
  call(
    "IF",
    binary(named(over), "=", literal(0)),
    literal(0),
    binary(binary(named("JobSell"), "-", named("JobCost")), "/", named(over)),
  );

const minimumCharge = toCents(
  binary(binary(named("MinimumHours"), "*", named("LabourRate")), "/", oneLess("MarginLabour")),
);

const priceRows: readonly KeyValueRow[] = [
  line("Cost", formulaCell(totalsOf("price_lines", "cost"), "money"), { name: "JobCost" }),
  line("Added to reach the minimum", formulaCell(minimumDifference(), "money"), { name: "MinimumDifference" }),
  line(
    "Price before tax",
    formulaCell(sum(totalsOf("price_lines", "sell"), named("MinimumDifference")), "money", "total"),
    {
      name: "JobSell",
    },
  ),
  line(
    "Tax",
    formulaCell(
      sum(totalsOf("price_lines", "tax"), toCents(binary(named("MinimumDifference"), "*", named("TaxLabour")))),
      "money",
    ),
    { name: "JobTax" },
  ),
  line("Price with tax", formulaCell(sum(named("JobSell"), named("JobTax")), "money", "total"), { name: "JobTotal" }),
  line("Margin: (price − cost) / price", formulaCell(share("JobSell"), "rate"), { name: "JobMargin" }),
  line("Markup: (price − cost) / cost", formulaCell(share("JobCost"), "rate"), { name: "JobMarkup" }),
];

function minimumDifference(): Formula {
  const missing = binary(minimumCharge, "-", totalsOf("price_lines", "sell"));
  return toCents(call("MAX", literal(0), missing));
}

/** Every line of cost with its margin and tax. */
function linesTable(lines: readonly PricedLine[]): TableBlock {
  const material = call(
    "OR",
    binary(thisRow("kind"), "=", literal("material")),
    binary(thisRow("kind"), "=", literal("freight")),
  );
  return {
    kind: "table",
    name: "price_lines",
    whenEmpty: "Nothing is priced.",
    columns: [
      column("words", "What", "wrapped", 36, { total: { kind: "label", text: "All lines" } }),
      column("id", "Line", "wrapped", 22),
      column("kind", "Kind", "text", 12),
      column("taxClass", "Tax class", "text", 11),
      column("cost", "Cost", "money", 13, { total: { kind: "sum" } }),
      column("sell", "Sold at", "money", 13, {
        formula: toCents(
          binary(
            thisRow("cost"),
            "/",
            binary(literal(1), "-", call("IF", material, named("MarginMaterial"), named("MarginLabour"))),
          ),
        ),
        total: { kind: "sum" },
      }),
      column("tax", "Tax", "money", 11, {
        formula: toCents(
          binary(
            thisRow("sell"),
            "*",
            call("IF", binary(thisRow("taxClass"), "=", literal("labour")), named("TaxLabour"), named("TaxMaterial")),
          ),
        ),
        total: { kind: "sum" },
      }),
    ],
    rows: lines
      .filter(({ kind }) => kind !== "minimumCharge")
      .map((each) => [
        wrapped(each.description),
        text(each.id),
        text(each.kind),
        text(each.taxClass),
        costCell(each),
        calculated,
        calculated,
      ]),
  };
}

function costCell({ kind, costCents }: PricedLine): Cell {
  switch (kind) {
    case "material":
      return formulaCell(lookUp("bill", "line", "code", thisRow("id")), "money");
    case "labour":
      return formulaCell(lookUp("labour_lines", "cost", "task", thisRow("id")), "money");
    case "freight":
      return formulaCell(toCents(binary(named("FreightRate"), "*", totalsOf("bill", "line"))), "money");
    default:
      return money(costCents);
  }
}

/** The range of the price with tax, and what makes it wide. */
function rangeBlocks(input: SheetInput): readonly Block[] {
  const { price, currency, loops } = input.estimate;
  const { p10Cents, p50Cents, p90Cents } = price;
  if (p10Cents === null || p50Cents === null || p90Cents === null) return [];
  const shown = (amount: number) => formatMoney({ cents: amount, currency });
  const causes: Readonly<Record<string, string>> = {
    crew: "the crew's pace",
    access: "access",
    faultRate: "how many loops are faulty",
    fixedWork: "work not on loops",
  };
  const named = (key: string | null) => {
    const loop = loops.find((one) => one.key === key);
    return loop === undefined ? "" : loopName(loop);
  };
  const drivers = [...price.drivers].sort((a, b) => b.varianceShare - a.varianceShare).slice(0, 6);
  const words = ({ cause, key }: RangeDriver) => (cause === "loop" ? named(key) : (causes[cause] ?? cause));
  return [
    title("Range of the price with tax", 2),
    {
      kind: "beside",
      parts: [
        {
          column: 1,
          blocks: [
            {
              kind: "table",
              name: "price_range",
              whenEmpty: "",
              columns: [column("words", "Of jobs like this", "text", 36), column("amount", "With tax", "money", 22)],
              rows: [
                [text("1 of 10 ends below"), money(p10Cents)],
                [text("half end below"), money(p50Cents)],
                [text("9 of 10 end below"), money(p90Cents)],
              ],
            },
            {
              kind: "keyValue",
              rows: [
                line("Mean of such jobs", money(price.meanCents)),
                line("Sum of the likeliest, not quoted", money(price.likelySumCents, "note")),
              ],
            },
            {
              kind: "paragraph",
              columns: 2,
              cell: wrapped(
                `Between the first and the last lie ${shown(p90Cents - p10Cents)}: what readings, repairs and hours leave open, by the loops' own probabilities. Adding up likely hours and outcomes leaves out what runs over. All of it is the plan's and does not follow edits.`,
                "note",
              ),
            },
          ],
        },
        { column: 4, blocks: [rangeChart(currency)] },
      ],
    },
    {
      kind: "beside",
      parts: [
        {
          column: 1,
          blocks: [
            {
              kind: "table",
              name: "range_drivers",
              whenEmpty: "Nothing makes it wide.",
              columns: [
                column("words", "What makes the range wide", "wrapped", 36),
                column("share", "Share of the doubt", "text", 22),
                column("amount", "Brings ±", "money", 12),
              ],
              rows: drivers.map((driver) => [
                wrapped(words(driver)),
                text(formatPercentOnPaper(driver.varianceShare)),
                money(Math.round(driver.sdCents)),
              ]),
            },
          ],
        },
        ...(drivers.length < 2 ? [] : [{ column: 4, blocks: [driversChart(currency)] }]),
      ],
    },
  ];
}

/** Room for three to five bars, and for six with their names. */
const chartPixels = { widthPixels: 340, heightPixels: 195 } as const;
const tallChartPixels = { widthPixels: 340, heightPixels: 290 } as const;

const rangeChart = (currency: string): Block => ({
  kind: "chart",
  chart: "bar",
  title: "Range of the price with tax",
  categories: { table: "price_range", column: "words" },
  series: [{ table: "price_range", column: "amount" }],
  valueTitle: currency,
  ...chartPixels,
  alt: "Bars: the price that 1 of 10, half and 9 of 10 jobs like this end below.",
});

const driversChart = (currency: string): Block => ({
  kind: "chart",
  chart: "bar",
  title: "What makes the range wide",
  categories: { table: "range_drivers", column: "words" },
  series: [{ table: "range_drivers", column: "amount" }],
  valueTitle: `±, ${currency}`,
  ...tallChartPixels,
  alt: "Bars: what each cause of doubt alone brings to the price.",
});

const kinds = [
  ["Material", "material"],
  ["Freight", "freight"],
  ["Labour", "labour"],
  ["Contingency", "contingency"],
] as const;

function moneyChart({ estimate }: SheetInput): readonly Block[] {
  const present = kinds.filter(([, kind]) => estimate.price.lines.some((each) => each.kind === kind));
  if (present.length === 0) return [];
  const parts: TableBlock = {
    kind: "table",
    name: "money_parts",
    whenEmpty: "",
    columns: [
      column("part", "Part of the cost", "text", 36),
      column("amount", "Cost", "money", 22, {
        formula: call(
          "SUMIFS",
          wholeColumn("price_lines", "cost"),
          wholeColumn("price_lines", "kind"),
          thisRow("kind"),
        ),
      }),
      column("kind", "Kind", "text", 12),
    ],
    rows: present.map(([words, kind]) => [text(words), calculated, text(kind)]),
  };
  const chart: Block = {
    kind: "chart",
    chart: "bar",
    title: "Where the money goes",
    categories: { table: "money_parts", column: "part" },
    series: [{ table: "money_parts", column: "amount" }],
    valueTitle: `Cost, ${estimate.currency}`,
    ...chartPixels,
    alt: "Bars: material, freight, labour, contingency.",
  };
  return [
    title("Where the money goes", 2),
    {
      kind: "beside",
      parts: [
        { column: 1, blocks: [parts] },
        { column: 4, blocks: [chart] },
      ],
    },
  ];
}
