import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExcelJS from "exceljs";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { EngineState, FileToSave } from "../../../addin/pane/engine/engine-state.js";
import type { PaneWindow } from "../../../addin/pane/start.js";
import { runCommand } from "../../../lib/command/run-command.js";
import { today } from "../../../lib/command/today.js";
import type { Estimate } from "../../../lib/estimate/estimate.js";
import { estimateJob } from "../../../lib/estimate/estimate-job.js";
import { printablePlan } from "../../../lib/report/printable-plan.js";
import { solveWithHighs } from "../../../lib/solver/highs.js";
import { readSurvey } from "../../../lib/survey/read-survey.js";
import { estimateWorkbookReport } from "../../../lib/workbook/estimate-workbook-report.js";
import { readFileSheets } from "../../../lib/workbook/read/read-file.js";
import { compareRecalculated } from "../../tools/compare-recalculated.js";
import { recalculatedSheets } from "../../tools/libreoffice.js";
import { servePane } from "./serve-pane.js";

const demo = (name: string) => new URL(`../../../reference-data/demo/boathouse/${name}`, import.meta.url);
const demoNames = ["loops.csv", "site.csv", "radio-tests.csv", "old-zones.csv"];

/** Chromium without a screen and without anything that it would fetch for itself. */
const flags = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** Two makes of the same engine round the last bit of exp and log differently; cents and counts must be the same. */
const sameNumber = (a: unknown, b: unknown): boolean | undefined =>
  typeof a === "number" && typeof b === "number"
    ? Math.abs(a - b) <= 1e-9 * Math.max(1e-6, Math.abs(a), Math.abs(b))
    : undefined;
expect.addEqualityTesters([sameNumber]);

let pane: Awaited<ReturnType<typeof servePane>>;
let browser: Browser;
let page: Page;
/** Addresses asked for that are not the page's own files. */
const elsewhere: string[] = [];
const errors: string[] = [];

beforeAll(async () => {
  pane = await servePane();
  browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: flags });
  // English of a country with metres and A4, as the command line has them.
  const context = await browser.newContext({ locale: "en-GB" });
  const own = new URL("..", pane.address).href;
  await context.route("**/*", (route) => {
    const url = route.request().url();
    if (url.startsWith(own)) return route.continue();
    elsewhere.push(url);
    return route.abort();
  });
  page = await context.newPage();
  page.setDefaultTimeout(120_000);
  page.on("pageerror", (error) => errors.push(error.message));
  await page.goto(pane.address);
  await page.waitForFunction(() => (globalThis as PaneWindow).loopwright !== undefined);
});

afterAll(async () => {
  await browser?.close();
  pane?.close();
});

const stateNow = (): Promise<EngineState> =>
  page.evaluate(() => {
    const { loopwright } = globalThis as PaneWindow;
    if (loopwright === undefined) throw new Error("no engine in the page");
    return loopwright.state;
  });

/** Opens files in the page from their bytes. */
async function openInPage(
  files: readonly { readonly name: string; readonly bytes: Uint8Array }[],
): Promise<EngineState> {
  const plain = files.map(({ name, bytes }) => ({ name, bytes: [...bytes] }));
  await page.evaluate(async (all) => {
    const given = all.map(({ name, bytes }) => ({ name, bytes: new Uint8Array(bytes) }));
    await (globalThis as PaneWindow).loopwright?.openFiles(given);
  }, plain);
  return stateNow();
}

/** A file that the engine hands to the screen, as it arrives in the page. */
async function saved(what: "exportWorkbook" | "exportOrdersCsv"): Promise<FileToSave> {
  const file = await page.evaluate(async (name) => {
    const made = await (globalThis as PaneWindow).loopwright?.[name]();
    return made ? { ...made, bytes: [...made.bytes] } : null;
  }, what);
  if (file === null) throw new Error((await stateNow()).problem?.words ?? "no file");
  return { ...file, bytes: new Uint8Array(file.bytes) };
}

/** Every cell that says something, by sheet and address, formulas with their results. */
async function cellsOf(xlsx: Uint8Array): Promise<Record<string, unknown>> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(xlsx.buffer.slice(xlsx.byteOffset, xlsx.byteOffset + xlsx.byteLength) as ArrayBuffer);
  const cells: Record<string, unknown> = {};
  book.eachSheet((sheet) => {
    sheet.eachRow((row) => {
      row.eachCell((cell) => {
        const { value } = cell;
        if (value !== null) cells[`${sheet.name}!${cell.address}`] = value;
      });
    });
  });
  return cells;
}

describe("the demo site in a plain browser", () => {
  test("is planned and proved in workers as the library plans it in Node", async () => {
    await page.evaluate(async () => {
      const engine = (globalThis as PaneWindow).loopwright;
      await engine?.demo();
      // Comparing with other plans takes longest and is looked at below, on a smaller job.
      const end = engine?.subscribe(({ estimate }) => {
        if (estimate === null) return;
        end?.();
        engine.cancel();
      });
      await engine?.workOut();
    });
    const state = await stateNow();
    expect(state.problem).toBeNull();
    expect(state.host).toBe("browser");
    expect(state.demo).toBe(true);
    const sheets = demoNames.flatMap((name) =>
      readFileSheets({ name, bytes: readFileSync(demo(name)) }).map((typed) => ({ typed })),
    );
    const { survey } = readSurvey({ sheets });
    expect(survey.loops.length).toBeGreaterThan(15);
    expect(state.survey).toEqual(survey);
    const here = await estimateJob({ survey, solve: solveWithHighs, compare: false });
    expect(here.plan.status).toBe("optimal");
    expect(state.estimate).toEqual(here);
  });

  test("an ended proof gives the best plan so far within a breath, and the page can go on", async () => {
    const words = await page.evaluate(async () => {
      const engine = (globalThis as PaneWindow).loopwright;
      const loop = engine?.state.estimate?.loops.find(
        ({ key, treatment }) => treatment === "fitEol" && engine.state.choices[key]?.includes("wireless"),
      );
      engine?.pin(loop?.key ?? "", "wireless");
      const end = engine?.subscribe(({ progress }) => {
        if (progress?.words !== "Proving the plan") return;
        end?.();
        engine.cancel();
      });
      await engine?.workOut();
      return engine?.state.estimate?.plan.status;
    });
    expect(["feasible", "optimal"]).toContain(words);
    expect((await stateNow()).problem).toBeNull();
  });

  test("a file that is none is refused in words", async () => {
    const state = await openInPage([{ name: "old.xls", bytes: new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 1, 2, 3]) }]);
    expect(state.problem?.words).toMatch(/old\.xls is either encrypted or in the old/);
    expect(state.source).toContain("demo");
  });
});

describe("a small job through the page and through the command line", () => {
  const folder = mkdtempSync(join(tmpdir(), "loopwright-pane-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const [head = "", ...rows] = readFileSync(demo("loops.csv"), "utf8").split(/\r?\n/).slice(0, 6);
  let exported: FileToSave;
  let priced: EngineState;

  test("the estimate with options is the command line's, and a pin moves the price", async () => {
    const loops = { name: "loops.csv", bytes: new TextEncoder().encode([head, ...rows].join("\n")) };
    const opened = await openInPage([loops, { name: "site.csv", bytes: readFileSync(demo("site.csv")) }]);
    expect(opened.survey?.loops.length).toBe(5);
    await page.evaluate(() => (globalThis as PaneWindow).loopwright?.workOut());
    const before = await stateNow();
    expect(before.estimate?.options?.length).toBeGreaterThan(2);
    const pinned = before.estimate?.loops.find(
      ({ key, treatment }) => treatment !== "wireless" && before.choices[key]?.includes("wireless"),
    );
    await page.evaluate(async (key) => {
      const engine = (globalThis as PaneWindow).loopwright;
      engine?.pin(key, "wireless");
      await engine?.workOut();
    }, pinned?.key ?? "");
    priced = await stateNow();
    expect(priced.stale).toBe(false);
    expect(priced.before?.totalCents).toBe(before.estimate?.price.totalCents);
    expect(priced.estimate?.price.totalCents).not.toBe(before.estimate?.price.totalCents);
    exported = await saved("exportWorkbook");

    // The same wish, typed beside the row, through the command line.
    const lines = rows.map((row, index) => `${row},${priced.survey?.loops[index]?.edits.pinTreatment ?? ""}`);
    expect(lines.filter((line) => line.endsWith(",wireless")).length).toBe(1);
    writeFileSync(join(folder, "loops.csv"), [`${head},pinTreatment`, ...lines].join("\n"));
    writeFileSync(join(folder, "site.csv"), readFileSync(demo("site.csv")));
    const [xlsx, json] = ["cli.xlsx", "cli.json"].map((name) => join(folder, name)) as [string, string];
    const from = ["estimate", join(folder, "loops.csv"), `--site=${join(folder, "site.csv")}`];
    expect(await runCommand([...from, "-o", xlsx, "--json", json])).toBe(0);
    expect(priced.estimate).toEqual(JSON.parse(readFileSync(json, "utf8")) as Estimate);

    const [ours, theirs] = [await cellsOf(exported.bytes), await cellsOf(new Uint8Array(readFileSync(xlsx)))];
    expect(Object.keys(theirs).length).toBeGreaterThan(1000);
    const elsewhereOnly = ([at]: [string, unknown]) => !at.startsWith("Headings!");
    const compared = (cells: Record<string, unknown>) =>
      Object.fromEntries(Object.entries(cells).filter(elsewhereOnly));
    expect(compared(ours)).toEqual(compared(theirs));
  });

  test("LibreOffice reckons every formula of the exported workbook to the value that stands in it", async () => {
    const { estimate, survey, headings } = priced;
    if (estimate === null || survey === null) throw new Error("nothing was priced");
    const plan = printablePlan(estimateWorkbookReport({ estimate, survey, headings, date: today() }));
    const { compared, wrong, errors: shown } = compareRecalculated(plan, await recalculatedSheets(exported.bytes));
    expect(compared).toBeGreaterThan(200);
    expect(wrong).toEqual([]);
    expect(shown).toEqual([]);
  });

  test("pictures are drawn by the page: PNG files about twice as fine as they are shown", async () => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(exported.bytes.buffer as ArrayBuffer);
    const images = book.model.media.filter(({ extension }) => extension === "png");
    expect(images.length).toBeGreaterThan(0);
    for (const { buffer } of images) {
      const bytes = Buffer.from(buffer as unknown as Uint8Array);
      expect(bytes.subarray(1, 4).toString()).toBe("PNG");
      expect(bytes.readUInt32BE(16)).toBeGreaterThan(1000);
    }
  });

  test("the exported workbook opens in the page again, with its wish and at its price", async () => {
    const total = priced.estimate?.price.totalCents;
    const again = await openInPage([{ name: exported.name, bytes: exported.bytes }]);
    expect(again.problem).toBeNull();
    expect(Object.values(again.wishes)).toEqual([{ pin: "wireless", forbid: [] }]);
    await page.evaluate(() => (globalThis as PaneWindow).loopwright?.workOut({ prove: false }));
    expect((await stateNow()).estimate?.price.totalCents).toBe(total);
  });
});

test("nothing was asked for from elsewhere, and nothing went wrong unseen", async () => {
  expect(elsewhere.filter((url) => !url.startsWith("blob:"))).toEqual([]);
  expect(errors).toEqual([]);
  // The page's own rule would have stopped it, too.
  const refused = await page.evaluate(() =>
    fetch("https://example.com/").then(
      () => "fetched",
      (error: unknown) => String(error),
    ),
  );
  expect(refused).toMatch(/Failed to fetch/);
  expect(elsewhere.filter((url) => url.includes("example.com"))).toEqual([]);
});
