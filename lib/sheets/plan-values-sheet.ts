import type { BillLine } from "../estimate/estimate.js";
import { moneySettings } from "../reference/generated/demo/money-settings.js";
import { binary, call, type Formula, literal, thisRow, wholeColumn } from "../report/formula.js";
import type { Block, Cell, Sheet, TableBlock } from "../report/model.js";
import type { PriceBookRow } from "../survey/survey.js";
import { calculated, column, formulaCell, money, number, paragraph, text, title, wrapped } from "./cells.js";
import type { SheetInput } from "./sheet-input.js";
import { columnSum, lookUpHere, rowTexts, surveyTable, tableNamed } from "./survey-tables.js";

/** Columns of a loop row whose change can change the plan. */
const planColumns = [
  "closed",
  "opened",
  "openings",
  "device",
  "cable",
  "run",
  "eolPlace",
  "eolValue",
  "use",
  "lifeSafety",
  "pinTreatment",
  "forbid",
  "supplyCure",
] as const;
const separator = " | ";

const one = literal(1);
const zero = literal(0);
/** 1 where something differs, else 0. */
const flagged = (differs: Formula): Formula => call("IF", differs, one, zero);
const editedLabel = { total: { kind: "label" as const, text: "Edited" } };
const changedColumn = (differs: Formula) =>
  column("changed", "Edited", "count", 8, { formula: flagged(differs), total: { kind: "sum" as const } });

/**
 * What the plan was made with, locked, beside what stands in the survey sheets now. Every difference makes the plan
 * older than the edits; prices, hours and rates of the money sheets are taken from the "now" columns.
 */
export function planValuesSheet(input: SheetInput): Sheet {
  return {
    name: "Plan values",
    orientation: "landscape",
    part: "working",
    printed: "none",
    blocks: [
      title("What the plan was made with"),
      paragraph(
        "Locked values of the plan beside what stands in the survey sheets now. A line counted as edited makes the plan older than the edit: run the estimate again.",
        "note",
      ),
      title("Rates", 2),
      ratesTable(input),
      ...(input.estimate.bill.length === 0 ? [] : [title("Prices and packs", 2), pricesTable(input)]),
      ...(input.estimate.labour.length === 0 ? [] : [title("Hours for one unit of work", 2), hoursTable(input)]),
      ...sumsBlocks(input),
      ...loopsBlocks(input),
    ],
  };
}

/** Sums over whole survey tables: an edit of a line that the plan does not use could change the plan too. */
const sums = [
  ["Survey Price book", "Unit prices", surveyTable.priceBook, "unitPrice"],
  ["Survey Price book", "Pack sizes", surveyTable.priceBook, "packSize"],
  ["Survey Price book", "Stock", surveyTable.priceBook, "stock"],
  ["Survey Labour", "Likely hours", surveyTable.labour, "likelyHours"],
  ["Survey Input modules", "Inputs", surveyTable.modules, "inputs"],
  ["Survey Input modules", "Stock", surveyTable.modules, "stock"],
] as const;

function sumsBlocks({ surveySheets }: SheetInput): readonly Block[] {
  const places = literal(4);
  const rows = sums.flatMap(([sheet, words, table, wanted]): (readonly Cell[])[] => {
    const block = tableNamed(surveySheets, table);
    if (block === undefined) return [];
    const now = call("ROUND", call("SUM", wholeColumn(table, wanted)), places);
    const planned = Math.round(columnSum(block, wanted) * 1e4) / 1e4;
    return [[text(sheet), text(words), number(planned), formulaCell(now, "general"), calculated]];
  });
  if (rows.length === 0) return [];
  return [
    title("Whole tables", 2),
    {
      kind: "table",
      name: "plan_sums",
      whenEmpty: "",
      columns: [
        column("sheet", "Sheet", "text", 24, editedLabel),
        column("words", "Sum over the whole sheet", "text", 44),
        column("planned", "Planned with", "general", 14),
        column("now", "Now", "general", 9),
        changedColumn(binary(thisRow("now"), "<>", thisRow("planned"))),
      ],
      rows,
    },
  ];
}

/** Settings that the plan and the price depend on. A value outside its limits is not used, in the library as here. */
function ratesTable({ job }: SheetInput): TableBlock {
  const typed = lookUpHere(surveyTable.settings, "value", "setting");
  return {
    kind: "table",
    name: "plan_rates",
    whenEmpty: "",
    columns: [
      column("setting", "Setting", "text", 24, editedLabel),
      column("meaning", "What it does", "wrapped", 44),
      column("unit", "Unit", "text", 14),
      column("least", "Least", "general", 9),
      column("most", "Most", "general", 9),
      column("planned", "Planned with", "general", 13),
      column("now", "Now", "general", 13, {
        formula: call(
          "IFERROR",
          call(
            "IF",
            call("AND", binary(typed, ">=", thisRow("least")), binary(typed, "<=", thisRow("most"))),
            typed,
            thisRow("planned"),
          ),
          thisRow("planned"),
        ),
      }),
      changedColumn(binary(thisRow("now"), "<>", thisRow("planned"))),
    ],
    rows: moneySettings.map(({ setting, meaning, unit, least, most }) => [
      text(setting),
      wrapped(meaning),
      text(unit),
      number(least),
      number(most),
      number(job[setting as keyof typeof job]),
      calculated,
      calculated,
    ]),
  };
}

/** A cell of the price book by article, supplier and tier; as planned when there is not exactly one such row. */
function priceNow(supplier: string, from: string, planned: string): Formula {
  const criteria = [
    wholeColumn(surveyTable.priceBook, "code"),
    thisRow("code"),
    wholeColumn(surveyTable.priceBook, "supplier"),
    thisRow(supplier),
    wholeColumn(surveyTable.priceBook, "fromQuantity"),
    thisRow(from),
  ];
  return call(
    "IF",
    binary(call("COUNTIFS", ...criteria), "=", one),
    call("SUMIFS", wholeColumn(surveyTable.priceBook, "unitPrice"), ...criteria),
    thisRow(planned),
  );
}

function pricesTable(input: SheetInput): TableBlock {
  return {
    kind: "table",
    name: "plan_bill",
    whenEmpty: "",
    columns: [
      column("code", "Code", "text", 24, editedLabel),
      column("supplier", "Price of", "text", 44),
      column("from", "From quantity", "general", 14),
      column("packs", "Packs planned", "general", 9),
      column("price", "Price planned", "money", 13),
      column("priceNow", "Price now", "money", 13, { formula: priceNow("supplier", "from", "price") }),
      changedColumn(
        call(
          "OR",
          binary(thisRow("priceNow"), "<>", thisRow("price")),
          binary(lookUpHere("bill", "packs", "code"), "<>", thisRow("packs")),
        ),
      ),
    ],
    rows: input.estimate.bill.map((line) => priceRow(input, line)),
  };
}

function priceRow({ priceBook }: SheetInput, line: BillLine): readonly Cell[] {
  const tier = tierOf(
    priceBook.filter(({ code }) => code === line.code),
    line,
  );
  return [
    text(line.id),
    text(tier?.supplier ?? "no row of the price book"),
    number(tier?.fromQuantity ?? 0),
    number(line.packs),
    money(line.unitCents),
    calculated,
    calculated,
  ];
}

/** Row of the price book that a line's price was taken from: the highest tier reached, of the supplier bought from. */
function tierOf(rows: readonly PriceBookRow[], line: BillLine): PriceBookRow | undefined {
  const fitting = rows.filter(
    ({ unitCents, supplier }) => unitCents === line.unitCents && (line.supplier ?? supplier) === supplier,
  );
  return fitting.filter(({ fromQuantity }) => fromQuantity <= line.packs * line.packSize).pop() ?? fitting[0];
}

function hoursTable({ estimate, labour }: SheetInput): TableBlock {
  const now = (key: string) => lookUpHere("labour_lines", key, "task");
  return {
    kind: "table",
    name: "plan_labour",
    whenEmpty: "",
    columns: [
      column("task", "Task", "text", 24, editedLabel),
      column("words", "Work", "wrapped", 44),
      column("low", "Low", "decimal", 14, { unit: "h" }),
      column("likely", "Likely", "decimal", 9, { unit: "h" }),
      column("high", "High", "decimal", 9, { unit: "h" }),
      column("count", "Count", "general", 13),
      changedColumn(
        call(
          "OR",
          binary(now("low"), "<>", thisRow("low")),
          binary(now("likely"), "<>", thisRow("likely")),
          binary(now("high"), "<>", thisRow("high")),
        ),
      ),
    ],
    rows: estimate.labour.map((each) => {
      const unit = labour.find(({ task }) => task === each.task);
      return [
        text(each.task),
        wrapped(each.words),
        number(unit?.lowHours ?? each.lowHours / each.count),
        number(unit?.likelyHours ?? each.likelyHours / each.count),
        number(unit?.highHours ?? each.highHours / each.count),
        number(each.count),
        calculated,
      ];
    }),
  };
}

function loopsBlocks(input: SheetInput): readonly Block[] {
  const table = tableNamed(input.surveySheets, surveyTable.loops);
  if (table === undefined) return [];
  const planned = rowTexts(table, "key", planColumns, separator);
  const joined = planColumns
    .map((name) => call("INDEX", wholeColumn(surveyTable.loops, name), thisRow("at")))
    .reduce((before, part) => binary(binary(before, "&", literal(separator)), "&", part));
  const found = call("MATCH", thisRow("key"), wholeColumn(surveyTable.loops, "key"), zero);
  const gone = binary(thisRow("at"), "=", zero);
  return [
    title("Loops as the plan read them", 2),
    {
      kind: "table",
      name: "plan_loops",
      whenEmpty: "",
      columns: [
        column("key", "Key", "text", 24, editedLabel),
        column("planned", "Readings, devices, wishes as the plan had them", "wrapped", 44),
        column("at", "Line of the survey now", "count", 14, { formula: call("IFERROR", found, zero) }),
        column("changed", "Edited", "count", 9, {
          formula: call("IF", gone, one, flagged(binary(joined, "<>", thisRow("planned")))),
          total: { kind: "sum" },
        }),
      ],
      rows: [...planned].map(([key, words]) => [text(key), wrapped(words), calculated, calculated]),
    },
  ];
}
