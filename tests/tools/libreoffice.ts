import { execFile } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { promisify } from "node:util";

const run = promisify(execFile);

/**
 * A profile of our own in which LibreOffice recalculates every formula of a loaded .xlsx file (OOXMLRecalcMode 0);
 * without it a wrong cached value would simply be shown again.
 */
const recalculating = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
`;

/** Works in a folder of its own that is removed afterwards, whatever happens. */
async function inFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "loopwright-office-"));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function convert(folder: string, file: string, target: string): Promise<string> {
  const profile = join(folder, "profile");
  mkdirSync(join(profile, "user"), { recursive: true });
  writeFileSync(join(profile, "user", "registrymodifications.xcu"), recalculating);
  const out = join(folder, "out");
  mkdirSync(out, { recursive: true });
  const options = [
    "--headless",
    `-env:UserInstallation=file://${profile}`,
    "--convert-to",
    target,
    "--outdir",
    out,
    file,
  ];
  await run("soffice", options, { timeout: 100_000, cwd: folder });
  // soffice exits with 0 even when it could not read the file.
  if (readdirSync(out).length === 0) throw new Error(`LibreOffice made nothing of ${basename(file)}`);
  return out;
}

/** Rows of a CSV text with quoted fields. */
export function csvRows(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  for (const match of text.matchAll(/(?:"((?:[^"]|"")*)"|([^,\r\n]*))(,|\r?\n|$)/g)) {
    if (match.index >= text.length) break;
    row.push(match[1] === undefined ? (match[2] ?? "") : match[1].replaceAll('""', '"'));
    if (match[3] === ",") continue;
    rows.push(row);
    row = [];
  }
  if (row.length > 0) rows.push(row);
  return rows;
}

/** Every sheet of a workbook as LibreOffice shows it after a full recalculation: raw values, by sheet name. */
export function recalculatedSheets(xlsx: Uint8Array): Promise<Map<string, string[][]>> {
  return inFolder(async (folder) => {
    writeFileSync(join(folder, "book.xlsx"), xlsx);
    const filter = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1";
    const out = await convert(folder, join(folder, "book.xlsx"), filter);
    const sheets = new Map<string, string[][]>();
    for (const file of readdirSync(out)) {
      const name = /^book-(.*)\.csv$/.exec(file)?.[1];
      if (name !== undefined) sheets.set(name, csvRows(readFileSync(join(out, file), "utf8")));
    }
    return sheets;
  });
}

/** The workbook printed to PDF, and its pages as text. */
export function printed(xlsx: Uint8Array): Promise<{ readonly pdf: Uint8Array; readonly text: string }> {
  return inFolder(async (folder) => {
    writeFileSync(join(folder, "book.xlsx"), xlsx);
    const out = await convert(folder, join(folder, "book.xlsx"), "pdf");
    const pdf = join(out, "book.pdf");
    if (!existsSync(pdf)) throw new Error("LibreOffice printed nothing");
    const { stdout } = await run("pdftotext", ["-layout", pdf, "-"]);
    return { pdf: new Uint8Array(readFileSync(pdf)), text: stdout };
  });
}

/** Pages of a PDF as PNG pictures, for looking at and for counting dark spots. */
export function pagePictures(pdf: Uint8Array, dotsPerInch = 60): Promise<Uint8Array[]> {
  return inFolder(async (folder) => {
    writeFileSync(join(folder, "book.pdf"), pdf);
    await run("pdftoppm", ["-r", String(dotsPerInch), "-png", join(folder, "book.pdf"), join(folder, "page")]);
    const pages = readdirSync(folder).filter((file) => file.endsWith(".png"));
    return pages.sort().map((file) => new Uint8Array(readFileSync(join(folder, file))));
  });
}

/** Colour values of a page, three per dot, row by row, without any picture library. */
export function pageDots(
  pdf: Uint8Array,
  page: number,
  dotsPerInch = 40,
): Promise<{ width: number; height: number; rgb: Uint8Array }> {
  return inFolder(async (folder) => {
    writeFileSync(join(folder, "book.pdf"), pdf);
    const only = ["-f", String(page), "-l", String(page)];
    await run("pdftoppm", ["-r", String(dotsPerInch), ...only, join(folder, "book.pdf"), join(folder, "page")]);
    const file = readdirSync(folder).find((each) => each.endsWith(".ppm"));
    if (file === undefined) throw new Error(`there is no page ${page}`);
    const bytes = readFileSync(join(folder, file));
    const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString("latin1"));
    if (head === null) throw new Error("the page is no PPM picture");
    return { width: Number(head[1]), height: Number(head[2]), rgb: new Uint8Array(bytes.subarray(head[0].length)) };
  });
}
