import { CsvError, parse } from "csv-parse/sync";
import type { TypedCell, TypedSheet } from "../../survey/survey.js";
import { FileRefused } from "./file-refused.js";
import type { ReadLimits } from "./limits.js";
import { plainText } from "./read-sheet-xml.js";

/** Characters of bytes 0x80 to 0x9F in Windows-1252 (WHATWG Encoding, index windows-1252). */
const c1 = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";

/** Done here because the decoder of Node 20 takes this encoding for ISO 8859-1. */
function windows1252(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += byte >= 0x80 && byte <= 0x9f ? c1.charAt(byte - 0x80) : String.fromCharCode(byte);
  return text;
}

/** UTF-8 or UTF-16 by its mark, else UTF-8, else Windows-1252 (what spreadsheets on Windows still save). */
function decode(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return windows1252(bytes);
  }
}

/** The delimiter that stands most often outside quotes in the first lines. */
function delimiterOf(text: string): string {
  const bare = text.slice(0, 20_000).replace(/"[^"]*"/g, "");
  const first = bare.split(/\r?\n/, 10).join("\n");
  const counts = [",", ";", "\t"].map((mark) => ({ mark, count: first.split(mark).length - 1 }));
  counts.sort((a, b) => b.count - a.count);
  return counts[0] !== undefined && counts[0].count > 0 ? counts[0].mark : ",";
}

/**
 * Reads a comma, semicolon or tab separated text file. Every cell stays text, so that "01" and "22/4" stay as typed.
 * Row numbers are line positions of records as a spreadsheet shows them.
 * @throws {@link FileRefused}
 */
export function readCsv(bytes: Uint8Array, sheet: string, limits: ReadLimits): TypedSheet {
  const text = decode(bytes).replace(/^\uFEFF/, "");
  if (text.includes("\u0000")) {
    throw new FileRefused("notASpreadsheet", "The file is neither text nor a workbook. Hand in an .xlsx or .csv file.");
  }
  let records: readonly (readonly string[])[];
  try {
    records = parse(text, {
      delimiter: delimiterOf(text),
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
      trim: false,
      max_record_size: limits.characters * 32,
      to: limits.rows + 1,
    });
  } catch (error) {
    const line = error instanceof CsvError ? ` near line ${String(error["lines"] ?? "?")}` : "";
    throw new FileRefused(
      "damaged",
      `The text file cannot be split into cells${line}: a quotation mark is not closed, or a line is far too long. Mend it or save the sheet again as .csv.`,
    );
  }
  if (records.length > limits.rows)
    throw new FileRefused("tooManyRows", `The file has more than ${limits.rows} lines. Hand in the survey rows only.`);
  const rows = records.map((record, index) => ({
    row: index + 1,
    cells: record.slice(0, limits.columns).map((cell) => csvCell(cell, index + 1, limits)),
  }));
  const wide = records.findIndex((record) => record.slice(limits.columns).some((cell) => cell.trim() !== ""));
  const remarks =
    wide < 0
      ? []
      : [
          {
            sheet,
            row: wide + 1,
            column: null,
            typed: "",
            message: `Cells beyond column ${limits.columns} were not read. Move them to the left.`,
          },
        ];
  return {
    sheet,
    rows: rows.filter(({ cells }) => cells.some((cell) => cell !== null)),
    ...(remarks.length === 0 ? {} : { remarks }),
  };
}

function csvCell(cell: string, row: number, limits: ReadLimits): TypedCell {
  if (cell.length > limits.characters) {
    throw new FileRefused(
      "textTooLong",
      `Line ${row}: a cell holds ${cell.length} characters, more than a spreadsheet allows. Shorten it.`,
    );
  }
  const text = plainText(cell).trim();
  return text === "" ? null : text;
}
