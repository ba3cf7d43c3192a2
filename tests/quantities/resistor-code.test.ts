import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../lib/problems/input-error.js";
import {
  type PreferredSeries,
  preferredDecade,
  preferredNeighbours,
  preferredWords,
} from "../../lib/quantities/preferred-numbers.js";
import { bandsFromOhms, ohmsFromBands } from "../../lib/quantities/resistor-code.js";

const series = fc.constantFrom<PreferredSeries>("E3", "E6", "E12", "E24", "E48", "E96", "E192");
const tolerance = fc.constantFrom(10, 5, 2, 1, 0.5, 0.25);

describe("colour bands", () => {
  test("bands of any value of two or three digits read back as that value", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(4 as const, 5 as const),
        fc.integer({ min: 100, max: 999 }),
        fc.integer({ min: -2, max: 6 }),
        tolerance,
        (bands, digits, exponent, tolerancePercent) => {
          const significand = bands === 5 ? digits : Math.floor(digits / 10);
          const ohms = exponent < 0 ? significand / 10 ** -exponent : significand * 10 ** exponent;
          const coded = bandsFromOhms({ ohms, tolerancePercent, bands });
          expect(coded.length).toBe(bands);
          expect(ohmsFromBands(coded)).toEqual({ ohms, tolerancePercent });
        },
      ),
    );
  });

  test("IEC 60062: a part without a tolerance band is a 20 % part", () => {
    expect(bandsFromOhms({ ohms: 97, tolerancePercent: 20 })).toEqual(["white", "violet", "black"]);
    expect(ohmsFromBands(["white", "violet", "black"])).toEqual({ ohms: 97, tolerancePercent: 20 });
  });

  test.each([
    [["gold", "red", "red", "brown"], "expected a colour that stands for a digit"],
    [["red", "red", "white", "black"], "expected a colour that stands for a tolerance"],
    [["red", "red", "none", "gold"], "expected a colour that stands for a multiplier"],
    [["red", "teal", "red", "gold"], "bands: got teal"],
    [["red", "red"], "bands: got 2 bands, expected a whole number 3 to 5 bands"],
    [["red", "red", "red", "red", "red", "red"], "got 6 bands"],
  ])("refuses %j", (bands, message) => {
    expect(() => ohmsFromBands(bands)).toThrow(InputError);
    expect(() => ohmsFromBands(bands)).toThrow(message);
  });

  test("refuses a value with more digits than bands and a tolerance without an agreed colour", () => {
    expect(() => bandsFromOhms({ ohms: 2260, tolerancePercent: 5, bands: 4 })).toThrow(
      "ohms: got 2260 Ω with 3 significant digits, expected at most 2 significant digits",
    );
    expect(() => bandsFromOhms({ ohms: 2200, tolerancePercent: 0.1 })).toThrow("tolerancePercent: got 0.1");
    expect(() => bandsFromOhms({ ohms: 0, tolerancePercent: 5 })).toThrow(InputError);
  });
});

describe("preferred values about a value", () => {
  test("below ≤ asked ≤ above, both of the series, and nothing of the series lies between", () => {
    fc.assert(
      fc.property(series, fc.double({ min: 0.1, max: 1e8, noNaN: true }), (name, ohms) => {
        const { below, above, nearest } = preferredNeighbours({ ohms, series: name });
        expect(below.ohms).toBeLessThanOrEqual(ohms);
        expect(above.ohms).toBeGreaterThanOrEqual(ohms);
        const ofSeries = (value: number): number =>
          preferredDecade(name).findIndex((step) => {
            const tens = Math.log10(value / step);
            return Math.abs(tens - Math.round(tens)) < 1e-9;
          });
        const [low, high] = [ofSeries(below.ohms), ofSeries(above.ohms)];
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeGreaterThanOrEqual(0);
        const steps = (high - low + preferredDecade(name).length) % preferredDecade(name).length;
        expect(steps).toBeLessThanOrEqual(1);
        const off = (value: number): number => Math.abs(Math.log(value / ohms));
        expect(off(nearest.ohms)).toBeLessThanOrEqual(Math.min(off(below.ohms), off(above.ohms)) + 1e-12);
      }),
    );
  });

  test("a preferred value is its own neighbour, exact", () => {
    fc.assert(
      fc.property(series, fc.nat(191), fc.integer({ min: 0, max: 6 }), (name, index, power) => {
        const decade = preferredDecade(name);
        const step = decade[index % decade.length] ?? 1;
        const ohms = Number(`${step}e${power}`);
        const { below, above } = preferredNeighbours({ ohms, series: name });
        expect([below.ohms, above.ohms, below.percentOff]).toEqual([ohms, ohms, 0]);
      }),
    );
  });

  test("IEC 60063 E24: 2.27 k lies between 2.2 k (3.1 % under) and 2.4 k (5.7 % over); bands by IEC 60062", () => {
    const found = preferredNeighbours({ ohms: 2270, series: "E24" });
    expect(found.nearest).toEqual(found.below);
    expect(preferredWords(found, (ohms) => `${ohms} Ω`)).toEqual([
      "E24 below: 2200 Ω, -3.1 % off, red red red gold",
      "E24 above: 2400 Ω, +5.7 % off, red yellow red gold",
      "E24 nearest: 2200 Ω, -3.1 % off, red red red gold",
    ]);
  });

  test("nearest by ratio, not by difference: the middle between 1 and 2.2 is their geometric mean, 1.483", () => {
    expect(preferredNeighbours({ ohms: 1.48, series: "E3" }).nearest.ohms).toBe(1);
    expect(preferredNeighbours({ ohms: 1.49, series: "E3" }).nearest.ohms).toBe(2.2);
  });

  test("across a decade: 9.7 k lies between 9.1 k and 10 k of E24", () => {
    const { below, above } = preferredNeighbours({ ohms: 9700, series: "E24" });
    expect([below.ohms, above.ohms]).toEqual([9100, 10_000]);
  });

  test("refuses a value out of range", () => {
    expect(() => preferredNeighbours({ ohms: 0, series: "E24" })).toThrow("ohms: got 0 Ω");
    expect(() => preferredNeighbours({ ohms: Number.NaN, series: "E24" })).toThrow(InputError);
  });
});
