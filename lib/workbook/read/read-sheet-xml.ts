import type { Query } from "../../problems/query.js";
import { legalText } from "../../report/legal-text.js";
import type { TypedCell, TypedSheet } from "../../survey/survey.js";
import { FileRefused } from "./file-refused.js";
import type { ReadLimits } from "./limits.js";
import { scanXml, xmlAttribute } from "./xml-scan.js";

/** What a sheet's cells refer to. */
export interface SheetContext {
  readonly sheet: string;
  readonly hidden: boolean;
  readonly strings: readonly string[];
  /** Whether a cell style shows its number as a date. */
  readonly dateStyles: readonly boolean[];
  readonly date1904: boolean;
  readonly limits: ReadLimits;
  /** Counts cells over all sheets of the file. */
  readonly countCell: () => void;
}

interface Merge {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** Compatibility forms become plain ones (Ω U+2126, full-width digits, no-break space). */
export const plainText = (text: string): string =>
  legalText(text.normalize("NFKC").replaceAll("\u00a0", " "), Number.POSITIVE_INFINITY);

/** Undoes the file format's _xHHHH_ writing of characters (ECMA-376 part 1, 22.9.2.19). */
export const unescaped = (text: string): string =>
  text.includes("_x")
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    : text;

/** Row and column (1-based) of a reference like "AB12", or null. */
export function cellPlace(reference: string): { readonly row: number; readonly column: number } | null {
  const match = /^\$?([A-Za-z]{1,3})\$?([0-9]{1,7})$/.exec(reference);
  const [, letters, digits] = match ?? [];
  if (letters === undefined || digits === undefined) return null;
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64;
  return { row: Number(digits), column };
}

/** The day a spreadsheet's serial number stands for, as an ISO date; time of day is dropped. */
export function isoDateOf(serial: number, date1904: boolean): string | null {
  const days = Math.floor(serial) + (date1904 ? 1462 : 0);
  if (!(serial >= 0) || days < 1 || days > 2_958_465) return null;
  // Serial 60 is a day that never was (29 February 1900); later serials are one too high.
  const date = new Date(Date.UTC(1899, 11, days >= 60 ? 30 : 31) + days * 86_400_000);
  return date.toISOString().slice(0, 10);
}

/** Reads one worksheet part into rows of typed cells. Only values are taken; nothing is followed or run. */
export function readSheetXml(xml: string, context: SheetContext): TypedSheet {
  const rows = new Map<number, TypedCell[]>();
  const remarks: Query[] = [];
  const hiddenRows: number[] = [];
  const merges: Merge[] = [];
  const { sheet, limits } = context;
  let rowNumber = 0;
  let columnNumber = 0;
  let cell: { type: string; style: number; value: string; formula: boolean; hasValue: boolean } | null = null;
  let inValue = false;
  let phonetic = 0;
  let tooWide = false;
  if (context.hidden)
    remarks.push(remark(sheet, null, "", "The sheet is hidden. It was read all the same: unhide it and check it."));

  const put = (): void => {
    if (cell === null) return;
    const { formula, hasValue, value } = cell;
    if (formula && !hasValue) {
      remarks.push(
        remark(
          sheet,
          rowNumber,
          columnName(columnNumber),
          "The formula was never calculated. Open the file, let it calculate and save it, or type the value.",
        ),
      );
      return;
    }
    if (!hasValue) return;
    if (value.length > limits.characters) {
      throw new FileRefused(
        "textTooLong",
        `${sheet}, row ${rowNumber}: a cell holds ${value.length} characters, more than a spreadsheet allows. Shorten it.`,
      );
    }
    const typed = cellValue(cell, context);
    if (typed === null || typed === "") return;
    if (columnNumber > limits.columns) {
      if (!tooWide)
        remarks.push(
          remark(
            sheet,
            rowNumber,
            columnName(columnNumber),
            `Cells beyond column ${columnName(limits.columns)} were not read. Move them to the left.`,
          ),
        );
      tooWide = true;
      return;
    }
    context.countCell();
    let list = rows.get(rowNumber);
    if (list === undefined) {
      if (rows.size >= limits.rows) {
        throw new FileRefused(
          "tooManyRows",
          `${sheet} has more than ${limits.rows} rows with something in them. Hand in the survey rows only.`,
        );
      }
      list = [];
      rows.set(rowNumber, list);
    }
    while (list.length < columnNumber - 1) list.push(null);
    list[columnNumber - 1] = typed;
  };

  scanXml(xml, {
    open(name, attributes) {
      if (name === "row") {
        const given = Number(xmlAttribute(attributes, "r"));
        rowNumber = Number.isInteger(given) && given > 0 ? given : rowNumber + 1;
        columnNumber = 0;
        if (/\bhidden=["'](1|true)/.test(attributes)) hiddenRows.push(rowNumber);
      } else if (name === "c") {
        const place = cellPlace(xmlAttribute(attributes, "r") ?? "");
        columnNumber = place?.column ?? columnNumber + 1;
        if (place !== null) rowNumber = place.row;
        cell = {
          type: xmlAttribute(attributes, "t") ?? "n",
          style: Number(xmlAttribute(attributes, "s") ?? 0),
          value: "",
          formula: false,
          hasValue: false,
        };
      } else if (cell !== null && name === "f") cell.formula = true;
      else if (name === "rPh") phonetic++;
      else if (cell !== null && phonetic === 0 && (name === "v" || name === "t")) {
        inValue = true;
        cell.hasValue = true;
      } else if (name === "mergeCell") {
        const merge = mergeOf(xmlAttribute(attributes, "ref") ?? "");
        if (merge !== null && merges.length < 10_000) merges.push(merge);
      }
    },
    close(name) {
      if (name === "c") {
        put();
        cell = null;
      } else if (name === "rPh") phonetic--;
      else if (name === "v" || name === "t") inValue = false;
    },
    text(text) {
      if (inValue && cell !== null) cell.value += text;
    },
  });
  fillMerges(rows, merges, remarks, sheet);
  const hidden = hiddenRows.filter((row) => rows.has(row));
  if (hidden.length > 0) {
    remarks.push(
      remark(
        sheet,
        hidden[0] ?? null,
        "",
        `${hidden.length} hidden row(s) with something in them were read as well (${hidden.slice(0, 10).join(", ")}${hidden.length > 10 ? ", …" : ""}). Unhide and check them, or delete them.`,
      ),
    );
  }
  const numbers = [...rows.keys()].sort((a, b) => a - b);
  return { sheet, rows: numbers.map((row) => ({ row, cells: rows.get(row) ?? [] })), remarks };
}

const remark = (sheet: string, row: number | null, column: string, message: string): Query => ({
  sheet,
  row,
  column: column === "" ? null : column,
  typed: "",
  message,
});

function columnName(column: number): string {
  let name = "";
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    name = String.fromCharCode(65 + ((rest - 1) % 26)) + name;
  }
  return name;
}

function cellValue(cell: { type: string; style: number; value: string }, context: SheetContext): TypedCell {
  const { type, value } = cell;
  if (type === "s") return context.strings[Number(value)] ?? "";
  if (type === "str" || type === "inlineStr" || type === "e") return plainText(unescaped(value));
  if (type === "b") return value.trim() === "1" || value.trim() === "true";
  if (type === "d") return { isoDate: value.trim().slice(0, 10) };
  const number = Number(value);
  if (value.trim() === "" || !Number.isFinite(number)) return plainText(value);
  if (context.dateStyles[cell.style] !== true) return number;
  const isoDate = isoDateOf(number, context.date1904);
  return isoDate === null ? number : { isoDate };
}

function mergeOf(reference: string): Merge | null {
  const [from, to] = reference.split(":");
  const first = cellPlace(from ?? "");
  const last = cellPlace(to ?? from ?? "");
  if (first === null || last === null) return null;
  return { top: first.row, left: first.column, bottom: last.row, right: last.column };
}

/**
 * A value merged down over rows holds for each of those rows that has anything else in it; merged across, it holds
 * for its first column only. Merges larger than the data are clamped to the data.
 */
function fillMerges(rows: Map<number, TypedCell[]>, merges: readonly Merge[], remarks: Query[], sheet: string): void {
  let filled = 0;
  for (const merge of merges) {
    const value = rows.get(merge.top)?.[merge.left - 1];
    if (value === undefined || value === null || merge.bottom === merge.top) continue;
    if (merge.right - merge.left > 50 || merge.bottom - merge.top > 5000) {
      remarks.push(
        remark(
          sheet,
          merge.top,
          columnName(merge.left),
          "Almost the whole sheet is one merged cell; only its first cell was read. Unmerge it.",
        ),
      );
      continue;
    }
    for (let row = merge.top + 1; row <= merge.bottom; row++) {
      const cells = rows.get(row);
      if (cells === undefined) continue;
      while (cells.length < merge.left) cells.push(null);
      if (cells[merge.left - 1] === null || cells[merge.left - 1] === undefined) {
        cells[merge.left - 1] = value;
        filled++;
      }
    }
  }
  if (filled > 0)
    remarks.push(remark(sheet, null, "", `${filled} cell(s) under merged cells took the merged value. Check them.`));
}
