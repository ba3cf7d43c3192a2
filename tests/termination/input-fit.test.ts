import fc from "fast-check";
import { expect, test } from "vitest";
import { fitsInput, PANEL_EOL_NOTE } from "../../lib/termination/fits-input.js";
import { windowFromBand, windowFromDivider } from "../../lib/termination/input-window.js";
import type { TerminatedLoop } from "../../lib/termination/loop-range.js";
import { resistorFor } from "../../lib/termination/resistor-for.js";
import { seededRandom } from "./seeded-random.js";

/** The study's loop: 22 AWG, 30 m run, two contacts of 0.1 to 2 Ω, old EOL 5 % 350 ppm/K, −20 to 60 °C. */
function studyLoop(eolOhms: number | null): TerminatedLoop {
  return {
    cable: { conductor: { gaugeAwg: 22 }, runMeters: { low: 30, high: 30 } },
    contacts: { count: 2, ohms: { low: 0.1, high: 2 } },
    eol: eolOhms === null ? null : { ohms: eolOhms, toleranceFraction: 0.05, ppmPerKelvin: 350, at: "device" },
  };
}

const band = (eolOhms: number) => windowFromBand({ eolOhms, bandLow: 0.8, bandHigh: 1.2 });

// --- interval arithmetic a second way: [low, high] pairs pushed through + · ∥, nothing of the library used ---------
type Interval = readonly [number, number];
const add = (a: Interval, b: Interval): Interval => [a[0] + b[0], a[1] + b[1]];
const times = (a: Interval, b: Interval): Interval => {
  const corners = a.flatMap((x) => b.map((y) => x * y));
  return [Math.min(...corners), Math.max(...corners)];
};
const across = (a: Interval, b: Interval): Interval => [1 / (1 / a[0] + 1 / b[0]), 1 / (1 / a[1] + 1 / b[1])];
const plusMinus = (fraction: number): Interval => [1 - fraction, 1 + fraction];
const resistor = (ohms: number, tolerance: number, ppm: number): Interval =>
  times(times([ohms, ohms], plusMinus(tolerance)), plusMinus(ppm * 40e-6));
// 22 AWG by the textbook row 16.14 Ω per 1000 ft; 60 m of it is 196.85 ft.
const cableAnd2Contacts = add(times([(16.14 * 60) / 304.8, (16.14 * 60) / 304.8], plusMinus(0.00393 * 40)), [0.2, 4]);
const marginPercent = (loop: Interval, eol: number): number =>
  (100 * Math.min(loop[0] - 0.8 * eol, 1.2 * eol - loop[1])) / (0.2 * eol);

const E24 = { name: "E24", tolerance: 0.05, ppm: 250 } as const;
const E96 = { name: "E96", tolerance: 0.01, ppm: 100 } as const;

/** The study's table: as-is range, then best part and margin per series. */
const TABLE = [
  { old: null, to: 5600, asIs: [3, 8], how: "fit", e24: [5600, 69], e96: [5620, 90] },
  { old: 2200, to: 5600, asIs: [2064, 2350], how: "seriesTrim", e24: [3300, 61], e96: [3400, 82] },
  { old: 1000, to: 2200, asIs: [940, 1072], how: "seriesTrim", e24: [1200, 67], e96: [1180, 78] },
  { old: 10000, to: 5600, asIs: [9370, 10655], how: "parallelTrim", e24: [13000, 63], e96: [12700, 79] },
  { old: 4700, to: 2200, asIs: [4405, 5012], how: "parallelTrim", e24: [4300, 56], e96: [4120, 81] },
] as const;

test("the study's table has rows of each kind", () => {
  expect(TABLE.length).toBe(5);
  expect(new Set(TABLE.map((row) => row.how)).size).toBe(3);
});

for (const row of TABLE) {
  test(`input-fit study: ${row.old ?? "none"} Ω → ${row.to} Ω, as is, best E24 and E96 part, margins as printed`, () => {
    const loop = studyLoop(row.old);
    const advice = resistorFor({
      loop,
      input: band(row.to),
      reach: row.how === "parallelTrim" ? "lastContact" : "farEnd",
    });
    expect(Math.round(advice.asIs.lowOhms)).toBe(row.asIs[0]);
    expect(Math.round(advice.asIs.highOhms)).toBe(row.asIs[1]);
    for (const [series, [ohms, margin]] of [
      [E24, row.e24],
      [E96, row.e96],
    ] as const) {
      const offer = advice.offers.find((one) => one.how === row.how && one.series === series.name);
      expect(offer?.ohms).toBe(ohms);
      expect(Math.abs((offer?.marginFraction ?? 0) * 100 - margin)).toBeLessThanOrEqual(0.5);
      const part = resistor(ohms, series.tolerance, series.ppm);
      const old = row.old === null ? null : resistor(row.old, 0.05, 350);
      const end = old === null ? part : row.how === "seriesTrim" ? add(old, part) : across(old, part);
      const whole = add(cableAnd2Contacts, end);
      expect(offer?.fit.lowOhms ?? 0).toBeCloseTo(whole[0], 2);
      expect(offer?.fit.highOhms ?? 0).toBeCloseTo(whole[1], 2);
      expect((offer?.marginFraction ?? 0) * 100).toBeCloseTo(marginPercent(whole, row.to), 3);
    }
  });
}

test("input-fit study, by hand: 2.2 k → 2.2 k is in band by 66 %, a new 2.21 k 1 % would have 89 %", () => {
  // Cable: 60 m · 0.052953 Ω/m = 3.1772 Ω at 20 °C; · (1 − 0.1572) = 2.6777 Ω at −20 °C, · 1.1572 = 3.6766 Ω at 60 °C.
  // Low: 2.6777 + 2 · 0.1 + 2200 · 0.95 · 0.986 = 2.8777 + 2060.74 = 2063.62 Ω.
  // High: 3.6766 + 2 · 2 + 2200 · 1.05 · 1.014 = 7.6766 + 2342.34 = 2350.02 Ω. Band 1760 to 2640 Ω, half 440 Ω.
  // Margin: min(2063.62 − 1760, 2640 − 2350.02) = 289.98; / 440 = 65.9 %.
  const advice = resistorFor({ loop: studyLoop(2200), input: band(2200) });
  expect(advice.action).toBe("nothing");
  expect(advice.recommended).toBeNull();
  expect(advice.asIs.lowOhms).toBeCloseTo(2063.62, 1);
  expect(advice.asIs.highOhms).toBeCloseTo(2350.02, 1);
  expect(advice.asIs.marginFraction * 100).toBeCloseTo(65.9, 1);
  // New part: 2210 · 1.01 · 1.004 = 2241.03; + 7.68 = 2248.70; (2640 − 2248.70)/440 = 88.9 %.
  const renewed = advice.offers.find((offer) => offer.series === "E96");
  expect([renewed?.how, renewed?.ohms]).toEqual(["replace", 2210]);
  expect((renewed?.marginFraction ?? 0) * 100).toBeCloseTo(88.9, 1);
});

test("input-fit study, by hand: 5.6 k with a 50 k leak is in band by 24 %, and is repaired, not trimmed", () => {
  // Low without leak: 2.8777 + 5600 · 0.95 · 0.986 = 5248.40 Ω; ∥ 50 000 = 262 420 000/55 248.4 = 4749.82 Ω.
  // High without leak: 7.6766 + 5600 · 1.05 · 1.014 = 5970.00 Ω. Band 4480 to 6720, half 1120: 269.82/1120 = 24.1 %.
  const advice = resistorFor({ loop: { ...studyLoop(5600), leakOhms: 50_000 }, input: band(5600) });
  expect(advice.asIs.lowOhms).toBeCloseTo(4749.82, 1);
  expect(advice.asIs.highOhms).toBeCloseTo(5970.0, 1);
  expect(advice.asIs.marginFraction * 100).toBeCloseTo(24.1, 1);
  expect(advice.action).toBe("repairFirst");
  expect(advice.offers).toEqual([]);
});

test("a new part at the far end beats every trim, and the far end is replaced, never trimmed", () => {
  const advice = resistorFor({ loop: studyLoop(2200), input: band(5600) });
  expect(advice.recommended).toMatchObject({ how: "replace", partAt: "device", eolAt: "device", ohms: 5620 });
  expect(advice.offers.length).toBeGreaterThan(1);
  for (const offer of advice.offers) {
    expect(offer.how === "parallelTrim").toBe(false);
    if (offer.how === "seriesTrim") expect(offer.partAt).toBe("panel");
  }
});

test("at the panel alone: no parallel trim is offered, and a fitted EOL carries the note", () => {
  const high = resistorFor({ loop: studyLoop(10_000), input: band(5600), reach: "panel" });
  expect(high.action).toBe("noneServes");
  expect(high.refused.join(" ")).toContain("opened loop would read the trim");
  const bare = resistorFor({ loop: studyLoop(null), input: band(5600), reach: "panel" });
  expect(bare.recommended).toMatchObject({ eolAt: "panel", notes: [PANEL_EOL_NOTE] });
});

test("a series trim that an input would take for a normal loop on a field short is refused", () => {
  // Here the input only calls under 1 kΩ a short; the 3.3 k trim alone would read 3.1 k.
  const input = { ...band(5600), shortBelowOhms: 1000 };
  const advice = resistorFor({ loop: studyLoop(2200), input, reach: "panel" });
  expect(advice.offers.filter((offer) => offer.how === "seriesTrim")).toEqual([]);
  expect(advice.refused.join(" ")).toContain("short at the far end");
});

test("SIA CP-01-2009 draft, sample zone input (5 V, pull-up 680 Ω inferred): ohm limits to the table's 0.1 V rounding", () => {
  const window = windowFromDivider({
    supplyVolts: { low: 5, high: 5 },
    pullUpOhms: { low: 680, high: 680 },
    normalVolts: { low: 1.1, high: 4.1 },
    shortVolts: 0.75,
    openVolts: 4.6,
  });
  const printed = [
    { got: window.shortBelowOhms, ohms: 120, volts: 0.75 },
    { got: window.lowOhms, ohms: 190, volts: 1.1 },
    { got: window.highOhms, ohms: 3000, volts: 4.1 },
    { got: window.openAboveOhms, ohms: 7800, volts: 4.6 },
  ];
  for (const { got, ohms, volts } of printed) {
    const allowed = 680 * ((volts + 0.05) / (5 - volts - 0.05)) - 680 * (volts / (5 - volts));
    expect(Math.abs(got - ohms)).toBeLessThanOrEqual(allowed);
  }
});

test("a divider's spread only ever narrows the window (property)", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 0.03, noNaN: true }),
      fc.double({ min: 0, max: 0.05, noNaN: true }),
      (volts, pull) => {
        const at = (v: number, p: number) =>
          windowFromDivider({
            supplyVolts: { low: 5 * (1 - v), high: 5 * (1 + v) },
            pullUpOhms: { low: 2200 * (1 - p), high: 2200 * (1 + p) },
            normalVolts: { low: 1.8, high: 3.2 },
            shortVolts: 1.2,
            openVolts: 4,
          });
        const exact = at(0, 0);
        const spread = at(volts, pull);
        expect(spread.lowOhms).toBeGreaterThanOrEqual(exact.lowOhms);
        expect(spread.highOhms).toBeLessThanOrEqual(exact.highOhms);
        expect(spread.shortBelowOhms).toBeLessThanOrEqual(exact.shortBelowOhms);
        expect(spread.openAboveOhms).toBeGreaterThanOrEqual(exact.openAboveOhms);
      },
    ),
  );
});

test("chance of leaving the band: within four standard errors of a seeded Monte Carlo, and 0 inside the corners", () => {
  const random = seededRandom(7);
  const even = (low: number, high: number) => low + (high - low) * random();
  const draws = 200_000;
  for (const [eolOhms, leakOhms] of [
    [5600, 30_000],
    [6200, undefined],
    [4900, undefined],
    [5100, 80_000],
  ] as const) {
    const loop = { ...studyLoop(eolOhms), ...(leakOhms === undefined ? {} : { leakOhms }) };
    const exact = fitsInput({ loop, input: band(5600) }).chanceOutside;
    let out = 0;
    for (let i = 0; i < draws; i++) {
      const ohms =
        even(2.6777, 3.6766) +
        even(0.1, 2) +
        even(0.1, 2) +
        eolOhms * (1 + even(-0.05, 0.05)) * (1 + even(-0.014, 0.014));
      const leaking = leakOhms === undefined ? ohms : (ohms * leakOhms) / (ohms + leakOhms);
      if (leaking < 4480 || ohms > 6720) out++;
    }
    // The product of tolerance and drift is taken as a sum: at most 0.07 % of the value, a further 0.4 % of chance here.
    expect(Math.abs(exact - out / draws)).toBeLessThan(4 * Math.sqrt(Math.max(exact, 1e-5) / draws) + 0.004);
  }
  expect(fitsInput({ loop: studyLoop(5600), input: band(5600) }).chanceOutside).toBe(0);
});

test("more leakage, more cable or more contacts never widen the margin's losing side (property)", () => {
  const input = band(5600);
  fc.assert(
    fc.property(
      fc.double({ min: 5000, max: 1e6, noNaN: true }),
      fc.double({ min: 1, max: 500, noNaN: true }),
      fc.integer({ min: 1, max: 20 }),
      (leakOhms, meters, contacts) => {
        const base: TerminatedLoop = {
          ...studyLoop(5600),
          cable: { conductor: { gaugeAwg: 22 }, runMeters: { low: meters, high: meters } },
          contacts: { count: contacts, ohms: { low: 0.1, high: 2 } },
          leakOhms,
        };
        const fit = fitsInput({ loop: base, input });
        expect(fitsInput({ loop: { ...base, leakOhms: leakOhms / 2 }, input }).lowOhms).toBeLessThan(fit.lowOhms);
        const longer = { conductor: { gaugeAwg: 22 }, runMeters: { low: meters, high: meters + 10 } };
        expect(fitsInput({ loop: { ...base, cable: longer }, input }).highOhms).toBeGreaterThan(fit.highOhms);
        expect(fit.inBand).toBe(fit.chanceOutside === 0);
      },
    ),
    { numRuns: 60 },
  );
});

test("a leaking loop whose opened reading stays under the open threshold does not fit", () => {
  const fit = fitsInput({
    loop: { ...studyLoop(2200), leakOhms: 12_000 },
    input: { ...band(2200), openAboveOhms: 15_000 },
  });
  expect(fit.inBand).toBe(true);
  expect(fit.fits).toBe(false);
  expect(fit.reasons.join(" ")).toContain("opened loop");
});

test("a leak that shorts the band's low limit is certain to leave the band", () => {
  const fit = fitsInput({ loop: { ...studyLoop(5600), leakOhms: 4000 }, input: band(5600) });
  expect(fit.chanceOutside).toBe(1);
});
