import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../lib/problems/input-error.js";
import { strandings } from "../../lib/reference/generated/strandings.js";
import { conductorOhmsPerMeter } from "../../lib/wiring/conductor-ohms-per-meter.js";
import { pairArithmetic } from "../../lib/wiring/pair-arithmetic.js";
import { mixedPairOhms, pairOhms } from "../../lib/wiring/pair-ohms.js";
import { runMetersFromOhms } from "../../lib/wiring/run-meters-from-ohms.js";
import { awgAreaMm2, nearestAwg } from "../../lib/wiring/wire-gauge.js";
import { printed, publishedRows } from "../published/published-rows.js";

const gauge = fc.integer({ min: 10, max: 30 });
const celsius = fc.double({ min: -40, max: 90, noNaN: true });
const metal = fc.constantFrom("copper", "copperCladAluminium", "aluminium", "copperCladSteel", "tinnedCopper");
const run = fc.double({ min: 0.1, max: 2000, noNaN: true });

describe("resistance of a conductor", () => {
  test("thinner wire, more resistance", () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 29 }), celsius, metal, (gaugeAwg, temperatureCelsius, of) => {
        const at = (g: number): number => conductorOhmsPerMeter({ gaugeAwg: g, temperatureCelsius, metal: of });
        expect(at(gaugeAwg + 1)).toBeGreaterThan(at(gaugeAwg));
      }),
    );
  });

  test("warmer wire, more resistance", () => {
    fc.assert(
      fc.property(gauge, metal, celsius, celsius, (gaugeAwg, of, a, b) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        const at = (t: number): number => conductorOhmsPerMeter({ gaugeAwg, temperatureCelsius: t, metal: of });
        expect(at(Math.max(a, b))).toBeGreaterThan(at(Math.min(a, b)));
      }),
    );
  });

  test("the same wire said by gauge, by area and by strand diameter has the same resistance", () => {
    fc.assert(
      fc.property(gauge, fc.integer({ min: 1, max: 41 }), (gaugeAwg, strands) => {
        const areaMm2 = awgAreaMm2(gaugeAwg);
        const strandDiameterMm = Math.sqrt((4 * areaMm2) / strands / Math.PI);
        fc.pre(strandDiameterMm >= 0.08);
        const byGauge = conductorOhmsPerMeter({ gaugeAwg, strands });
        expect(conductorOhmsPerMeter({ areaMm2, strands })).toBeCloseTo(byGauge, 12);
        expect(conductorOhmsPerMeter({ strandDiameterMm, strands })).toBeCloseTo(byGauge, 12);
      }),
    );
  });

  test("tinned more than plain, stranded more than solid of the same area", () => {
    fc.assert(
      fc.property(gauge, fc.integer({ min: 2, max: 7 }), (gaugeAwg, strands) => {
        const plain = conductorOhmsPerMeter({ gaugeAwg, strands });
        expect(conductorOhmsPerMeter({ gaugeAwg, strands, tinned: true })).toBeGreaterThan(plain);
        expect(plain).toBeGreaterThan(conductorOhmsPerMeter({ gaugeAwg }));
      }),
    );
  });

  test("copper-clad aluminium reads like a run 55 to 60 % longer (common practice, no source)", () => {
    const copper = conductorOhmsPerMeter({ gaugeAwg: 22 });
    const ratio = conductorOhmsPerMeter({ gaugeAwg: 22, metal: "copperCladAluminium" }) / copper;
    expect(ratio).toBeGreaterThan(1.55);
    expect(ratio).toBeLessThan(1.6);
  });

  test("every stranding of the table has a resistance, plain and tinned", () => {
    expect(strandings.length).toBeGreaterThan(30);
    for (const { strands, strandDiameterMm, name } of strandings) {
      const plain = conductorOhmsPerMeter({ strands, strandDiameterMm });
      const tinned = conductorOhmsPerMeter({ strands, strandDiameterMm, tinned: true });
      expect(tinned / plain, name).toBeGreaterThan(1.02);
      expect(tinned / plain, name).toBeLessThan(1.08);
    }
  });

  test.each([
    [{ gaugeAwg: 22, temperatureCelsius: 140 }, "temperatureCelsius: got 140 °C, expected -40 to 90 °C"],
    [{ gaugeAwg: 22, temperatureCelsius: Number.NaN }, "temperatureCelsius: got NaN °C, expected -40 to 90 °C"],
    [{ gaugeAwg: 9 }, "gaugeAwg: got 9 AWG, expected a whole number 10 to 30 AWG"],
    [{ gaugeAwg: 22.5 }, "gaugeAwg: got 22.5 AWG, expected a whole number 10 to 30 AWG"],
    [{ areaMm2: 0 }, "areaMm2: got 0 mm², expected 0.05 to 6 mm²"],
    [{ areaMm2: 0.22, strands: 0 }, "strands: got 0, expected a whole number 1 to 1000"],
    [{ strandDiameterMm: 5 }, "strandDiameterMm: got 5 mm, expected 0.08 to 2.8 mm"],
    [{}, "conductor: got none of them, expected one of gaugeAwg, areaMm2, strandDiameterMm"],
    [{ gaugeAwg: 22, areaMm2: 0.3 }, "conductor: got gaugeAwg and areaMm2, expected one of gaugeAwg, areaMm2, str"],
    [{ gaugeAwg: 22, tinned: true, metal: "aluminium" as const }, "tinned: got true with metal aluminium"],
    [{ areaMm2: 0.05, strands: 1000, tinned: true }, "expected strands 0.0762 to 7.366 mm thick"],
  ])("refuses %j", (conductor, message) => {
    expect(() => conductorOhmsPerMeter(conductor)).toThrow(InputError);
    expect(() => conductorOhmsPerMeter(conductor)).toThrow(message);
  });
});

describe("nearest gauge of a metric area", () => {
  test("a gauge's own area gives the gauge back", () => {
    fc.assert(
      fc.property(fc.integer({ min: -3, max: 56 }), (gaugeAwg) => {
        expect(nearestAwg(awgAreaMm2(gaugeAwg))).toMatchObject({ gaugeAwg });
      }),
    );
  });

  test("no other gauge is nearer by ratio", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 6, noNaN: true }), (areaMm2) => {
        const { gaugeAwg } = nearestAwg(areaMm2);
        const off = (g: number): number => Math.abs(Math.log(areaMm2 / awgAreaMm2(g)));
        expect(off(gaugeAwg)).toBeLessThanOrEqual(Math.min(off(gaugeAwg - 1), off(gaugeAwg + 1)) + 1e-12);
      }),
    );
  });

  test("ASTM B258 areas: 0.22, 0.5, 0.75, 1, 1.5, 2.5 and 4 mm² lie nearest the gauge the printed list gives", () => {
    const printedAreas = publishedRows("awg.csv", 21).map((row) => ({
      gaugeAwg: printed(row, "awg"),
      area: printed(row, "area_mm2_formula"),
    }));
    for (const areaMm2 of [0.22, 0.5, 0.75, 1, 1.5, 2.5, 4]) {
      const off = ({ area }: { area: number }): number => Math.max(area / areaMm2, areaMm2 / area);
      const [nearest] = [...printedAreas].sort((a, b) => off(a) - off(b));
      expect(nearestAwg(areaMm2).gaugeAwg, `${areaMm2} mm²`).toBe(nearest?.gaugeAwg);
    }
  });
});

describe("pairs", () => {
  test("out and back, doubled conductors halve it, stretches add up", () => {
    fc.assert(
      fc.property(gauge, gauge, run, run, (first, second, firstMeters, secondMeters) => {
        const one = { conductor: { gaugeAwg: first }, runMeters: firstMeters };
        const two = { conductor: { gaugeAwg: second }, runMeters: secondMeters };
        const both = mixedPairOhms([one, two]);
        expect(both.ohms).toBeCloseTo(pairOhms(one) + pairOhms(two), 9);
        expect(both.runMeters).toBeCloseTo(firstMeters + secondMeters, 9);
        expect(2 * pairOhms({ ...one, conductorsPerLeg: 2 })).toBeCloseTo(pairOhms(one), 9);
        expect(pairOhms(one)).toBeCloseTo(2 * firstMeters * conductorOhmsPerMeter({ gaugeAwg: first }), 9);
      }),
    );
  });

  test("the arithmetic ends in the answer", () => {
    fc.assert(
      fc.property(gauge, run, celsius, fc.integer({ min: 1, max: 4 }), (gaugeAwg, runMeters, t, conductorsPerLeg) => {
        const stretch = { conductor: { gaugeAwg, temperatureCelsius: t }, runMeters, conductorsPerLeg };
        expect(pairArithmetic(stretch).at(-1)?.value).toBe(pairOhms(stretch));
      }),
    );
  });

  test("refuses no stretch at all, a negative run and half a conductor", () => {
    expect(() => mixedPairOhms([])).toThrow("stretches: got none");
    expect(() => pairOhms({ conductor: { gaugeAwg: 22 }, runMeters: -1 })).toThrow("runMeters: got -1 m");
    expect(() => pairOhms({ conductor: { gaugeAwg: 22 }, runMeters: 1, conductorsPerLeg: 1.5 })).toThrow(InputError);
  });
});

describe("run from resistance", () => {
  test("gives the run back, inside its interval", () => {
    fc.assert(
      fc.property(gauge, run, fc.double({ min: -30, max: 80, noNaN: true }), (gaugeAwg, runMeters, t) => {
        const conductor = { gaugeAwg, temperatureCelsius: t };
        const found = runMetersFromOhms({ conductor, ohms: pairOhms({ conductor, runMeters }), boundOhms: 0.5 });
        expect(found?.meters).toBeCloseTo(runMeters, 6);
        expect(found?.lowMeters).toBeLessThan(runMeters);
        expect(found?.highMeters).toBeGreaterThan(runMeters);
      }),
    );
  });

  test("any truth within the stated spreads lies in the interval", () => {
    const unit = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(gauge, run, unit, unit, unit, (gaugeAwg, runMeters, warmth, error, share) => {
        const other = { lowOhms: 0.1, likelyOhms: 0.4, highOhms: 1.1 };
        const truth = pairOhms({ conductor: { gaugeAwg, temperatureCelsius: 10 + 20 * warmth }, runMeters });
        const ohms = Math.max(0, truth + other.lowOhms + share * (other.highOhms - other.lowOhms) + (error - 0.5));
        const found = runMetersFromOhms({ conductor: { gaugeAwg }, ohms, boundOhms: 0.5, otherOhms: other });
        expect(found).not.toBeNull();
        expect(found?.lowMeters).toBeLessThanOrEqual(runMeters * (1 + 1e-9));
        expect(found?.highMeters).toBeGreaterThanOrEqual(runMeters * (1 - 1e-9));
      }),
    );
  });

  test("a reading below everything that is not cable tells no length", () => {
    const otherOhms = { lowOhms: 1, likelyOhms: 2, highOhms: 3 };
    expect(runMetersFromOhms({ conductor: { gaugeAwg: 22 }, ohms: 0.5, otherOhms })).toBeNull();
  });

  test("says what was taken for granted", () => {
    const found = runMetersFromOhms({ conductor: { gaugeAwg: 22 }, ohms: 3 });
    expect(found?.assumptions.join("; ")).toMatch(/copper-clad aluminium.*20 °C.*nothing in the reading but cable/);
  });
});
