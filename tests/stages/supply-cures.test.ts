import { describe, expect, it } from "vitest";
import { demoPriceBook } from "../../lib/estimate/demo-tables.js";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { readSurvey } from "../../lib/survey/read-survey.js";
import type { SupplyCure, Survey, SurveyLoop } from "../../lib/survey/survey.js";
import { boathouse, quickEstimateOf } from "./estimate-of.js";

/** The demo's LOFT PIR: 130 ft of 22 AWG, 25 mA, 12.6 V read where the terminals have 13.5 V. */
const loft = "R018";
const changed = (change: (loop: SurveyLoop) => SurveyLoop, key = loft): Survey => {
  const survey = boathouse();
  return { ...survey, loops: survey.loops.map((loop) => (loop.key === key ? change(loop) : loop)) };
};
const withCure = (supplyCure: SupplyCure, key = loft): Survey =>
  changed((loop) => ({ ...loop, edits: { ...loop.edits, supplyCure } }), key);
const detectorIn = ({ supply }: Estimate) =>
  supply.flatMap(({ detectors }) => detectors).find(({ key }) => key === loft);
const shortOf = ({ queries }: Estimate) =>
  queries.filter(({ key, message }) => key === loft && message.includes("falls under"));
const countOf = ({ labour }: Estimate, task: string) => labour.find((line) => line.task === task)?.count ?? 0;
const needOf = ({ bill }: Estimate, code: string) => bill.find((line) => line.id === code)?.need ?? 0;

describe("ways out for a kept detector that falls short (arithmetic by hand from the demo's price book)", async () => {
  const base = await quickEstimateOf(boathouse());
  const choices = detectorIn(base)?.choices ?? [];
  const choice = (kind: SupplyCure) => choices.find((one) => one.kind === kind);

  it("prices each way by its parts and the mean hours (low + 4 likely + high) ÷ 6 at 52 an hour", () => {
    expect(choices.map(({ kind }) => kind)).toEqual(["joints", "heavierPair", "ownPair", "localSupply"]);
    const mend = (0.5 + 4 * 1 + 2.5) / 6;
    expect(choice("joints")?.costCents).toBe(Math.round(100 * (mend * 52 + 2 * 0.16)));
    const pull = ((0.3048 * 130) / 30) * ((0.5 + 4 * 1 + 2.5) / 6);
    expect(choice("ownPair")?.costCents).toBe(Math.round(100 * (pull * 52 + 130 * 0.11)));
    const place = (1 + 4 * 1.5 + 2.5) / 6;
    const parts = 34 + 8 + 58 + 18 + 1.2;
    expect(choice("localSupply")?.costCents).toBe(Math.round(100 * (place * 52 + parts)));
  });

  it("tells the volts at battery end less the drop by 16.14 Ω for 1000 ft of 22 AWG (ASTM B258, copper at 20 °C)", () => {
    const ohms = 2 * 0.13 * 16.14 * (1 + 0.00393);
    const millivolts = 1000 * (10.5 - 0.5 - 0.025 * ohms);
    for (const kind of ["joints", "heavierPair", "ownPair"] as const)
      expect(Math.abs((choice(kind)?.batteryEndMillivolts ?? 0) - millivolts), kind).toBeLessThanOrEqual(1);
    expect(choice("localSupply")?.batteryEndMillivolts).toBe(10_000);
    const [query] = shortOf(base);
    expect(query?.message).toContain("localSupply: $201.53");
  });

  it("carries a local supply through bill, hours and volts to the price, and the question goes", async () => {
    expect(shortOf(base)).toHaveLength(1);
    const cured = await quickEstimateOf(withCure("localSupply"));
    expect(shortOf(cured)).toHaveLength(0);
    expect(detectorIn(cured)).toMatchObject({ cure: { kind: "localSupply" }, fails: [], kept: true });
    expect(detectorIn(cured)?.asPlanned?.batteryEndLessDrop).toBe(10);
    expect(cured.loops.find(({ key }) => key === loft)?.reason).toContain("Supply: a local supply");
    for (const code of ["ENC", "BACK", "PSU", "BAT-4.5"])
      expect(needOf(cured, code) - needOf(base, code), code).toBe(1);
    expect(countOf(cured, "moduleAndSupplyLocation") - countOf(base, "moduleAndSupplyLocation")).toBe(1);
    const loadOf = ({ supply }: Estimate) => supply.find(({ panel }) => panel === "P2")?.place?.budget.totalMilliamps;
    expect((loadOf(base) ?? 0) - (loadOf(cured) ?? 0)).toBe(25);
    // One fuse and its spare take the need from 4 to 6: a second pack of 5.
    const material = 34 + 8 + 58 + 18 + 5 * 1.2;
    const days = countOf(cured, "setUpAndCleanUp") - countOf(base, "setUpAndCleanUp");
    const labour = 52 * ((1 + 4 * 1.5 + 2.5) / 6 + days * ((0.5 + 4 * 0.75 + 1) / 6));
    const cost = 1.03 * material + labour;
    expect(Math.abs(cured.price.costCents - base.price.costCents - 100 * cost)).toBeLessThanOrEqual(3);
    const total = ((1.03 * material) / (1 - 0.35)) * 1.08 + labour / (1 - 0.45);
    expect(Math.abs(cured.price.totalCents - base.price.totalCents - 100 * total)).toBeLessThanOrEqual(8);
  });

  it("cuts the wire of a new pair in one piece and pays for the pulling", async () => {
    const cured = await quickEstimateOf(withCure("ownPair"));
    expect(shortOf(cured)).toHaveLength(0);
    const cuts = cured.cuts.flatMap((spool) => spool.cuts).filter(({ loop }) => loop === loft);
    expect(cuts.some(({ quantity }) => Math.abs(quantity - 130 * 1.1) < 0.01)).toBe(true);
    expect(countOf(cured, "newCableAccessible")).toBeCloseTo((130 * 0.3048) / 30, 9);
    expect(cured.price.costCents).toBeGreaterThan(base.price.costCents);
  });
});

describe("what a chosen supply cure is asked about (rules of this library)", () => {
  it("asks about a word it does not know and uses none", () => {
    const { survey } = readSurvey({ json: { loops: [{ loop: "4", key: loft, supplyCure: "bigger battery" }] } });
    expect(survey.loops).toHaveLength(1);
    expect(survey.loops[0]?.edits.supplyCure).toBeUndefined();
    const asked = survey.queries.filter(({ column }) => column === "supplyCure");
    expect(asked).toHaveLength(1);
    expect(asked[0]).toMatchObject({ typed: "bigger battery" });
    expect(asked[0]?.message).toContain("joints, heavierPair, ownPair, localSupply");
  });

  it("does not apply a cure to a detector that holds its minimum", async () => {
    const hall = "R008";
    const { queries, supply } = await quickEstimateOf(withCure("localSupply", hall));
    const one = supply.flatMap(({ detectors }) => detectors).find(({ key }) => key === hall);
    expect(one).toMatchObject({ kept: true, cure: null });
    expect(queries.filter(({ key, column }) => key === hall && column === "supplyCure")).toHaveLength(1);
  });

  it("prices nothing at 0: without wire in the book it asks for an article and does not apply the pair", async () => {
    const wired = withCure("ownPair");
    const priceBook = demoPriceBook.filter((row) => row.class !== "wire");
    expect(priceBook.length).toBeGreaterThan(0);
    expect(priceBook.length).toBeLessThan(demoPriceBook.length);
    const estimate = await quickEstimateOf({ ...wired, priceBook });
    expect(detectorIn(estimate)?.cure).toBeNull();
    expect(detectorIn(estimate)?.choices.map(({ kind }) => kind)).toEqual(["joints", "localSupply"]);
    const asked = estimate.queries.filter(({ column, key }) => column === "supplyCure" && key === loft);
    expect(asked[0]?.message).toContain("add wire of");
    expect(estimate.queries.some(({ sheet, typed }) => sheet === "Price book" && typed === "wire")).toBe(true);
  });
});
