import type { TypedSheet } from "../../survey/survey.js";
import { FileRefused } from "./file-refused.js";
import type { ReadLimits } from "./limits.js";
import { plainText, readSheetXml, unescaped } from "./read-sheet-xml.js";
import { scanXml, xmlAttribute } from "./xml-scan.js";
import { unpackEntry, zipEntries } from "./zip-parts.js";

/** Unpacks only the parts that are asked for and keeps the running total under the limit. */
class Parts {
  readonly #bytes: Uint8Array;
  readonly #entries: ReadonlyMap<string, ReturnType<typeof zipEntries>[number]>;
  readonly #limits: ReadLimits;
  #left: number;
  constructor(bytes: Uint8Array, limits: ReadLimits) {
    this.#bytes = bytes;
    this.#limits = limits;
    this.#left = limits.totalBytes;
    this.#entries = new Map(
      zipEntries(bytes, limits).map((entry) => [entry.name.replace(/^\//, "").toLowerCase(), entry]),
    );
  }
  has(name: string): boolean {
    return this.#entries.has(name.toLowerCase());
  }
  text(name: string): string | null {
    const entry = this.#entries.get(name.toLowerCase());
    if (entry === undefined) return null;
    const part = unpackEntry(this.#bytes, entry, Math.min(this.#limits.partBytes, this.#left));
    this.#left -= part.length;
    const label =
      part[0] === 0xff && part[1] === 0xfe ? "utf-16le" : part[0] === 0xfe && part[1] === 0xff ? "utf-16be" : "utf-8";
    return new TextDecoder(label).decode(part);
  }
}

interface SheetPart {
  readonly name: string;
  readonly id: string;
  readonly hidden: boolean;
}

function readWorkbookPart(xml: string): { readonly sheets: readonly SheetPart[]; readonly date1904: boolean } {
  const sheets: SheetPart[] = [];
  let date1904 = false;
  scanXml(xml, {
    open(name, attributes) {
      if (name === "workbookPr") date1904 = /^(1|true)$/.test(xmlAttribute(attributes, "date1904") ?? "");
      if (name !== "sheet") return;
      sheets.push({
        name: plainText(xmlAttribute(attributes, "name") ?? ""),
        id: /:id\s*=\s*["']([^"']*)/.exec(attributes)?.[1] ?? "",
        hidden: /hidden/i.test(xmlAttribute(attributes, "state") ?? ""),
      });
    },
  });
  return { sheets, date1904 };
}

function readRelationships(xml: string | null, base: string): ReadonlyMap<string, string> {
  const targets = new Map<string, string>();
  if (xml === null) return targets;
  scanXml(xml, {
    open(name, attributes) {
      const id = xmlAttribute(attributes, "Id");
      const target = xmlAttribute(attributes, "Target");
      if (name !== "Relationship" || id === undefined || target === undefined) return;
      if (xmlAttribute(attributes, "TargetMode") === "External") return;
      targets.set(id, resolvePart(base, target));
    },
  });
  return targets;
}

/** Part name of a relationship target; ".." never leaves the package. */
function resolvePart(base: string, target: string): string {
  const parts = target.startsWith("/") ? [] : base.split("/").filter((p) => p !== "");
  for (const step of target.split("/")) {
    if (step === "..") parts.pop();
    else if (step !== "." && step !== "") parts.push(step);
  }
  return parts.join("/");
}

function readStrings(xml: string | null, limits: ReadLimits): readonly string[] {
  const strings: string[] = [];
  if (xml === null) return strings;
  let current = "";
  let inText = false;
  let phonetic = 0;
  scanXml(xml, {
    open(name) {
      if (name === "si") current = "";
      else if (name === "rPh") phonetic++;
      else if (name === "t") inText = phonetic === 0;
    },
    close(name) {
      if (name === "si") {
        if (strings.length >= limits.cells)
          throw new FileRefused("tooManyCells", "The file holds more texts than any survey.");
        strings.push(plainText(unescaped(current)));
      } else if (name === "rPh") phonetic--;
      else if (name === "t") inText = false;
    },
    text(text) {
      if (!inText) return;
      if (current.length + text.length > limits.characters) {
        throw new FileRefused(
          "textTooLong",
          `A cell holds more than ${limits.characters} characters, more than a spreadsheet allows. Shorten it.`,
        );
      }
      current += text;
    },
  });
  return strings;
}

// Numbers of the built-in formats that show dates (ECMA-376 part 1, 18.8.30); 18–21 and 45–47 show times only.
const builtInDates = new Set([14, 15, 16, 17, 22, 27, 30, 36, 50, 57]);

/** Whether a number format shows a day: a d, m or y outside quotes, brackets and escapes. */
function isDateFormat(format: string): boolean {
  const bare = format.replace(/"[^"]*"|\[[^\]]*\]|\\.|_.|\*./g, "");
  return /[dy]/i.test(bare) || /m{3,}|^m+[^hs]*$/i.test(bare);
}

function readDateStyles(xml: string | null): readonly boolean[] {
  const formats = new Map<number, boolean>();
  const styles: boolean[] = [];
  let inCellXfs = false;
  if (xml === null) return styles;
  scanXml(xml, {
    open(name, attributes) {
      if (name === "numFmt") {
        formats.set(
          Number(xmlAttribute(attributes, "numFmtId")),
          isDateFormat(xmlAttribute(attributes, "formatCode") ?? ""),
        );
      } else if (name === "cellXfs") inCellXfs = true;
      else if (name === "xf" && inCellXfs && styles.length < 65_536) {
        const id = Number(xmlAttribute(attributes, "numFmtId") ?? 0);
        styles.push(formats.get(id) ?? builtInDates.has(id));
      }
    },
    close(name) {
      if (name === "cellXfs") inCellXfs = false;
    },
  });
  return styles;
}

/**
 * Reads the values of every worksheet of an .xlsx file. Only workbook, relationships, strings, styles and worksheets
 * are unpacked; validations, conditional formats, drawings, names, macros and links are never looked at.
 * @throws {@link FileRefused}
 */
export function readXlsx(bytes: Uint8Array, limits: ReadLimits): readonly TypedSheet[] {
  const parts = new Parts(bytes, limits);
  if (parts.has("content.xml") && !parts.has("[Content_Types].xml")) {
    throw new FileRefused(
      "openDocument",
      "This is an OpenDocument file, whatever its name says. Save it as .xlsx or .csv and hand in that.",
    );
  }
  const root = readRelationships(parts.text("_rels/.rels"), "");
  const named = [...root.values()].find((name) => /workbook\.xml$/i.test(name) && parts.has(name));
  const workbookName = named ?? "xl/workbook.xml";
  const workbookXml = parts.text(workbookName);
  if (workbookXml === null) {
    throw new FileRefused(
      "notASpreadsheet",
      "The file is a zip archive without a workbook in it. Hand in an .xlsx or .csv file.",
    );
  }
  const folder = workbookName.slice(0, workbookName.lastIndexOf("/"));
  const file = workbookName.slice(workbookName.lastIndexOf("/") + 1);
  const targets = readRelationships(parts.text(`${folder}/_rels/${file}.rels`), folder);
  const { sheets, date1904 } = readWorkbookPart(workbookXml);
  if (sheets.length > limits.sheets)
    throw new FileRefused("tooLarge", `The file has ${sheets.length} sheets. Hand in the survey sheets only.`);
  const strings = readStrings(parts.text(`${folder}/sharedStrings.xml`), limits);
  const dateStyles = readDateStyles(parts.text(`${folder}/styles.xml`));
  let cells = 0;
  const countCell = () => {
    if (++cells > limits.cells) {
      throw new FileRefused(
        "tooManyCells",
        `The file has more than ${limits.cells} filled cells. Hand in the survey sheets only.`,
      );
    }
  };
  return sheets.flatMap((part) => {
    const target = targets.get(part.id);
    const xml = target !== undefined && /worksheets\//i.test(target) ? parts.text(target) : null;
    if (xml === null) return [];
    return [
      readSheetXml(xml, { sheet: part.name, hidden: part.hidden, strings, dateStyles, date1904, limits, countCell }),
    ];
  });
}
