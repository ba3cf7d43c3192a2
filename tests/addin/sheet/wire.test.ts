import { describe, expect, test } from "vitest";
import { setUpSurvey } from "../../../addin/commands/set-up-survey.js";
import { bytesPerRequest } from "../../../addin/sheet/batch.js";
import { readSurveySheets } from "../../../addin/sheet/read-survey-sheets.js";
import { writeReport } from "../../../addin/sheet/write-report.js";
import { binary, thisRow } from "../../../lib/report/formula.js";
import type { Cell, Report } from "../../../lib/report/model.js";
import { type PrintablePlan, printablePlan } from "../../../lib/report/printable-plan.js";
import { ExcelHost } from "../../excel-host/excel-host.js";
import { connectionTo, drawn } from "./demo.js";
import { sheetOf, stateOf } from "./state.js";

const date = "2026-03-02";
const text = (words: string): Cell => ({ kind: "text", text: words });
const write = (host: ExcelHost, plan: PrintablePlan) =>
  writeReport({ connection: connectionTo(host), plan, renderPicture: drawn });

/** A report of one table: a text as somebody typed it, eight columns of words, a figure, its double as a formula. */
function reportOf(rows: readonly string[]): Report {
  const names = Array.from({ length: 8 }, (_, index) => `words${index}`);
  return {
    title: "Rows",
    job: "Made up",
    revision: "revision 1",
    date,
    currency: "USD",
    paper: "A4",
    sheets: [
      {
        name: "Rows",
        headingOf: "rows",
        blocks: [
          {
            kind: "table",
            name: "rows",
            whenEmpty: "None.",
            columns: [
              { key: "typed", heading: "Typed", format: "text", width: 20 },
              ...names.map((key) => ({ key, heading: key, format: "general" as const, width: 10 })),
              { key: "figure", heading: "Figure", format: "decimal", width: 10 },
              {
                key: "twice",
                heading: "Twice",
                format: "decimal",
                width: 10,
                formula: binary(thisRow("figure"), "+", thisRow("figure")),
                total: { kind: "sum" },
              },
            ],
            rows: rows.map((typed, index) => [
              text(typed),
              ...names.map((_, column) => text(`${typed} ${column}`)),
              { kind: "number", value: index },
              { kind: "calculated" },
            ]),
          },
        ],
      },
    ],
  };
}

/** Values and formulas as they were sent, cell by cell. */
function sent(host: ExcelHost, property: "Values" | "Formulas"): readonly unknown[] {
  interface Action {
    readonly ActionType: number;
    readonly Name: string;
    readonly ArgumentInfo?: { readonly Arguments?: readonly unknown[] };
  }
  return host.requests.flatMap((request) =>
    (JSON.parse(request.text) as { readonly Actions: readonly Action[] }).Actions.flatMap((action) =>
      action.ActionType === 4 && action.Name === property ? (action.ArgumentInfo?.Arguments ?? []) : [],
    ).flatMap((argument) => (Array.isArray(argument) ? argument.flat() : [argument])),
  );
}

describe("what goes over the wire", () => {
  // Beginnings that make a formula or a command of a cell: OWASP, "CSV Injection", from memory; "1/2" and "22/4" become days.
  const dangerous = ["=1+1", "+1", "-1", "@SUM(A1)", "=HYPERLINK(A1)", "'quoted", "1/2", "22/4", "TRUE", "007", "\t=1"];

  test("a text that looks like a formula, a day or a number is sent so that it stays text, and stays it", async () => {
    const host = new ExcelHost();
    await write(host, printablePlan(reportOf(dangerous)));
    const texts = sent(host, "Values").filter((value) => typeof value === "string");
    expect(texts.length).toBeGreaterThan(dangerous.length * 9);
    expect(texts.filter((value) => /^[=+\-@\t]/.test(value))).toEqual([]);
    const { cells } = sheetOf(host, "Rows");
    dangerous.forEach((typed, index) => {
      for (const column of [0, 1]) {
        const content = cells.content(index + 1, column);
        expect(content?.formula).toBeUndefined();
        expect(content?.value).toBe(column === 0 ? typed : `${typed} 0`);
      }
    });
    // Only our own formulas are formulas.
    const formulas = sent(host, "Formulas").filter((value) => value !== null);
    expect(new Set(formulas)).toEqual(
      new Set(["=rows[[#This Row],[Figure]]+rows[[#This Row],[Figure]]", "=SUM(rows[Twice])"]),
    );
  });

  test("a survey with such texts comes back as typed", async () => {
    const host = new ExcelHost();
    const connection = connectionTo(host);
    await setUpSurvey({ connection, date });
    const loops = sheetOf(host, "Survey Loops");
    dangerous.forEach((typed, index) => {
      loops.cells.write(index + 1, 2, { value: typed, quoted: true });
    });
    const { sheets } = await readSurveySheets({ connection });
    const rows = sheets.find(({ as }) => as === "Loops")?.typed.rows ?? [];
    expect(rows.slice(1, dangerous.length + 1).map(({ cells }) => cells[2])).toEqual(dangerous);
  });

  test.each([
    ["NaN", Number.NaN],
    ["Infinity", Number.POSITIVE_INFINITY],
  ])("%s in a plan is refused before anything is written", async (_, bad) => {
    const host = new ExcelHost();
    const plan = printablePlan(reportOf(["one", "two"]));
    const [sheet] = plan.sheets;
    if (sheet === undefined) throw new Error("no sheet");
    let spoilt = 0;
    const cells = sheet.cells.map((cell) => {
      if (cell.content.kind !== "number") return cell;
      spoilt++;
      return { ...cell, content: { kind: "number" as const, value: bad } };
    });
    expect(spoilt).toBe(2);
    const before = stateOf(host);
    await expect(write(host, { ...plan, sheets: [{ ...sheet, cells }] })).rejects.toThrow(
      /Rows row 2: .*finite number/,
    );
    await expect(write(host, { ...plan, sheets: [{ ...sheet, columnWidths: [bad] }] })).rejects.toThrow(
      /finite number/,
    );
    expect(sent(host, "Values")).toEqual([]);
    expect(stateOf(host)).toEqual(before);
  });
});

describe("2,000 rows", () => {
  const many = Array.from({ length: 2000 }, (_, index) => `=row ${index} ${"of a sheet with long words ".repeat(6)}`);

  /**
   * Eleven columns of 2,000 rows with some 180 characters each weigh about 3.5 MB. Excel on the web takes 5 MB a
   * request; requests are cut at half of that, and each costs a round trip, so that there should be few.
   */
  const mostRequests = 12;

  test(`are written in pieces of at most ${bytesPerRequest} bytes, in at most ${mostRequests} requests, and nothing is lost`, async () => {
    const host = new ExcelHost();
    await write(host, printablePlan(reportOf(many)));
    expect(host.bytes).toBeGreaterThan(bytesPerRequest);
    expect(host.largest).toBeLessThanOrEqual(bytesPerRequest);
    expect(host.requests.length).toBeLessThanOrEqual(mostRequests);
    const { cells, tables } = sheetOf(host, "Rows");
    expect(tables[0]?.body.bottom).toBe(2000);
    many.forEach((typed, index) => {
      expect(cells.content(index + 1, 0)?.value).toBe(typed);
      expect(cells.content(index + 1, 9)?.value ?? 0).toBe(index);
      expect(cells.content(index + 1, 10)?.formula).toMatch(/^=rows/);
    });
    // Written again: what stands is read in pieces too.
    host.largestAnswer = 0;
    await write(host, printablePlan(reportOf(many.slice(0, 1990))));
    expect(host.largestAnswer).toBeGreaterThan(1_000_000);
    expect(host.largestAnswer).toBeLessThan(5_000_000);
    expect(tables[0]?.body.bottom).toBe(1990);
    expect(cells.content(1995, 0)).toBeUndefined();
  });

  test("of a survey are read in answers of at most 5 MB, in order", async () => {
    const host = new ExcelHost();
    const connection = connectionTo(host);
    await setUpSurvey({ connection, date });
    const loops = sheetOf(host, "Survey Loops");
    const [table] = loops.tables;
    if (table === undefined) throw new Error("no table");
    table.box = { ...table.box, bottom: 2000 };
    for (let row = 1; row <= 2000; row++) {
      for (let column = 1; column <= table.box.right; column++) {
        loops.cells.write(row, column, { value: `${row} typed at length in column ${column}` });
      }
    }
    host.largestAnswer = 0;
    const { sheets, tables } = await readSurveySheets({ connection });
    const rows = sheets.find(({ as }) => as === "Loops")?.typed.rows ?? [];
    expect(rows.length).toBe(2001);
    rows.slice(1).forEach(({ row, cells }, index) => {
      expect([row, cells[5]]).toEqual([index + 2, `${index + 1} typed at length in column 5`]);
    });
    expect(tables.get("survey_loops")?.values.length).toBe(2001);
    expect(host.largestAnswer).toBeGreaterThan(500_000);
    expect(host.largestAnswer).toBeLessThan(5_000_000);
  });
});
