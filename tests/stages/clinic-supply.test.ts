import { beforeAll, describe, expect, it } from "vitest";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { confirmFeeds } from "../../lib/survey/confirm-feeds.js";
import type { Survey } from "../../lib/survey/survey.js";
import { clinic, estimateOf, quickEstimateOf } from "./estimate-of.js";

/** What the mapping file says once somebody has looked: A feeds B, B feeds the exam corridor. */
const mapping = { "P1 5": "panel", "P1 6": "CORR A", "EXAM CORR": "CORR B" };

let survey: Survey;
let estimate: Estimate;
beforeAll(async () => {
  survey = confirmFeeds({ survey: clinic(), fedFrom: mapping });
  estimate = await estimateOf(survey);
}, 120_000);

const placeOf = (from: Estimate, panel: string) => from.supply.find((one) => one.panel === panel);
const detector = (tag: string) => placeOf(estimate, "P1")?.detectors.find((one) => one.tag === tag);
const tags = (keys: readonly string[] = []) => keys.map((key) => survey.loops.find((loop) => loop.key === key)?.label);

describe("a clinic's chain of corridor detectors, from the sheet as typed", () => {
  it("is proposed from the remarks, as queries, and applied nowhere before it is confirmed", async () => {
    const typed = clinic();
    expect(typed.loops.length).toBe(34);
    const asked = typed.queries.filter(({ message }) => message.includes("Fed from"));
    expect(asked.map(({ key }) => key)).toEqual(["R005", "R006", "R007"]);
    const before = await quickEstimateOf(typed);
    const chain = placeOf(before, "P1")?.detectors.filter(({ key }) => ["R006", "R007"].includes(key));
    expect(chain?.map(({ feeder, feedWritten }) => [feeder, feedWritten])).toEqual([
      [null, false],
      [null, false],
    ]);
    expect(placeOf(before, "P1")?.words.join(" ")).toMatch(/Feed not written.*CORR A, CORR B, EXAM CORR/);
    const after = estimate.queries.filter(({ message }) => message.includes("Fed from"));
    expect(after).toEqual([]);
  });

  it("takes its stretches from runs written from the panel: 180, 240 − 180, 330 − 240 ft (by hand)", () => {
    const feet = (tag: string) => (detector(tag)?.stretchMeters ?? 0) / 0.3048;
    expect(feet("CORR A")).toBeCloseTo(180, 6);
    expect(feet("CORR B")).toBeCloseTo(60, 6);
    expect(feet("EXAM CORR")).toBeCloseTo(90, 6);
    expect(detector("EXAM CORR")?.feeder).toBe(detector("CORR B")?.key);
    expect(detector("EXAM CORR")?.stretchWords).toMatch(/from CORR B, runs counted from the panel/);
  });

  it("finds the joint that costs about 1.5 V before the exam corridor (16.14 and 25.67 Ω/kft, by hand)", () => {
    // 12.8 − 11.0 = 1.8 V; 2 · 90 ft · 25.67 Ω/kft · 60 mA · (1 + 0.00393 · 2) = 0.279 V; 1.521 V over 60 mA = 25.3 Ω.
    // Tolerance: each reading is printed to 0.1 V, so ± 0.05 V in each, ± 0.1 V together.
    const joints = placeOf(estimate, "P1")?.joints ?? [];
    const exam = joints.find(({ key }) => key === "R007");
    expect(exam?.beyondBound).toBe(true);
    expect(Math.abs((exam?.extraVolts ?? 0) - 1.521)).toBeLessThan(0.005);
    expect(Math.abs((exam?.ohms ?? 0) - 1.521 / 0.06)).toBeLessThan(0.1);
    const chain = joints.filter(({ key }) => ["R005", "R006"].includes(key));
    expect(chain.map(({ beyondBound }) => beyondBound)).toEqual([false, false]);
  });

  it("reckons each detector on battery as the volts read less what the battery is lower (constant currents, by hand)", () => {
    // Charger 13.7 V, battery end 10.5 V: every reading 3.2 V lower; 3.7 V lower with 0.5 V lost in the panel.
    const read = { "RECEP PIR": 13.5, "WAIT PIR": 13.5, "CORR A": 13.0, "CORR B": 12.8, "EXAM CORR": 11.0 };
    for (const [tag, volts] of Object.entries(read)) {
      expect(detector(tag)?.asFound?.batteryEnd, tag).toBeCloseTo(volts - 3.2, 6);
      expect(detector(tag)?.asFound?.batteryEndLessDrop, tag).toBeCloseTo(volts - 3.7, 6);
    }
  });

  it("names every detector under 9.5 V, with and without the panel's internal drop", () => {
    const fails = placeOf(estimate, "P1")?.failsAsFound;
    expect(tags(fails?.charger)).toEqual([]);
    expect(tags(fails?.batteryEnd)).toEqual(["EXAM CORR"]);
    expect(tags(fails?.batteryEndLessDrop)).toEqual(["CORR A", "CORR B", "EXAM CORR"]);
    expect(placeOf(estimate, "P1")?.source.internalDropAssumed).toBe(true);
    expect(placeOf(estimate, "P2")?.failsAsFound.batteryEndLessDrop).toEqual([]);
  });

  it("asks about each kept detector that falls short and prices the wireless way out", () => {
    const short = (placeOf(estimate, "P1")?.detectors ?? []).filter(({ kept, fails }) => kept && fails.length > 0);
    expect(short.length).toBeGreaterThan(0);
    for (const one of short) {
      expect(one.cures.join("; "), one.key).toMatch(/AWG/);
      expect(one.wireless, one.key).not.toBeNull();
      const query = estimate.queries.find(({ key, message }) => key === one.key && message.includes("kept detector"));
      expect(query?.message).toContain("9.5 V");
      expect(query?.message).toContain(one.wireless?.words);
      expect(query?.message).toMatch(/\$[\d,]+\.\d\d (more|less)/);
    }
    const gone = (placeOf(estimate, "P1")?.detectors ?? []).filter(({ kept }) => !kept);
    for (const one of gone) expect(one.asPlanned).toBeNull();
  });

  it("sizes each place's battery as 1.25 × (24 h + 15 min) × its modules and kept detectors (trade guide, by hand)", () => {
    expect(estimate.supply.length).toBe(2);
    for (const { panel, place, detectors } of estimate.supply) {
      const modules = estimate.modules.filter((one) => one.panel === panel).reduce((sum, { count }) => sum + count, 0);
      const kept = detectors.filter((one) => one.kept).reduce((sum, { milliamps }) => sum + milliamps, 0);
      // Both demo module types draw 60 mA.
      const amps = (modules * 60 + kept) / 1000;
      expect(modules).toBeGreaterThan(0);
      expect(place?.budget.totalMilliamps).toBeCloseTo(amps * 1000, 9);
      expect(place?.battery.neededAmpHours).toBeCloseTo(1.25 * 24.25 * amps, 9);
    }
  });

  it("bills for each place the smallest battery sold that holds what it needs (4.5, 7, 12, 18 Ah)", () => {
    const sizes = [4.5, 7, 12, 18];
    const wanted = estimate.supply.map(({ place }) =>
      sizes.find((size) => size >= (place?.battery.neededAmpHours ?? 0)),
    );
    const billed = estimate.bill
      .filter((line) => line.class === "battery")
      .flatMap(({ code, need }) => Array.from({ length: need }, () => Number(code.replace("BAT-", ""))));
    expect(billed.sort((a, b) => a - b)).toEqual(wanted.sort((a, b) => (a ?? 0) - (b ?? 0)));
  });
});
