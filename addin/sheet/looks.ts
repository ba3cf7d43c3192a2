/// <reference types="office-js" />
import {
  type Area,
  areaAddress,
  cellAddress,
  highlightStyle,
  type PlannedCell,
  type PlannedSheet,
  type StyleBook,
} from "../loopwright.js";
import { type Batch, bytesPerAction } from "./batch.js";
import { type SheetContents, wholeArea } from "./contents.js";
import { wireBytes } from "./wire-value.js";

type Style = ReturnType<StyleBook["of"]>;

/** Longest list of addresses for one set of areas. */
const longestList = 250;

/** Fonts, fills, lines and alignment of a sheet, one set of areas for each style that occurs. */
export async function writeLooks(batch: Batch, planned: PlannedSheet, styles: StyleBook): Promise<void> {
  const sheet = batch.context.workbook.worksheets.getItem(planned.name);
  await batch.room(bytesPerAction * 4);
  const all = sheet.getRange(areaAddress(wholeArea(planned))).format;
  all.font.name = "Arial";
  all.font.size = 10;
  all.verticalAlignment = "Top";
  for (const [style, areas] of areasByStyle(planned.cells, styles)) {
    for (const list of addressLists(areas)) {
      await batch.room(bytesPerAction * 12 + list.length);
      applyStyle(sheet.getRanges(list).format, style, areas);
    }
  }
}

/** Rectangles of cells that look alike. */
function areasByStyle(cells: readonly PlannedCell[], styles: StyleBook): ReadonlyMap<Style, readonly Area[]> {
  const found = new Map<Style, Area[]>();
  const open = new Map<string, Area>();
  const sorted = [...cells].sort((a, b) => a.row - b.row || a.column - b.column);
  let run: { style: Style; row: number; left: number; right: number } | undefined;
  const close = () => {
    if (run === undefined) return;
    const { style, row, left, right } = run;
    const list = found.get(style) ?? [];
    found.set(style, list);
    const key = `${left}:${right}`;
    const above = open.get(key);
    const grows = above !== undefined && above.bottom === row - 1 && list.includes(above) && !hasEdges(style);
    const area = grows ? { ...above, bottom: row } : { top: row, bottom: row, left, right };
    if (grows) list.splice(list.indexOf(above), 1);
    list.push(area);
    open.set(key, area);
    run = undefined;
  };
  for (const cell of sorted) {
    const style = styles.of(cell);
    if (run !== undefined && run.style === style && run.row === cell.row && run.right === cell.column - 1) {
      run.right = cell.column;
      continue;
    }
    close();
    run = { style, row: cell.row, left: cell.column, right: cell.column };
  }
  close();
  return found;
}

/** Lines above and below differ: rows must not be put together, the line between them could be either. */
const hasEdges = ({ border }: Style): boolean =>
  border?.top?.style !== undefined && border.top.style !== border.bottom?.style;

function addressLists(areas: readonly Area[]): readonly string[] {
  const lists: string[] = [];
  for (const area of areas) {
    const address = areaAddress(area);
    const last = lists.at(-1);
    if (last === undefined || last.length + address.length + 1 > longestList) lists.push(address);
    else lists[lists.length - 1] = `${last},${address}`;
  }
  return lists;
}

const colour = (argb: string | undefined): string => `#${(argb ?? "FF000000").slice(2)}`;

/** The file's style said in Excel's own words; what equals the cleared cell is left out. */
function applyStyle(format: Excel.RangeFormat, style: Style, areas: readonly Area[]): void {
  const { font, fill, alignment, protection } = style;
  if (font?.size !== undefined && font.size !== 10) format.font.size = font.size;
  if (font?.bold) format.font.bold = true;
  if (font?.italic) format.font.italic = true;
  if (font?.underline) format.font.underline = "Single";
  if (font?.color?.argb !== undefined && font.color.argb !== "FF000000") format.font.color = colour(font.color.argb);
  if (fill?.type === "pattern" && fill.fgColor !== undefined) format.fill.color = colour(fill.fgColor.argb);
  if (alignment?.horizontal === "right") format.horizontalAlignment = "Right";
  if (alignment?.horizontal === "left") format.horizontalAlignment = "Left";
  if (alignment?.vertical === "bottom") format.verticalAlignment = "Bottom";
  if (alignment?.indent) format.indentLevel = alignment.indent;
  if (alignment?.wrapText) format.wrapText = true;
  if (protection?.locked === false) format.protection.locked = false;
  applyBorders(format, style, areas);
}

type Line = {
  readonly style?: string | undefined;
  readonly color?: { readonly argb?: string | undefined } | undefined;
};

function applyBorders(format: Excel.RangeFormat, { border }: Style, areas: readonly Area[]): void {
  const draw = (side: Excel.BorderIndex | keyof typeof Excel.BorderIndex, line: Line | undefined) => {
    if (line?.style === undefined) return;
    const [style, weight] = lines[line.style] ?? ["Continuous", "Thin"];
    const edge = format.borders.getItem(side as "EdgeTop");
    edge.style = style;
    edge.weight = weight;
    edge.color = colour(line.color?.argb);
  };
  draw("EdgeTop" as "edgeTop", border?.top);
  draw("EdgeBottom" as "edgeBottom", border?.bottom);
  draw("EdgeLeft" as "edgeLeft", border?.left);
  draw("EdgeRight" as "edgeRight", border?.right);
  if (areas.some(({ top, bottom }) => bottom > top)) draw("InsideHorizontal" as "insideHorizontal", border?.bottom);
  if (areas.some(({ left, right }) => right > left)) draw("InsideVertical" as "insideVertical", border?.right);
}

/** The file's line styles as Excel's style and weight. */
const lines: Readonly<
  Record<string, readonly ["Continuous" | "Dash" | "Double", "Hairline" | "Thin" | "Medium" | "Thick"]>
> = {
  hair: ["Continuous", "Hairline"],
  thin: ["Continuous", "Thin"],
  medium: ["Continuous", "Medium"],
  dashed: ["Dash", "Thin"],
  double: ["Double", "Thick"],
};

/** Sizes, merged cells, links, what may be typed, highlights, panes. */
export async function writeSetUp(batch: Batch, planned: PlannedSheet): Promise<void> {
  const sheet = batch.context.workbook.worksheets.getItem(planned.name);
  await batch.room(bytesPerAction * (planned.columnWidths.length + planned.rowHeights.size + planned.merges.length));
  planned.columnWidths.forEach((width, index) => {
    sheet.getRangeByIndexes(0, index, 1, 1).format.columnWidth = pointsOfCharacters(width);
  });
  for (const [row, points] of planned.rowHeights) sheet.getRangeByIndexes(row - 1, 0, 1, 1).format.rowHeight = points;
  for (const area of planned.merges) sheet.getRange(areaAddress(area)).merge(false);
  for (const each of planned.validations) await addValidation(batch, sheet, each);
  for (const { area, formula, role } of planned.highlights) {
    await batch.room(bytesPerAction * 8);
    const custom = sheet.getRange(areaAddress(area)).conditionalFormats.add("Custom").custom;
    const { font, fill } = highlightStyle(role);
    custom.rule.formula = `=${formula}`;
    custom.format.font.bold = font?.bold ?? false;
    custom.format.font.italic = font?.italic ?? false;
    custom.format.font.color = colour(font?.color?.argb);
    if (fill?.type === "pattern" && fill.bgColor !== undefined) custom.format.fill.color = colour(fill.bgColor.argb);
  }
  await batch.room(bytesPerAction * 2);
  const { rows, columns } = planned.frozen;
  if (rows > 0 && columns > 0) sheet.freezePanes.freezeAt(sheet.getRange(`A1:${cellAddress(rows, columns)}`));
  else if (rows > 0) sheet.freezePanes.freezeRows(rows);
  else if (columns > 0) sheet.freezePanes.freezeColumns(columns);
}

/** Excel writes a text of its own into the cell of a new link: the cell's text is written once more behind it. */
export async function writeLinks(batch: Batch, planned: PlannedSheet, contents: SheetContents): Promise<void> {
  const sheet = batch.context.workbook.worksheets.getItem(planned.name);
  for (const { row, column, sheet: target, to } of planned.links) {
    const text = contents.values[row - 1]?.[column - 1] ?? null;
    await batch.room(bytesPerAction * 3 + wireBytes(text));
    const cell = sheet.getRange(cellAddress(row, column));
    cell.hyperlink = { documentReference: `'${target.replaceAll("'", "''")}'!${areaAddress(to)}` };
    if (text !== null) cell.values = [[text]];
  }
}

/** Seven pixels a character of the normal font, 96 pixels and 72 points an inch. */
const pointsOfCharacters = (characters: number): number => Math.round(characters * 7) * 0.75;

async function addValidation(
  batch: Batch,
  sheet: Excel.Worksheet,
  { area, validation, listCells }: PlannedSheet["validations"][number],
): Promise<void> {
  const rule = ((): Excel.DataValidationRule => {
    switch (validation.kind) {
      case "list":
        return { list: { inCellDropDown: true, source: validation.values.join(",") } };
      case "listFrom":
        return { list: { inCellDropDown: true, source: `=${listCells ?? ""}` } };
      case "text":
        return { textLength: { formula1: validation.longest, operator: "LessThanOrEqualTo" } };
      case "number":
        return validation.whole === true ? { wholeNumber: limits(validation) } : { decimal: limits(validation) };
    }
  })();
  await batch.room(bytesPerAction * 5 + wireBytes(validation) * 3);
  const { dataValidation } = sheet.getRange(areaAddress(area));
  const message = validation.message.slice(0, 255);
  dataValidation.rule = rule;
  dataValidation.ignoreBlanks = true;
  dataValidation.prompt = { showPrompt: true, title: "Fill in", message };
  dataValidation.errorAlert = { showAlert: true, style: "Stop", title: "Not accepted here", message };
}

function limits({
  minimum,
  maximum,
}: {
  readonly minimum?: number;
  readonly maximum?: number;
}): Excel.BasicDataValidation {
  if (minimum !== undefined && maximum !== undefined)
    return { formula1: minimum, formula2: maximum, operator: "Between" };
  if (maximum !== undefined) return { formula1: maximum, operator: "LessThanOrEqualTo" };
  return { formula1: minimum ?? -1e15, operator: "GreaterThanOrEqualTo" };
}
