import fc from "fast-check";
import { expect, test } from "vitest";
import { type EolLoop, eolValueFor } from "../../lib/termination/eol-value-for.js";

/** Least total by trying every assignment of loops to values and every number of modules. */
function bruteForce(costs: number[][], inputs: number, perSetting: number, moduleCents: number): number {
  const values = costs[0]?.length ?? 0;
  let best = Number.POSITIVE_INFINITY;
  const seats = costs.map(() => 0);
  for (;;) {
    const counts = new Array<number>(values).fill(0);
    let cents = 0;
    seats.forEach((v, i) => {
      counts[v] = (counts[v] ?? 0) + 1;
      cents += costs[i]?.[v] ?? 0;
    });
    const settings = counts.reduce((sum, n) => sum + Math.ceil(n / perSetting), 0);
    best = Math.min(best, cents + Math.ceil(settings / (inputs / perSetting)) * moduleCents);
    let place = 0;
    for (; place < seats.length; place++) {
      seats[place] = ((seats[place] ?? 0) + 1) % values;
      if (seats[place] !== 0) break;
    }
    if (place === seats.length) return best;
  }
}

test("cheapest setting of values: equal to trying every assignment on random small panels", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 7 }).chain((n) =>
        fc.array(fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 3, maxLength: 3 }), {
          minLength: n,
          maxLength: n,
        }),
      ),
      fc.constantFrom([4, 2], [3, 3], [4, 1], [6, 3]),
      fc.integer({ min: 0, max: 60 }),
      (costs, size, moduleCents) => {
        const [inputs = 1, inputsPerSetting = 1] = size;
        const eolOhms = [1000, 2200, 4700];
        const loops: EolLoop[] = costs.map((row, i) => ({
          id: `L${i}`,
          centsAt: eolOhms.map((ohms, v) => ({ eolOhms: ohms, cents: row[v] ?? 0 })),
        }));
        const [best] = eolValueFor({ loops, modules: [{ type: "m", inputs, inputsPerSetting, eolOhms, moduleCents }] });
        expect(best?.proved).toBe(true);
        expect(best?.totalCents).toBe(bruteForce(costs, inputs, inputsPerSetting, moduleCents));
        const placed = best?.settings.flatMap((s) => s.loops) ?? [];
        expect([...placed].sort()).toEqual(loops.map((loop) => loop.id).sort());
        for (const setting of best?.settings ?? []) expect(setting.loops.length).toBeLessThanOrEqual(inputsPerSetting);
      },
    ),
    { numRuns: 150 },
  );
});

test("by hand: 6 loops at 2.2 k, 2 at 4.7 k, swaps at 9.00, a module of ten at 98.00: swap two resistors", () => {
  const loops: EolLoop[] = Array.from({ length: 8 }, (_, i) => ({
    id: String(i + 1),
    centsAt: [
      { eolOhms: 2200, cents: i < 6 ? 0 : 900 },
      { eolOhms: 4700, cents: i < 6 ? 900 : 0 },
    ],
  }));
  const ten = { type: "ten", inputs: 10, inputsPerSetting: 10, eolOhms: [2200, 4700], moduleCents: 9800 };
  const [first, second] = eolValueFor({ loops, modules: [ten] });
  expect(first).toMatchObject({ modules: 1, changed: ["7", "8"], totalCents: 9800 + 1800 });
  expect(second).toMatchObject({ modules: 2, changed: [], totalCents: 19600 });
  const banks = { ...ten, type: "twoBanks", inputsPerSetting: 5 };
  // Banks of five hold five of the six 2.2 k loops: one 2.2 k loop moves to the other bank.
  expect(eolValueFor({ loops, modules: [banks] })[0]).toMatchObject({ modules: 1, totalCents: 9800 + 900 });
});
