import { cellAddress } from "./addresses.js";
import { checkFormula } from "./check-formula.js";
import { dayNumber } from "./day-number.js";
import { type Evaluator, evaluate } from "./evaluate.js";
import { isError } from "./evaluate-values.js";
import {
  blockKey,
  type Layout,
  overlappingBlocks,
  type PlacedCell,
  type PlacedSheet,
  type PlacedTable,
} from "./layout.js";
import { nameProblem, sheetNameProblem } from "./legal-name.js";
import { textProblem } from "./legal-text.js";
import type { ColumnOf, Validation } from "./model.js";

/** Something in a report that no spreadsheet could show. */
export interface ReportProblem {
  readonly sheet: string;
  /** Cell address, table name or block. */
  readonly where: string;
  readonly message: string;
}

/** Largest difference between our engine's figure and the formula's. Money has to agree to half a cent. */
const tolerance = 1e-9;

/** Everything about a laid-out report that a spreadsheet would refuse, mend or show wrongly; empty when nothing is. */
export function checkReport(layout: Layout, evaluator: Evaluator = evaluate(layout)): readonly ReportProblem[] {
  return [
    ...layout.clashes.map(({ sheet, message }) => ({ sheet, where: "sheet", message })),
    ...checkHead(layout),
    ...checkSheetNames(layout),
    ...checkNames(layout),
    ...[...layout.tables.values()].flatMap((table) => checkTable(table)),
    ...layout.sheets.flatMap((sheet) => [
      ...checkSheet(layout, sheet),
      ...sheet.cells.flatMap((cell) => checkCell(layout, cell, evaluator)),
    ]),
  ];
}

function checkHead(layout: Layout): ReportProblem[] {
  const report = layout.report;
  const problems: ReportProblem[] = [];
  const say = (where: string, message: string): unknown => problems.push({ sheet: "", where, message });
  if (!/^[A-Z]{3}$/.test(report.currency)) say("currency", `got "${report.currency}", expected a three-letter code`);
  if (dayNumber(report.date) === undefined) say("date", `got "${report.date}", expected a day as YYYY-MM-DD`);
  if (report.sheets.length === 0) say("sheets", "a workbook needs at least one sheet");
  for (const [where, text] of [
    ["title", report.title],
    ["job", report.job],
    ["revision", report.revision],
  ] as const) {
    // A header holds 255 characters in all, with our own words and codes among them.
    const problem = textProblem(text, 80);
    if (problem !== undefined) say(where, problem);
  }
  return problems;
}

function checkSheetNames(layout: Layout): ReportProblem[] {
  const seen = new Set<string>();
  return layout.report.sheets.flatMap(({ name }) => {
    const problem = sheetNameProblem(name) ?? (seen.has(name.toLowerCase()) ? "stands twice" : undefined);
    seen.add(name.toLowerCase());
    return problem === undefined ? [] : [{ sheet: name, where: "sheet", message: `the sheet name ${problem}` }];
  });
}

/** Tables and named cells share one set of names, whatever the case. */
function checkNames(layout: Layout): ReportProblem[] {
  const seen = new Set<string>();
  const all = [
    ...[...layout.tables].map(([name, { sheet }]) => ({ name, sheet })),
    ...[...layout.named].map(([name, { sheet }]) => ({ name, sheet })),
  ];
  return all.flatMap(({ name, sheet }) => {
    const problem = nameProblem(name) ?? (seen.has(name.toLowerCase()) ? "stands twice" : undefined);
    seen.add(name.toLowerCase());
    return problem === undefined ? [] : [{ sheet, where: name, message: `the name "${name}" ${problem}` }];
  });
}

function checkTable(table: PlacedTable): ReportProblem[] {
  const { block, sheet } = table;
  const problems: ReportProblem[] = [];
  const say = (message: string): unknown => problems.push({ sheet, where: block.name, message });
  if (block.columns.length === 0) say("a table needs at least one column");
  if (table.columnIndex.size !== block.columns.length) say("two columns have the same key");
  const headings = new Set(table.headings.map((heading) => heading.toLowerCase()));
  if (headings.size !== table.headings.length) say("two columns have the same heading");
  for (const heading of table.headings) {
    if (heading.trim() === "" || heading.length > 255 || /[\n[\]#'"@]/.test(heading)) {
      say(`the heading "${heading}" must be one line of 1 to 255 characters without [ ] # ' " @`);
    }
    const problem = textProblem(heading);
    if (problem !== undefined) say(problem);
  }
  block.columns.forEach((column, index) => {
    if (!(column.width > 0 && column.width <= 255))
      say(`the width of column "${column.key}" must be above 0, up to 255`);
    for (const row of table.cells) {
      const cell = row[index]?.cell;
      if (column.formula === undefined && cell?.kind === "calculated") {
        say(`column "${column.key}" has calculated cells but no formula`);
        break;
      }
      if (column.formula !== undefined && cell?.kind !== "calculated" && block.rows.length > 0) {
        say(`column "${column.key}" has one formula, so all its cells must be calculated`);
        break;
      }
    }
  });
  return problems;
}

function checkSheet(layout: Layout, placed: PlacedSheet): ReportProblem[] {
  const sheet = placed.sheet.name;
  const problems: ReportProblem[] = [];
  const say = (where: string, message: string): unknown => problems.push({ sheet, where, message });
  for (const { one, other } of overlappingBlocks(placed)) say(one, `shares cells with ${other}`);
  if (placed.lastRow > 1_048_576 || placed.lastColumn > 16_384)
    say("sheet", "has more rows or columns than a sheet holds");
  if (placed.breaks.length > 1026) say("sheet", "has more than 1026 page breaks");
  const heading = placed.sheet.headingOf;
  if (heading !== undefined && layout.tables.get(heading)?.sheet !== sheet) {
    say("headingOf", `there is no table "${heading}" on this sheet`);
  }
  for (const { block } of placed.drawings) {
    if (!(block.widthPixels > 0 && block.heightPixels > 0)) say(block.kind, "needs a width and a height above 0");
    if (block.alt.trim() === "") say(block.kind, "needs words for a reader who cannot see it");
    const altProblem = textProblem(block.alt);
    if (altProblem !== undefined) say(block.kind, altProblem);
    if (block.kind !== "chart") continue;
    if (block.series.length === 0) say("chart", "needs at least one series");
    if (block.band !== undefined && block.chart !== "line") say("chart", "only a line chart can have a band");
    const band = block.band === undefined ? [] : [block.band.low, block.band.spread];
    for (const column of [block.categories, ...block.series, ...band]) {
      if (!knows(layout, column)) say("chart", `there is no column "${column.column}" in a table "${column.table}"`);
    }
  }
  for (const { validation } of placed.validations) {
    const problem = validationProblem(layout, validation);
    if (problem !== undefined) say("validation", problem);
  }
  for (const { highlight, table } of placed.highlights) {
    const inRow = table === undefined ? undefined : { table, index: 0 };
    for (const message of checkFormula(layout, highlight.when, inRow)) say("highlight", message);
  }
  return problems;
}

const knows = (layout: Layout, { table, column }: ColumnOf): boolean =>
  layout.tables.get(table)?.columnIndex.has(column) === true;

function validationProblem(layout: Layout, validation: Validation): string | undefined {
  if (validation.message === "" || validation.message.length > 225) return "the message must have 1 to 225 characters";
  switch (validation.kind) {
    case "list": {
      const joined = validation.values.join(",");
      if (validation.values.length === 0 || joined.length > 255) {
        return "the choices must have 1 to 255 characters in all; longer lists belong in a table";
      }
      return validation.values.some((value) => /[",]/.test(value) || value !== value.trim())
        ? 'a choice must not have a comma or ", or spaces around it'
        : undefined;
    }
    case "listFrom":
      return knows(layout, validation) ? undefined : `there is no column "${validation.column}" to choose from`;
    case "number": {
      const { minimum, maximum } = validation;
      const ends = [minimum, maximum].filter((end) => end !== undefined);
      return ends.every(Number.isFinite) && !(minimum !== undefined && maximum !== undefined && minimum > maximum)
        ? undefined
        : "the lowest and highest number must be finite and in order";
    }
    case "text":
      return validation.longest >= 1 && validation.longest <= 32_767 ? undefined : "the longest text is 1 to 32767";
  }
}

function checkCell(layout: Layout, placed: PlacedCell, evaluator: Evaluator): ReportProblem[] {
  const where = cellAddress(placed.row, placed.column);
  const messages = cellMessages(layout, placed, evaluator);
  return messages.map((message) => ({ sheet: placed.sheet, where, message }));
}

function cellMessages(layout: Layout, placed: PlacedCell, evaluator: Evaluator): readonly string[] {
  const cell = placed.cell;
  switch (cell.kind) {
    case "blank":
      return [];
    case "text":
      return [textProblem(cell.text)].filter((message) => message !== undefined);
    case "number":
      return Number.isFinite(cell.value) ? [] : [`the number is ${cell.value}, expected a finite number`];
    case "money":
      return Number.isSafeInteger(cell.cents) ? [] : [`the money is ${cell.cents}, expected whole cents`];
    case "date":
      return dayNumber(cell.iso) === undefined ? [`the date is "${cell.iso}", expected YYYY-MM-DD`] : [];
    case "link":
      return linkMessages(layout, cell);
    case "formula":
    case "calculated":
      return formulaMessages(layout, placed, evaluator);
  }
}

function linkMessages(layout: Layout, link: { text: string; sheet: string; block?: string }): readonly string[] {
  const problem = textProblem(link.text);
  if (problem !== undefined) return [problem];
  if (!layout.report.sheets.some((sheet) => sheet.name === link.sheet)) return [`there is no sheet "${link.sheet}"`];
  return link.block === undefined || layout.blocks.has(blockKey(link.sheet, link.block))
    ? []
    : [`there is no block "${link.block}" on sheet "${link.sheet}"`];
}

function formulaMessages(layout: Layout, placed: PlacedCell, evaluator: Evaluator): readonly string[] {
  if (placed.formula === undefined) return [];
  const messages = checkFormula(layout, placed.formula, placed.inRow);
  if (messages.length > 0) return messages;
  const value = evaluator.cell(placed);
  if (isError(value)) return [`the formula gives ${value.error}`];
  if (typeof value === "string") {
    const problem = textProblem(value);
    if (problem !== undefined) return [problem];
  }
  const cached = placed.cached;
  if (cached === undefined || cached === value) return [];
  if (typeof cached !== "number" || typeof value !== "number") {
    return [`the formula gives ${String(value)}, our engine says ${String(cached)}`];
  }
  const room = placed.format === "money" ? 0.005 - tolerance : tolerance * Math.max(1, Math.abs(cached));
  return Math.abs(cached - value) <= room ? [] : [`the formula gives ${value}, our engine says ${cached}`];
}
