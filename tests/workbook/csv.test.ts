import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { printablePlan } from "../../lib/report/printable-plan.js";
import { csvText, harmless } from "../../lib/workbook/csv/csv-text.js";
import { tableCsv } from "../../lib/workbook/csv/table-csv.js";
import { sampleReport } from "./sample-report.js";

const read = (text: string): string[][] => parse(text, { bom: true, relax_column_count: true });

describe("text a spreadsheet would run (OWASP, CSV injection: begins with = + - @ tab or carriage return)", () => {
  test.each(["=1+1", "+1", "-1+2", "@SUM(A1)", "\t=1", "\r=1", "  =cmd", "＝1", "\n=1"])(
    "%j gets a mark in front",
    (text) => {
      expect(harmless(text)).toBe(`'${text}`);
      expect(read(csvText([[text]]))[0]?.[0]).toBe(`'${text}`);
    },
  );
  test.each(["Resistor 2.2 kΩ", "R-22", "a=b", "", "'quoted'", "22 AWG, 2 × 0.5"])("%j stays as it is", (text) => {
    expect(harmless(text)).toBe(text);
  });
  test("numbers stay numbers, also below zero", () => {
    expect(csvText([[-3, 0.5, null]])).toBe("\ufeff-3,0.5,\r\n");
  });
});

test("RFC 4180: a reader of its own gets every field back, and none that a spreadsheet would run", () => {
  const field = fc.oneof(fc.string(), fc.constantFrom('a"b', "x,y", "two\nlines", "=1", " lead"));
  fc.assert(
    fc.property(fc.array(fc.array(field, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 }), (rows) => {
      const back = read(csvText(rows));
      expect(back).toEqual(rows.map((row) => row.map(harmless)));
      for (const row of back) for (const each of row) expect(each).not.toMatch(/^[=+\-@\t\r]/);
    }),
    { numRuns: 200 },
  );
});

test("a table of a plan becomes CSV with heading and figures, without its totals row", () => {
  const rows = read(tableCsv(printablePlan(sampleReport), "Stores"));
  expect(rows).toHaveLength(6);
  expect(rows[0]?.[4]).toBe("Line");
  expect(rows[1]).toEqual(["Terminal strip", "Joining", "12", "1.85", "22.2", expect.stringMatching(/^0\.14/), ""]);
  expect(rows[4]?.[0]).toBe("'=1+1 is only a name");
  expect(() => tableCsv(printablePlan(sampleReport), "Nowhere")).toThrow(/table: got "Nowhere"/);
});
