import fc from "fast-check";
import { expect, test } from "vitest";
import { evaluate } from "../../lib/report/evaluate.js";
import { isError, type Value } from "../../lib/report/evaluate-values.js";
import {
  binary,
  call,
  type Formula,
  literal,
  named,
  negate,
  thisRow,
  totalsOf,
  wholeColumn,
} from "../../lib/report/formula.js";
import { spreadsheetFunctions } from "../../lib/report/functions.js";
import { layOut } from "../../lib/report/layout.js";
import type { Cell, Report, TableColumn } from "../../lib/report/model.js";
import { printablePlan } from "../../lib/report/printable-plan.js";
import { writeWorkbook } from "../../lib/workbook/write/write-workbook.js";
import { recalculatedSheets } from "../tools/libreoffice.js";
import { withWrongCache } from "../tools/wrong-cache.js";

const words = ["loop", "Loop", "contact", "wire*", "wi", "", "≥ 5 Ω", 'a "b"'];
const rows = 14;

/** Formulas that give a number, a text or a truth value; `inTable` allows "this row". */
function trees(inTable: boolean): fc.Arbitrary<Formula> {
  const cents = fc.integer({ min: -99_999, max: 99_999 }).map((each) => literal(each / 100));
  const whole = fc.integer({ min: -20, max: 20 }).map(literal);
  const column = fc.constantFrom("a", "b", "price").map((key) => wholeColumn("Data", key));
  const word = fc.constantFrom(...words).map(literal);
  const criterion = fc.constantFrom(...words.filter((each) => each !== "")).map(literal);
  const { number } = fc.letrec<{ number: Formula; truth: Formula; text: Formula; leaf: Formula }>((tie) => ({
    leaf: fc.oneof(
      cents,
      whole,
      fc.constantFrom("Rate", "Factor", "Nothing").map(named),
      fc.constant(totalsOf("Data", "price")),
      ...(inTable ? [fc.constantFrom("a", "b", "price").map(thisRow)] : []),
    ),
    number: fc.oneof(
      { maxDepth: 4, depthSize: "medium" },
      tie("leaf"),
      fc.tuple(tie("number"), fc.constantFrom("+", "-", "*", "/"), tie("number")).map(([l, o, r]) => binary(l, o, r)),
      tie("number").map(negate),
      fc
        .tuple(fc.constantFrom("SUM", "MAX", "MIN", "AVERAGE", "COUNT"), fc.oneof(column, tie("number")), tie("number"))
        .map(([f, x, y]) => call(f, x, y)),
      fc
        .tuple(fc.constantFrom("ROUND", "ROUNDUP", "ROUNDDOWN"), tie("number"), fc.integer({ min: -2, max: 3 }))
        .map(([f, x, d]) => call(f, x, literal(d))),
      fc.tuple(fc.constantFrom("INT", "ABS", "SQRT"), tie("number")).map(([f, x]) => call(f, x)),
      fc.tuple(tie("truth"), tie("number"), tie("number")).map(([c, x, y]) => call("IF", c, x, y)),
      fc.tuple(tie("number"), tie("number")).map(([x, y]) => call("IFERROR", x, y)),
      fc.tuple(column, whole, column).map(([x, y, z]) => call("SUMIF", x, y, z)),
      fc.tuple(criterion, column).map(([x, y]) => call("SUMIF", wholeColumn("Data", "word"), x, y)),
      fc
        .tuple(fc.constantFrom("<", "<=", ">", ">=", "<>", "="), fc.integer({ min: -9, max: 9 }), column)
        .map(([o, x, y]) => call("COUNTIF", y, literal(`${o}${x}`))),
      fc
        .tuple(column, criterion, column)
        .map(([x, y, z]) => call("SUMIFS", x, wholeColumn("Data", "word"), y, z, literal(">0"))),
      fc
        .tuple(column, column, word)
        .map(([x, y, z]) => call("SUMPRODUCT", binary(binary(wholeColumn("Data", "word"), "=", z), "*", x), y)),
      column.map((x) => call("COUNTA", x, wholeColumn("Data", "word"))),
      fc.tuple(criterion, column).map(([x, y]) => call("COUNTIFS", wholeColumn("Data", "word"), x, y, literal("<=4"))),
      fc.tuple(column, fc.integer({ min: 1, max: rows + 1 })).map(([x, y]) => call("INDEX", x, literal(y))),
      fc.tuple(word, fc.constant(0)).map(([x, y]) => call("MATCH", x, wholeColumn("Data", "word"), literal(y))),
      fc
        .tuple(tie("leaf"), fc.constantFrom(0, 1))
        .map(([x, y]) => call("MATCH", x, wholeColumn("Data", "rising"), literal(y))),
    ),
    truth: fc.oneof(
      { maxDepth: 3 },
      fc
        .tuple(tie("leaf"), fc.constantFrom("=", "<>", "<", "<=", ">", ">="), tie("number"))
        .map(([l, o, r]) => binary(l, o, r)),
      fc.tuple(tie("text"), fc.constantFrom("=", "<>"), tie("text")).map(([l, o, r]) => binary(l, o, r)),
      fc.tuple(fc.constantFrom("AND", "OR"), tie("truth"), tie("truth")).map(([f, x, y]) => call(f, x, y)),
      tie("truth").map((x) => call("NOT", x)),
      fc.oneof(tie("number"), tie("text")).map((x) => call("ISNUMBER", x)),
      fc.constantFrom("Rate", "Nothing").map((x) => call("ISBLANK", named(x))),
    ),
    text: fc.oneof(
      { maxDepth: 2 },
      word,
      fc.tuple(tie("text"), fc.oneof(whole, cents, tie("text"))).map(([l, r]) => binary(l, "&", r)),
      ...(inTable ? [fc.constant(thisRow("word"))] : []),
    ),
  }));
  const { text, truth } = { text: word, truth: fc.constant(literal(true)) };
  return fc.oneof(
    { weight: 8, arbitrary: number },
    {
      weight: 1,
      arbitrary: fc.tuple(number, text).map(([x, y]) => call("IF", binary(x, ">", literal(1)), y, literal("low"))),
    },
    { weight: 1, arbitrary: fc.tuple(number, truth).map(([x, y]) => binary(binary(x, "<=", literal(0)), "=", y)) },
  );
}

/** Errors are refused in a report, so that each random formula says what to show instead of one. */
const shown = (formula: Formula): Formula => call("IFERROR", formula, literal("an error"));

function randomReport(seed: number): Report {
  const own = fc.sample(trees(true), { numRuns: 12, seed });
  const free = fc.sample(trees(false), { numRuns: 160, seed: seed + 1 });
  const plain = (key: string, width = 9): TableColumn => ({ key, heading: `${key} (x)`, format: "general", width });
  const numbers = fc.sample(fc.integer({ min: -50, max: 50 }), { numRuns: rows * 2, seed: seed + 2 });
  return {
    title: "random",
    job: "random",
    revision: "1",
    date: "2025-05-05",
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
            columns: [
              plain("a"),
              plain("b"),
              { ...plain("price"), total: { kind: "sum" } },
              plain("word"),
              plain("rising"),
              ...own.map((formula, index) => ({ ...plain(`own${index}`), formula: shown(formula) })),
            ],
            rows: Array.from({ length: rows }, (_, row): Cell[] => [
              { kind: "number", value: numbers[row] ?? 0 },
              row % 5 === 4 ? { kind: "blank" } : { kind: "number", value: (numbers[rows + row] ?? 0) / 4 },
              { kind: "money", cents: 37 * row * row - 250 },
              { kind: "text", text: words[row % words.length] ?? "" },
              { kind: "number", value: row * 3 - 10 },
              ...own.map((): Cell => ({ kind: "calculated" })),
            ]),
          },
        ],
      },
      {
        name: "Free",
        blocks: [
          {
            kind: "keyValue",
            rows: [
              { label: "r", name: "Rate", cell: { kind: "number", value: 0.19 } },
              { label: "f", name: "Factor", cell: { kind: "number", value: 7 } },
              { label: "n", name: "Nothing", cell: { kind: "blank" } },
              ...free.map((formula, index) => ({
                label: `free ${index}`,
                cell: { kind: "formula", formula: shown(formula), format: "general" } as Cell,
              })),
            ],
          },
        ],
      },
    ],
  };
}

function agrees(ours: Value, theirs: string): boolean {
  if (isError(ours)) return false;
  if (typeof ours === "boolean") return theirs === (ours ? "TRUE" : "FALSE");
  if (typeof ours === "string") return theirs === ours;
  return theirs !== "" && Math.abs(Number(theirs) - (ours ?? 0)) <= 1e-9 * Math.max(1, Math.abs(ours ?? 0));
}

/** Formulas of all seeds, to see that every function was met. */
const texts: string[] = [];

test.each([11, 2024, 77])(
  "random formula trees: our evaluator and LibreOffice agree (seed %i)",
  async (seed) => {
    const report = randomReport(seed);
    const layout = layOut(report);
    const evaluator = evaluate(layout);
    const plan = printablePlan(report);
    // Every cached value is spoilt first: what comes back can only be LibreOffice's own result.
    const sheets = await recalculatedSheets(await writeWorkbook(withWrongCache(plan)));
    const wrong: string[] = [];
    let compared = 0;
    let errors = 0;
    layout.sheets.forEach((sheet, at) => {
      for (const cell of sheet.cells) {
        if (cell.formula === undefined) continue;
        const ours = evaluator.cell(cell);
        const theirs = sheets.get(cell.sheet)?.[cell.row - 1]?.[cell.column - 1] ?? "missing";
        compared += 1;
        if (ours === "an error") errors += 1;
        const text = plan.sheets[at]?.cells.find(
          (each) => each.row === cell.row && each.column === cell.column,
        )?.content;
        if (text?.kind === "formula") texts.push(text.text);
        if (!agrees(ours, theirs))
          wrong.push(`${JSON.stringify(text)}: ours ${JSON.stringify(ours)}, theirs ${theirs}`);
      }
    });
    expect(compared).toBeGreaterThan(300);
    expect(errors).toBeLessThan(compared / 2);
    expect(wrong).toEqual([]);
  },
  120_000,
);

test("the random trees met every function a report may use", () => {
  expect(texts.length).toBeGreaterThan(900);
  const unused = Object.keys(spreadsheetFunctions).filter((name) => !texts.some((each) => each.includes(`${name}(`)));
  expect(unused).toEqual([]);
});
