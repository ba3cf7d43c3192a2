import type { TypedSheet } from "../../survey/survey.js";
import { FileRefused } from "./file-refused.js";
import { type ReadLimits, readLimits } from "./limits.js";
import { readCsv } from "./read-csv.js";
import { readXlsx } from "./read-xlsx.js";

/** A file as it came, with the name the user knows it by. */
export interface FileToRead {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly limits?: ReadLimits;
}

const startsWith = (bytes: Uint8Array, signature: readonly number[]) =>
  signature.every((value, index) => bytes[index] === value);

/**
 * Reads a spreadsheet or text file from an unknown hand into typed sheets. What the file is, its first bytes say,
 * not its name. The caller bounds time and memory: see `readFileInWorker`.
 * @throws {@link FileRefused} with what to do about it.
 */
export function readFileSheets({ name, bytes, limits = readLimits }: FileToRead): readonly TypedSheet[] {
  if (bytes.length === 0)
    throw new FileRefused("empty", `${name} is empty. Save the survey again and hand in that file.`);
  if (bytes.length > limits.fileBytes) {
    throw new FileRefused(
      "tooLarge",
      `${name} has ${Math.ceil(bytes.length / 1024 / 1024)} MB; at most ${limits.fileBytes / 1024 / 1024} MB are read. Hand in the survey sheets only, without pictures.`,
    );
  }
  if (startsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0])) {
    throw new FileRefused(
      "encryptedOrOldFormat",
      `${name} is either encrypted or in the old .xls format. Remove its password, save it as .xlsx and hand in that.`,
    );
  }
  if (startsWith(bytes, [0x50, 0x4b])) return readXlsx(bytes, limits);
  if (startsWith(bytes, [0x25, 0x50, 0x44, 0x46])) {
    throw new FileRefused("notASpreadsheet", `${name} is a PDF. Hand in the sheet itself as .xlsx or .csv.`);
  }
  return [readCsv(bytes, sheetNameOf(name), limits)];
}

/** A loose text file is a sheet named like the file, without folder and ending. */
function sheetNameOf(name: string): string {
  const file = name.slice(Math.max(name.lastIndexOf("/"), name.lastIndexOf("\\")) + 1);
  return file.replace(/\.[A-Za-z0-9]{1,5}$/, "");
}
