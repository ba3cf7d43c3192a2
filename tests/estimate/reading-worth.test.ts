import { beforeAll, describe, expect, it } from "vitest";
import type { Estimate } from "../../lib/estimate/estimate.js";
import { summaryOf } from "../../lib/estimate/summary.js";
import { clinic, house, quickEstimateOf } from "../stages/estimate-of.js";

describe("further readings valued by the job's own costs", () => {
  let plain: Estimate;
  let dearer: Estimate;
  let site: Estimate;
  beforeAll(async () => {
    const survey = house();
    plain = await quickEstimateOf(survey);
    dearer = await quickEstimateOf({ ...survey, settings: { ...survey.settings, labourCostPerHour: 104 } });
    site = await quickEstimateOf(clinic());
  });
  const readings = ({ loops }: Estimate) => loops.flatMap((loop) => loop.next.map((next) => ({ loop, next })));

  it("a reading's minutes cost the job's hour: 52 and 104 an hour", () => {
    let checked = 0;
    for (const [estimate, perHour] of [
      [plain, 52],
      [dearer, 104],
    ] as const) {
      for (const { next } of readings(estimate)) {
        expect(next.saving - next.net).toBeCloseTo(Math.round((next.minutes / 60) * perHour * 100) / 100, 6);
        checked += 1;
      }
    }
    expect(checked).toBeGreaterThan(10);
  });

  it("dearer hours make the reading that may spare a repair worth more", () => {
    const saving = ({ loops }: Estimate) =>
      loops.find(({ loop }) => loop === "2")?.next.find(({ reading }) => reading === "toOtherPair")?.saving ?? 0;
    expect(saving(plain)).toBeGreaterThan(1);
    expect(saving(dearer)).toBeGreaterThan(1.2 * saving(plain));
  });

  it("no reading saves more than the loop's wireless devices, a repair and a return trip together cost", () => {
    for (const estimate of [plain, site]) {
      const worth = readings(estimate).filter(({ next }) => next.saving > 0);
      expect(worth.length).toBeGreaterThan(5);
      // Demo money: a repair has 2.5 h at most, a return trip 1.5 h and 40; 62 is the dearest device, 1.5 h to fit it.
      for (const { loop, next } of worth)
        expect(next.saving).toBeLessThan(2.5 * 52 + 1.5 * 52 + 40 + loop.openingsProved.total * (62 + 1.5 * 52));
    }
  });

  it("nothing on life safety, on a hold, on a live pair; nothing that trips the hold-up buttons", () => {
    for (const tag of ["SPRK", "CFO", "LAB/ BELL?"])
      expect(site.loops.find((one) => one.tag === tag)?.next).toEqual([]);
    const holdUp = site.loops.find(({ tag }) => tag === "HOLDUP");
    expect(holdUp?.openingsProved.total).toBe(2);
    const trips = ["openOneOpening", "openEvery", "openTogether", "tapped"];
    expect(holdUp?.next.filter(({ reading }) => trips.includes(reading))).toEqual([]);
  });

  it("the summary names two loops, the money saved and the range narrowed, not the loss table", () => {
    const { measureNext } = summaryOf(plain);
    expect(measureNext.length).toBe(2);
    expect(new Set(measureNext.map((line) => line.split(":")[0])).size).toBe(2);
    for (const line of measureNext) expect(line).toMatch(/saves about \$\d+\.\d\d of this job's expected cost|narrows/);
    expect(measureNext.join(" ")).toMatch(/narrows the range by about \$\d/);
    expect(measureNext.join(" ")).not.toContain("loss table");
  });
});
