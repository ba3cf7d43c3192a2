import { beforeAll, describe, expect, it } from "vitest";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { checkReport } from "../../lib/report/check.js";
import { evaluate } from "../../lib/report/evaluate.js";
import { type Layout, layOut } from "../../lib/report/layout.js";
import type { Report } from "../../lib/report/model.js";
import { packsWantedIn } from "../../lib/sheets/packs-wanted.js";
import { readSurvey } from "../../lib/survey/read-survey.js";
import type { SurveyLoop } from "../../lib/survey/survey.js";
import { checkFile } from "../../lib/workbook/check/check-file.js";
import { estimateWorkbook, estimateWorkbookReport } from "../../lib/workbook/estimate-workbook.js";
import { readFileSheets } from "../../lib/workbook/read/read-file.js";
import { demoEstimate, issued } from "./demo-estimate.js";
import { everyText } from "./every-text.js";

let demo: Awaited<ReturnType<typeof demoEstimate>>;
let report: Report;
let layout: Layout;
beforeAll(async () => {
  demo = await demoEstimate();
  report = estimateWorkbookReport({ ...demo, date: issued });
  layout = layOut(report);
});

const namedValue = (name: string): unknown => {
  const cell = layout.named.get(name);
  return cell === undefined ? undefined : evaluate(layout).cell(cell);
};

describe("the demo's workbook as plain data", () => {
  it("has every sheet a reader needs, in their order, and the survey tables last", () => {
    const names = report.sheets.map(({ name }) => name);
    const wanted = ["About", "Summary", "Queries", "Loops", "Terminals", "Loop cards", "Walk test", "Zone schedule"];
    const money = ["Bill", "Orders", "Labour", "Price", "Quote", "Cautions", "Checks", "Basis"];
    expect(names.filter((name) => [...wanted, ...money].includes(name))).toEqual([...wanted, ...money]);
    expect(names.slice(-9).every((name) => name.startsWith("Survey "))).toBe(true);
  });

  it("tells the technician to fit a resistor on every loop the bill holds one for, and on no other wired loop", () => {
    const { bill, loops, terminals } = demo.estimate;
    const fitted = new Set(bill.filter((line) => line.class === "eolResistor").flatMap((line) => line.loops));
    expect(fitted.size).toBeGreaterThan(0);
    const told = everyText(report).filter(({ sheet }) => sheet === "Loop cards");
    expect(told.filter(({ text }) => /^fit .*Ω, .* – /.test(text))).toHaveLength(
      loops.filter(({ key }) => fitted.has(key) && terminals.some((row) => row.loop === key && row.eolOhms !== null))
        .length,
    );
  });

  it("has nothing a spreadsheet would refuse", () => {
    expect(layout.sheets.length).toBeGreaterThan(20);
    expect(checkReport(layout)).toEqual([]);
  });

  it("gives by its formulas the cents of the library's price", () => {
    const { price } = demo.estimate;
    expect(price.totalCents).toBeGreaterThan(100_000);
    expect(Math.round(Number(namedValue("JobCost")) * 100)).toBe(price.costCents);
    expect(Math.round(Number(namedValue("JobSell")) * 100)).toBe(price.sellCents);
    expect(Math.round(Number(namedValue("JobTax")) * 100)).toBe(price.taxCents);
    expect(Math.round(Number(namedValue("JobTotal")) * 100)).toBe(price.totalCents);
    expect(namedValue("JobMargin")).toBeCloseTo(price.marginFraction ?? Number.NaN, 9);
    expect(namedValue("JobMarkup")).toBeCloseTo(price.markupFraction ?? Number.NaN, 9);
    expect(namedValue("CheckStatus")).toBe("Totals and cross-checks agree");
    expect(namedValue("EditCount")).toBe(0);
  });

  it("expects of a pressed normally-open device what the surveyor read when pressing it, of a contact an open pair", () => {
    const opened = (tag: string) => demo.estimate.loops.find((loop) => loop.tag === tag)?.expectedAsLeft?.opened;
    const typed = (tag: string) => Number(demo.survey.loops.find(({ label }) => label === tag)?.typed["opened"]);
    for (const tag of ["TILL", "KEY"]) {
      const band = opened(tag);
      if (band === undefined || band === "OL") throw new Error(`${tag} has no band`);
      expect(typed(tag)).toBeGreaterThan(0);
      expect(typed(tag)).toBeGreaterThanOrEqual(band.lowOhms);
      expect(typed(tag)).toBeLessThanOrEqual(band.highOhms);
      expect(band.highOhms).toBeLessThan(50);
    }
    expect(opened("FRONT")).toBe("OL");
  });

  it("heads every sheet with money by DEMO PRICES while the prices are the demo's", () => {
    for (const name of ["Bill", "Orders", "Price", "Quote", "Summary"]) {
      const sheet = report.sheets.find((one) => one.name === name);
      expect(JSON.stringify(sheet?.blocks.slice(0, 3)), name).toContain("DEMO PRICES");
    }
  });

  it("answers on the first screen: at most 40 rows", () => {
    const summary = layout.sheets.find(({ sheet }) => sheet.name === "Summary");
    expect(summary?.lastRow).toBeGreaterThan(10);
    expect(summary?.lastRow).toBeLessThanOrEqual(40);
  });

  it("puts one card for each loop on a wired input and a walk-test line for each opening", () => {
    const wired = demo.estimate.loops.filter(({ input }) => input !== null);
    expect(wired.length).toBeGreaterThan(5);
    for (const { key, openingsProved } of wired) {
      const card = layout.tables.get(`card_${key}`);
      expect(card?.block.rows, key).toHaveLength(1 + Math.max(1, openingsProved.total));
    }
    const openings = demo.estimate.loops
      .filter(({ treatment }) => treatment !== "excluded" && treatment !== "retire")
      .filter(({ treatment, input }) => treatment !== "measureAgain" || input !== null)
      .reduce((sum, { openingsProved }) => sum + Math.max(1, openingsProved.total), 0);
    // "2 + gb": a glass break among contacts is tried by itself.
    const amongContacts = demo.survey.loops.filter(({ typed }) => /\+ gb$/.test(typed["openings"] ?? "")).length;
    expect(amongContacts).toBe(1);
    expect(layout.tables.get("walk_test")?.block.rows).toHaveLength(openings + amongContacts);
  });

  it("sets the options side by side and says which of them gives no more", () => {
    const { options } = demo.estimate;
    expect(options?.length).toBeGreaterThan(2);
    const table = layout.tables.get("options")?.block;
    expect(table?.rows).toHaveLength(options?.length ?? 0);
    const at = table?.columns.findIndex(({ key }) => key === "remark") ?? -1;
    options?.forEach(({ dominatedBy }, index) => {
      const remark = JSON.stringify(table?.rows[index]?.[at]);
      if (dominatedBy !== null) expect(remark).toMatch(/gives no more than|the same here/);
    });
  });

  it("draws cost against zones lost where there is more than one point, and says so in words where there is one", () => {
    const withPoints = (zonesFrontier: Estimate["zonesFrontier"]) =>
      estimateWorkbookReport({ ...demo, date: issued, estimate: { ...demo.estimate, zonesFrontier } });
    const points = [0, 1, 3].map((zonesLost) => ({ zonesLost, costCents: 250_000 - 4000 * zonesLost }));
    const drawn = withPoints(points);
    expect(layOut(drawn).tables.get("zones_frontier")?.block.rows).toHaveLength(3);
    expect(checkReport(layOut(drawn))).toEqual([]);
    expect(kindsOn(drawn, "Options")).toContain("chart");
    expect(kindsOn(withPoints(points.slice(0, 1)), "Options")).not.toContain("chart");
  });

  it("lists what changed since the issue before as a change order, and has no such sheet otherwise", () => {
    expect(report.sheets.map(({ name }) => name)).not.toContain("Changes");
    const changes = [
      { what: "treatment" as const, words: "P1 1 FRONT: was keep on the wire, now wireless", cents: null },
      { what: "price" as const, words: "Price with tax", cents: -1250 },
    ];
    const changed = estimateWorkbookReport({ ...demo, date: issued, estimate: { ...demo.estimate, changes } });
    const rows = layOut(changed).tables.get("changes")?.block.rows ?? [];
    expect(rows.map((row) => row[1])).toMatchObject(changes.map(({ words }) => ({ text: words })));
    expect(rows.map((row) => row[2])).toMatchObject([{ kind: "blank" }, { kind: "money", cents: -1250 }]);
    expect(JSON.stringify(changed.sheets[1])).toContain("see the sheet Changes");
  });

  it("prints a label for each end of every pair, none for what is left alone, no zone name at the far end", () => {
    const { loops } = demo.estimate;
    const cells = (layout.tables.get("labels")?.block.rows ?? [])
      .flat()
      .flatMap((cell) => (cell.kind === "text" ? [cell.text] : []));
    const wired = loops.filter(({ input }) => input !== null);
    expect(wired.length).toBeGreaterThan(5);
    for (const { panel, loop, protects, input } of wired) {
      const own = cells.filter((words) => words.endsWith(`was ${panel} ${loop}`));
      expect(own).toHaveLength(1);
      expect(own[0]).toContain(`${input?.module} input ${input?.number}`);
      if (protects !== null) expect(own[0]).toContain(protects);
    }
    const far = cells.filter((words) => !/was \S+ \S+$/.test(words));
    expect(far).toHaveLength(cells.length / 2);
    for (const { protects } of wired) if (protects !== null) expect(far.join(" ")).not.toContain(protects);
    const alone = loops.filter(({ input, treatment }) => input === null && /excluded|measureAgain/.test(treatment));
    expect(alone.length).toBeGreaterThan(1);
    for (const { panel, loop } of alone) expect(cells.join("\n")).not.toMatch(new RegExp(`was ${panel} ${loop}$`, "m"));
  });

  it("quotes the estimate's clauses, and stages of payment that add up to the price", () => {
    const { clauses, stages } = demo.estimate.quote;
    expect(clauses.length).toBeGreaterThan(3);
    const quote = JSON.stringify(report.sheets.find(({ name }) => name === "Quote")?.blocks);
    for (const { id, words } of clauses) {
      if (id !== "demoPrices") expect(quote).toContain(JSON.stringify(words).slice(1, -1));
    }
    const due = stages.map((_, index) => Math.round(Number(namedValue(`StageDue${index + 1}_`)) * 100));
    expect(due).toEqual(stages.map(({ cents }) => cents));
    expect(due.reduce((sum, cents) => sum + cents, 0)).toBe(demo.estimate.price.totalCents);
  });

  it("leaves out sheets that would be empty", () => {
    const bare = estimateWorkbookReport({
      ...demo,
      date: issued,
      estimate: { ...demo.estimate, bill: [], orders: [], labour: [], terminals: [], carry: null, price: noPrice() },
    });
    const names = bare.sheets.map(({ name }) => name);
    for (const name of ["Bill", "Orders", "Labour", "Terminals", "Carry"]) expect(names).not.toContain(name);
    expect(checkReport(layOut(bare))).toEqual([]);
  });
});

/** Kinds of the blocks on one sheet. */
const kindsOn = ({ sheets }: Report, name: string): readonly string[] =>
  sheets.find((sheet) => sheet.name === name)?.blocks.map(({ kind }) => kind) ?? [];

const noPrice = () => ({ ...demo.estimate.price, lines: [], costCents: 0, sellCents: 0, taxCents: 0, totalCents: 0 });

/** What has to come back: everything but where the row stood and what it was called there. */
function kept({ row: _row, sheet: _sheet, typed: _typed, ...loop }: SurveyLoop): unknown {
  return loop;
}

describe("the estimate workbook as the next survey", () => {
  it("reads back to the same loops, edits, panels, tests and tables from the written file", async () => {
    const edits = { pinTreatment: "wireless", estimatorNote: "=owner repaints in May", asLeftClosed: "2.20k" };
    const first = demo.survey.loops[0];
    expect(first).toBeDefined();
    const survey = {
      ...demo.survey,
      loops: demo.survey.loops.map((loop) => (loop === first ? { ...loop, typed: { ...loop.typed, ...edits } } : loop)),
    };
    const bytes = await estimateWorkbook({ ...demo, survey, date: issued });
    expect(checkFile(bytes)).toEqual([]);
    const sheets = readFileSheets({ name: "estimate.xlsx", bytes }).map((typed) => ({ typed }));
    const { survey: again } = readSurvey({ sheets });
    expect(again.loops).toHaveLength(20);
    expect(again.loops[0]?.edits).toMatchObject({ pinTreatment: "wireless", estimatorNote: "=owner repaints in May" });
    expect(again.loops[0]?.edits.asLeftClosed?.ohms).toBe(2200);
    expect(again.loops.slice(1).map(kept)).toEqual(demo.survey.loops.slice(1).map(kept));
    expect(again.panels.map(({ typed: _, ...panel }) => panel)).toEqual(
      demo.survey.panels.map(({ typed: _, ...panel }) => panel),
    );
    const { typed: _a, ...site } = again.site;
    const { typed: _b, ...siteBefore } = demo.survey.site;
    expect(site).toEqual(siteBefore);
    expect(again.oldZones).toEqual(demo.survey.oldZones);
    expect(again.radioTests.map(({ location, heard, signalDbm }) => [location, heard, signalDbm])).toEqual(
      demo.survey.radioTests.map(({ location, heard, signalDbm }) => [location, heard, signalDbm]),
    );
    expect(again.priceBook.length).toBeGreaterThan(40);
    expect(again.settings["demoPrices"]).toBe(1);
    // What nobody gave is written down, and read again as what nobody gave.
    expect(again.settings).toEqual({ demoPrices: 1 });
  });

  it("carries packs that the purchaser wrote on the Bill on into the next estimate", async () => {
    const code = demo.estimate.bill.find(({ packs }) => packs > 0)?.code ?? "";
    expect(code).not.toBe("");
    const bytes = await estimateWorkbook({ ...demo, date: issued, packsWanted: { [code]: 7 } });
    expect(packsWantedIn(readFileSheets({ name: "estimate.xlsx", bytes }))).toEqual({ [code]: 7 });
    expect(packsWantedIn([])).toEqual({});
  });

  it("writes the same bytes twice", async () => {
    const [one, other] = [
      await estimateWorkbook({ ...demo, date: issued }),
      await estimateWorkbook({ ...demo, date: issued }),
    ];
    expect(one.length).toBeGreaterThan(10_000);
    expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true);
  });
});
