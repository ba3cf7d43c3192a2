import { describe, expect, test } from "vitest";
import { cautions } from "../../lib/reference/generated/cautions.js";
import { contactAndSpliceResistance } from "../../lib/reference/generated/contact-and-splice-resistance.js";
import { entryExitTimes } from "../../lib/reference/generated/entry-exit-times.js";
import { labourUnits } from "../../lib/reference/generated/labour-units.js";
import { packSizes } from "../../lib/reference/generated/pack-sizes.js";
import { publishedRows } from "../published/published-rows.js";

describe("cautions", () => {
  test("each is there once, in sentences, with who and when", () => {
    expect(cautions.length).toBeGreaterThanOrEqual(20);
    expect(new Set(cautions.map((row) => row.caution)).size).toBe(cautions.length);
    for (const { caution, words, when, who } of cautions) {
      expect(words, caution).toMatch(/^[A-Z].*\.$/);
      expect(when.length * who.length, caution).toBeGreaterThan(0);
    }
  });

  test("no caution claims what nobody can know", () => {
    const claims = /\b(safe|dead|isolated|good|OK|passed|protected|secure|compliant|certified|guaranteed)\b/;
    for (const { words } of cautions) expect(words).not.toMatch(claims);
  });

  test("the account comes first, and life safety is never to be touched", () => {
    expect(cautions[0]?.words).toMatch(/on test before/);
    expect(cautions.find((row) => row.caution === "leaveLifeSafetyAlone")?.words).toMatch(
      /do not .*meter, move or power/,
    );
  });
});

test("labour units: unique keys, low ≤ likely ≤ high hours", () => {
  expect(labourUnits.length).toBeGreaterThanOrEqual(30);
  expect(new Set(labourUnits.map((row) => row.task)).size).toBe(labourUnits.length);
  for (const { task, lowHours, likelyHours, highHours } of labourUnits) {
    expect(task).toMatch(/^[a-z][A-Za-z]*$/);
    expect(lowHours, task).toBeGreaterThan(0);
    expect(likelyHours, task).toBeGreaterThanOrEqual(lowHours);
    expect(highHours, task).toBeGreaterThanOrEqual(likelyHours);
  }
});

test("parts of a loop: low ≤ likely ≤ high ohms", () => {
  expect(contactAndSpliceResistance.length).toBeGreaterThanOrEqual(5);
  for (const { part, lowOhms, likelyOhms, highOhms } of contactAndSpliceResistance) {
    expect(lowOhms, part).toBeLessThanOrEqual(likelyOhms);
    expect(likelyOhms, part).toBeLessThanOrEqual(highOhms);
  }
});

test("ANSI/SIA CP-01 as quoted: exit, entry and abort times and the 60 s after power returns", () => {
  const facts = publishedRows("intrusion-standards-facts.csv", 20).filter((row) => row["topic"] === "CP-01");
  const value = (fact: string): string => facts.find((row) => row["fact"]?.startsWith(fact))?.["value"] ?? "missing";
  const time = (key: string) => entryExitTimes.find((row) => row.time === key);
  const exit = time("exit");
  expect(value("exit time range")).toBe(`${exit?.lowSeconds}-${exit?.highSeconds} s / ${exit?.defaultSeconds} s`);
  const entry = time("entry");
  const entryText = `${entry?.lowSeconds} s - ${(entry?.highSeconds ?? 0) / 60} min / ${entry?.defaultSeconds} s`;
  expect(value("entry delay range")).toBe(entryText);
  const abort = time("abort");
  expect(value("abort window range")).toContain(`${abort?.lowSeconds}-${abort?.highSeconds} s / `);
  expect(value("entry delay + abort window")).toContain(`not exceed ${time("entryPlusAbort")?.highSeconds} s`);
  expect(value("after complete power loss")).toContain(`at least ${time("settleAfterPower")?.lowSeconds} s`);
});

test("cable data sheets and common practice: pack sizes rise and are whole where pieces are counted", () => {
  expect(packSizes.length).toBeGreaterThanOrEqual(10);
  for (const { item, sizes, unit } of packSizes) {
    expect(
      [...sizes].sort((a, b) => a - b),
      item,
    ).toEqual(sizes);
    if (unit !== "Ah") expect(sizes.every(Number.isInteger), item).toBe(true);
  }
});
