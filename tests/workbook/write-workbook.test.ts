import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExcelJS from "exceljs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { printablePlan } from "../../lib/report/printable-plan.js";
import { checkFile } from "../../lib/workbook/check/check-file.js";
import { writeWorkbook } from "../../lib/workbook/write/write-workbook.js";
import { sampleReport } from "./sample-report.js";

const plan = printablePlan(sampleReport);
const python = "/usr/bin/python3";

function inFile<T>(bytes: Uint8Array, work: (path: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), "loopwright-workbook-"));
  try {
    const path = join(folder, "book.xlsx");
    writeFileSync(path, bytes);
    return work(path);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

test("two runs give identical bytes, whatever the time zone and clock say", async () => {
  const first = await writeWorkbook(plan);
  const zone = process.env["TZ"];
  process.env["TZ"] = "Pacific/Auckland";
  await new Promise((resolve) => setTimeout(resolve, 2100));
  const second = await writeWorkbook(printablePlan(sampleReport));
  if (zone === undefined) delete process.env["TZ"];
  else process.env["TZ"] = zone;
  expect(first.length).toBeGreaterThan(10_000);
  expect(Buffer.from(second).equals(Buffer.from(first))).toBe(true);
});

test("the finished file has nothing a spreadsheet program would mend", async () => {
  expect(checkFile(await writeWorkbook(plan))).toEqual([]);
});

describe("the checker finds what is broken on purpose", () => {
  const damages: readonly (readonly [string, string, (xml: string) => string, RegExp])[] = [
    ["a tag left open", "xl/worksheets/sheet1.xml", (xml) => xml.replace("</sheetData>", ""), /closes|closed/],
    ["a stray &", "xl/sharedStrings.xml", (xml) => xml.replace("&amp;", "&"), /stray &/],
    [
      "children out of order",
      "xl/worksheets/sheet2.xml",
      (xml) => {
        const breaks = /<rowBreaks.*<\/rowBreaks>/.exec(xml)?.[0] ?? "";
        return xml.replace(breaks, "").replace("<mergeCells", `${breaks}<mergeCells`);
      },
      /comes too late/,
    ],
    ["a missing table", "xl/worksheets/_rels/sheet2.xml.rels", (xml) => xml.replace("table1", "table9"), /missing/],
    [
      "an id that leads nowhere",
      "xl/worksheets/sheet2.xml",
      (xml) => xml.replace('r:id="rId1"', 'r:id="rId7"'),
      /leads nowhere/,
    ],
    [
      "another heading",
      "xl/tables/table1.xml",
      (xml) => xml.replace('name="Line"', 'name="Lines"'),
      /stands under the heading/,
    ],
    ["a column too many", "xl/tables/table1.xml", (xml) => xml.replace("A2:G8", "A2:F8"), /as many columns/],
    ["not a number", "xl/worksheets/sheet1.xml", (xml) => xml.replace("<v>0.19</v>", "<v>NaN</v>"), /holds NaN/],
    [
      "a lost content type",
      "[Content_Types].xml",
      (xml) => xml.replace(/<Override PartName="\/xl\/charts\/chart1[^>]*>/, ""),
      /no content type/,
    ],
    ["the same shape number", "xl/drawings/drawing1.xml", (xml) => xml.replace('id="3"', 'id="2"'), /same number/],
    ["the same table name", "xl/tables/table2.xml", (xml) => xml.replaceAll('"Kinds"', '"Stores"'), /stands twice/],
    ["an unknown style", "xl/worksheets/sheet1.xml", (xml) => xml.replace(/ s="\d+"/, ' s="999"'), /unknown style/],
  ];
  test.each(damages)("%s", async (_, part, damage, message) => {
    const parts = unzipSync(await writeWorkbook(plan));
    const before = strFromU8(parts[part] ?? new Uint8Array());
    const after = damage(before);
    expect(before).not.toBe("");
    expect(after).not.toBe(before);
    const problems = checkFile(zipSync({ ...parts, [part]: strToU8(after) }));
    expect(problems.map((problem) => problem.message).join("\n")).toMatch(message);
  });
});

test("exceljs reads back styles, locks, validations, frozen headings and print set-up", async () => {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load((await writeWorkbook(plan)).buffer as ArrayBuffer);
  const sheet = book.getWorksheet("Stores (taken)");
  expect(sheet).toBeDefined();
  expect(sheet?.getCell("B3").protection?.locked).toBe(false);
  expect(sheet?.getCell("B3").border?.left?.style).toBe("dashed");
  expect(sheet?.getCell("E3").protection?.locked ?? true).toBe(true);
  expect(sheet?.getCell("E3").numFmt).toContain("EUR");
  expect(sheet?.getCell("B3").dataValidation?.formulae).toEqual(["'Kinds'!$A$2:$A$5"]);
  expect(sheet?.views[0]).toMatchObject({ state: "frozen", ySplit: 2, xSplit: 1 });
  expect(sheet?.pageSetup).toMatchObject({ paperSize: 9, fitToWidth: 1, fitToHeight: 0, orientation: "landscape" });
  expect(sheet?.pageSetup.printTitlesRow).toBe("2:2");
  expect(book.getWorksheet("Summary")?.getCell("B4").protection?.locked).toBe(false);
});

test("Letter paper when asked", async () => {
  const book = new ExcelJS.Workbook();
  const letter = await writeWorkbook(printablePlan({ ...sampleReport, paper: "Letter" }));
  await book.xlsx.load(letter.buffer as ArrayBuffer);
  expect(strFromU8(unzipSync(letter)["xl/worksheets/sheet1.xml"] ?? new Uint8Array())).not.toContain('paperSize="9"');
  expect(book.worksheets.length).toBe(3);
});

test.skipIf(!existsSync(python))(
  "openpyxl reads it: formulas, cached values, tables, links, pictures, charts, protection",
  async () => {
    const script = [
      "import sys, json, openpyxl, zipfile, xml.dom.minidom",
      "z = zipfile.ZipFile(sys.argv[1]); assert z.testzip() is None",
      "[xml.dom.minidom.parseString(z.read(n)) for n in z.namelist() if n.endswith(('.xml', '.rels'))]",
      "f = openpyxl.load_workbook(sys.argv[1]); v = openpyxl.load_workbook(sys.argv[1], data_only=True)",
      "s = f['Stores (taken)']",
      "t = s.tables['Stores']",
      "print(json.dumps({'names': f.sheetnames, 'formula': s['E3'].value, 'cached': v['Stores (taken)']['E3'].value,",
      " 'ref': t.ref, 'column': t.tableColumns[4].calculatedColumnFormula.attr_text, 'total': t.tableColumns[4].totalsRowFormula.attr_text,",
      " 'link': [c.hyperlink.location for r in f['Summary'].iter_rows() for c in r if c.hyperlink],",
      " 'charts': [len(w._charts) for w in f], 'pictures': [len(w._images) for w in f],",
      " 'locked': [w.protection.sheet for w in f], 'defined': sorted(f.defined_names.keys() if hasattr(f.defined_names, 'keys') else [d.name for d in f.defined_names.definedName]),",
      " 'area': s.print_area, 'created': str(f.properties.created)}))",
    ].join("\n");
    const bytes = await writeWorkbook(plan);
    const read: unknown = JSON.parse(
      inFile(bytes, (path) => execFileSync(python, ["-c", script, path], { encoding: "utf8" })),
    );
    expect(read).toMatchObject({
      names: ["Summary", "Stores (taken)", "Kinds"],
      formula: "=ROUND(Stores[[#This Row],[✎ Quantity (pieces, m)]]*Stores[[#This Row],[Price, each: net & dry]],2)",
      cached: 22.2,
      ref: "A2:G8",
      column: "ROUND(Stores[[#This Row],[✎ Quantity (pieces, m)]]*Stores[[#This Row],[Price, each: net & dry]],2)",
      total: "ROUND(SUM(Stores[Line]),2)",
      link: ["'Stores (taken)'!A2"],
      charts: [1, 0, 2],
      locked: [true, true, false],
      defined: ["NetSum", "TaxRate", "Tax", "Total"].sort(),
      created: "2025-03-14 00:00:00",
    });
  },
);
