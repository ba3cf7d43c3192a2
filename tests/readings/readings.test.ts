import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../lib/problems/input-error.js";
import { type ExpectedLoop, expectedLoopOhms } from "../../lib/readings/expected-loop-ohms.js";
import { leadOhms } from "../../lib/readings/lead-ohms.js";
import { accuracyBound, displayRange, meterBoundOhms } from "../../lib/readings/meter-bound.js";
import { meteredBand } from "../../lib/readings/metered-band.js";
import { countsAsOverRange, judgedOverRangeOhms } from "../../lib/readings/over-range.js";
import { loopOhmsFromReading } from "../../lib/readings/reading-uncertainty.js";
import {
  combinedUncertainty,
  propagateUncertainty,
  standardUncertainty,
} from "../../lib/readings/standard-uncertainty.js";
import { meters } from "../../lib/reference/generated/meters.js";
import { pairOhms } from "../../lib/wiring/pair-ohms.js";

const ohms = fc.double({ min: 0, max: 4e7, noNaN: true });

describe("display range and bound", () => {
  test.each([
    [0, 0.1],
    [599.9, 0.1],
    [600, 1],
    [2200, 1],
    [5999, 1],
    [6000, 10],
    [47_000, 10],
    [590_000, 100],
    [4.7e6, 1000],
  ])("common practice, no source: %d Ω on a display of 6000 counts, resolution %d Ω", (value, resolution) => {
    const range = displayRange({ ohms: value, displayCounts: 6000, finestResolutionOhms: 0.1 });
    expect(range.resolutionOhms).toBe(resolution);
  });

  test("2200 Ω at 0.8 % + 5 counts of 1 Ω, by hand: 17.6 + 5", () => {
    expect(meterBoundOhms({ ohms: 2200 })).toEqual({
      boundOhms: 22.6,
      percentOhms: 17.6,
      countsOhms: 5,
      resolutionOhms: 1,
    });
  });

  test("the terms add: never less than either, and the reading fits the display", () => {
    expect(meters.length).toBeGreaterThanOrEqual(3);
    for (const meter of meters) {
      fc.assert(
        fc.property(ohms, (value) => {
          const { boundOhms, percentOhms, countsOhms, resolutionOhms } = meterBoundOhms({ ohms: value, meter });
          expect(boundOhms).toBeCloseTo(percentOhms + countsOhms, 6);
          expect(Math.round(value / resolutionOhms)).toBeLessThan(meter.displayCounts);
        }),
      );
    }
  });

  test("refuses negative and missing numbers", () => {
    expect(() => meterBoundOhms({ ohms: -1 })).toThrow("ohms: got -1 Ω");
    expect(() => meterBoundOhms({ ohms: Number.NaN })).toThrow(InputError);
    expect(() => meterBoundOhms({ ohms: 1, meter: { displayCounts: 12 } })).toThrow("displayCounts: got 12 counts");
    expect(() => accuracyBound({ value: 1, percent: -1, counts: 0, resolution: 1 })).toThrow("percent: got -1 %");
  });
});

describe("over-range", () => {
  test("common practice, no source: shown over-range and 8 MΩ count, 7.9 MΩ does not", () => {
    expect(countsAsOverRange({ ohms: "OL" })).toBe(true);
    expect(countsAsOverRange({ ohms: 8e6 })).toBe(true);
    expect(countsAsOverRange({ ohms: 7.9e6 })).toBe(false);
    expect(countsAsOverRange({ ohms: 0 })).toBe(false);
  });

  test("a meter whose top lies below 8 MΩ is judged by its top", () => {
    expect(judgedOverRangeOhms({ overRangeOhms: 2e6 })).toBe(2e6);
    expect(judgedOverRangeOhms({ overRangeOhms: 4e7 })).toBe(8e6);
  });

  test("refuses a reading that is no number", () => {
    expect(() => countsAsOverRange({ ohms: Number.POSITIVE_INFINITY })).toThrow(InputError);
  });
});

describe("standard uncertainty", () => {
  test("JCGM 100:2008 4.3.7 and 4.3.9: rectangular a/√3, triangular a/√6", () => {
    expect(standardUncertainty({ shape: "rectangular", bound: 3 })).toBeCloseTo(Math.sqrt(3), 12);
    expect(standardUncertainty({ shape: "triangular", bound: 6 })).toBeCloseTo(Math.sqrt(6), 12);
  });

  test("JCGM 100:2008 5.1.2: a sum combines as the root of the sum of squares, whatever carries it", () => {
    const u = fc.double({ min: 0, max: 1000, noNaN: true });
    fc.assert(
      fc.property(fc.array(u, { minLength: 1, maxLength: 6 }), (values) => {
        const inputs = values.map((value, i) => ({
          name: `x${i}`,
          estimate: i,
          spread: { shape: "normal", standardUncertainty: value } as const,
        }));
        const sum = propagateUncertainty({ inputs, formula: (all) => all.reduce((a, b) => a + b, 0) });
        expect(sum.standardUncertainty).toBeCloseTo(combinedUncertainty(values), 6);
      }),
    );
  });

  test("JCGM 100:2008 5.2.2 note 1: fully correlated inputs of a difference cancel", () => {
    const spread = { shape: "normal", standardUncertainty: 2 } as const;
    const inputs = [
      { name: "a", estimate: 10, spread },
      { name: "b", estimate: 4, spread },
    ];
    const correlations = [{ between: ["a", "b"], coefficient: 1 }] as const;
    const difference = propagateUncertainty({ inputs, correlations, formula: ([a = 0, b = 0]) => a - b });
    expect(difference.estimate).toBe(6);
    expect(difference.standardUncertainty).toBeCloseTo(0, 12);
  });

  test("refuses an unknown input, a correlation of 2 and a formula that divides by zero", () => {
    const inputs = [{ name: "a", estimate: 0, spread: { shape: "rectangular", bound: 0 } as const }];
    const formula = ([a = 0]: readonly number[]): number => 1 / a;
    const correlations = (coefficient: number, other: string) => [{ between: ["a", other], coefficient } as const];
    expect(() => propagateUncertainty({ inputs, formula })).toThrow("formula: got Infinity");
    const sum = ([a = 0]: readonly number[]): number => a;
    expect(() => propagateUncertainty({ inputs, formula: sum, correlations: correlations(0, "b") })).toThrow("got b");
    expect(() => propagateUncertainty({ inputs, formula: sum, correlations: correlations(2, "a") })).toThrow("got 2");
  });
});

describe("leads and the loop behind a reading", () => {
  test("two meter documents: leads that were not zeroed add 0.1 to 0.5 Ω", () => {
    const leads = leadOhms({ leadsZeroed: false });
    expect([leads.lowOhms, leads.highOhms]).toEqual([0.1, 0.5]);
    expect(leads.likelyOhms).toBeGreaterThan(0.1);
    expect(leads.likelyOhms).toBeLessThan(0.5);
  });

  test("zeroed leads take nothing off; a written shorted reading is taken off", () => {
    expect(loopOhmsFromReading({ ohms: 3.2, leadsZeroed: true }).ohms).toBe(3.2);
    expect(loopOhmsFromReading({ ohms: 3.2, leadsZeroed: false, leadMeasuredOhms: 0.2 }).ohms).toBeCloseTo(3, 12);
    expect(loopOhmsFromReading({ ohms: 0.1, leadsZeroed: false }).ohms).toBe(0);
  });

  test("JCGM 100:2008 F.2.2.1: accuracy, rounding and leads combine, by hand at 3.2 Ω", () => {
    const bound = 0.008 * 3.2 + 5 * 0.1;
    const hand = Math.sqrt(bound ** 2 / 3 + 0.05 ** 2 / 3 + 0.13 ** 2);
    const { standardUncertaintyOhms } = loopOhmsFromReading({ ohms: 3.2, leadsZeroed: false });
    expect(standardUncertaintyOhms).toBeCloseTo(hand, 12);
  });
});

describe("expected band of a loop", () => {
  const loops: fc.Arbitrary<ExpectedLoop> = fc
    .record({
      gaugeAwg: fc.integer({ min: 16, max: 26 }),
      runMeters: fc.double({ min: 1, max: 300, noNaN: true }),
      openings: fc.integer({ min: 0, max: 12 }),
      eolOhms: fc.constantFrom(1000, 2200, 4700, 5600),
    })
    .map(({ gaugeAwg, runMeters, openings, eolOhms }) => ({
      conductor: { gaugeAwg },
      runMeters,
      openings,
      eol: { ohms: eolOhms },
    }));

  test("low ≤ likely ≤ high, and the parts add up", () => {
    fc.assert(
      fc.property(loops, (loop) => {
        const band = expectedLoopOhms(loop);
        expect(band.lowOhms).toBeLessThanOrEqual(band.likelyOhms);
        expect(band.likelyOhms).toBeLessThanOrEqual(band.highOhms);
        const parts = Object.values(band.parts);
        expect(parts.reduce((sum, part) => sum + part.likelyOhms, 0)).toBeCloseTo(band.likelyOhms, 9);
      }),
    );
  });

  test("a longer run and one more opening move the whole band up", () => {
    fc.assert(
      fc.property(loops, (loop) => {
        const band = expectedLoopOhms(loop);
        const more = expectedLoopOhms({ ...loop, openings: loop.openings + 1 });
        const longer = expectedLoopOhms({ ...loop, runMeters: 400 });
        for (const other of [more, longer]) {
          expect(other.lowOhms).toBeGreaterThan(band.lowOhms);
          expect(other.highOhms).toBeGreaterThan(band.highOhms);
        }
      }),
    );
  });

  test("common practice, no source: a joint hides in the tolerance of a 2.2 k (110 Ω) and a 5.6 k (280 Ω) 5 % part", () => {
    for (const [value, hidden] of [
      [2200, 110],
      [5600, 280],
    ] as const) {
      const { eol } = expectedLoopOhms({ openings: 1, runMeters: 0, eol: { ohms: value, aged: false } }).parts;
      expect(eol.highOhms - eol.likelyOhms).toBeCloseTo(hidden, 9);
      expect(eol.likelyOhms - eol.lowOhms).toBeCloseTo(hidden, 9);
    }
  });

  test("a long thin cable may read what would be a bad joint on a short thick one", () => {
    const long = expectedLoopOhms({ conductor: { gaugeAwg: 24 }, runMeters: 120, openings: 1 });
    const short = expectedLoopOhms({ conductor: { gaugeAwg: 18 }, runMeters: 8, openings: 1 });
    expect(long.lowOhms).toBeLessThan(20);
    expect(long.highOhms).toBeGreaterThan(20);
    expect(short.highOhms).toBeLessThan(2);
  });

  test("further stretches add their own pair", () => {
    const loop = { conductor: { gaugeAwg: 22 }, runMeters: 20, openings: 1 } as const;
    const stretch = { conductor: { gaugeAwg: 24 }, runMeters: 15 } as const;
    const added = expectedLoopOhms({ ...loop, furtherStretches: [stretch] }).likelyOhms;
    expect(added - expectedLoopOhms(loop).likelyOhms).toBeCloseTo(pairOhms(stretch), 9);
  });

  test("everything left out is said", () => {
    const said = expectedLoopOhms({ openings: 2, eol: { ohms: 2200 } }).assumptions;
    expect(said.length).toBe(6);
    expect(said.join("; ")).toContain("22 AWG solid copper");
    expect(said.join("; ")).toContain("22 m, 6 to 60 m");
    const known = expectedLoopOhms({
      conductor: { gaugeAwg: 22, metal: "copper" },
      runMeters: 10,
      openings: 2,
      joints: 3,
      eol: { ohms: 2200, tolerancePercent: 1, aged: false },
      temperatureCelsius: { low: 15, high: 25 },
    });
    expect(known.assumptions).toEqual([]);
  });

  test("as metered, the band widens by what the meter may be off at each end", () => {
    const band = { lowOhms: 2100, likelyOhms: 2200, highOhms: 2300 };
    const shown = meteredBand({ band });
    expect(shown.lowOhms).toBeCloseTo(2100 - 0.008 * 2100 - 5, 9);
    expect(shown.highOhms).toBeCloseTo(2300 + 0.008 * 2300 + 5, 9);
    expect(meteredBand({ band: { lowOhms: 0.2, likelyOhms: 0.3, highOhms: 0.4 } }).lowOhms).toBe(0);
  });

  test("refuses a spread the wrong way round and half an opening", () => {
    expect(() => expectedLoopOhms({ openings: 1, runMeters: { low: 9, likely: 5, high: 20 } })).toThrow(
      "runMeters.low: got 9 m",
    );
    expect(() => expectedLoopOhms({ openings: 1.5 })).toThrow("openings: got 1.5");
    expect(() => expectedLoopOhms({ openings: 1, temperatureCelsius: { low: 30, high: 20 } })).toThrow(InputError);
  });
});
