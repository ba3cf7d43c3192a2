import fc from "fast-check";
import { expect, test } from "vitest";
import { areaAddress, columnLetters, overlaps } from "../../lib/report/addresses.js";
import { dayNumber } from "../../lib/report/day-number.js";
import { layOut } from "../../lib/report/layout.js";
import type { Block } from "../../lib/report/model.js";
import { linesOfText } from "../../lib/report/text-lines.js";

test("column letters (ECMA-376 part 1, 18.3.1.4: a sheet ends at XFD, its column 16384)", () => {
  expect([1, 26, 27, 52, 53, 702, 703, 16_384].map(columnLetters)).toEqual([
    "A",
    "Z",
    "AA",
    "AZ",
    "BA",
    "ZZ",
    "AAA",
    "XFD",
  ]);
  expect(areaAddress({ top: 2, left: 2, bottom: 2, right: 2 })).toBe("B2");
});

test("day numbers (ECMA-376 part 1, 18.17.4.1: 1900 date base; 1 January 2000 is day 36526, from memory)", () => {
  expect(dayNumber("2000-01-01")).toBe(36_526);
  expect(dayNumber("2024-02-29")).toBe(45_351);
  expect(dayNumber("2023-02-29")).toBeUndefined();
  expect(dayNumber("1900-01-01")).toBeUndefined();
});

test("a text wraps at spaces, long words are cut, line feeds count", () => {
  expect(linesOfText({ text: "one two", widthCharacters: 7 })).toBe(1);
  expect(linesOfText({ text: "one two", widthCharacters: 6 })).toBe(2);
  expect(linesOfText({ text: "a\nb\n\nc", widthCharacters: 20 })).toBe(4);
  expect(linesOfText({ text: "x".repeat(25), widthCharacters: 10 })).toBe(3);
});

test("property: fewer characters a line never give fewer lines, and every word finds room", () => {
  const text = fc.array(
    fc.string({ minLength: 1, maxLength: 12 }).filter((word) => !/\s/.test(word)),
    { minLength: 1, maxLength: 20 },
  );
  fc.assert(
    fc.property(text, fc.integer({ min: 12, max: 60 }), (words, width) => {
      const joined = words.join(" ");
      const lines = linesOfText({ text: joined, widthCharacters: width });
      // The narrowest letters (i, j, l) take 222 thousandths of the size, four tenths of a digit: no line holds more.
      expect(lines).toBeGreaterThanOrEqual(Math.floor((joined.length * 0.19) / width));
      expect(linesOfText({ text: joined, widthCharacters: Math.max(width - 1, 12) })).toBeGreaterThanOrEqual(lines);
    }),
  );
});

test("property: however blocks follow each other, none shares a cell with another", () => {
  const block = fc.oneof(
    fc.constant<Block>({ kind: "title", text: "A title", level: 2 }),
    fc.constant<Block>({ kind: "paragraph", cell: { kind: "text", text: "words ".repeat(30) } }),
    fc.constant<Block>({ kind: "keyValue", rows: [{ label: "l", cell: { kind: "blank" }, note: "n" }] }),
    fc.constant<Block>({ kind: "pageBreak" }),
    fc
      .integer({ min: 1, max: 400 })
      .map((size): Block => ({ kind: "picture", svg: "<svg/>", widthPixels: size, heightPixels: size, alt: "p" })),
    fc.integer({ min: 0, max: 5 }).map(
      (rows): Block => ({
        kind: "table",
        name: `T_${rows}`,
        whenEmpty: "none",
        columns: [
          { key: "a", heading: "a", format: "text", width: 8, total: { kind: "label", text: "Sum" } },
          { key: "b", heading: "b", format: "count", width: 8 },
        ],
        rows: Array.from({ length: rows }, () => [{ kind: "blank" }, { kind: "blank" }]),
      }),
    ),
  );
  let met = 0;
  fc.assert(
    fc.property(fc.array(block, { minLength: 2, maxLength: 8 }), (blocks) => {
      const sheet = layOut({
        title: "t",
        job: "j",
        revision: "r",
        date: "2025-01-01",
        currency: "EUR",
        paper: "A4",
        sheets: [{ name: "S", blocks }],
      }).sheets[0];
      expect(sheet).toBeDefined();
      const areas = sheet?.occupied ?? [];
      met += areas.length;
      areas.forEach((first, index) => {
        for (const second of areas.slice(index + 1)) expect(overlaps(first.area, second.area)).toBe(false);
      });
      const addresses = (sheet?.cells ?? []).map((cell) => `${cell.row}:${cell.column}`);
      expect(new Set(addresses).size).toBe(addresses.length);
      for (const { area } of areas) {
        expect(area.bottom).toBeLessThanOrEqual(sheet?.lastRow ?? 0);
        expect(area.right).toBeLessThanOrEqual(sheet?.lastColumn ?? 0);
      }
    }),
  );
  expect(met).toBeGreaterThan(100);
});
