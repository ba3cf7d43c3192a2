import { describe, expect, test } from "vitest";
import { checkReport } from "../../lib/report/check.js";
import {
  binary,
  call,
  type Formula,
  literal,
  named,
  thisRow,
  totalsOf,
  wholeColumn,
} from "../../lib/report/formula.js";
import { layOut } from "../../lib/report/layout.js";
import { legalText, textProblem } from "../../lib/report/legal-text.js";
import type { Block, Cell, Report, Sheet, TableBlock, TableColumn } from "../../lib/report/model.js";
import { printablePlan } from "../../lib/report/printable-plan.js";

const one: Cell = { kind: "number", value: 1 };
const column = (key: string, more: Partial<TableColumn> = {}): TableColumn => ({
  key,
  heading: key,
  format: "general",
  width: 10,
  ...more,
});
const table = (more: Partial<TableBlock> = {}): TableBlock => ({
  kind: "table",
  name: "Data",
  columns: [column("a"), column("b")],
  rows: [[one, one]],
  whenEmpty: "none",
  ...more,
});
const value = (cell: Cell, name = "Value"): Block => ({ kind: "keyValue", rows: [{ label: "x", cell, name }] });
const shows = (formula: Formula, cached?: number): Block =>
  value(cached === undefined ? { kind: "formula", formula } : { kind: "formula", formula, cached });
const report = (blocks: readonly Block[], more: Partial<Report> = {}, sheet: Partial<Sheet> = {}): Report => ({
  title: "t",
  job: "j",
  revision: "r",
  date: "2025-02-03",
  currency: "EUR",
  paper: "A4",
  sheets: [{ name: "Sheet", blocks, ...sheet }],
  ...more,
});
const messages = (each: Report): string =>
  checkReport(layOut(each))
    .map(({ sheet, where, message }) => `${sheet} ${where}: ${message}`)
    .join("\n");

test("a plain report has no problem", () => {
  expect(messages(report([table(), shows(call("SUM", wholeColumn("Data", "a")), 1)]))).toBe("");
});

describe("limits of the file format and of spreadsheet programs (vendor's published limits, from memory)", () => {
  const chart = { kind: "chart", chart: "bar", title: "c", widthPixels: 100, heightPixels: 100, alt: "c" } as const;
  const deep = Array.from({ length: 70 }).reduce<Formula>((inner) => call("ABS", inner), literal(1));
  const cases: readonly (readonly [string, Report, RegExp])[] = [
    ["sheet name too long", report([], {}, { name: "n".repeat(32) }), /1 to 31 characters/],
    ["sheet name with a slash", report([], {}, { name: "a/b" }), /must not have any of/],
    ["sheet name kept by the program", report([], {}, { name: "History" }), /keeps for itself/],
    [
      "sheet twice, other case",
      report([], {
        sheets: [
          { name: "A", blocks: [] },
          { name: "a", blocks: [] },
        ],
      }),
      /the sheet name stands twice/,
    ],
    ["no sheet", report([], { sheets: [] }), /at least one sheet/],
    ["table named like a cell", report([table({ name: "AB12" })]), /looks like a cell address/],
    ["table named R1C1", report([table({ name: "R1C1" })]), /row or column address/],
    ["table name with a space", report([table({ name: "my table" })]), /must be letters/],
    ["table and cell of one name", report([table({ name: "Same" }), value(one, "same")]), /"same" stands twice/],
    ["two tables of one name", report([table(), table()]), /two tables are called "Data"/],
    ["headings alike", report([table({ columns: [column("a"), column("b", { heading: "A" })] })]), /the same heading/],
    [
      "heading with a bracket",
      report([table({ columns: [column("a", { heading: "a [m]" }), column("b")] })]),
      /without/,
    ],
    ["keys alike", report([table({ columns: [column("a"), column("a", { heading: "x" })] })]), /same key/],
    ["too few cells in a row", report([table({ rows: [[one]] })]), /1 cells for 2 columns/],
    ["text too long", report([value({ kind: "text", text: "x".repeat(32_768) })]), /at most 32767/],
    ["control character", report([value({ kind: "text", text: "a\u0007b" })]), /U\+0007/],
    ["carriage return", report([value({ kind: "text", text: "a\r\nb" })]), /U\+000D/],
    ["half a character", report([value({ kind: "text", text: "\ud83d" })]), /half of a character pair/],
    ["not a number", report([value({ kind: "number", value: Number.NaN })]), /finite number/],
    ["endless", report([value({ kind: "number", value: Number.POSITIVE_INFINITY })]), /finite number/],
    ["parts of a cent", report([value({ kind: "money", cents: 0.5 })]), /whole cents/],
    ["no such day", report([value({ kind: "date", iso: "2025-02-30" })]), /YYYY-MM-DD/],
    ["link to no sheet", report([value({ kind: "link", text: "x", sheet: "Gone" })]), /no sheet "Gone"/],
    ["link to no block", report([value({ kind: "link", text: "x", sheet: "Sheet", block: "q" })]), /no block "q"/],
    ["unknown cell", report([shows(named("Gone"))]), /no cell named "Gone"/],
    ["unknown column", report([table(), shows(call("SUM", wholeColumn("Data", "z")))]), /no column "z"/],
    [
      "column where a value belongs",
      report([table(), shows(binary(wholeColumn("Data", "a"), "+", literal(1)))]),
      /whole column/,
    ],
    ["no total", report([table(), shows(totalsOf("Data", "a"))]), /has no total/],
    ["this row outside a table", report([shows(thisRow("a"))]), /means nothing outside a table/],
    [
      "volatile function",
      report([shows({ kind: "call", name: "INDIRECT" as "SUM", arguments: [literal("A1")] })]),
      /not on the list/,
    ],
    ["wrong number of arguments", report([shows(call("ROUND", literal(1)))]), /does not take 1 arguments/],
    ["text constant too long", report([shows(call("ISNUMBER", literal("x".repeat(256))))]), /at most 255/],
    ["nested too deep", report([shows(deep)]), /nested too deep/],
    ["formula that shows an error", report([shows(binary(literal(1), "/", literal(0)))]), /gives #DIV\/0!/],
    ["formula that depends on itself", report([shows(named("Value"))]), /gives #REF!/],
    [
      "engine and formula apart",
      report([shows(binary(literal(1), "+", literal(1)), 2.001)]),
      /gives 2, our engine says 2.001/,
    ],
    [
      "empty criterion",
      report([table(), shows(call("COUNTIF", wholeColumn("Data", "a"), literal("")))]),
      /empty cells/,
    ],
    ["calculated without formula", report([table({ rows: [[one, { kind: "calculated" }]] })]), /no formula/],
    [
      "one column, two formulas",
      report([table({ columns: [column("a"), column("b", { formula: thisRow("a") })] })]),
      /all its cells must be calculated/,
    ],
    [
      "blocks over each other",
      report([
        {
          kind: "beside",
          parts: [
            { column: 1, blocks: [table()] },
            { column: 2, blocks: [table({ name: "Other" })] },
          ],
        },
      ]),
      /shares cells with/,
    ],
    [
      "chart of nothing",
      report([{ ...chart, categories: { table: "X", column: "y" }, series: [] }]),
      /at least one series/,
    ],
    [
      "picture without words",
      report([{ kind: "picture", svg: "<svg/>", widthPixels: 9, heightPixels: 9, alt: " " }]),
      /words for a reader/,
    ],
    [
      "choices too long",
      report([
        table({
          columns: [column("a", { input: { kind: "list", values: ["x".repeat(256)], message: "m" } }), column("b")],
        }),
      ]),
      /1 to 255 characters in all/,
    ],
    [
      "choice with a comma",
      report([
        table({ columns: [column("a", { input: { kind: "list", values: ["a,b"], message: "m" } }), column("b")] }),
      ]),
      /must not have a comma/,
    ],
    ["currency in words", report([], { currency: "euro" }), /three-letter code/],
    ["heading of no table", report([], {}, { headingOf: "Gone" }), /no table "Gone"/],
  ];
  test.each(cases)("%s", (_, broken, expected) => {
    expect(messages(broken)).toMatch(expected);
    expect(() => printablePlan(broken)).toThrow(/^report: got \d+ problems? \(/);
  });
});

describe("text made fit for a spreadsheet file (XML 1.0, production 2: characters allowed)", () => {
  test.each([
    ["a bell", "a\u0007b", "a\ufffdb"],
    ["half of a pair", "a\ud800b", "a\ufffdb"],
    ["a whole pair", "\u{1F514}", "\u{1F514}"],
    ["a carriage return", "a\r\nb\rc", "a\nb\nc"],
  ])("%s", (_, text, fit) => {
    expect(legalText(text)).toBe(fit);
    expect(textProblem(legalText(text))).toBeUndefined();
  });
  test("ends a text that is too long with a remark that says so", () => {
    const fit = legalText("x".repeat(98_888));
    expect(fit).toHaveLength(32_767);
    expect(fit).toMatch(/ … \(cut: 98888 characters\)$/);
  });
});
