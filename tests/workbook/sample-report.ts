import { binary, call, literal, named, thisRow, totalsOf, wholeColumn } from "../../lib/report/formula.js";
import type { Cell, Report } from "../../lib/report/model.js";

const text = (words: string): Cell => ({ kind: "text", text: words });
const number = (value: number): Cell => ({ kind: "number", value });
const money = (cents: number): Cell => ({ kind: "money", cents });
const calculated: Cell = { kind: "calculated" };

/** An invented stores list: what was taken, at what price, and when. */
const taken: readonly (readonly [string, string, number, number])[] = [
  ["Terminal strip", "Joining", 12, 185],
  ["Splice, gel filled", "Joining", 144, 23],
  ['Resistor 2.2 kΩ <1 %> & "leads"', "Resistors", 40, 9],
  ["=1+1 is only a name", "Other", 3, 1005],
  ["Cable 2 × 0.5 mm²", "Cable", 88.5, 74],
];

/** A small report with every kind of block and cell in it. */
export const sampleReport: Report = {
  title: "Stores sample",
  job: "Hall & annex, 3rd floor",
  revision: "revision 2, void if older",
  date: "2025-03-14",
  currency: "EUR",
  paper: "A4",
  sheets: [
    {
      name: "Summary",
      columnWidths: [30, 16, 44],
      blocks: [
        { kind: "title", text: "Stores sample", level: 1 },
        {
          kind: "paragraph",
          cell: {
            kind: "text",
            text: "Everything here is invented. This paragraph is long enough to run over more than one line of the sheet, so that its row has to be made taller than the others.",
            role: "note",
          },
        },
        {
          kind: "keyValue",
          id: "rates",
          rows: [
            {
              label: "Tax rate",
              cell: { kind: "number", value: 0.19, format: "rate" },
              name: "TaxRate",
              note: "Change it: every sheet follows.",
              input: { kind: "number", minimum: 0, maximum: 1, message: "A rate from 0 to 1, for example 0.19." },
            },
            { label: "Day", cell: { kind: "date", iso: "2025-03-14" } },
            {
              label: "Net",
              cell: { kind: "formula", formula: totalsOf("Stores", "line"), format: "money" },
              name: "NetSum",
            },
            {
              label: "Tax",
              cell: {
                kind: "formula",
                formula: call("ROUND", binary(named("NetSum"), "*", named("TaxRate")), literal(2)),
                format: "money",
              },
              name: "Tax",
            },
            {
              label: "Total",
              cell: {
                kind: "formula",
                formula: binary(named("NetSum"), "+", named("Tax")),
                format: "money",
                role: "total",
              },
              name: "Total",
              highlights: [{ when: binary(named("Total"), ">", literal(100)), role: "warning" }],
            },
            { label: "Loop, as found", cell: { kind: "number", value: 2227.4, format: "ohms" } },
            { label: "Hours", cell: { kind: "number", value: 6.25, format: "hours" } },
          ],
        },
        {
          kind: "paragraph",
          cell: {
            kind: "formula",
            formula: call(
              "IF",
              binary(
                call("SUMIF", wholeColumn("Stores", "kind"), literal("Joining"), wholeColumn("Stores", "line")),
                ">",
                literal(50),
              ),
              literal("Joining costs more than 50."),
              literal("Joining costs 50 or less."),
            ),
          },
        },
        {
          kind: "paragraph",
          cell: { kind: "link", text: "To the stores list", sheet: "Stores (taken)", block: "Stores" },
        },
        {
          kind: "beside",
          parts: [
            {
              column: 1,
              blocks: [
                {
                  kind: "chart",
                  chart: "bar",
                  title: "Where the money goes",
                  categories: { table: "Stores", column: "item" },
                  series: [{ table: "Stores", column: "line" }],
                  widthPixels: 320,
                  heightPixels: 220,
                  alt: "Bars: what each item costs.",
                },
              ],
            },
            {
              column: 3,
              blocks: [
                {
                  kind: "picture",
                  svg: '<svg xmlns="http://www.w3.org/2000/svg" width="240" height="80"><rect width="240" height="80" fill="#fff" stroke="#000" stroke-width="4"/><text x="20" y="50" font-size="28" font-family="DejaVu Sans">2.2 kΩ ✎</text></svg>',
                  widthPixels: 240,
                  heightPixels: 80,
                  alt: "A box with a resistance in it.",
                },
              ],
            },
          ],
        },
      ],
    },
    {
      name: "Stores (taken)",
      orientation: "landscape",
      headingOf: "Stores",
      frozenColumns: 1,
      part: "input",
      blocks: [
        { kind: "title", text: "What was taken", level: 2 },
        {
          kind: "table",
          name: "Stores",
          filter: true,
          whenEmpty: "Nothing was taken.",
          columns: [
            { key: "item", heading: "Item", format: "wrapped", width: 26, total: { kind: "label", text: "Sum" } },
            {
              key: "kind",
              heading: "Kind",
              format: "text",
              width: 14,
              input: {
                kind: "listFrom",
                table: "Kinds",
                column: "kind",
                message: "One of the kinds on the sheet Kinds.",
              },
            },
            {
              key: "quantity",
              heading: "Quantity",
              unit: "pieces, m",
              format: "decimal",
              width: 14,
              input: { kind: "number", minimum: 0, message: "0 or more." },
            },
            { key: "price", heading: "Price, each: net & dry", format: "money", width: 16 },
            {
              key: "line",
              heading: "Line",
              format: "money",
              width: 16,
              formula: call("ROUND", binary(thisRow("quantity"), "*", thisRow("price")), literal(2)),
              total: { kind: "sum", cached: 154.56 },
            },
            {
              key: "share",
              heading: "Share",
              format: "percent",
              width: 10,
              formula: binary(thisRow("line"), "/", totalsOf("Stores", "line")),
            },
            { key: "found", heading: "As left", format: "text", role: "handwriting", width: 14 },
          ],
          highlights: [{ when: binary(thisRow("line"), ">", literal(50)), role: "warning", columns: ["line"] }],
          rows: taken.map(([item, kind, quantity, price]) => [
            text(item),
            text(kind),
            number(quantity),
            money(price),
            calculated,
            calculated,
            { kind: "blank" },
          ]),
        },
        { kind: "pageBreak" },
        { kind: "title", text: "On the next page", level: 3 },
      ],
    },
    {
      name: "Kinds",
      part: "working",
      protection: "open",
      blocks: [
        {
          kind: "table",
          name: "Kinds",
          whenEmpty: "No kinds.",
          columns: [
            { key: "kind", heading: "Kind", format: "text", width: 14 },
            {
              key: "sum",
              heading: "Sum",
              format: "money",
              width: 14,
              formula: call("SUMIF", wholeColumn("Stores", "kind"), thisRow("kind"), wholeColumn("Stores", "line")),
            },
            { key: "low", heading: "Low", format: "money", width: 14 },
            { key: "spread", heading: "Spread", format: "money", width: 14 },
          ],
          rows: ["Joining", "Resistors", "Cable", "Other"].map((kind, index) => [
            text(kind),
            calculated,
            money(1000 + 500 * index),
            money(3000 - 300 * index),
          ]),
        },
        {
          kind: "chart",
          chart: "line",
          title: "Sum per kind, with band",
          categories: { table: "Kinds", column: "kind" },
          series: [{ table: "Kinds", column: "sum" }],
          band: { low: { table: "Kinds", column: "low" }, spread: { table: "Kinds", column: "spread" } },
          categoryTitle: "Kind",
          valueTitle: "Money",
          widthPixels: 420,
          heightPixels: 260,
          alt: "A line over a shaded band.",
        },
        {
          kind: "chart",
          chart: "stackedBar",
          title: "Stacked",
          categories: { table: "Kinds", column: "kind" },
          series: [
            { table: "Kinds", column: "sum" },
            { table: "Kinds", column: "low" },
            { table: "Kinds", column: "spread" },
          ],
          widthPixels: 420,
          heightPixels: 260,
          alt: "Three figures stacked per kind.",
        },
        {
          kind: "table",
          name: "NoRows",
          whenEmpty: "none",
          columns: [{ key: "a", heading: "Empty", format: "money", width: 14, total: { kind: "sum" } }],
          rows: [],
        },
      ],
    },
  ],
};
