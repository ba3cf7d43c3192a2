import { expect, test } from "vitest";
import { printablePlan } from "../../lib/report/printable-plan.js";
import { writeWorkbook } from "../../lib/workbook/write/write-workbook.js";
import { compareRecalculated } from "../tools/compare-recalculated.js";
import { pageDots, printed, recalculatedSheets } from "../tools/libreoffice.js";
import { withWrongCache, wrongValue } from "../tools/wrong-cache.js";
import { sampleReport } from "./sample-report.js";

const plan = printablePlan(sampleReport);

test("LibreOffice recalculates every cached value to 1e-9, money to the cent; a canary proves that it recalculated", async () => {
  const total = plan.names.find(({ name }) => name === "Total");
  expect(total).toBeDefined();
  const isCanary = (cell: { row: number; column: number }, sheet: string): boolean =>
    sheet === total?.sheet && cell.row === total.row && cell.column === total.column;
  const sheets = await recalculatedSheets(await writeWorkbook(withWrongCache(plan, isCanary)));
  const { compared, wrong, errors } = compareRecalculated(plan, sheets);
  expect(compared).toBeGreaterThanOrEqual(20);
  expect(errors).toEqual([]);
  expect(wrong).toEqual([]);
  const canary = sheets.get("Summary")?.[(total?.row ?? 0) - 1]?.[(total?.column ?? 0) - 1];
  expect(Number(canary)).not.toBe(wrongValue);
  // 12·1.85 + 144·0.23 + 40·0.09 + 3·10.05 + 88.5·0.74 = 154.56; 19 % of it 29.37.
  expect(Number(canary)).toBeCloseTo(183.93, 9);
});

test("the comparison itself finds a wrong figure", () => {
  const sheets = new Map(plan.sheets.map((sheet) => [sheet.name, [["1"]]]));
  expect(compareRecalculated(plan, sheets).wrong.length).toBeGreaterThan(10);
});

test("texts, dates and numbers come back as they were; text that looks like a formula stays text", async () => {
  const sheets = await recalculatedSheets(await writeWorkbook(plan));
  const stores = sheets.get("Stores (taken)") ?? [];
  expect(stores.map((row) => row[0])).toContain("=1+1 is only a name");
  expect(stores.map((row) => row[0])).toContain('Resistor 2.2 kΩ <1 %> & "leads"');
  const summary = (sheets.get("Summary") ?? []).map((row) => row[1]);
  expect(summary).toContain("2025-03-14");
  expect(summary).toContain("2227.4");
});

test("text that names a character code stays that text (ECMA-376 part 1, ST_Xstring)", async () => {
  const words = ["_x0041_ is no letter", "a_x000D_b", "_x_", "tab\tand\nline"];
  const coded = printablePlan({
    ...sampleReport,
    sheets: [
      {
        name: "Codes",
        blocks: words.map((text) => ({ kind: "paragraph" as const, cell: { kind: "text" as const, text } })),
      },
    ],
  });
  const shown = (await recalculatedSheets(await writeWorkbook(coded))).get("Codes") ?? [];
  expect(shown.map((row) => row[0]).filter((text) => text !== "")).toEqual(words);
});

test("prints one page wide with job, sheet, date, revision and page x of y on every page, and draws the charts", async () => {
  const { pdf, text } = await printed(await writeWorkbook(plan));
  const pages = text.split("\f").filter((page) => page.trim() !== "");
  expect(pages).toHaveLength(4);
  pages.forEach((page, index) => {
    expect(page).toContain("Hall & annex, 3rd floor");
    expect(page).toContain("2025-03-14");
    expect(page).toContain("revision 2, void if older");
    expect(page).toContain(`Page ${index + 1} of 4`);
  });
  expect(pages[0]).toContain("Where the money goes");
  expect(pages[0]).toContain("2.23 kΩ");
  expect(pages[3]).toContain("Sum per kind, with band");
  // The charts' dark blue stands in fills and lines only; without charts there is none on these pages.
  for (const page of [1, 4]) expect(await darkBlueShare(pdf, page)).toBeGreaterThan(0.001);
  const bare = printablePlan({
    ...sampleReport,
    sheets: sampleReport.sheets.map((sheet) => ({
      ...sheet,
      blocks: sheet.blocks.filter((block) => block.kind !== "chart" && block.kind !== "beside"),
    })),
  });
  const without = await printed(await writeWorkbook(bare));
  expect(await darkBlueShare(without.pdf, 4)).toBe(0);
});

async function darkBlueShare(pdf: Uint8Array, page: number): Promise<number> {
  const { width, height, rgb } = await pageDots(pdf, page);
  let found = 0;
  for (let at = 0; at < rgb.length; at += 3) {
    const [red = 0, green = 0, blue = 0] = [rgb[at], rgb[at + 1], rgb[at + 2]];
    if (Math.abs(red - 0x1f) < 12 && Math.abs(green - 0x4e) < 12 && Math.abs(blue - 0x79) < 12) found += 1;
  }
  return found / (width * height);
}
