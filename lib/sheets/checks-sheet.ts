import { binary, call, type Formula, literal, named, thisRow, totalsOf, wholeColumn } from "../report/formula.js";
import type { Cell, Format, Sheet } from "../report/model.js";
import { calculated, column, formulaCell, line, title, warnWhen, wrapped } from "./cells.js";
import { orderTable } from "./orders-sheet.js";
import { isWired, type SheetInput } from "./sheet-input.js";
import { surveyTable, tableNamed } from "./survey-tables.js";

const zero = literal(0);
const one = literal(1);
const sum = (parts: readonly Formula[]): Formula =>
  parts.length === 0 ? zero : parts.reduce((before, part) => binary(before, "+", part));
const agree = "agree";
const disagree = "do not agree";

/** One cross-check: two ways to the same figure. */
interface Check {
  readonly words: string;
  readonly left: Formula;
  readonly right: Formula;
  readonly format: Format;
}

/** Every cross-check as a row with its formula, what became of all of them, and whether the plan is older than edits. */
export function checksSheet(input: SheetInput): Sheet {
  const edited = binary(named("EditCount"), ">", zero);
  const failed = binary(named("FailedChecks"), ">", zero);
  return {
    name: "Checks",
    orientation: "landscape",
    part: "working",
    // What became of the checks stands on Summary; on paper nobody needs the rest.
    printed: "none",
    columnWidths: [76, 16, 18, 18, 16],
    blocks: [
      title("Checks"),
      {
        kind: "keyValue",
        valueColumns: 3,
        rows: [
          line("Totals and cross-checks", statusCell(), { name: "CheckStatus", highlights: warnWhen(failed) }),
          line(
            "Checks that do not agree",
            formulaCell(call("COUNTIF", wholeColumn("checks", "state"), literal(disagree)), "count"),
            {
              name: "FailedChecks",
            },
          ),
          line("Plan and edits", planAgeCell(), { name: "PlanAge", highlights: warnWhen(edited) }),
          line("Edits since the plan was made", formulaCell(sum(editCounts(input)), "count"), { name: "EditCount" }),
        ],
      },
      {
        kind: "table",
        name: "checks",
        whenEmpty: "No checks.",
        columns: [
          column("words", "Check", "wrapped", 76),
          column("state", "They", "wrapped", 16, {
            formula: call("IF", binary(thisRow("difference"), "=", zero), literal(agree), literal(disagree)),
          }),
          column("left", "One way", "general", 18),
          column("right", "The other way", "general", 18),
          column("difference", "Difference", "decimal", 16, {
            formula: call("ROUND", binary(thisRow("left"), "-", thisRow("right")), literal(4)),
          }),
        ],
        highlights: [{ when: binary(thisRow("state"), "=", literal(disagree)), role: "warning" }],
        rows: checksOf(input).map(({ words, left, right, format }): readonly Cell[] => [
          wrapped(words),
          calculated,
          formulaCell(left, format),
          formulaCell(right, format),
          calculated,
        ]),
      },
    ],
  };
}

/** "agree" or "do not agree (n)", for Checks and Summary. */
export const statusCell = (): Cell =>
  formulaCell(
    call(
      "IF",
      binary(named("FailedChecks"), "=", zero),
      literal("Totals and cross-checks agree"),
      binary(binary(literal("Totals and cross-checks do not agree ("), "&", named("FailedChecks")), "&", literal(")")),
    ),
    "wrapped",
  );

/** Whether the plan is older than what was edited since. */
export const planAgeCell = (): Cell =>
  formulaCell(
    call(
      "IF",
      binary(named("EditCount"), "=", zero),
      literal("Nothing was edited since the plan was made"),
      binary(
        binary(literal("Plan is older than these edits ("), "&", named("EditCount")),
        "&",
        literal("): run the estimate again; what was edited is marked on Plan values"),
      ),
    ),
    "wrapped",
  );

function editCounts(input: SheetInput): readonly Formula[] {
  const { bill, labour } = input.estimate;
  return [
    totalsOf("plan_rates", "changed"),
    ...(bill.length === 0 ? [] : [totalsOf("plan_bill", "changed")]),
    ...(labour.length === 0 ? [] : [totalsOf("plan_labour", "changed")]),
    totalsOf("plan_sums", "changed"),
    totalsOf("plan_loops", "changed"),
  ];
}

function checksOf(input: SheetInput): readonly Check[] {
  const { estimate } = input;
  const { bill, orders, labour, price, loops } = estimate;
  const unedited = binary(named("EditCount"), "=", zero);
  const priced = (words: string, name: string, cents: number): Check => ({
    words: `${words}: this workbook, and the calculation that made the plan (compared while nothing is edited)`,
    left: named(name),
    right: call("IF", unedited, literal(cents / 100), named(name)),
    format: "money",
  });
  const column = (table: string, key: string) => wholeColumn(table, key);
  const checks: Check[] = [];
  if (bill.length > 0) {
    checks.push({
      words: "Material: goods of all orders with what leaves the van, and the bill",
      left: call(
        "ROUND",
        sum([
          ...orders.map((_, index) => totalsOf(orderTable(index), "line")),
          call("SUMPRODUCT", column("bill", "van"), column("bill", "unitPrice")),
        ]),
        literal(2),
      ),
      right: totalsOf("bill", "line"),
      format: "money",
    });
    checks.push({
      words: "Material: sum of the bill, and its lines in the price",
      left: totalsOf("bill", "line"),
      right: call("SUMIFS", column("price_lines", "cost"), column("price_lines", "kind"), literal("material")),
      format: "money",
    });
  }
  if (labour.length > 0) {
    checks.push({
      words: "Labour: sum of the sheet Labour, and its lines in the price",
      left: totalsOf("labour_lines", "cost"),
      right: call("SUMIFS", column("price_lines", "cost"), column("price_lines", "kind"), literal("labour")),
      format: "money",
    });
    checks.push({
      words: "Labour: count × mean added up, and the hours of all lines",
      left: call("SUMPRODUCT", column("labour_lines", "count"), column("labour_lines", "mean")),
      right: totalsOf("labour_lines", "hours"),
      format: "decimal",
    });
  }
  checks.push(
    {
      words: "Price before tax and tax, and the price with tax",
      left: call("ROUND", binary(named("JobSell"), "+", named("JobTax")), literal(2)),
      right: named("JobTotal"),
      format: "money",
    },
    {
      words: "Margin and markup tell of the same money: price × (1 − margin), and the cost",
      left: call("ROUND", binary(named("JobSell"), "*", binary(one, "-", named("JobMargin"))), literal(2)),
      right: named("JobCost"),
      format: "money",
    },
    priced("Cost", "JobCost", price.costCents),
    priced("Price before tax", "JobSell", price.sellCents),
    priced("Tax", "JobTax", price.taxCents),
    priced("Price with tax", "JobTotal", price.totalCents),
  );
  if (tableNamed(input.surveySheets, surveyTable.loops) !== undefined) {
    checks.push({
      words: "Loops: rows of the sheet Loops, and rows of the survey (a row added since has no verdict yet)",
      left: call("COUNTA", column("loops", "key")),
      right: call("COUNTA", column(surveyTable.loops, "loop")),
      format: "count",
    });
  }
  if (estimate.terminals.length > 0) {
    checks.push({
      words: "Terminals: two conductors of every loop on a wired input, and the terminal schedule",
      left: literal(2 * loops.filter(isWired).length),
      right: call("COUNTA", column("terminals", "conductor")),
      format: "count",
    });
  }
  return checks;
}
