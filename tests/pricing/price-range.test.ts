import { describe, expect, test } from "vitest";
import { contingencyFor } from "../../lib/pricing/contingency.js";
import { type PriceRangeInput, priceRange } from "../../lib/pricing/price-range.js";
import { monteCarloPrices, type Spreads } from "./price-monte-carlo.js";

const hours = (lowHours: number, likelyHours: number, highHours: number) => ({ lowHours, likelyHours, highHours });

/** A loop kept on the wire that may need a repair, which may fail: wireless sensors then. */
const uncertain = (index: number, faultChance: number): PriceRangeInput["loops"][number] => ({
  key: `R${String(index).padStart(3, "0")}`,
  access: index % 3 === 0,
  outcomes: [
    { probability: 1 - faultChance, materialCents: 450, hours: hours(0.2, 0.28, 0.45), faulty: false },
    { probability: faultChance * 0.7, materialCents: 1200, hours: hours(0.7, 1.3, 2.9), faulty: true },
    {
      probability: faultChance * 0.3,
      materialCents: 3800 * (1 + (index % 4)),
      hours: hours(1, 1.8, 3.6),
      faulty: true,
    },
  ],
});

const job = (loops: number, faultChance: number): Omit<PriceRangeInput, "common"> => ({
  loops: Array.from({ length: loops }, (_, index) => uncertain(index, faultChance * (0.5 + (index % 5) / 4))),
  fixed: {
    materialCents: 700 * loops + 9000,
    hours: [hours(1, 1.5, 2.5), hours(0.5, 0.75, 1), hours(0.5, 1, 2), hours(0.5, 1, 2)],
  },
  centsPerHour: 5200,
});

const withSpreads = (
  input: Omit<PriceRangeInput, "common">,
  { crew, access, faultRate }: Spreads,
): PriceRangeInput => ({
  ...input,
  common: { crew: { logSd: crew }, access: { logSd: access }, faultRate: { logSd: faultRate } },
});

describe("price range against a Monte Carlo of the same job written separately", () => {
  const cases: readonly [string, number, number, Spreads][] = [
    ["40 loops, all common factors", 40, 0.25, { crew: 0.2, access: 0.15, faultRate: 0.4 }],
    ["12 loops, all common factors", 12, 0.35, { crew: 0.15, access: 0.25, faultRate: 0.6 }],
    ["40 loops, nothing in common", 40, 0.25, { crew: 0, access: 0, faultRate: 0 }],
    ["40 loops, fault rate only", 40, 0.3, { crew: 0, access: 0, faultRate: 0.7 }],
    ["3 loops, lumpy", 3, 0.3, { crew: 0.1, access: 0.1, faultRate: 0.3 }],
    ["150 loops, all common factors", 150, 0.2, { crew: 0.2, access: 0.1, faultRate: 0.3 }],
  ];
  test.each(cases)(
    "%s: P10, P50, P90 within one percent, mean within half a percent",
    (_, loops, faultChance, spreads) => {
      const input = withSpreads(job(loops, faultChance), spreads);
      const range = priceRange(input);
      const draws = loops > 100 ? 20_000 : 60_000;
      const drawn = monteCarloPrices(input, spreads, draws, 20260302);
      const quantile = (p: number) => drawn[Math.floor(p * draws)] ?? Number.NaN;
      const off = (ours: number, theirs: number) => Math.abs(ours / theirs - 1);
      expect(off(range.p10Cents, quantile(0.1))).toBeLessThan(0.01);
      expect(off(range.p50Cents, quantile(0.5))).toBeLessThan(0.01);
      expect(off(range.p90Cents, quantile(0.9))).toBeLessThan(0.01);
      expect(off(range.meanCents, drawn.reduce((sum, price) => sum + price, 0) / draws)).toBeLessThan(0.005);
    },
  );

  test("40 repairs that differ in hours only: a crew factor of 20 % widens the range beyond twice what independent loops give", () => {
    const repairs: Omit<PriceRangeInput, "common"> = {
      loops: Array.from({ length: 40 }, (_, index) => ({
        key: `R${index}`,
        access: false,
        outcomes: [{ probability: 1, materialCents: 1000, hours: hours(0.5, 1, 2.5), faulty: false }],
      })),
      fixed: { materialCents: 0, hours: [] },
      centsPerHour: 5200,
    };
    const alone = priceRange(withSpreads(repairs, { crew: 0, access: 0, faultRate: 0 }));
    const crew = priceRange(withSpreads(repairs, { crew: 0.2, access: 0, faultRate: 0 }));
    const width = (range: typeof alone) => (range.p90Cents - range.p10Cents) / range.meanCents;
    expect(width(crew)).toBeGreaterThan(2 * width(alone));
    expect(Math.abs(crew.meanCents - alone.meanCents)).toBeLessThanOrEqual(1);
    expect(crew.drivers[0]?.cause).toBe("crew");
    expect(alone.likelySumCents).toBeLessThan(alone.meanCents);
  });
});

describe("cases that can be reckoned by hand", () => {
  const certain: PriceRangeInput = {
    loops: [
      {
        key: "R001",
        access: false,
        outcomes: [{ probability: 1, materialCents: 1000, hours: hours(2, 2, 2), faulty: false }],
      },
    ],
    fixed: { materialCents: 500, hours: [] },
    centsPerHour: 5000,
  };

  test("nothing uncertain: all figures equal", () => {
    const range = priceRange(certain);
    expect([range.meanCents, range.p10Cents, range.p50Cents, range.p90Cents]).toEqual([11500, 11500, 11500, 11500]);
    expect(range.drivers).toEqual([]);
  });

  test("a two-valued crew factor on certain hours: two prices, mean between them", () => {
    const points = [
      { value: 0.8, probability: 0.5 },
      { value: 1.2, probability: 0.5 },
    ];
    const range = priceRange({ ...certain, common: { crew: { points } } });
    expect(range.meanCents).toBe(11500);
    expect(range.p10Cents).toBeCloseTo(9500, -1);
    expect(range.p90Cents).toBeCloseTo(13500, -1);
  });

  test("a fault rate that doubles the odds: 30 % becomes 6/13", () => {
    const outcomes = [
      { probability: 0.7, materialCents: 0, hours: hours(0, 0, 0), faulty: false },
      { probability: 0.3, materialCents: 1300, hours: hours(0, 0, 0), faulty: true },
    ];
    const loops = [{ key: "R001", access: false, outcomes }];
    const fixed = { materialCents: 0, hours: [] };
    const common = { faultRate: { points: [{ value: 2, probability: 1 }] } };
    expect(priceRange({ loops, fixed, centsPerHour: 0, common }).meanCents).toBe(600);
  });

  test("drivers' shares add to 1 and the most uncertain loop leads", () => {
    const range = priceRange({
      ...job(10, 0.1),
      loops: [...job(10, 0.1).loops, { ...uncertain(99, 0.5), key: "WORST" }],
    });
    expect(range.drivers.reduce((sum, { varianceShare }) => sum + varianceShare, 0)).toBeCloseTo(1, 9);
    expect(range.drivers[0]?.key).toBe("WORST");
  });

  test("bad probabilities and hours out of order are refused by name", () => {
    const [loop] = certain.loops;
    const outcome = loop?.outcomes[0];
    if (!loop || !outcome) throw new Error("fixture");
    const odd = (change: object) => ({ ...certain, loops: [{ ...loop, outcomes: [{ ...outcome, ...change }] }] });
    expect(() => priceRange(odd({ probability: 0.9 }))).toThrow(/R001/);
    expect(() => priceRange(odd({ hours: hours(2, 1, 3) }))).toThrow(/low ≤ likely ≤ high/);
  });

  test("contingency is what the wanted confidence asks above the mean, never below 0", () => {
    const range = priceRange(withSpreads(job(40, 0.25), { crew: 0.2, access: 0, faultRate: 0 }));
    const at80 = range.percentiles.find(({ percent }) => percent === 80)?.cents ?? 0;
    expect(contingencyFor({ range, confidence: 0.8 })).toBe(at80 - range.meanCents);
    expect(contingencyFor({ range, confidence: 0.1 })).toBe(0);
  });
});
