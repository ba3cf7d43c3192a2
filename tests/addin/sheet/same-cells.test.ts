import { readdirSync, readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import { beforeAll, describe, expect, test } from "vitest";
import { writeReport } from "../../../addin/sheet/write-report.js";
import { estimateJob } from "../../../lib/estimate/estimate-job.js";
import { heldPlan } from "../../../lib/estimate/held-plan.js";
import { areaAddress, cellAddress } from "../../../lib/report/addresses.js";
import { type PrintablePlan, printablePlan } from "../../../lib/report/printable-plan.js";
import { solveWithHighs } from "../../../lib/solver/highs.js";
import { readSurvey } from "../../../lib/survey/read-survey.js";
import { estimateWorkbookReport } from "../../../lib/workbook/estimate-workbook.js";
import { writeWorkbook } from "../../../lib/workbook/write/write-workbook.js";
import { addressOf } from "../../excel-host/cells.js";
import { ExcelHost } from "../../excel-host/excel-host.js";
import type { Sheet } from "../../excel-host/sheet.js";
import { sampleReport } from "../../workbook/sample-report.js";
import { boathouse, connectionTo, drawn } from "./demo.js";
import { sheetOf } from "./state.js";

const date = "2026-03-02";

/** The same plan written by both writers: the file read back with exceljs, the workbook taken from the host. */
async function bothWays(plan: PrintablePlan) {
  const host = new ExcelHost();
  await writeReport({ connection: connectionTo(host), plan, renderPicture: drawn });
  const book = new ExcelJS.Workbook();
  await book.xlsx.load((await writeWorkbook(plan)).buffer as ArrayBuffer);
  return { host, book };
}

const colour = (argb: string | undefined) => (argb === undefined ? null : `#${argb.slice(2)}`);
const fileLines: Readonly<Record<string, string>> = {
  hair: "Continuous Hairline",
  thin: "Continuous Thin",
  medium: "Continuous Medium",
  dashed: "Dash Thin",
  double: "Double Thick",
};

/** exceljs makes dates of day numbers; day 0 of the 1900 calendar is 30 December 1899. */
function plainValue(value: ExcelJS.CellValue): unknown {
  if (value instanceof Date) return (value.getTime() - Date.UTC(1899, 11, 30)) / 86_400_000;
  return typeof value === "object" && value !== null && "text" in value ? value.text : value;
}

function inFile(cell: ExcelJS.Cell) {
  const { font, fill, alignment, border, protection } = cell;
  const value = cell.formula !== undefined ? `=${cell.formula}` : (cell.value ?? "");
  return {
    value: plainValue(value),
    // A formula written through the API into a cell of format text would stay text; a file's shows its value.
    format: cell.formula !== undefined && cell.numFmt === "@" ? "General" : (cell.numFmt ?? "General"),
    bold: font?.bold ?? false,
    italic: font?.italic ?? false,
    underline: font?.underline ? "Single" : "None",
    size: font?.size,
    family: font?.name,
    colour: colour(font?.color?.argb) ?? "#000000",
    fill: fill?.type === "pattern" ? colour(fill.fgColor?.argb) : null,
    right: alignment?.horizontal === "right",
    wrap: alignment?.wrapText ?? false,
    vertical: alignment?.vertical === "bottom" ? "Bottom" : "Top",
    locked: protection?.locked ?? true,
    lines: (["top", "bottom", "left", "right"] as const).map(
      (side) => fileLines[border?.[side]?.style ?? ""] ?? "none",
    ),
  };
}

function inHost(sheet: Sheet, row: number, column: number) {
  const look = (name: string) => sheet.cells.look(row, column, name);
  const content = sheet.cells.content(row, column);
  const line = (edge: string, inside: string, outermost: boolean) => {
    const side = !outermost && look(`${inside}.Style`) !== undefined ? inside : edge;
    return look(`${side}.Style`) === undefined ? "none" : `${look(`${side}.Style`)} ${look(`${side}.Weight`)}`;
  };
  return {
    value: content?.formula ?? content?.value ?? "",
    format: sheet.formatAt(row, column),
    bold: look("Font.Bold") ?? false,
    italic: look("Font.Italic") ?? false,
    underline: look("Font.Underline") ?? "None",
    size: look("Font.Size"),
    family: look("Font.Name"),
    colour: look("Font.Color") ?? "#000000",
    fill: look("Fill.Color") ?? null,
    right: look("HorizontalAlignment") === "Right",
    wrap: look("WrapText") ?? false,
    vertical: look("VerticalAlignment"),
    locked: look("Locked") ?? true,
    lines: [
      line("EdgeTop", "InsideHorizontal", true),
      line("EdgeBottom", "InsideHorizontal", false),
      line("EdgeLeft", "InsideVertical", true),
      line("EdgeRight", "InsideVertical", false),
    ],
  };
}

function compare(plan: PrintablePlan, host: ExcelHost, book: ExcelJS.Workbook): number {
  let compared = 0;
  for (const planned of plan.sheets) {
    const file = book.getWorksheet(planned.name);
    const sheet = sheetOf(host, planned.name);
    if (file === undefined) throw new Error(`the file has no sheet ${planned.name}`);
    const covered = new Set(
      planned.merges.flatMap(({ top, left, bottom, right }) => {
        const cells: string[] = [];
        for (let row = top; row <= bottom; row++)
          for (let column = left; column <= right; column++)
            if (row > top || column > left) cells.push(`${row} ${column}`);
        return cells;
      }),
    );
    for (const { row, column } of planned.cells) {
      if (covered.has(`${row} ${column}`)) continue;
      const where = `${planned.name} row ${row} column ${column}`;
      expect({ where, ...inHost(sheet, row - 1, column - 1) }).toEqual({ where, ...inFile(file.getCell(row, column)) });
      compared++;
    }
    const merges = (file.model as unknown as { merges: readonly string[] }).merges;
    expect(sheet.merges.map(addressOf).sort()).toEqual([...merges].sort());
  }
  return compared;
}

type Both = Awaited<ReturnType<typeof bothWays>>;

describe("the same plan through the file writer and through Excel's API", () => {
  let demoPlan: PrintablePlan;
  let demo: Both;
  let provedPlan: PrintablePlan;
  let proved: Both;
  beforeAll(async () => {
    const { survey, headings } = await boathouse();
    const first = await estimateJob({ survey });
    const held = heldPlan({ estimate: first, revision: 1, date });
    const before = { ...held, totalCents: held.totalCents - 12_345, loops: held.loops.slice(1) };
    const estimate = await estimateJob({ survey, before });
    demoPlan = printablePlan(estimateWorkbookReport({ estimate, survey, headings, date }));
    demo = await bothWays(demoPlan);
    // A few loops with a proved plan: its options stand on a sheet that the quick plan has not.
    // A finished job on record puts in the sheet of what was learned.
    const finished = readSurvey({
      json: {
        loops: [{ loop: "1" }],
        finishedJobs: [{ job: "Mill", finished: "2026-02-01", kind: "repair", name: "bypassed", first: 6, second: 3 }],
      },
    }).survey.finishedJobs;
    if (finished === undefined) throw new Error("the finished job was not read");
    const few = { ...survey, loops: survey.loops.slice(0, 5), finishedJobs: finished };
    const exact = await estimateJob({ survey: few, solve: solveWithHighs, seconds: 2 });
    provedPlan = printablePlan(estimateWorkbookReport({ estimate: exact, survey: few, headings, date }));
    proved = await bothWays(provedPlan);
  });

  test("gives equal cells for a report with every kind of block", async () => {
    const plan = printablePlan(sampleReport);
    const { host, book } = await bothWays(plan);
    expect(compare(plan, host, book)).toBeGreaterThan(80);
  });

  test("gives equal cells for the demo estimate: contents, formats, fonts, fills, lines, locks, merges", () => {
    expect(compare(demoPlan, demo.host, demo.book)).toBeGreaterThan(5_000);
    expect(compare(provedPlan, proved.host, proved.book)).toBeGreaterThan(2_000);
  });

  test("compares every sheet that an estimate can have, in the same order", () => {
    const folder = new URL("../../../lib/sheets/", import.meta.url);
    const all = readdirSync(folder)
      .filter((file) => file.endsWith("-sheet.ts"))
      .flatMap((file) => /^ {4}name: "([^"]+)"/m.exec(readFileSync(new URL(file, folder), "utf8"))?.[1] ?? []);
    expect(all.length).toBeGreaterThan(20);
    const compared = [...demoPlan.sheets, ...provedPlan.sheets].map(({ name }) => name);
    expect(all.filter((name) => !compared.includes(name))).toEqual([]);
    for (const { host, book } of [demo, proved]) {
      const names = host.book.sheets.map(({ name }) => name).filter((name) => name !== "Sheet1");
      expect(names).toEqual(book.worksheets.map(({ name }) => name));
    }
  });

  test("gives equal column widths, row heights, frozen panes, links, paper, headers and tab colours", () => {
    const count = { widths: 0, heights: 0, frozen: 0, links: 0 };
    for (const [plan, { host, book }] of [
      [demoPlan, demo],
      [provedPlan, proved],
    ] as const) {
      for (const file of book.worksheets) {
        const sheet = sheetOf(host, file.name);
        for (const [column, points] of sheet.columnWidths) {
          // Seven pixels a character and 96 pixels an inch of 72 points; the file counts characters.
          // 9 is the reader's own default, which it leaves out.
          const characters = file.getColumn(column + 1).width ?? 9;
          expect([file.name, column, points]).toEqual([file.name, column, Math.round(characters * 7) * 0.75]);
          count.widths++;
        }
        for (const [row, points] of sheet.rowHeights) {
          expect([file.name, row, points]).toEqual([file.name, row, file.getRow(row + 1).height]);
          count.heights++;
        }
        const [view] = file.views;
        const panes = view?.state === "frozen" ? { rows: view.ySplit ?? 0, columns: view.xSplit ?? 0 } : null;
        const frozen = sheet.frozen && { rows: sheet.frozen.bottom + 1, columns: sheet.frozen.right + 1 };
        expect([file.name, frozen ?? null]).toEqual([file.name, panes]);
        if (panes !== null) count.frozen++;
        expect(sheet.bag.get("Gridlines")).toBe(view?.showGridLines);
        expect(sheet.bag.get("TabColor")).toBe(colour(file.properties.tabColor.argb));
        expect(sheet.page.get("PaperSize")).toBe(file.pageSetup.paperSize === 9 ? "A4" : "Letter");
        // The file's links are read by the file's own tests: the reader of this one knows none inside a workbook.
        const planned = plan.sheets.find(({ name }) => name === file.name);
        expect(
          [...sheet.links].map(([at, link]) => [
            at,
            (link as { readonly documentReference: string }).documentReference,
          ]),
        ).toEqual(
          planned?.links.map(({ row, column, sheet: target, to }) => [
            cellAddress(row, column),
            `'${target}'!${areaAddress(to)}`,
          ]),
        );
        count.links += sheet.links.size;
      }
    }
    expect(count.widths).toBeGreaterThan(100);
    expect(count.heights).toBeGreaterThan(50);
    expect(count.frozen).toBeGreaterThan(8);
    expect(count.links).toBeGreaterThan(5);
  });

  test("gives equal tables, names, panes, print set-up, pictures and charts", () => {
    const { host } = demo;
    const count = { tables: 0, pictures: 0, charts: 0 };
    for (const planned of demoPlan.sheets) {
      const sheet = sheetOf(host, planned.name);
      expect(
        sheet.tables.map(({ name, box, totals }) => [name, box.top + 1, box.bottom + 1, box.right + 1, totals]),
      ).toEqual(
        planned.tables.map(({ name, area, totalsRow }) => [name, area.top, area.bottom, area.right, totalsRow]),
      );
      expect(sheet.shapes.map(({ bag }) => bag.get("AltTextDescription"))).toEqual(
        planned.pictures.map(({ picture }) => picture.alt),
      );
      expect(sheet.charts.map(({ title, series }) => [title.get("Text"), series.length])).toEqual(
        planned.charts.map(({ title, series, band }) => [title, series.length + (band === undefined ? 0 : 2)]),
      );
      expect(sheet.page.get("Orientation")?.toString().toLowerCase()).toBe(planned.orientation);
      expect(sheet.validations.length).toBe(planned.validations.length);
      expect(sheet.highlights.length).toBe(planned.highlights.length);
      expect(sheet.breaks.map(({ top }) => top)).toEqual([...planned.breaks]);
      count.tables += planned.tables.length;
      count.pictures += planned.pictures.length;
      count.charts += planned.charts.length;
    }
    expect(count.tables).toBeGreaterThan(20);
    expect(count.pictures).toBeGreaterThan(5);
    expect(count.charts).toBeGreaterThan(0);
    expect([...host.book.names.values()].map((bag) => bag.get("Name")).sort()).toEqual(
      demoPlan.names.map(({ name }) => name).sort(),
    );
  });
});
