import { beforeAll, describe, expect, test } from "vitest";
import { setUpSurvey } from "../../../addin/commands/set-up-survey.js";
import { rebuildSheets, workOutEstimate } from "../../../addin/commands/work-out-estimate.js";
import type { ExcelConnection } from "../../../addin/sheet/connection.js";
import { writeReport } from "../../../addin/sheet/write-report.js";
import { binary, literal, thisRow } from "../../../lib/report/formula.js";
import type { Block, Cell } from "../../../lib/report/model.js";
import { type PrintablePlan, printablePlan } from "../../../lib/report/printable-plan.js";
import { ExcelHost } from "../../excel-host/excel-host.js";
import { sampleReport } from "../../workbook/sample-report.js";
import { connectionTo, drawn } from "./demo.js";
import { sheetOf, stateOf, typeInto } from "./state.js";

const date = "2026-03-02";

/** The sample report with two more tables, one below the other, of so many rows: they grow, shrink and move. */
function reportWith(rows: number, line: string): PrintablePlan {
  const text = (words: string): Cell => ({ kind: "text", text: words });
  const table = (name: string, count: number, heading: string): Block => ({
    kind: "table",
    name,
    whenEmpty: "None.",
    columns: [
      { key: "tool", heading, format: "text", width: 20, total: { kind: "label", text: "Sum" } },
      { key: "days", heading: "Days", format: "decimal", width: 10 },
      {
        key: "twice",
        heading: "Twice",
        format: "decimal",
        width: 10,
        formula: binary(thisRow("days"), "*", literal(2)),
        total: { kind: "sum" },
      },
    ],
    rows: Array.from({ length: count }, (_, index) => [
      text(`=tool ${index}`),
      { kind: "number", value: index },
      { kind: "calculated" },
    ]),
  });
  const paragraph: Block = { kind: "paragraph", cell: text(line) };
  return printablePlan({
    ...sampleReport,
    sheets: [
      ...sampleReport.sheets,
      { name: "Tools", blocks: [paragraph, table("Tools", rows, line), table("Spare", 12 - rows, "Spare tool")] },
    ],
  });
}
const first = reportWith(4, "Tools");
const later = reportWith(9, "Tools as they are now");

const write = (host: ExcelHost, plan: PrintablePlan, connection: ExcelConnection = connectionTo(host)) =>
  writeReport({ connection, plan, renderPicture: drawn });

/** A workbook with the first report in it, and a sheet of the user's own that reckons with it. */
async function reported(): Promise<ExcelHost> {
  const host = new ExcelHost();
  await write(host, first);
  const own = host.book.add("My own");
  own.cells.write(0, 0, { value: "=not a formula", quoted: true });
  own.cells.write(1, 0, { value: 0, formula: "=SUM(Stores[Line])" });
  host.requests = [];
  return host;
}

describe("something fails in the middle of writing", () => {
  let requests: readonly number[];
  beforeAll(async () => {
    const host = await reported();
    const before = stateOf(host);
    await write(host, later);
    expect(stateOf(host)).not.toEqual(before);
    requests = host.requests.map(({ actions }) => actions);
    expect(requests.length).toBeGreaterThanOrEqual(6);
  });

  test("at any request, and at its start, its middle and its end: the book stands as before", async () => {
    let writing = 0;
    for (const [index, actions] of requests.entries()) {
      for (const action of [undefined, 0, Math.floor(actions / 2), actions - 1]) {
        const host = await reported();
        const before = stateOf(host);
        host.failure = { request: index + 1, ...(action === undefined ? {} : { action }) };
        const failed = await write(host, later).then(
          () => undefined,
          (error: unknown) => error,
        );
        // Giving references back at the very end is no part of the work.
        if (failed === undefined) continue;
        writing++;
        expect([index, action, failed]).toEqual([index, action, expect.objectContaining({ name: "ExcelProblem" })]);
        expect([index, action, stateOf(host)]).toEqual([index, action, before]);
      }
    }
    expect(writing).toBeGreaterThan(12);
  });

  test("in an empty workbook no half sheet is left", async () => {
    const whole = new ExcelHost();
    await write(whole, first);
    for (const request of whole.requests.keys()) {
      const host = new ExcelHost();
      const before = stateOf(host);
      host.failure = { request: request + 1, action: 5 };
      const failed = await write(host, first).then(
        () => false,
        () => true,
      );
      if (failed) expect([request, stateOf(host)]).toEqual([request, before]);
    }
  });

  test("when not even taking back succeeds, it says which sheets must not be used", async () => {
    const host = await reported();
    const broken = requests.length - 2;
    host.between = (request) => {
      if (request >= broken) host.failure = { request, action: 0 };
    };
    await expect(write(host, later)).rejects.toThrow(/could not be taken back: do not use the sheets Summary/);
  });

  test("contents broken off: all as before; looks broken off: it says that looks may be missing", async () => {
    const messages = [];
    for (const request of requests.keys()) {
      const host = await reported();
      host.failure = { request: request + 1, action: 3 };
      messages.push(
        await write(host, later).then(
          () => "",
          (error: unknown) => (error instanceof Error ? error.message : ""),
        ),
      );
    }
    expect(messages.some((one) => one.includes("The workbook stands as before."))).toBe(true);
    expect(messages.some((one) => /cells stands as before; colours, lines, pictures and charts/.test(one))).toBe(true);
  });
});

describe("what Excel refuses, in words and with nothing changed", () => {
  async function refused(host: ExcelHost, work: () => Promise<unknown>) {
    const before = stateOf(host);
    const error = await work().then(
      () => undefined,
      (problem: unknown) => problem,
    );
    expect(stateOf(host)).toEqual(before);
    expect(error).toBeInstanceOf(Error);
    const { code, message } = error as { readonly code: string; readonly message: string };
    return `${code}: ${message}`;
  }
  const run = (host: ExcelHost) => ({ connection: connectionTo(host), date, renderPicture: drawn });

  test("a sheet protected with a password", async () => {
    const host = await reported();
    const summary = sheetOf(host, "Summary");
    if (summary.protected === undefined) throw new Error("the sheet is not locked at all");
    summary.protected = { ...summary.protected, password: "secret" };
    const said = await refused(host, () => write(host, later));
    expect(said).toMatch(/^protected: The sheet Summary is protected with a password\. Remove it under Review/);
  });

  test("a workbook whose structure is protected", async () => {
    const host = new ExcelHost();
    host.book.structureLocked = true;
    expect(await refused(host, () => setUpSurvey({ connection: connectionTo(host), date }))).toMatch(
      /^protected: The structure of the workbook is protected/,
    );
  });

  test("a cell that is being edited at the start", async () => {
    const host = await reported();
    host.cellEdit = true;
    const said = await refused(host, () => write(host, later));
    expect(said).toMatch(/^cellEdit: A cell is still being edited\. Press Enter or Esc/);
  });

  test("a cell that is opened for editing while sheets are written only delays the rest", async () => {
    const host = await reported();
    const undisturbed = await reported();
    await write(undisturbed, later);
    let opened = 0;
    host.between = (request) => {
      if (request !== 7) return;
      opened++;
      host.cellEdit = true;
    };
    await write(host, later);
    expect([opened, host.waited]).toEqual([1, 1]);
    expect(stateOf(host)).toEqual(stateOf(undisturbed));
  });

  test.each([8, 9, 12])("an Excel that knows ExcelApi 1.%i only: nothing is even asked", async (version) => {
    const host = new ExcelHost();
    host.version = version;
    for (const command of [setUpSurvey, workOutEstimate, rebuildSheets]) {
      expect(await refused(host, () => command(run(host)))).toMatch(
        /^excelTooOld: This Excel knows less than ExcelApi/,
      );
    }
    expect(host.requests).toEqual([]);
  });

  test("a sheet or table of the user's own under a name of ours", async () => {
    const host = new ExcelHost();
    host.book.add("summary").cells.write(0, 0, { value: "Mine" });
    expect(await refused(host, () => write(host, first))).toMatch(
      /^nameTaken: A sheet named summary|^nameTaken: A sheet/i,
    );
    const other = new ExcelHost();
    const sheet = other.book.add("Mine");
    sheet.cells.write(0, 0, { value: "A" });
    await other.excel.run(async (context) => {
      context.workbook.worksheets.getItem("Mine").tables.add("A1:A2", true).name = "Stores";
      await context.sync();
    });
    expect(await refused(other, () => write(other, first))).toMatch(
      /^nameTaken: The table Stores stands on the sheet Mine/,
    );
  });

  test("no survey, no former plan, a second survey, a second command", async () => {
    const host = new ExcelHost();
    expect(await refused(host, () => workOutEstimate(run(host)))).toMatch(/^noSurvey: /);
    await setUpSurvey({ connection: connectionTo(host), date });
    expect(await refused(host, () => rebuildSheets(run(host)))).toMatch(/^noFormerPlan: /);
    const busy = setUpSurvey({ connection: connectionTo(host), date });
    await expect(setUpSurvey({ connection: connectionTo(host), date })).rejects.toMatchObject({ code: "busy" });
    await busy;
  });

  test("one step of Undo is asked for where Excel has it", async () => {
    for (const [version, grouped] of [
      [17, false],
      [20, true],
    ] as const) {
      const host = await reported();
      host.version = version;
      const options: unknown[] = [];
      const connection = connectionTo(host);
      const watched = new Proxy(connection.excel, {
        get: (excel, name) =>
          name !== "run"
            ? Reflect.get(excel, name)
            : (given: Excel.RunOptions, work: (context: Excel.RequestContext) => Promise<unknown>) => {
                options.push(given);
                return excel.run(given, work);
              },
      });
      await write(host, later, { ...connection, excel: watched });
      expect(options).toEqual([{}, { delayForCellEdit: true, ...(grouped ? { mergeUndoGroup: true } : {}) }]);
    }
  });
});

test("a reading typed while the plan is worked out is kept", async () => {
  const host = new ExcelHost();
  await setUpSurvey({ connection: connectionTo(host), date });
  const loops = sheetOf(host, "Survey Loops");
  const cell = (row: number, heading: string) => {
    const headings = loops.tables[0]?.headings().map((one) => one.replace(/^✎ /, "").replace(/ \(.*/, "")) ?? [];
    const column = headings.indexOf(heading);
    if (column < 0) throw new Error(`no ${heading}: ${headings.join(", ")}`);
    return { top: row, left: column, bottom: row, right: column };
  };
  for (const [row, name] of ["1", "2"].entries()) {
    typeInto(loops, cell(row + 1, "Panel"), "P1");
    typeInto(loops, cell(row + 1, "Loop"), name);
    typeInto(loops, cell(row + 1, "Device"), "recessed contact");
    typeInto(loops, cell(row + 1, "Notes"), "by the window");
  }
  let typed = false;
  await workOutEstimate({
    connection: connectionTo(host),
    date,
    renderPicture: drawn,
    onProgress: ({ words }) => {
      if (typed || !words.startsWith("Working out")) return;
      typed = true;
      // Somebody puts another loop above the two: rows move before anything is written.
      for (const row of [2, 1]) {
        for (const heading of ["Key", "Panel", "Loop", "Device", "Notes"]) {
          const at = cell(row, heading);
          loops.cells.write(row + 1, at.left, loops.cells.content(row, at.left));
        }
      }
      for (const heading of ["Key", "Panel", "Device", "Notes"]) {
        const at = cell(1, heading);
        loops.cells.write(1, at.left, undefined);
      }
      typeInto(loops, cell(1, "Loop"), "3");
    },
  });
  expect(typed).toBe(true);
  const shown = (heading: string) =>
    [1, 2, 3].map((row) => loops.cells.content(row, cell(row, heading).left)?.value ?? "");
  expect(shown("Loop")).toEqual(["3", "1", "2"]);
  expect(shown("Notes")).toEqual(["", "by the window", "by the window"]);
  // Keys were given to rows 1 and 2; the new first row must not get the key of another.
  expect(shown("Key")[0]).toBe("");
});
