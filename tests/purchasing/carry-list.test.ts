import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { carryList } from "../../lib/purchasing/carry-list.js";
import { jointChance } from "../../lib/purchasing/choose-carry.js";
import { jointCounts, type LoopOutcome } from "../../lib/purchasing/joint-counts.js";

interface Loop {
  readonly key: string;
  readonly outcomes: readonly LoopOutcome[];
}

/** P(no article runs short) by walking through every combination of outcomes of all loops. */
function enumeratedChance(loops: readonly Loop[], carry: Readonly<Record<string, number>>): number {
  const walk = (index: number, used: Readonly<Record<string, number>>, chance: number): number => {
    const loop = loops[index];
    if (!loop) return Object.entries(used).every(([code, count]) => count <= (carry[code] ?? 0)) ? chance : 0;
    return loop.outcomes.reduce((sum, { probability, items }) => {
      const now = { ...used };
      for (const { code, quantity } of items) now[code] = (now[code] ?? 0) + quantity;
      return sum + walk(index + 1, now, chance * probability);
    }, 0);
  };
  return walk(0, {}, 1);
}

const loops = fc.array(
  fc
    .tuple(
      fc.array(
        fc.record({
          weight: fc.integer({ min: 1, max: 9 }),
          items: fc.array(
            fc.record({ code: fc.constantFrom("A", "B", "C"), quantity: fc.integer({ min: 0, max: 2 }) }),
            { maxLength: 2 },
          ),
        }),
        { minLength: 1, maxLength: 3 },
      ),
      fc.nat(),
    )
    .map(([list, n]): Loop => {
      const total = list.reduce((sum, { weight }) => sum + weight, 0);
      return { key: `R${n}`, outcomes: list.map(({ weight, items }) => ({ probability: weight / total, items })) };
    }),
  { minLength: 1, maxLength: 5 },
);

describe("carry list against every combination of outcomes walked through", () => {
  test("joint probability, confidence kept, no cheaper quantities keep it", () => {
    fc.assert(
      fc.property(loops, fc.constantFrom(0.5, 0.8, 0.9, 0.95), (list, confidence) => {
        const prices = { A: 300, B: 100, C: 50 };
        const result = carryList({ loops: list, confidence, returnCents: prices, tripCents: 9000 });
        const carry = Object.fromEntries(result.lines.map((line) => [line.code, line.carry]));
        expect(result.noSecondTrip.low).toBeCloseTo(enumeratedChance(list, carry), 9);
        expect(result.noSecondTrip.high).toBeCloseTo(result.noSecondTrip.low, 12);
        expect(result.noSecondTrip.low).toBeGreaterThanOrEqual(confidence - 1e-9);
        for (const { enough } of result.lines) expect(enough).toBeGreaterThanOrEqual(result.noSecondTrip.low - 1e-9);
        // Taking one unit less of anything loses the confidence or saves nothing.
        for (const line of result.lines.filter((one) => one.carry > 0)) {
          const fewer = { ...carry, [line.code]: line.carry - 1 };
          expect(enumeratedChance(list, fewer)).toBeLessThan(confidence + 1e-9);
        }
        const all = (figures: { expectedReturnCents: number; expectedTripCents: number }) =>
          figures.expectedReturnCents + figures.expectedTripCents;
        expect(all(result.cheapest)).toBeLessThanOrEqual(all(result) + 1);
      }),
      { numRuns: 60 },
    );
  });

  test("cumulative binomial, n = 10, p = 0.30 (tables of statistics, from memory): .8497 at 4, .9527 at 5", () => {
    const list = Array.from({ length: 10 }, (_, index) => ({
      key: `R${index}`,
      outcomes: [
        { probability: 0.3, items: [{ code: "W", quantity: 1 }] },
        { probability: 0.7, items: [] },
      ],
    }));
    const at = (confidence: number) => carryList({ loops: list, confidence, tripCents: 0 });
    expect(at(0.84).lines[0]?.carry).toBe(4);
    expect(at(0.9).lines[0]?.carry).toBe(5);
    expect(at(0.9).noSecondTrip.low).toBeCloseTo(0.9527, 4);
    expect(at(0.84).noSecondTrip.low).toBeCloseTo(0.8497, 4);
    expect(at(0.9).lines[0]?.meanNeed).toBeCloseTo(3, 9);
  });

  test("two articles each sufficient for 90 % are together not: the joint figure is stated and kept", () => {
    const one = (key: string, code: string) => ({
      key,
      outcomes: [
        { probability: 0.1, items: [{ code, quantity: 1 }] },
        { probability: 0.9, items: [] },
      ],
    });
    const result = carryList({
      loops: [one("R1", "A"), one("R2", "B")],
      confidence: 0.9,
      returnCents: { A: 500, B: 100 },
      tripCents: 100,
    });
    expect(result.lines.map(({ code, carry }) => [code, carry])).toEqual([
      ["A", 0],
      ["B", 1],
    ]);
    expect(result.cheapest.expectedTripCents).toBe(19); // a cheap trip: carry nothing, 1 − .9² = 19 %
    expect(() => carryList({ loops: [], confidence: 1, tripCents: 0 })).toThrow(/confidence/);
  });

  test("many loops: stepwise choice keeps the confidence by the lower bound", () => {
    const list = Array.from({ length: 60 }, (_, index) => ({
      key: `R${index}`,
      outcomes: [
        { probability: 0.6, items: [] },
        { probability: 0.3, items: [{ code: `W${index % 6}`, quantity: 2 }] },
        { probability: 0.1, items: [{ code: `W${(index + 1) % 6}`, quantity: 1 }] },
      ],
    }));
    const result = carryList({ loops: list, confidence: 0.9, returnCents: { W0: 400 }, tripCents: 12000 });
    expect(result.lines).toHaveLength(6);
    expect(result.method).toContain("not proved");
    expect(result.noSecondTrip.low).toBeGreaterThanOrEqual(0.9);
    expect(result.noSecondTrip.high).toBeGreaterThanOrEqual(result.noSecondTrip.low);
  });
});

test("bounds for articles tied together without a joint distribution bracket the exact figure", () => {
  const list: Loop[] = Array.from({ length: 5 }, (_, index) => ({
    key: `R${index}`,
    outcomes: [
      { probability: 0.5, items: [{ code: "A", quantity: 1 }] },
      { probability: 0.3, items: [{ code: "B", quantity: 1 }] },
      { probability: 0.2, items: [] },
    ],
  }));
  const { groups } = jointCounts(list);
  expect(groups).toHaveLength(1);
  const single = ["A", "B"].map((code) => {
    const only = list.map((loop) => ({
      outcomes: loop.outcomes.map((o) => ({ ...o, items: o.items.filter((item) => item.code === code) })),
    }));
    return jointCounts(only).groups;
  });
  const carry = new Map([
    ["A", 2],
    ["B", 1],
  ]);
  const bounds = jointChance({ groups: [], tied: [single.flat()], carry });
  const exact = enumeratedChance(list, { A: 2, B: 1 });
  expect(bounds.low).toBeLessThan(exact);
  expect(bounds.high).toBeGreaterThan(exact);
});
