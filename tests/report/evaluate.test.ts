import { describe, expect, test } from "vitest";
import { evaluate } from "../../lib/report/evaluate.js";
import { binary, call, type Formula, literal, wholeColumn } from "../../lib/report/formula.js";
import { layOut } from "../../lib/report/layout.js";
import type { Cell, Report } from "../../lib/report/model.js";

/** Columns of the examples: property values and commissions, fruit, a rising column. */
const columns: readonly (readonly [string, readonly (number | string)[]])[] = [
  ["value", [100_000, 200_000, 300_000, 400_000]],
  ["commission", [7000, 14_000, 21_000, 28_000]],
  ["fruit", ["apples", "oranges", "peaches", "apples"]],
  ["count", [32, 54, 75, 86]],
  ["rising", [25, 38, 40, 41]],
];

const report: Report = {
  title: "t",
  job: "j",
  revision: "r",
  date: "2025-01-31",
  currency: "EUR",
  paper: "A4",
  sheets: [
    {
      name: "Data",
      blocks: [
        {
          kind: "table",
          name: "Data",
          whenEmpty: "",
          columns: columns.map(([key]) => ({ key, heading: key, format: "general", width: 10 })),
          rows: [0, 1, 2, 3].map((row) =>
            columns.map(([, values]): Cell => {
              const value = values[row] ?? "";
              return typeof value === "number" ? { kind: "number", value } : { kind: "text", text: value };
            }),
          ),
        },
      ],
    },
  ],
};

const work = (formula: Formula): unknown => evaluate(layOut(report)).formula(formula);
const column = (key: string): Formula => wholeColumn("Data", key);
const n = literal;

describe("worked examples of the vendor's function reference (from memory)", () => {
  const examples: readonly (readonly [string, Formula, unknown])[] = [
    ["ROUND(2.15, 1)", call("ROUND", n(2.15), n(1)), 2.2],
    ["ROUND(2.149, 1)", call("ROUND", n(2.149), n(1)), 2.1],
    ["ROUND(-1.475, 2)", call("ROUND", n(-1.475), n(2)), -1.48],
    ["ROUND(21.5, -1)", call("ROUND", n(21.5), n(-1)), 20],
    ["ROUND(626.3, -3)", call("ROUND", n(626.3), n(-3)), 1000],
    ["ROUND(-50.55, -2)", call("ROUND", n(-50.55), n(-2)), -100],
    ["ROUNDUP(3.2, 0)", call("ROUNDUP", n(3.2), n(0)), 4],
    ["ROUNDUP(76.9, 0)", call("ROUNDUP", n(76.9), n(0)), 77],
    ["ROUNDUP(3.2159, 3)", call("ROUNDUP", n(3.2159), n(3)), 3.216],
    ["ROUNDUP(-3.2159, 1)", call("ROUNDUP", n(-3.2159), n(1)), -3.3],
    ["ROUNDUP(31415.92654, -2)", call("ROUNDUP", n(31415.92654), n(-2)), 31_500],
    ["ROUNDDOWN(3.2, 0)", call("ROUNDDOWN", n(3.2), n(0)), 3],
    ["ROUNDDOWN(-3.2159, 1)", call("ROUNDDOWN", n(-3.2159), n(1)), -3.2],
    ["ROUNDDOWN(31415.92654, -2)", call("ROUNDDOWN", n(31415.92654), n(-2)), 31_400],
    ["INT(8.9)", call("INT", n(8.9)), 8],
    ["INT(-8.9)", call("INT", n(-8.9)), -9],
    ['SUMIF(value, ">160000", commission)', call("SUMIF", column("value"), n(">160000"), column("commission")), 63_000],
    ['SUMIF(value, ">160000")', call("SUMIF", column("value"), n(">160000")), 900_000],
    ["SUMIF(value, 300000, commission)", call("SUMIF", column("value"), n(300_000), column("commission")), 21_000],
    ['COUNTIF(fruit, "apples")', call("COUNTIF", column("fruit"), n("apples")), 2],
    ['COUNTIF(fruit, "*es")', call("COUNTIF", column("fruit"), n("*es")), 4],
    ['COUNTIF(count, ">55")', call("COUNTIF", column("count"), n(">55")), 2],
    ['COUNTIF(count, "<>75")', call("COUNTIF", column("count"), n("<>75")), 3],
    ["MATCH(39, rising, 1)", call("MATCH", n(39), column("rising"), n(1)), 2],
    ["MATCH(41, rising, 0)", call("MATCH", n(41), column("rising"), n(0)), 4],
    ["MATCH(39, rising, 0)", call("MATCH", n(39), column("rising"), n(0)), { error: "#N/A" }],
    ["INDEX(fruit, 2)", call("INDEX", column("fruit"), n(2)), "oranges"],
    ["INDEX(fruit, 5)", call("INDEX", column("fruit"), n(5)), { error: "#REF!" }],
    ["1/0", binary(n(1), "/", n(0)), { error: "#DIV/0!" }],
    ["IFERROR(1/0, 7)", call("IFERROR", binary(n(1), "/", n(0)), n(7)), 7],
    ["SQRT(-1)", call("SQRT", n(-1)), { error: "#NUM!" }],
    ['"a" = "A"', binary(n("a"), "=", n("A")), true],
    ['"x" & 1.5', binary(n("x"), "&", n(1.5)), "x1.5"],
  ];
  test.each(examples)("%s", (_, formula, expected) => {
    expect(work(formula)).toEqual(expected);
  });
});

test("a cell that depends on itself is an error, not an endless loop", () => {
  const loop: Report = {
    ...report,
    sheets: [
      {
        name: "S",
        blocks: [
          {
            kind: "keyValue",
            rows: [
              {
                label: "a",
                name: "aa_",
                cell: { kind: "formula", formula: { kind: "reference", to: { kind: "named", name: "bb_" } } },
              },
              {
                label: "b",
                name: "bb_",
                cell: { kind: "formula", formula: { kind: "reference", to: { kind: "named", name: "aa_" } } },
              },
            ],
          },
        ],
      },
    ],
  };
  const layout = layOut(loop);
  const cell = layout.named.get("aa_");
  expect(cell).toBeDefined();
  expect(cell && evaluate(layout).cell(cell)).toEqual({ error: "#REF!" });
});
