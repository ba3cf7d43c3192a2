import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { InputError } from "../../lib/problems/input-error.js";
import { deliveryProved } from "../../lib/radio/delivery-proved.js";
import { indoorLoss, medianIndoorLoss } from "../../lib/radio/indoor-loss.js";
import { placeRepeaters } from "../../lib/radio/place-repeaters.js";
import { radioMargin } from "../../lib/radio/radio-margin.js";
import { materialAt, wallLossDb } from "../../lib/radio/wall-loss.js";

const rowsOf = (name: string): string[][] =>
  readFileSync(`reference-data/published/${name}.csv`, "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(","));

test("ITU-R P.1238-8: the loss of every calculated case at its four decimals", () => {
  const cases = rowsOf("itu-p1238").filter((row) => row[0] === "calc_case");
  expect(cases.length).toBeGreaterThanOrEqual(6);
  for (const [, megahertz, n, distance, floor, answer] of cases) {
    const number = (text: string | undefined) => Number(/-?[\d.]+/.exec(text ?? "")?.[0]);
    const lossOfFloor = number(floor?.split("=")[1]);
    const building = number(n) === 28 ? "residential" : "office";
    const found = indoorLoss({
      megahertz: number(megahertz),
      meters: number(distance?.split("=")[1]),
      building,
      floors: lossOfFloor === 0 ? 0 : 1,
    });
    expect(found.powerLossCoefficient).toBe(number(n?.split("=")[1]));
    expect(found.floorLossDb).toBe(lossOfFloor);
    expect(found.lossDb).toBeCloseTo(number(answer?.split("=")[1]), 4);
  }
});

test("ITU-R P.1238-8: no residential coefficient around 900 MHz, so the office value is borrowed and said so", () => {
  const borrowed = indoorLoss({ megahertz: 868, meters: 20, building: "residential" });
  expect(borrowed.borrowed.join(" ")).toContain("office value");
  expect(borrowed.lossDb).toBeCloseTo(73.7044, 4);
  expect(indoorLoss({ megahertz: 868, meters: 20, building: "office" }).borrowed).toEqual([]);
  expect(() => indoorLoss({ megahertz: 900, meters: 10, building: "office", floors: 4 })).toThrow(/0 to 3/);
});

test("ITU-R P.1238-11 table 2: all printed medians to three decimals", () => {
  const rows = rowsOf("itu-p1238-11");
  expect(rows.length).toBeGreaterThanOrEqual(18);
  for (const row of rows) {
    const [environment, sight, , , , , , , gigahertz, meters, median] = row;
    if (environment !== "office" && environment !== "corridor" && environment !== "industrial") throw new Error("row");
    const found = medianIndoorLoss({
      environment,
      sight: sight === "LoS" ? "clear" : "blocked",
      gigahertz: Number(gigahertz),
      meters: Number(meters),
    });
    expect(found.medianDb).toBeCloseTo(Number(median), 3);
    expect(found.withinRange).toBe(true);
  }
});

test("ITU-R P.2040-1: permittivity, conductivity and loss of every printed row at its printed digits", () => {
  const rows = rowsOf("itu-p2040");
  expect(rows.length).toBeGreaterThanOrEqual(24);
  for (const [material, , , , , gigahertz, permittivity, siemens, loss] of rows) {
    const name = material === "ceiling-board" ? "ceilingBoard" : (material ?? "");
    const found = materialAt({ material: name, gigahertz: Number(gigahertz) });
    expect(found.permittivity).toBeCloseTo(Number(permittivity), 3);
    expect(found.siemensPerMeter).toBeCloseTo(Number(siemens), 6);
    // Three decimals are printed, reckoned with a constant of about 1636.
    expect(Math.abs(found.decibelsPerMeter - Number(loss))).toBeLessThan(0.0005 + 2e-4 * Number(loss));
  }
});

test("the low-loss form is within 1 % of the exact plane-wave attenuation of each material (electromagnetics)", () => {
  for (const material of ["concrete", "brick", "plasterboard", "wood", "glass", "chipboard"]) {
    const { permittivity, siemensPerMeter, decibelsPerMeter } = materialAt({ material, gigahertz: 0.868 });
    const omega = 2 * Math.PI * 0.868e9;
    const lossTangent = siemensPerMeter / (omega * 8.8541878128e-12 * permittivity);
    const nepers = (omega / 299792458) * Math.sqrt((permittivity / 2) * (Math.sqrt(1 + lossTangent ** 2) - 1));
    expect(Math.abs(decibelsPerMeter / ((20 / Math.LN10) * nepers) - 1)).toBeLessThan(0.01);
    expect(wallLossDb({ material, gigahertz: 0.868, thicknessMeters: 0.2 })).toBeCloseTo(0.2 * decibelsPerMeter, 12);
  }
});

test("what a count proves, Clopper–Pearson one-sided 95 %: 10 of 10 74 %, 9 of 10 61 %, 50 of 50 94 %", () => {
  expect(deliveryProved({ heard: 10, sent: 10 }).toFixed(2)).toBe("0.74");
  expect(deliveryProved({ heard: 9, sent: 10 }).toFixed(2)).toBe("0.61");
  expect(deliveryProved({ heard: 50, sent: 50 }).toFixed(2)).toBe("0.94");
});

test("what a count proves: closed forms 0.05^(1/n) and 1 − 0.95^(1/n), and the binomial tail by Pascal's triangle", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 60 }).chain((sent) => fc.tuple(fc.integer({ min: 0, max: sent }), fc.constant(sent))),
      ([heard, sent]) => {
        expect(deliveryProved({ heard: sent, sent })).toBeCloseTo(0.05 ** (1 / sent), 10);
        expect(deliveryProved({ heard: 1, sent })).toBeCloseTo(1 - 0.95 ** (1 / sent), 10);
        const share = deliveryProved({ heard, sent });
        if (heard === 0) expect(share).toBe(0);
        else {
          let chances = [1];
          for (let toss = 0; toss < sent; toss++) {
            chances = Array.from(
              { length: toss + 2 },
              (_, k) => (chances[k] ?? 0) * (1 - share) + (chances[k - 1] ?? 0) * share,
            );
          }
          expect(chances.slice(heard).reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(0.05, 9);
          expect(share).toBeLessThan(heard / sent);
        }
      },
    ),
  );
  expect(() => deliveryProved({ heard: 11, sent: 10 })).toThrow(InputError);
});

test("verdicts by hand (common practice, no source): 10 dB decides, 50 messages under 15 dB, as-used state", () => {
  const verdict = (signalDbm: number, noiseDbm: number, heard: number, sent: number, state?: "asUsed" | "notAsUsed") =>
    radioMargin({ measured: { signalDbm, noiseDbm, heard, sent, ...(state === undefined ? {} : { state }) } });
  expect(verdict(-82, -103, 10, 10, "asUsed")).toMatchObject({ verdict: "enough", marginDb: 21 });
  expect(verdict(-91, -103, 10, 10, "asUsed")).toMatchObject({ verdict: "testAgain", needs: ["messages"] });
  expect(verdict(-91, -103, 50, 50, "asUsed").verdict).toBe("enough");
  expect(verdict(-91, -103, 45, 50, "asUsed").verdict).toBe("repeater");
  expect(verdict(-82, -103, 9, 10, "asUsed")).toMatchObject({ verdict: "testAgain", needs: ["messages"] });
  expect(verdict(-95, -102, 8, 10).verdict).toBe("repeater");
  expect(verdict(-82, -103, 10, 10, "notAsUsed")).toMatchObject({ verdict: "testAgain", needs: ["asUsedState"] });
  expect(verdict(-97, -99, 6, 10, "notAsUsed").verdict).toBe("repeater");
  expect(radioMargin({ measured: { heard: 50, sent: 50 } })).toMatchObject({ verdict: "testAgain", needs: ["signal"] });
  expect(radioMargin({}).verdict).toBe("testOnSite");
});

test("an estimate is labelled, borrows aloud and never decides; a measurement beside it wins", () => {
  const path = { megahertz: 868, meters: 20, building: "residential", transmitDbm: 10, noiseDbm: -103 } as const;
  const estimate = radioMargin({ path });
  expect(estimate).toMatchObject({ basis: "estimated", verdict: "testOnSite" });
  expect(estimate.words.join(" ")).toContain("borrowed");
  // 10 + 103 − 73.70 = 39.3 less 1.2816 · 5.04 = 6.46: 32.8; newer median 29.53 + 24.6·log10(20) + 23.8·log10(.868) =
  // 60.07: 52.9.
  expect(estimate.estimatedMarginDb?.lowDb).toBeCloseTo(32.84, 1);
  expect(estimate.estimatedMarginDb?.highDb).toBeCloseTo(52.93, 1);
  const walled = radioMargin({ path: { ...path, heavyWalls: [{ material: "brick", thicknessMeters: 0.24 }] } });
  expect((estimate.estimatedMarginDb?.lowDb ?? 0) - (walled.estimatedMarginDb?.lowDb ?? 0)).toBeCloseTo(7.7, 1);
  const measured = { signalDbm: -100, noiseDbm: -103, heard: 3, sent: 10 };
  expect(radioMargin({ path, measured })).toMatchObject({ basis: "measured", verdict: "repeater" });
});

test("more signal, less noise or more messages heard never turn enough into less (property)", () => {
  const rank = { repeater: 0, testOnSite: 1, testAgain: 1, enough: 2 };
  fc.assert(
    fc.property(
      fc.integer({ min: -110, max: -50 }),
      fc.integer({ min: 0, max: 60 }),
      fc.integer({ min: 1, max: 30 }),
      (signalDbm, heard, more) => {
        const base = { signalDbm, noiseDbm: -103, heard, sent: 60, state: "asUsed" } as const;
        const first = rank[radioMargin({ measured: base }).verdict];
        expect(
          rank[radioMargin({ measured: { ...base, signalDbm: signalDbm + more } }).verdict],
        ).toBeGreaterThanOrEqual(first);
        const heardMore = Math.min(60, heard + more);
        expect(rank[radioMargin({ measured: { ...base, heard: heardMore } }).verdict]).toBeGreaterThanOrEqual(first);
      },
    ),
  );
});

/** An invented clinic's radio tests: controller at reception, a repeater tried at the top of the stair. */
const clinic = [
  { from: "reception", location: "electrical room", meters: 21, signalDbm: -82, noiseDbm: -103, heard: 10 },
  { from: "reception", location: "IT closet", meters: 43, signalDbm: -95, noiseDbm: -102, heard: 8 },
  { from: "reception", location: "exam corridor", meters: 18, signalDbm: -74, noiseDbm: -103, heard: 10 },
  { from: "reception", location: "roof hatch", meters: 40, signalDbm: -101, noiseDbm: -103, heard: 3 },
  { from: "top of stair", location: "IT closet", meters: 14, signalDbm: -70, noiseDbm: -103, heard: 10 },
  { from: "top of stair", location: "roof hatch closed", meters: 9, signalDbm: -85, noiseDbm: -103, heard: 10 },
].map(({ from, location, meters, ...rest }) => ({ from, location, meters, measured: { ...rest, sent: 10 } }));

test("clinic: one repeater at the top of the stair carries both weak places; its own link is still to be tested", () => {
  const plan = placeRepeaters({ controller: "reception", tests: clinic });
  expect(plan.places).toHaveLength(1);
  expect(plan.places[0]).toMatchObject({
    at: "top of stair",
    serves: ["IT closet", "roof hatch"],
    linkMeasured: false,
  });
  expect(plan.count).toEqual({ fromTests: 1, atMost: 1 });
});

test("without the tried place: how near by hand, 40 m · 10^(−8/33) = 22.9 m and 43 m · 10^(−3/33) = 34.9 m", () => {
  const plan = placeRepeaters({ controller: "reception", tests: clinic.filter((one) => one.from === "reception") });
  expect(plan.places).toEqual([]);
  expect(plan.toTry.map((one) => one.location)).toEqual(["IT closet", "roof hatch"]);
  expect(plan.toTry[0]?.withinMeters).toBeCloseTo(34.9, 1);
  expect(plan.toTry[1]?.withinMeters).toBeCloseTo(22.9, 1);
});
