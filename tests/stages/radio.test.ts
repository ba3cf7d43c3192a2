import { beforeAll, describe, expect, it } from "vitest";
import type { Estimate } from "../../lib/estimate/estimate.js";
import type { RadioRecord } from "../../lib/estimate/radio-of.js";
import type { RadioTest, Survey } from "../../lib/survey/survey.js";
import { boathouse, clinic, house, quickEstimateOf } from "./estimate-of.js";

const testsIn = (radio: readonly RadioRecord[]) => radio.filter((one) => one.record === "test");
const repeatersIn = (radio: readonly RadioRecord[]) => radio.filter((one) => one.record === "repeater");
const untestedIn = (radio: readonly RadioRecord[]) => radio.find((one) => one.record === "untested");
const withTests = (survey: Survey, radioTests: readonly RadioTest[]): Survey => ({ ...survey, radioTests });

describe("a clinic's radio, from the sheet as typed (10 dB and 50 messages: common practice, no source)", () => {
  let estimate: Estimate;
  beforeAll(async () => {
    estimate = await quickEstimateOf(clinic());
  });

  it("judges every row by its readings: −95 over −102 dBm is 7 dB, too little; −82 over −103 is 21 dB (by hand)", () => {
    const tests = testsIn(estimate.radio);
    expect(tests.length).toBe(7);
    const at = (from: RegExp, location: string) =>
      tests.find((one) => from.test(one.from) && one.location === location);
    expect(at(/control/, "P1 electrical rm")).toMatchObject({ marginDb: 21, verdict: "enough", panels: ["P1"] });
    expect(at(/control/, "P2 IT closet")).toMatchObject({ marginDb: 7, verdict: "repeater", panels: ["P2"] });
    expect(at(/control/, "roof hatch")).toMatchObject({ marginDb: 2, verdict: "repeater", loops: ["R021"] });
    expect(at(/stair/, "roof hatch closed")).toMatchObject({ marginDb: 18, verdict: "enough", state: "asUsed" });
  });

  it("finds the loops a place means: room 7 among rooms 5-8, not 1-4", () => {
    const room = testsIn(estimate.radio).find(({ location }) => location === "rm 7 window");
    expect(room?.loops).toEqual(["R013"]);
  });

  it("says what 10 of 10 prove: 0.05^(1/10) = 74 % (Clopper and Pearson, all heard)", () => {
    const ten = testsIn(estimate.radio).filter(({ heard }) => heard === 10);
    expect(ten.length).toBeGreaterThan(0);
    for (const { deliveryProved } of ten) expect(deliveryProved).toBeCloseTo(0.05 ** (1 / 10), 9);
  });

  it("needs one repeater, at the top of the stair, for the modules' closet and the hatch; it is bought and fitted", () => {
    const repeaters = repeatersIn(estimate.radio);
    expect(repeaters).toHaveLength(1);
    expect(repeaters[0]).toMatchObject({ at: "top of stair", serves: ["P2 IT closet", "roof hatch"], fromTests: true });
    expect(estimate.bill.find((line) => line.class === "repeater")?.need).toBe(1);
    expect(estimate.labour.find(({ task }) => task === "repeater")?.count).toBe(1);
  });

  it("asks in one query for a test at every planned place that has none, and invents no figures for it", () => {
    const untested = untestedIn(estimate.radio);
    const wireless = estimate.loops.filter((loop) => loop.wireless.length > 0).map(({ key }) => key);
    const tested = testsIn(estimate.radio).flatMap(({ loops }) => loops);
    expect(wireless.length).toBeGreaterThan(0);
    expect(untested?.loops).toEqual(wireless.filter((key) => !tested.includes(key)));
    const asked = estimate.queries.filter(({ message }) => message.includes("No radio test stands"));
    expect(asked).toHaveLength(1);
    expect(asked[0]?.message).toContain(untested?.words);
    expect(testsIn(estimate.radio).every(({ basis }) => basis === "measured")).toBe(true);
  });
});

describe("a test with the door not as in use (common practice, no source)", () => {
  it.each([
    ["boathouse", boathouse, "boat bay 2 roller door"],
    ["house", house, "garage overhead"],
  ])("%s: is asked for again and asks for a repeater to be tried", async (_name, survey, location) => {
    const { radio, queries, bill } = await quickEstimateOf(survey());
    const test = testsIn(radio).find((one) => one.location === location);
    expect(test).toMatchObject({ state: "notAsUsed", verdict: "repeater", planned: true });
    expect(
      queries.some(({ message }) => message.startsWith("Test the radio again") && message.includes(location)),
    ).toBe(true);
    expect(repeatersIn(radio)).toMatchObject([{ at: null, serves: [location], fromTests: false }]);
    expect(bill.find((line) => line.class === "repeater")?.need).toBe(1);
  });
});

describe("radio tests that say less", () => {
  it("asks for all places where nobody tested, without a repeater and without an estimate", async () => {
    const { radio, queries, bill, loops } = await quickEstimateOf(withTests(house(), []));
    expect(testsIn(radio)).toEqual([]);
    expect(repeatersIn(radio)).toEqual([]);
    expect(untestedIn(radio)?.panels).toEqual(["P1"]);
    expect(untestedIn(radio)?.loops).toEqual(loops.filter((one) => one.wireless.length > 0).map(({ key }) => key));
    expect(queries.filter(({ message }) => message.includes("No radio test stands"))).toHaveLength(1);
    expect(bill.some((line) => line.class === "repeater")).toBe(false);
  });

  it("estimates a row that has only a distance, labelled, and still asks for its test", async () => {
    const only = { location: "living rm", meters: 8 };
    const { radio, bill } = await quickEstimateOf(withTests(house(), [only]));
    const [test] = testsIn(radio);
    expect(test).toMatchObject({ basis: "estimated", verdict: "testOnSite", marginDb: null });
    expect(test?.words.join(" ")).toMatch(/estimate, nothing measured/);
    expect(untestedIn(radio)?.loops).toContain("R008");
    expect(bill.some((line) => line.class === "repeater")).toBe(false);
  });

  it("asks for no repeater where a weak place gets no radio device", async () => {
    const front = { location: "front door", meters: 20, signalDbm: -99, noiseDbm: -101, heard: 2, sent: 10 };
    const { radio, loops } = await quickEstimateOf(withTests(house(), [front]));
    expect(loops.find(({ key }) => key === "R001")?.wireless).toEqual([]);
    expect(testsIn(radio)).toMatchObject([{ verdict: "repeater", planned: false, loops: ["R001"] }]);
    expect(repeatersIn(radio)).toEqual([]);
  });
});
