import ExcelJS from "exceljs";
import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { FileRefused, type FileRefusedCode } from "../../lib/workbook/read/file-refused.js";
import { readFileSheets } from "../../lib/workbook/read/read-file.js";
import { isoDateOf } from "../../lib/workbook/read/read-sheet-xml.js";
import { entries, smallTable, text, worksheet, xlsx } from "./build-xlsx.js";

const read = (bytes: Uint8Array, name = "survey.xlsx") => readFileSheets({ name, bytes });
const cellsOf = (bytes: Uint8Array) => read(bytes)[0]?.rows.map(({ row, cells }) => [row, ...cells]);
const refusal = (bytes: Uint8Array, name = "survey.xlsx"): FileRefused => {
  try {
    read(bytes, name);
  } catch (error) {
    if (error instanceof FileRefused) return error;
    throw error;
  }
  throw new Error("was not refused");
};
const plain = [
  [1, "Loop", "R closed"],
  [2, "1", 5.4],
];

describe("workbooks written by a general library (exceljs) read back to what was put in", () => {
  test("texts, numbers, truth values, rich text, dates, zeros, formula-like text, lone surrogates of layout", async () => {
    const book = new ExcelJS.Workbook();
    const sheet = book.addWorksheet("Loops");
    sheet.addRow(["Loop", "R closed", "When", "Flag", "Note"]);
    const row = sheet.addRow(["01", 0, new Date(Date.UTC(2026, 3, 22)), true, "=1+1"]);
    row.getCell(3).numFmt = "d-mmm";
    sheet.getCell("F2").value = { richText: [{ text: "22" }, { text: "/4", font: { bold: true } }] };
    sheet.getCell("A4").value = { formula: "1+1", result: 2 };
    sheet.getCell("B4").value = "2.2 k\u2126\u00a0x _x0041_";
    sheet.getCell("B4").font = { bold: true };
    const [typed] = read(new Uint8Array(await book.xlsx.writeBuffer()));
    expect(typed?.rows).toHaveLength(3);
    expect(typed?.rows[1]?.cells).toEqual(["01", 0, { isoDate: "2026-04-22" }, true, "=1+1", "22/4"]);
    expect(typed?.rows[2]?.row).toBe(4);
    expect(typed?.rows[2]?.cells[0]).toBe(2);
    expect(String(typed?.rows[2]?.cells[1])).toContain("2.2 kΩ x");
  });
  test.each([
    [1, "1900-01-01"],
    [59, "1900-02-28"],
    [61, "1900-03-01"],
    [25_569, "1970-01-01"],
    [46_134, "2026-04-22"],
  ])("serial %d is %s (ECMA-376 part 1, 18.17.4.1)", (serial, iso) => {
    expect(isoDateOf(serial, false)).toBe(iso);
    expect(isoDateOf(serial - 1462, true)).toBe(serial > 1462 ? iso : null);
  });
});

describe("hidden things, merges and uncalculated formulas are read and said", () => {
  test("a hidden sheet and a hidden row", () => {
    const [typed] = read(
      xlsx({
        state: "veryHidden",
        sheet: worksheet(`<sheetData>${smallTable.replace('<row r="2">', '<row r="2" hidden="1">')}</sheetData>`),
      }),
    );
    expect(typed?.rows).toHaveLength(2);
    expect(typed?.remarks?.map(({ message }) => message).join(" ")).toMatch(/sheet is hidden.*1 hidden row/s);
  });
  test("a formula without its result is no zero", () => {
    const [typed] = read(
      xlsx({
        sheet: worksheet(
          `<sheetData>${smallTable}<row r="3">${text("A3", "2")}<c r="B3"><f>1+1</f></c></row></sheetData>`,
        ),
      }),
    );
    expect(typed?.rows[2]?.cells).toEqual(["2"]);
    expect(typed?.remarks?.[0]).toMatchObject({ row: 3, column: "B" });
  });
  test("a value merged down holds for each row that has anything", () => {
    const sheet = worksheet(
      `<sheetData><row r="1">${text("A1", "P1")}${text("B1", "x")}</row><row r="2">${text("B2", "y")}</row></sheetData><mergeCells><mergeCell ref="A1:A9"/></mergeCells>`,
    );
    expect(cellsOf(xlsx({ sheet }))).toEqual([
      [1, "P1", "x"],
      [2, "P1", "y"],
    ]);
  });
  test("prefixed namespaces are read like plain ones", () => {
    const prefixed = worksheet(`<sheetData>${smallTable}</sheetData>`)
      .replace("xmlns=", "xmlns:x=")
      .replace(/<(\/?)(?=[a-z])/g, "<$1x:");
    expect(prefixed).toContain("<x:row ");
    const workbook =
      '<x:workbook xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:rel="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><x:sheets><x:sheet name="Loops" sheetId="1" rel:id="rId1"/></x:sheets></x:workbook>';
    expect(cellsOf(xlsx({ sheet: prefixed, workbook }))).toEqual(plain);
  });
  test("text that begins like a formula and names of object fields are only text", () => {
    const cells = ["=1+1", "+1", "-1+2", "@SUM(A1)", "__proto__", "constructor"];
    const row = cells.map((cell, index) => text(`${"ABCDEF".charAt(index)}1`, cell)).join("");
    expect(cellsOf(xlsx({ sheet: worksheet(`<sheetData><row r="1">${row}</row></sheetData>`) }))).toEqual([
      [1, ...cells],
    ]);
  });
});

describe("files that are something else or damaged are refused with what to do", () => {
  const cases: readonly (readonly [string, () => Uint8Array, FileRefusedCode, RegExp])[] = [
    ["empty", () => new Uint8Array(0), "empty", /Save the survey again/],
    [
      "encrypted or .xls (OLE signature)",
      () => new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]),
      "encryptedOrOldFormat",
      /password.*\.xlsx/,
    ],
    ["PDF", () => strToU8("%PDF-1.7 …"), "notASpreadsheet", /\.xlsx or \.csv/],
    ["other binary", () => new Uint8Array([1, 0, 2, 0, 3, 0]), "notASpreadsheet", /\.xlsx or \.csv/],
    [
      ".ods by content",
      () =>
        zipSync({
          mimetype: strToU8("application/vnd.oasis.opendocument.spreadsheet"),
          "content.xml": strToU8("<x/>"),
        }),
      "openDocument",
      /Save it as \.xlsx/,
    ],
    ["zip without a workbook", () => zipSync({ "a.txt": strToU8("x") }), "notASpreadsheet", /\.xlsx or \.csv/],
    ["truncated", () => xlsx({}).subarray(0, 400), "damaged", /save it again/],
    [
      "document type",
      () => xlsx({ sheet: `<!DOCTYPE x [<!ENTITY a "b">]>${worksheet("<sheetData/>")}` }),
      "forbiddenXml",
      /Save it again/,
    ],
    ["XML cut off", () => xlsx({ sheet: '<worksheet><sheetData><row r="1"><c r="A1"' }), "damaged", /save it again/],
    ["a text of 33,000 characters", () => xlsx({ strings: ["x".repeat(33_000)] }), "textTooLong", /Shorten it/],
    [
      "5,001 parts",
      () =>
        zipSync({
          ...entries({}),
          ...Object.fromEntries(Array.from({ length: 5001 }, (_, index) => [`junk/${index}`, new Uint8Array(0)])),
        }),
      "tooLarge",
      /no survey needs that/,
    ],
  ];
  test.each(cases)("%s", (_, build, code, words) => {
    const error = refusal(build());
    expect(error.code).toBe(code);
    expect(error.message).toMatch(words);
  });
  test("a directory entry that claims more bytes than there are", () => {
    const bytes = xlsx({ sheet: worksheet(`<sheetData>${smallTable}</sheetData>`) }).slice();
    const view = new DataView(bytes.buffer);
    let entry = -1;
    for (let at = 0; at + 4 < bytes.length; at++) if (view.getUint32(at, true) === 0x02014b50) entry = at;
    expect(entry).toBeGreaterThan(0);
    view.setUint32(entry + 20, 0x7fffffff, true);
    expect(refusal(bytes).code).toBe("damaged");
  });
});

describe("text files", () => {
  const csv = (bytes: Uint8Array) => readFileSheets({ name: "site_x_loops.csv", bytes })[0];
  const rows = [
    [1, "Loop", "R closed", "Notes"],
    [2, "01", "2,2k", 'a "b"; c'],
  ];
  test.each([
    ["comma", 'Loop,R closed,Notes\r\n01,"2,2k","a ""b""; c"\r\n'],
    ["semicolon", 'Loop;R closed;Notes\n01;2,2k;"a ""b""; c"\n'],
    ["tab", 'Loop\tR closed\tNotes\n01\t2,2k\t"a ""b""; c"'],
    ["byte order mark", '\uFEFFLoop,R closed,Notes\n01,"2,2k","a ""b""; c"\n'],
  ])("%s", (_, content) => {
    const typed = csv(strToU8(content));
    expect(typed?.sheet).toBe("site_x_loops");
    expect(typed?.rows.map(({ row, cells }) => [row, ...cells])).toEqual(rows);
  });
  test("Windows-1252 (WHATWG Encoding: 0xB0 is °, 0x96 is –) and UTF-16", () => {
    expect(csv(new Uint8Array([0x32, 0x31, 0xb0, 0x43, 0x2c, 0x35, 0x96, 0x36]))?.rows[0]?.cells).toEqual([
      "21°C",
      "5–6",
    ]);
    expect(csv(new Uint8Array([0xff, 0xfe, 0x41, 0x00, 0x2c, 0x00, 0x26, 0x21]))?.rows[0]?.cells).toEqual(["A", "Ω"]);
  });
  test("columns beyond the 256th are left out with a remark; what XML forbids shows as a replacement character", () => {
    const wide = csv(strToU8(`Loop,${Array.from({ length: 10_000 }, (_, index) => `c${index}`).join(",")}\n1,2\n`));
    expect(wide?.rows[0]?.cells).toHaveLength(256);
    expect(wide?.remarks?.map(({ message }) => message)).toEqual([expect.stringContaining("beyond column 256")]);
    expect(csv(strToU8("Loop,a\u0007b\uffff\n"))?.rows[0]?.cells).toEqual(["Loop", "a\ufffdb\ufffd"]);
  });
  test("a cell of more characters than a spreadsheet allows is refused", () => {
    expect(refusal(strToU8(`Loop,R\n1,${"x".repeat(40_000)}\n`), "x.csv").code).toBe("textTooLong");
  });
});
