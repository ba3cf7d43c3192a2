import { beforeAll, describe, expect, test } from "vitest";
import { setUpSurvey } from "../../../addin/commands/set-up-survey.js";
import { type EstimateWritten, rebuildSheets, workOutEstimate } from "../../../addin/commands/work-out-estimate.js";
import { bytesPerRequest } from "../../../addin/sheet/batch.js";
import { leastVersion, type WorkProgress } from "../../../addin/sheet/connection.js";
import { ExcelHost } from "../../excel-host/excel-host.js";
import { boathouse, connectionTo, drawn } from "./demo.js";
import { cellIn, cellsOf, sheetOf, stateOf, typeInto, valueAt } from "./state.js";

const date = "2026-03-02";

/**
 * Budgets of the demo job (25 loops, some 30 sheets, pictures). Excel on the web takes a round trip of about a tenth of
 * a second for each request: a dozen and a half stay under two seconds of waiting. The bytes are what one upload of two
 * seconds carries on a line of 20 Mbit/s.
 */
const mostRequests = 20;
const mostBytes = 5_000_000;

const run = (host: ExcelHost) => ({ connection: connectionTo(host), date, renderPicture: drawn });
const loops = (host: ExcelHost) => sheetOf(host, "Survey Loops");

/** The demo's survey set up in an empty workbook and estimated once. */
async function estimated() {
  const host = new ExcelHost();
  const { survey } = await boathouse();
  await setUpSurvey({ connection: connectionTo(host), date, survey });
  const typed = cellsOf(loops(host));
  host.requests = [];
  const progress: WorkProgress[] = [];
  const first = await workOutEstimate({ ...run(host), onProgress: (one) => progress.push(one) });
  return { host, first, progress, typed, survey };
}

let demo: Awaited<ReturnType<typeof estimated>>;
beforeAll(async () => {
  demo = await estimated();
  expect(demo.survey.loops.length).toBeGreaterThan(15);
});

describe("an estimate worked out in the workbook", () => {
  test("adds every report sheet before the survey's and leaves every typed cell of the loops as it was", () => {
    const { host, first, typed } = demo;
    expect(first.written.added).toEqual(expect.arrayContaining(["Summary", "Loops", "Bill", "Price", "Plan record"]));
    expect(first.written.kept).toContain("Survey Loops");
    const now = cellsOf(loops(host));
    expect(typed.size).toBeGreaterThan(200);
    for (const [address, cell] of typed) expect([address, now.get(address)]).toEqual([address, cell]);
    // Nothing but keys came in, and those stood already.
    expect(now.size).toBe(typed.size);
    expect(sheetOf(host, "Bill").protected).toBeDefined();
  });

  test(`takes at most ${mostRequests} requests and ${mostBytes} bytes, each within the step that was meant`, () => {
    const { host } = demo;
    expect(host.requests.length).toBeGreaterThan(3);
    expect(host.requests.length).toBeLessThanOrEqual(mostRequests);
    expect(host.bytes).toBeLessThan(mostBytes);
    expect(host.largest).toBeLessThan(bytesPerRequest);
    expect(host.requests.filter(({ bytes }) => bytes > 100_000).length).toBeGreaterThan(0);
  });

  test(`asks nothing of Excel beyond ExcelApi ${leastVersion}, as the client library tells it`, () => {
    expect(demo.host.highestAsked).toBeGreaterThan(8);
    expect(`1.${demo.host.highestAsked}`).toBe(leastVersion);
  });

  test("calculation rests during every request, then everything is calculated once; events are on again", () => {
    const { host } = demo;
    expect(host.book.suspensions).toBeGreaterThan(2);
    expect(host.book.runtime.get("EnableEvents")).toBe(true);
  });

  test("says how far it is, from nothing to all, and never goes back", () => {
    const shares = demo.progress.map(({ done, total }) => done / total);
    expect(shares.length).toBeGreaterThan(30);
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(new Set(demo.progress.map(({ words }) => words)).size).toBeGreaterThan(20);
  });
});

describe("edits, and the sheets written again", () => {
  let host: ExcelHost;
  let held: EstimateWritten;
  let again: EstimateWritten;
  let changed: { readonly code: string; readonly loop: string };
  let before: ReturnType<typeof stateOf>;

  beforeAll(async () => {
    host = demo.host;
    const { estimate } = demo.first;
    const line = estimate.bill.find(({ packs, unitCents }) => packs > 0 && unitCents > 0);
    const loop = estimate.loops.find(({ treatment }) => treatment === "keep" || treatment === "fitEol");
    if (line === undefined || loop === undefined) throw new Error("the demo buys nothing or keeps no loop");
    changed = { code: line.code, loop: loop.key };

    // The purchaser renames a sheet, moves it and writes on it; the estimator sorts, adds a column, pins and reprices.
    const bill = sheetOf(host, "Bill");
    typeInto(bill, cellIn(bill, "bill", "Packs wanted", ["Code", line.code]), line.packs + 7);
    host.book.rename(bill, "What we buy");
    host.book.move(bill, 0);
    const prices = sheetOf(host, "Survey Price book");
    for (let row = 1; row <= 400; row++) {
      const code = prices.cells.content(row, 0)?.value;
      if (code === line.code) {
        const [table] = prices.tables;
        const column = table?.headings().findIndex((one) => one.replace(/^✎ /, "").startsWith("Unit price")) ?? -1;
        typeInto(prices, { top: row, left: column, bottom: row, right: column }, line.unitCents / 100 + 1);
      }
    }
    turnRound(host);
    const survey = loops(host);
    const [table] = survey.tables;
    if (table === undefined) throw new Error("no table of loops");
    survey.cells.write(0, table.box.right + 1, { value: "Colour of the tag" });
    table.box = { ...table.box, right: table.box.right + 1 };
    typeInto(survey, cellIn(survey, "survey_loops", "Colour of the tag", ["Key", loop.key]), "=red");
    const own = host.book.add("My own sums");
    own.cells.write(0, 0, { value: "Ours" });
    own.cells.write(1, 0, { value: 0, formula: "=SUM(bill[Need])" });
    before = stateOf(host);
    held = await rebuildSheets(run(host));
  });

  /** The survey's loops the other way round, as a sort leaves them. */
  function turnRound(at: ExcelHost): void {
    const sheet = loops(at);
    const [table] = sheet.tables;
    if (table === undefined) throw new Error("no table of loops");
    const { top, bottom, left, right } = table.body;
    const rows = [];
    for (let row = top; row <= bottom; row++) {
      const cells = [];
      for (let column = left; column <= right; column++) cells.push(sheet.cells.content(row, column));
      if (cells.some((cell) => cell !== undefined)) rows.push(cells);
    }
    expect(rows.length).toBe(demo.survey.loops.length);
    rows.reverse().forEach((cells, index) => {
      cells.forEach((cell, column) => {
        sheet.cells.write(top + index, left + column, cell);
      });
    });
  }

  test("holding the plan keeps treatments, modules and orders; packs wanted and the new price count", () => {
    const treatments = (written: EstimateWritten) =>
      Object.fromEntries(written.estimate.loops.map(({ key, treatment }) => [key, treatment]));
    expect(treatments(held)).toEqual(treatments(demo.first));
    expect(held.estimate.plan.choices.length).toBe(demo.first.estimate.plan.choices.length);
    expect(held.estimate.modules).toEqual(demo.first.estimate.modules);
    const was = demo.first.estimate.bill.find(({ code }) => code === changed.code);
    const now = held.estimate.bill.find(({ code }) => code === changed.code);
    expect(was).toBeDefined();
    expect(now?.packs).toBe((was?.packs ?? 0) + 7);
    expect(now?.unitCents).toBe((was?.unitCents ?? 0) + 100);
    expect(held.estimate.price.totalCents).not.toBe(demo.first.estimate.price.totalCents);
  });

  test("what was written by hand stands where it was: packs wanted, pin, own column, own sheet, order of rows", () => {
    const bill = sheetOf(host, "Bill");
    const was = demo.first.estimate.bill.find(({ code }) => code === changed.code);
    expect(valueAt(bill, cellIn(bill, "bill", "Packs wanted", ["Code", changed.code]))).toBe((was?.packs ?? 0) + 7);
    expect(host.book.sheets[0]?.name).toBe("Bill");
    const find = (name: string, all = stateOf(host)) => all.sheets.find((sheet) => sheet.name === name);
    for (const name of ["Survey Loops", "My own sums", "Survey Price book", "Survey Settings", "Survey Site"]) {
      expect(find(name)?.cells).toEqual(find(name, before)?.cells);
      expect(find(name)?.tables).toEqual(find(name, before)?.tables);
    }
    const { added } = held.written;
    expect(added.filter((name) => name !== "Changes")).toEqual([]);
    expect(new Set(host.book.sheets.map(({ name }) => name)).size).toBe(host.book.sheets.length);
  });

  test("a pin against the plan is not held: it says what to do and changes nothing", async () => {
    const survey = loops(host);
    typeInto(survey, cellIn(survey, "survey_loops", "Pin treatment", ["Key", changed.loop]), "wireless");
    const standing = stateOf(host);
    await expect(rebuildSheets(run(host))).rejects.toMatchObject({
      code: "planOutgrown",
      message: expect.stringMatching(new RegExp(`${changed.loop}.*pin.*Work out the estimate`)),
    });
    expect(stateOf(host)).toEqual(standing);
  });

  test("worked out anew honours the pin and lists what changed", async () => {
    again = await workOutEstimate(run(host));
    const treatment = (of: EstimateWritten) => of.estimate.loops.find(({ key }) => key === changed.loop)?.treatment;
    expect(treatment(held)).not.toBe("wireless");
    expect(treatment(again)).toBe("wireless");
    const changes = [...cellsOf(sheetOf(host, "Changes")).values()].map(({ shown }) => String(shown));
    const loop = again.estimate.loops.find(({ key }) => key === changed.loop);
    expect(
      changes.some((words) => words.includes(`${loop?.panel} ${loop?.loop}`) && /now .*wireless/i.test(words)),
    ).toBe(true);
    expect(again.estimate.bill.find(({ code }) => code === changed.code)?.packs).toBe(
      (demo.first.estimate.bill.find(({ code }) => code === changed.code)?.packs ?? 0) + 7,
    );
  });
});
