import ExcelJS from "exceljs";
import { type Area, areaAddress, cellAddress } from "../../report/addresses.js";
import type { PlannedCell, PlannedSheet, PlannedValidation, PrintablePlan } from "../../report/printable-plan.js";
import { finishWorkbook, type RenderPicture } from "../finish/finish-workbook.js";
import { protectedText } from "../xml/escape.js";
import { highlightStyle, type StyleBook, styleBook } from "./styles.js";

/**
 * The .xlsx file of a printable plan, on any platform: pictures are drawn by what is passed in. The same plan and
 * pictures give the same bytes: no clock, no random names.
 * Cells, styles and print set-up are written by exceljs; tables, links, names, pictures and charts by the finishing pass.
 */
export async function workbookBytes(plan: PrintablePlan, renderPicture: RenderPicture): Promise<Uint8Array> {
  return finishWorkbook({ written: await exceljsBytes(plan), plan, renderPicture });
}

/** What exceljs alone makes of the plan, before the finishing pass. */
async function exceljsBytes(plan: PrintablePlan): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const issued = new Date(`${plan.date}T00:00:00Z`);
  book.created = issued;
  book.modified = issued;
  book.creator = "Loopwright";
  book.lastModifiedBy = "Loopwright";
  book.title = plan.title;
  book.subject = plan.job;
  book.calcProperties.fullCalcOnLoad = true;
  const styles = styleBook(plan.currency);
  for (const sheet of plan.sheets) await writeSheet(book, sheet, plan, styles);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

const tabColours = { input: "FFFFC000", working: "FF7F7F7F", output: "FF1F4E79" } as const;

async function writeSheet(
  book: ExcelJS.Workbook,
  planned: PlannedSheet,
  plan: PrintablePlan,
  styles: StyleBook,
): Promise<void> {
  const sheet = book.addWorksheet(planned.name, {
    properties: { tabColor: { argb: tabColours[planned.part] }, defaultRowHeight: 15 },
    views: [view(planned)],
    pageSetup: pageSetup(planned, plan),
    headerFooter: headerFooter(plan),
  });
  sheet.columns = planned.columnWidths.map((width) => ({ width }));
  for (const cell of planned.cells) writeCell(sheet, cell, styles);
  for (const [row, points] of planned.rowHeights) sheet.getRow(row).height = points;
  for (const area of planned.merges) styleAsFirst(sheet, area);
  for (const row of planned.breaks) sheet.getRow(row).addPageBreak();
  for (const each of planned.validations) addValidation(sheet, each);
  addHighlights(sheet, planned);
  if (planned.locked) {
    // No password: the lock keeps formulas from slips of the hand, not from their owner.
    await sheet.protect("", {
      formatColumns: true,
      formatRows: true,
      sort: true,
      autoFilter: true,
      selectLockedCells: true,
      selectUnlockedCells: true,
    });
  }
}

function writeCell(sheet: ExcelJS.Worksheet, planned: PlannedCell, styles: StyleBook): void {
  const cell = sheet.getCell(planned.row, planned.column);
  const content = planned.content;
  if (content.kind === "text") cell.value = protectedText(content.text);
  else if (content.kind === "number") cell.value = content.value;
  else if (content.kind === "formula") {
    const result = typeof content.cached === "string" ? protectedText(content.cached) : content.cached;
    cell.value = { formula: content.text, result };
  }
  cell.style = styles.of(shownStyle(planned));
}

/**
 * The cells of an area that is to be merged look like its first, so that its frame goes all round. The merging itself is
 * the finishing pass's: exceljs compares every merge with every other, which takes minutes for thousands.
 */
function styleAsFirst(sheet: ExcelJS.Worksheet, area: Area): void {
  const { style } = sheet.getCell(area.top, area.left);
  for (let row = area.top; row <= area.bottom; row++) {
    for (let column = area.left; column <= area.right; column++) sheet.getCell(row, column).style = style;
  }
}

/** A formula in a cell of format "text" would stay text when somebody edits it. */
function shownStyle(planned: PlannedCell): PlannedCell {
  return planned.content.kind === "formula" && planned.format === "text" ? { ...planned, format: "general" } : planned;
}

function view(planned: PlannedSheet): Partial<ExcelJS.WorksheetView> {
  const { rows, columns } = planned.frozen;
  if (rows === 0 && columns === 0) return { showGridLines: false };
  return {
    state: "frozen",
    xSplit: columns,
    ySplit: rows,
    topLeftCell: cellAddress(rows + 1, columns + 1),
    showGridLines: false,
  };
}

/** A4 is paper 9, Letter paper 1; one page wide, as many pages long as it takes. */
function pageSetup(planned: PlannedSheet, plan: PrintablePlan): Partial<ExcelJS.PageSetup> {
  return {
    paperSize: plan.paper === "A4" ? 9 : (1 as ExcelJS.PaperSize),
    orientation: planned.orientation,
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 0,
    margins: { left: 0.6, right: 0.5, top: 0.8, bottom: 0.7, header: 0.35, footer: 0.35 },
  };
}

function headerFooter(plan: PrintablePlan): Partial<ExcelJS.HeaderFooter> {
  // "&" begins a code in headers; a digit right behind a code would be read as a font size.
  const plain = (text: string): string => text.replaceAll("&", "&&").replace(/^(?=\d)/, " ");
  return {
    oddHeader: `&L${plain(plan.job)}&C&A&R${plain(plan.date)}`,
    oddFooter: `&L${plain(plan.revision)}&C${plain(plan.title)}&RPage &P of &N`,
  };
}

function addValidation(sheet: ExcelJS.Worksheet, { area, validation, listCells }: PlannedValidation): void {
  const shared = {
    allowBlank: true,
    showErrorMessage: true,
    showInputMessage: true,
    errorTitle: "Not accepted here",
    error: validation.message,
    promptTitle: "Fill in",
    prompt: validation.message,
  };
  const rule = ((): ExcelJS.DataValidation => {
    switch (validation.kind) {
      case "list":
        return { ...shared, type: "list", formulae: [`"${validation.values.join(",")}"`] };
      case "listFrom":
        return { ...shared, type: "list", formulae: [listCells ?? ""] };
      case "text":
        return { ...shared, type: "textLength", operator: "lessThanOrEqual", formulae: [validation.longest] };
      case "number":
        return { ...shared, ...numberRule(validation) };
    }
  })();
  validationsOf(sheet).add(areaAddress(area), rule);
}

function numberRule(validation: { minimum?: number; maximum?: number; whole?: boolean }): ExcelJS.DataValidation {
  const type = validation.whole === true ? "whole" : "decimal";
  const { minimum, maximum } = validation;
  if (minimum !== undefined && maximum !== undefined) {
    return { type, operator: "between", allowBlank: true, formulae: [minimum, maximum] };
  }
  if (maximum !== undefined) return { type, operator: "lessThanOrEqual", allowBlank: true, formulae: [maximum] };
  return { type, operator: "greaterThanOrEqual", allowBlank: true, formulae: [minimum ?? -1e15] };
}

/** exceljs has one validation for a whole range, which its types do not mention. */
function validationsOf(sheet: ExcelJS.Worksheet): { add(range: string, rule: ExcelJS.DataValidation): void } {
  return (sheet as unknown as { dataValidations: { add(range: string, rule: ExcelJS.DataValidation): void } })
    .dataValidations;
}

function addHighlights(sheet: ExcelJS.Worksheet, planned: PlannedSheet): void {
  planned.highlights.forEach(({ area, formula, role }, index) => {
    sheet.addConditionalFormatting({
      ref: areaAddress(area),
      rules: [{ type: "expression", priority: index + 1, formulae: [formula], style: highlightStyle(role) }],
    });
  });
}
