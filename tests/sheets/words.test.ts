import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import type { Report, Sheet } from "../../lib/report/model.js";
import { estimateWorkbookReport } from "../../lib/workbook/estimate-workbook.js";
import { demoEstimate, issued } from "./demo-estimate.js";
import { everyText } from "./every-text.js";

/** Words of promise or of an all-clear, as whole words: common practice in the trade, no source. */
const never =
  /\b(safe|safely|dead|isolated|good|ok|okay|passed|protected|secure|secured|compliant|certified|guaranteed?|best|faulty detector|detector faulty|zone not needed|cable is good)\b/i;
/** "sound" as a verdict only beside its count of proved openings; the siren's verb is another word. */
const soundVerdict = /\b(is|are|reads?|loops?) sound\b|\bsound (loop|loops|cable|pair)\b/i;
/** Openings proved, as every such verdict has to say. */
const counted = /\d+ of \d+ openings? (are )?proved/;
/** A percentage finer than 5 %, where it is a probability in a sentence. */
const finePercent = /\b(\d+(?:\.\d+)?) %/g;

/** What people typed is quoted as typed; these columns hold nothing else. */
const typedPlaces = /^(queries_\w+\.(typed|column)|heading_matches\.heading|plan_loops\.planned)$/;

/** Names of the cards' tables; R010 is the demo's row with the smoke detectors. */
const cardKeys = ({ name, blocks }: Sheet): readonly string[] =>
  name === "Loop cards" ? blocks.flatMap((block) => (block.kind === "table" ? [block.name] : [])) : [];

let report: Report;
beforeAll(async () => {
  report = estimateWorkbookReport({ ...(await demoEstimate()), date: issued });
});

describe("every sentence the demo's workbook prints (common practice, no source)", () => {
  it("is read: more than a thousand texts on more than fifteen sheets", () => {
    const texts = everyText(report);
    expect(texts.length).toBeGreaterThan(1000);
    expect(new Set(texts.map(({ sheet }) => sheet)).size).toBeGreaterThan(15);
  });

  it("never says a word of promise or all-clear", () => {
    const said = everyText(report)
      .filter(({ sheet, where }) => !sheet.startsWith("Survey ") && !typedPlaces.test(where))
      .filter(({ text }) => never.test(text) || (soundVerdict.test(text) && !counted.test(text)));
    expect(said).toEqual([]);
  });

  it("gives no probability finer than 5 % on paper", () => {
    const fine = everyText(report)
      .filter(({ where }) => /^(loops\.|carry\.|range_drivers\.|paragraph)/.test(where))
      .filter(({ text }) =>
        [...text.matchAll(finePercent)].some(([, percent]) => Number(percent) % 5 !== 0 && !/±|resistor/.test(text)),
      );
    expect(fine).toEqual([]);
  });

  it("asks for nothing to be done to a life-safety loop: no terminal, card, walk-test line, reading or as-left band", () => {
    const excluded = everyText(report).filter(({ text }) => text === "FIRE 24H");
    expect(excluded.length).toBeGreaterThan(0);
    const sheets = new Set(excluded.map(({ sheet }) => sheet));
    for (const sheet of ["Terminals", "Walk test", "Measure next", "Zone schedule", "Bill"]) {
      expect(sheets.has(sheet), sheet).toBe(false);
    }
    const key = excluded.length > 0 ? report.sheets.flatMap(cardKeys) : [];
    expect(key).toContain("card_R001");
    expect(key).not.toContain("card_R010");
  });

  it("would find such a word", () => {
    for (const text of ["The cable is good.", "Loop OK", "all checks passed", "best plan"]) expect(text).toMatch(never);
    expect("The loop is sound.").toMatch(soundVerdict);
    expect("6 of 6 openings proved: the loop is sound").toMatch(counted);
    expect("a book of goods").not.toMatch(never);
  });
});

describe("words of the reference tables that are printed", () => {
  const folder = new URL("../../reference-data/", import.meta.url);
  const printed: readonly (readonly [table: string, columns: readonly string[]])[] = [
    ["cautions.json", ["words", "when", "who"]],
    ["findings-words.json", ["words", "firstChecks", "usualRepair"]],
    ["loop-facts.json", ["words"]],
    ["cannot-tell.json", ["words"]],
    ["next-readings.json", ["words"]],
    ["zone-uses.json", ["words"]],
    ["labour-units.json", ["words"]],
    ["survey-columns.json", ["heading", "meaning"]],
  ];
  it("are read from tables that exist", () => {
    expect(readdirSync(folder)).toEqual(expect.arrayContaining(printed.map(([table]) => table)));
  });
  it.each(printed)("%s has no word of promise", (table, columns) => {
    const { rows } = JSON.parse(readFileSync(new URL(table, folder), "utf8")) as {
      rows: readonly Readonly<Record<string, unknown>>[];
    };
    const words = rows.flatMap((row) => columns.flatMap((column) => [row[column]].flat()));
    const texts = words.filter((each) => typeof each === "string");
    expect(texts.length).toBeGreaterThan(5);
    expect(texts.filter((text) => never.test(text) || soundVerdict.test(text))).toEqual([]);
  });
});
