import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { strToU8, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { readFileInWorker } from "../../lib/workbook/read/in-worker.js";
import { entries, smallTable, text, worksheet, xlsx } from "./build-xlsx.js";

const root = fileURLToPath(new URL("../..", import.meta.url));
let folder = "";
let read: typeof readFileInWorker;

// A worker needs JavaScript: the reader is compiled as the build compiles it, then run as the command runs it.
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "read-worker-"));
  symlinkSync(join(root, "node_modules"), join(folder, "node_modules"));
  const tsc = join(root, "node_modules/typescript/bin/tsc");
  const options = [
    "--ignoreConfig",
    "--noCheck",
    "--module",
    "nodenext",
    "--target",
    "es2022",
    "--skipLibCheck",
    "--rootDir",
    join(root, "lib"),
    "--outDir",
    join(folder, "lib"),
    "--types",
    "node",
    "--typeRoots",
    join(root, "node_modules/@types"),
  ];
  const run = spawnSync(
    process.execPath,
    [tsc, ...options, ...["in-worker.ts", "worker-entry.ts"].map((file) => join(root, "lib/workbook/read", file))],
    { cwd: root, encoding: "utf8" },
  );
  expect(run.stdout).toBe("");
  writeFileSync(join(folder, "package.json"), '{"type":"module"}');
  ({ readFileInWorker: read } = (await import(pathToFileURL(join(folder, "lib/workbook/read/in-worker.js")).href)) as {
    readFileInWorker: typeof readFileInWorker;
  });
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** One chunk over and over, packed without holding it unpacked more than once. */
const zeros = (megabytes: number) => new Uint8Array(megabytes * 1024 * 1024).fill(0x20);
const rowsOf = async (bytes: Uint8Array) => (await read({ name: "survey.xlsx", bytes }))[0]?.rows.length;
const codeOf = async (bytes: Uint8Array) => {
  try {
    await read({ name: "survey.xlsx", bytes });
  } catch (error) {
    const { name, code, message } = error as Error & { code?: string };
    expect(name).toBe("FileRefused");
    expect(message.length).toBeGreaterThan(30);
    return code;
  }
  return "read";
};

describe("hostile files, each in the limited thread (5 s, 512 MB): read, or refused with what to do", () => {
  test("whole-sheet merge, validation, conditional format and defined name are passed over", async () => {
    const table = `<sheetData>${smallTable}</sheetData>`;
    const merge = '<mergeCells count="1"><mergeCell ref="A1:XFD1048576"/></mergeCells>';
    const validation =
      '<dataValidations count="1"><dataValidation type="whole" sqref="A1:XFD1048576"><formula1>1</formula1></dataValidation></dataValidations>';
    const format =
      '<conditionalFormatting sqref="A1:XFD1048576"><cfRule type="expression" priority="1"><formula>1</formula></cfRule></conditionalFormatting>';
    const named =
      '<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="Loops" sheetId="1" r:id="rId1"/></sheets><definedNames><definedName name="all">Loops!$A$1:$XFD$1048576</definedName></definedNames></workbook>';
    for (const after of [merge, validation, format])
      expect(await rowsOf(xlsx({ sheet: worksheet(table + after) }))).toBe(2);
    expect(await rowsOf(xlsx({ sheet: worksheet(table), workbook: named }))).toBe(2);
  });
  test("1,048,576 formatted but empty rows are no rows", async () => {
    const empty = Array.from(
      { length: 1_048_574 },
      (_, index) => `<row r="${index + 3}" s="1" customFormat="1"/>`,
    ).join("");
    const [typed] = await read({
      name: "survey.xlsx",
      bytes: xlsx({ sheet: worksheet(`<sheetData>${smallTable}${empty}</sheetData>`) }),
    });
    expect(typed?.rows).toHaveLength(2);
  });
  test("formatted but empty cells out to the last column are no cells", async () => {
    const styled = Array.from({ length: 16_384 }, () => '<c s="1"/>').join("");
    const rows = Array.from({ length: 60 }, (_, index) => `<row r="${index + 3}">${styled}</row>`).join("");
    expect(await rowsOf(xlsx({ sheet: worksheet(`<sheetData>${smallTable}${rows}</sheetData>`) }))).toBe(2);
  });
  test("a zip bomb in a part that is read stops at the cap; in a part that is not read it is never unpacked", async () => {
    const bomb = zeros(300);
    expect(await codeOf(zipSync({ ...entries({}), "xl/worksheets/sheet1.xml": [bomb, { level: 6 }] }))).toBe(
      "tooLarge",
    );
    const unread = zipSync({
      ...entries({ sheet: worksheet(`<sheetData>${smallTable}</sheetData>`) }),
      "xl/media/image1.png": [bomb, { level: 6 }],
    });
    expect(await rowsOf(unread)).toBe(2);
  });
  test("an entry that claims to unpack to one byte does not get more than the cap", async () => {
    const bytes = zipSync({ ...entries({}), "xl/worksheets/sheet1.xml": [zeros(300), { level: 6 }] }).slice();
    const view = new DataView(bytes.buffer);
    let lies = 0;
    for (let at = 0; at + 46 < bytes.length; at++) {
      if (view.getUint32(at, true) !== 0x02014b50) continue;
      view.setUint32(at + 24, 1, true);
      lies++;
    }
    expect(lies).toBeGreaterThan(4);
    expect(await codeOf(bytes)).toBe("tooLarge");
  });
  test("a text of 50 MB", async () => {
    const long = "x".repeat(50 * 1024 * 1024);
    expect(await codeOf(xlsx({ strings: [long] }))).toBe("textTooLong");
    expect(
      await codeOf(xlsx({ sheet: worksheet(`<sheetData><row r="1">${text("A1", long)}</row></sheetData>`) })),
    ).toBe("textTooLong");
    expect(await codeOf(strToU8(`Loop,R closed\n1,${"x".repeat(20 * 1024 * 1024)}`))).toMatch(/textTooLong|damaged/);
  });
  test("more rows and more cells than any survey", async () => {
    const rows = Array.from({ length: 60_000 }, (_, index) => `<row r="${index + 1}"><c><v>1</v></c></row>`).join("");
    expect(await codeOf(xlsx({ sheet: worksheet(`<sheetData>${rows}</sheetData>`) }))).toBe("tooManyRows");
    const wide = Array.from({ length: 250 }, () => "<c><v>1</v></c>").join("");
    const many = Array.from({ length: 4_100 }, (_, index) => `<row r="${index + 1}">${wide}</row>`).join("");
    expect(await codeOf(xlsx({ sheet: worksheet(`<sheetData>${many}</sheetData>`) }))).toBe("tooManyCells");
  });
  test("a reader that takes too long is ended", async () => {
    const bytes = xlsx({ sheet: worksheet(`<sheetData>${smallTable}</sheetData>`) });
    await expect(read({ name: "survey.xlsx", bytes, seconds: 0.001 })).rejects.toMatchObject({ code: "tooSlow" });
  });
});
