import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { costLines, priceRules } from "../../lib/estimate/price-of.js";
import { jobSettings } from "../../lib/price-book/job-settings.js";
import { priceJob } from "../../lib/pricing/price-job.js";
import { roundCents } from "../../lib/quantities/money.js";
import { type PrintablePlan, printablePlan } from "../../lib/report/printable-plan.js";
import { estimateWorkbookReport } from "../../lib/workbook/estimate-workbook.js";
import { writeWorkbook } from "../../lib/workbook/write/write-workbook.js";
import { compareRecalculated } from "../tools/compare-recalculated.js";
import { printed, recalculatedSheets } from "../tools/libreoffice.js";
import { withWrongCache } from "../tools/wrong-cache.js";
import { demoEstimate, issued } from "./demo-estimate.js";

let estimate: Estimate;
let plan: PrintablePlan;
let bytes: Uint8Array;
beforeAll(async () => {
  const demo = await demoEstimate();
  estimate = demo.estimate;
  plan = printablePlan(estimateWorkbookReport({ ...demo, date: issued }));
  bytes = await writeWorkbook(plan);
});

/** A change to one cell: where `column` is headed so and the row holds `key` in the column `by`. */
interface Edit {
  readonly sheet: string;
  readonly by: string;
  readonly key: string;
  readonly column: string;
  readonly value: string | number;
}

/** Edits cells with openpyxl, as a script of the user's would, and saves the workbook. */
function edited(file: Uint8Array, edits: readonly Edit[]): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), "loopwright-edit-"));
  try {
    writeFileSync(join(folder, "book.xlsx"), file);
    writeFileSync(join(folder, "edits.json"), JSON.stringify(edits));
    writeFileSync(
      join(folder, "edit.py"),
      `
import json, openpyxl, re
book = openpyxl.load_workbook("book.xlsx")
bare = lambda text: re.sub(r"^\\u270e\\s*|\\s*\\([^)]*\\)$", "", str(text or ""))
for edit in json.load(open("edits.json")):
    sheet = book[edit["sheet"]]
    for row in sheet.iter_rows():
        heads = {bare(cell.value): cell.column for cell in row}
        if edit["by"] in heads and edit["column"] in heads:
            start = row[0].row
            break
    done = 0
    for at in range(start + 1, sheet.max_row + 1):
        if str(sheet.cell(at, heads[edit["by"]]).value) == edit["key"]:
            sheet.cell(at, heads[edit["column"]]).value = edit["value"]
            done += 1
    assert done >= 1, edit
book.save("edited.xlsx")
`,
    );
    execFileSync("/usr/bin/python3", ["edit.py"], { cwd: folder });
    return new Uint8Array(readFileSync(join(folder, "edited.xlsx")));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What LibreOffice shows in a named cell. */
function shown(sheets: ReadonlyMap<string, string[][]>, name: string): string {
  const at = plan.names.find((one) => one.name === name);
  return sheets.get(at?.sheet ?? "")?.[(at?.row ?? 0) - 1]?.[(at?.column ?? 0) - 1] ?? "";
}
const cents = (text: string): number => Math.round(Number(text) * 100);

describe("the demo's workbook in LibreOffice", () => {
  it("recalculates every cached value, each cell's own cached value having been spoilt before", async () => {
    const sheets = await recalculatedSheets(await writeWorkbook(withWrongCache(plan)));
    const { compared, wrong, errors } = compareRecalculated(plan, sheets);
    expect(compared).toBeGreaterThan(300);
    expect(errors).toEqual([]);
    expect(wrong).toEqual([]);
  });

  it("follows changed prices, packs, hours, tax and margin to the cents the library gives for them, plan held", async () => {
    const line = estimate.bill.find(({ packs, fromStock }) => packs > 0 && fromStock > 0);
    const other = estimate.bill.find(({ packs, code }) => packs > 0 && code !== line?.code);
    const work = estimate.labour.find(({ count }) => count > 1);
    expect(line && other && work).toBeDefined();
    if (!line || !other || !work) return;
    const file = edited(bytes, [
      { sheet: "Survey Price book", by: "Code", key: line.code, column: "Unit price", value: 1.235 },
      { sheet: "Bill", by: "Code", key: other.code, column: "Packs wanted", value: other.packs + 2 },
      { sheet: "Survey Labour", by: "Task", key: work.task, column: "High", value: 4.4 },
      { sheet: "Survey Settings", by: "Setting", key: "taxMaterial", column: "Value", value: 0.0825 },
      { sheet: "Survey Settings", by: "Setting", key: "marginLabour", column: "Value", value: 0.4 },
    ]);
    const sheets = await recalculatedSheets(file);
    const { settings: job } = jobSettings({ given: { taxMaterial: 0.0825, marginLabour: 0.4 } });
    const bill = estimate.bill.map((each) => ({
      ...each,
      unitCents: each.code === line.code ? 123.5 : each.unitCents,
      packs: each.code === other.code ? each.packs + 2 : each.packs,
    }));
    const labour = estimate.labour.map((each) =>
      each.task === work.task
        ? { ...each, meanHours: (each.lowHours + 4 * each.likelyHours + each.count * 4.4) / 6 }
        : each,
    );
    const contingency = estimate.price.lines.find(({ kind }) => kind === "contingency")?.costCents ?? 0;
    const price = priceJob({
      lines: costLines({ bill, labour, contingency, labourCentsPerHour: job.labourCostPerHour * 100 }),
      rules: priceRules(job),
    });
    expect(price.totalCents).not.toBe(estimate.price.totalCents);
    expect(cents(shown(sheets, "JobCost"))).toBe(price.costCents);
    expect(cents(shown(sheets, "JobSell"))).toBe(price.sellCents);
    expect(cents(shown(sheets, "JobTax"))).toBe(price.taxCents);
    expect(cents(shown(sheets, "JobTotal"))).toBe(price.totalCents);
    expect(shown(sheets, "CheckStatus")).toBe("Totals and cross-checks agree");
    expect(shown(sheets, "PlanAge")).toContain("Plan is older than these edits");
    expect(roundCents(123.5)).toBe(124);
  });

  it("says that the plan is older than a pinned treatment or a changed reading, and of nothing else", async () => {
    const loop = estimate.loops.find(({ treatment }) => treatment === "fitEol");
    expect(loop).toBeDefined();
    const pin = { sheet: "Survey Loops", by: "Key", key: loop?.key ?? "", column: "Pin treatment", value: "wireless" };
    const note = { ...pin, column: "Estimator note", value: "ring first" };
    const pinned = await recalculatedSheets(edited(bytes, [pin]));
    expect(shown(pinned, "EditCount")).toBe("1");
    expect(cents(shown(pinned, "JobTotal"))).toBe(estimate.price.totalCents);
    const noted = await recalculatedSheets(edited(bytes, [note]));
    expect(shown(noted, "EditCount")).toBe("0");
    expect(shown(noted, "PlanAge")).toBe("Nothing was edited since the plan was made");
  });

  it("prints every sheet one page wide, the front page of the loop cards alone, one card never split", async () => {
    const { text } = await printed(bytes);
    const pages = text.split("\f").filter((page) => page.trim() !== "");
    expect(pages.length).toBeGreaterThan(20);
    pages.forEach((page, index) => {
      expect(page).toContain(`Page ${index + 1} of ${pages.length}`);
      expect(page).toContain("void if older");
    });
    const cards = pages.filter((page) => /Loop cards\s+2026/.test(page));
    expect(cards.length).toBeGreaterThan(2);
    expect(cards[0]).toContain("DO NOT TOUCH");
    for (const page of cards.slice(1)) {
      const starts = (page.match(/Conductors A \/ B/g) ?? []).length;
      const ends = (page.match(/Not in the band\?/g) ?? []).length;
      expect(starts).toBeGreaterThan(0);
      expect(ends).toBe(starts);
    }
  });
});
