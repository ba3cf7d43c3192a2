import { describe, expect, it } from "vitest";
import type { SupplyAtPanel } from "../../lib/estimate/supply-of.js";
import type { Survey, SurveyLoop } from "../../lib/survey/survey.js";
import { boathouse, quickEstimateOf } from "./estimate-of.js";

/** The demo with some of its loops and its site changed; both its motion detectors stay on the wire. */
function changed(change: Readonly<Record<string, (loop: SurveyLoop) => SurveyLoop>>): Survey {
  const survey = boathouse();
  return { ...survey, loops: survey.loops.map((loop) => change[loop.key]?.(loop) ?? loop) };
}
const hall = "R008";
const loft = "R018";
const detectorIn = (supply: readonly SupplyAtPanel[], key: string) =>
  supply.flatMap(({ detectors }) => detectors).find((one) => one.key === key);

describe("what the supply stage does not know (rules of this library)", () => {
  it("reckons an unwritten current as an assumed one and asks for it", async () => {
    const { supply, queries } = await quickEstimateOf(changed({ [hall]: ({ milliamps: _gone, ...loop }) => loop }));
    expect(detectorIn(supply, hall)).toMatchObject({ kept: true, milliamps: 25, milliampsAssumed: true });
    expect(detectorIn(supply, loft)).toMatchObject({ kept: true, milliampsAssumed: false });
    expect(queries.filter(({ column, key }) => column === "milliamps" && key === hall)).toHaveLength(1);
  });

  it("tells no volts without a run, keeps the load on the supply, and asks for the run", async () => {
    const { supply, queries } = await quickEstimateOf(changed({ [hall]: ({ run: _gone, ...loop }) => loop }));
    expect(detectorIn(supply, hall)).toMatchObject({ kept: true, asFound: null, asPlanned: null, stretchMeters: null });
    const place = supply.find(({ panel }) => panel === "P1")?.place;
    expect(place?.budget.loads.some(({ name }) => name === "loop HALL PIR")).toBe(true);
    expect(queries.some(({ key, message }) => key === hall && message.includes("cannot be told"))).toBe(true);
  });

  it("asks about a feeder that is no loop of the panel, and about a circle", async () => {
    const odd = await quickEstimateOf(changed({ [hall]: (loop) => ({ ...loop, fedFrom: "99" }) }));
    expect(detectorIn(odd.supply, hall)?.feeder).toBeNull();
    expect(odd.queries.some(({ key, message }) => key === hall && message.startsWith("Fed from 99"))).toBe(true);
    const round = await quickEstimateOf(
      changed({
        [hall]: (loop) => ({ ...loop, fedFrom: "TROPHY" }),
        R009: (loop) => ({ ...loop, fedFrom: "HALL PIR" }),
      }),
    );
    expect(round.queries.filter(({ message }) => message.includes("leads in a circle"))).toHaveLength(1);
    const feeders = [detectorIn(round.supply, hall)?.feeder, detectorIn(round.supply, "R009")?.feeder];
    expect(feeders.filter((feeder) => feeder === null)).toHaveLength(1);
  });

  it("never feeds through a life-safety circuit", async () => {
    const { supply, queries } = await quickEstimateOf(
      changed({ [hall]: (loop) => ({ ...loop, fedFrom: "FIRE 24H" }) }),
    );
    expect(detectorIn(supply, hall)?.feeder).toBeNull();
    expect(supply.flatMap(({ detectors }) => detectors).some(({ key }) => key === "R010")).toBe(false);
    expect(queries.some(({ key, message }) => key === hall && message.includes("may be touched"))).toBe(true);
  });

  it("asks for the standby hours where the site names none, and reckons 24 h (common practice, no source)", async () => {
    const survey = boathouse();
    const { standbyHours, ...site } = survey.site;
    expect(standbyHours).toBe(24);
    const { supply, queries } = await quickEstimateOf({ ...survey, site });
    expect(supply.length).toBe(2);
    for (const { place } of supply) expect(place?.battery).toMatchObject({ standbyHours: 24, standbyAssumed: true });
    expect(queries.filter(({ column }) => column === "standbyHours")).toHaveLength(1);
  });

  it("takes several equal batteries where one of the largest sold is too small: 1.25 × 500.25 h × load (by hand)", async () => {
    const survey = boathouse();
    const site = { ...survey.site, standbyHours: 500 };
    const { supply, bill } = await quickEstimateOf({ ...survey, site });
    const needed = supply.map(({ place }) => place?.battery.neededAmpHours ?? 0);
    const each = supply.map(({ place }) => 1.25 * (500 + 15 / 60) * ((place?.budget.totalMilliamps ?? 0) / 1000));
    needed.forEach((hours, index) => {
      expect(hours).toBeCloseTo(each[index] ?? 0, 6);
      expect(hours).toBeGreaterThan(18);
    });
    const count = needed.reduce((sum, hours) => sum + Math.ceil(hours / 18), 0);
    const billed = bill.filter((one) => one.class === "battery").reduce((sum, { need }) => sum + need, 0);
    expect(billed).toBe(count);
  });
});
