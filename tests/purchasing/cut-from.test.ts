import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cutFrom } from "../../lib/purchasing/cut-from.js";
import type { CutPiece, CutPlan, Spool } from "../../lib/purchasing/cut-records.js";
import { solveWithHighs } from "../../lib/solver/highs.js";
import { assignmentModelCents } from "./cut-assignment-model.js";

/** Cheapest over every way to part the pieces into groups and every spool for every group. */
function bruteForceCuts(lengths: readonly number[], spools: readonly Spool[]): number {
  const buy = (groups: readonly number[], index: number, left: readonly number[]): number => {
    const group = groups[index];
    if (group === undefined) return 0;
    let best = Number.POSITIVE_INFINITY;
    spools.forEach((spool, s) => {
      if (spool.meters < group) return;
      if ((left[s] ?? 0) > 0) {
        const fewer = left.map((count, i) => (i === s ? count - 1 : count));
        best = Math.min(best, (spool.stockCents ?? 0) + buy(groups, index + 1, fewer));
      }
      if (spool.mostBought !== 0) best = Math.min(best, spool.cents + buy(groups, index + 1, left));
    });
    return best;
  };
  const part = (index: number, groups: readonly number[]): number => {
    const length = lengths[index];
    if (length === undefined)
      return buy(
        groups,
        0,
        spools.map(({ stock }) => stock),
      );
    let best = part(index + 1, [...groups, length]);
    groups.forEach((sum, g) => {
      best = Math.min(
        best,
        part(
          index + 1,
          groups.map((other, i) => (i === g ? sum + length : other)),
        ),
      );
    });
    return best;
  };
  return part(0, []);
}

function expectCarriesOut(plan: CutPlan, pieces: readonly CutPiece[]): void {
  const name = ({ meters, for: use }: CutPiece) => `${meters} ${use}`;
  expect(plan.spools.flatMap(({ cuts }) => cuts.map(name)).sort()).toEqual(pieces.map(name).sort());
  for (const { meters, cuts, leftoverMeters } of plan.spools) {
    expect(leftoverMeters).toBeGreaterThanOrEqual(0);
    expect(cuts.reduce((sum, cut) => sum + cut.meters, leftoverMeters)).toBeCloseTo(meters, 6);
  }
  expect(plan.spools.reduce((sum, { cents }) => sum + cents, 0)).toBe(plan.cents);
}

const spoolsOf = (max: number) =>
  fc.array(
    fc.record({
      meters: fc.integer({ min: 10, max: 30 }),
      cents: fc.integer({ min: 1, max: max }),
      stock: fc.integer({ min: 0, max: 1 }),
      stockCents: fc.constantFrom(0, 0, 3),
      mostBought: fc.constantFrom(0, 9),
    }),
    { minLength: 1, maxLength: 3 },
  );

describe("cutting wire against every way of grouping tried one by one", () => {
  test("up to 6 pieces, up to 3 kinds of spool, remnants, charged stock", async () => {
    let feasible = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 1, max: 24 }), { minLength: 1, maxLength: 6 }),
        spoolsOf(40),
        async (lengths, kinds) => {
          const spools = kinds.map((kind, index) => ({ ...kind, code: `S${index}` }));
          const pieces = lengths.map((meters, index) => ({ meters, for: `R${index}` }));
          const plan = await cutFrom({ pieces, spools });
          const best = bruteForceCuts(lengths, spools);
          if (best === Number.POSITIVE_INFINITY) {
            expect(plan.status).toBe("infeasible");
            expect(plan.why).toBeTruthy();
            return;
          }
          feasible++;
          expect(plan.status).toBe("optimal");
          expect(plan.cents).toBe(best);
          expectCarriesOut(plan, pieces);
        },
      ),
      { numRuns: 250 },
    );
    expect(feasible).toBeGreaterThan(50);
  });

  test("a spool more on the van or a cheaper one never raises the cost", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 1, max: 24 }), { minLength: 1, maxLength: 8 }),
        spoolsOf(40),
        fc.nat({ max: 2 }),
        async (lengths, kinds, which) => {
          const spools = [...kinds.map((kind, i) => ({ ...kind, code: `S${i}` })), spool("LONG", 40, 90)];
          const pieces = lengths.map((meters, index) => ({ meters, for: `R${index}` }));
          const cents = async (list: readonly Spool[]) => (await cutFrom({ pieces, spools: list })).cents ?? Number.NaN;
          const before = await cents(spools);
          const more = spools.map((one, i) => (i === which ? { ...one, stock: one.stock + 1 } : one));
          const cheaper = spools.map((one, i) => (i === which ? { ...one, cents: Math.floor(one.cents / 2) } : one));
          expect(await cents(more)).toBeLessThanOrEqual(before);
          expect(await cents(cheaper)).toBeLessThanOrEqual(before);
        },
      ),
      { numRuns: 80 },
    );
  });
});

const spool = (code: string, meters: number, cents: number, stock = 0): Spool => ({ code, meters, cents, stock });

/** Repeatable pieces: a linear congruential generator (Numerical Recipes constants). */
function drawn(count: number, low: number, high: number, seed: number): number[] {
  let state = seed >>> 0;
  return Array.from({ length: count }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.round((low + ((high - low) * state) / 2 ** 32) * 10) / 10;
  });
}

describe("cutting wire against mixed-integer models solved by HiGHS", () => {
  const spools = [spool("150", 152.4, 8500), spool("300", 304.8, 16000)];

  test("short pieces (1 to 40 m): proved without a solver, same cost as the assignment model", async () => {
    for (const seed of [1, 2, 3]) {
      const lengths = drawn(12, 1, 40, seed);
      const pieces = lengths.map((meters, index) => ({ meters, for: `R${index}` }));
      const plan = await cutFrom({ pieces, spools });
      expect(plan.status).toBe("optimal");
      expectCarriesOut(plan, pieces);
      expect(plan.cents).toBe(await assignmentModelCents(lengths, spools));
    }
  });

  test("long pieces (40 to 110 m) with the solver: proved, same cost as the assignment model", async () => {
    const mixed = [spool("A", 100, 5000), spool("B", 150, 7200, 1), spool("C", 230, 10900)];
    for (const seed of [5, 6]) {
      const lengths = drawn(9, 40, 110, seed);
      const pieces = lengths.map((meters, index) => ({ meters, for: `R${index}` }));
      const plan = await cutFrom({ pieces, spools: mixed, solve: solveWithHighs, mostSteps: 40 });
      expect(plan.status).toBe("optimal");
      expectCarriesOut(plan, pieces);
      expect(plan.cents).toBe(await assignmentModelCents(lengths, mixed));
      const bare = await cutFrom({ pieces, spools: mixed, mostSteps: 3, mostSets: 30 });
      expect(bare.boundCents).toBeLessThanOrEqual(plan.cents ?? 0);
      expect(bare.cents).toBeGreaterThanOrEqual(plan.cents ?? 0);
    }
  }, 120_000);

  test("40 short pieces are settled by the search alone", async () => {
    const pieces = drawn(40, 1, 40, 9).map((meters, index) => ({ meters, for: `R${index}` }));
    const plan = await cutFrom({ pieces, spools });
    expect(plan.status).toBe("optimal");
    expectCarriesOut(plan, pieces);
  });
});

test("a 17 m need on a van with a 20 m remnant buys nothing; a piece longer than any spool is named", async () => {
  const remnant = { ...spool("remnant", 20, 0, 1), mostBought: 0 };
  const spools = [remnant, spool("500 ft", 152.4, 8500)];
  const plan = await cutFrom({ pieces: [{ meters: 17, for: "R004" }], spools });
  expect(plan.cents).toBe(0);
  expect(plan.buy).toEqual([]);
  expect(plan.spools[0]?.leftoverMeters).toBeCloseTo(3, 9);
  const long = await cutFrom({ pieces: [{ meters: 200, for: "R009" }], spools });
  expect(long.status).toBe("infeasible");
  expect(long.why).toContain("R009");
  await expect(cutFrom({ pieces: [{ meters: -1, for: "R1" }], spools })).rejects.toThrow(/pieces\.meters/);
});
