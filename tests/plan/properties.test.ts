import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { choosePlan } from "../../lib/plan/choose-plan.js";
import { greedyPlan } from "../../lib/plan/greedy-plan.js";
import type { ArticleSupply, PlanningProblem } from "../../lib/plan/problem.js";
import { cheapestPurchase } from "../../lib/plan/purchase.js";
import { solveWithHighs } from "../../lib/solver/highs.js";
import { randomProblem } from "./random-problem.js";

const best = (problem: PlanningProblem) => choosePlan({ problem, solve: solveWithHighs, breakTies: false });
const runs = { numRuns: 25, seed: 7 };
const anySeed = fc.integer({ min: 1000, max: 100_000 });
const mostIfNone = (cents: number | null) => cents ?? Infinity;

describe("whatever the job", () => {
  it("the plan costs no more than the quick plan, and never less than its own bound", async () => {
    let compared = 0;
    await fc.assert(
      fc.asyncProperty(anySeed, async (seed) => {
        const problem = randomProblem(seed, 8);
        const [plan, quick] = [await best(problem), greedyPlan(problem)];
        if (!quick) return;
        compared += 1;
        expect(plan.costCents).toBeLessThanOrEqual(quick.costCents);
        expect(plan.boundCents).toBe(plan.costCents);
      }),
      runs,
    );
    expect(compared).toBeGreaterThan(8);
  });

  it("one more piece in stock for nothing, or a cheaper price step, never raises the cost", async () => {
    const supplyWith = (change: (supply: ArticleSupply) => ArticleSupply, problem: PlanningProblem) => ({
      ...problem,
      items: problem.items.map((item) => ({ ...item, supply: change(item.supply) })),
      modules: problem.modules.map((module) => ({
        ...module,
        ...(module.supply ? { supply: change(module.supply) } : {}),
      })),
    });
    const cheaperStep = (supply: ArticleSupply): ArticleSupply => {
      const last = supply.tiers[supply.tiers.length - 1];
      const from = (last?.from ?? 0) + 1;
      return { ...supply, tiers: [...supply.tiers, { from, unitCents: Math.floor((last?.unitCents ?? 100) * 0.7) }] };
    };
    await fc.assert(
      fc.asyncProperty(anySeed, async (seed) => {
        const problem = randomProblem(seed, 7);
        const cost = mostIfNone((await best(problem)).costCents);
        const stocked = supplyWith((supply) => ({ ...supply, stock: supply.stock + 1 }), problem);
        expect(mostIfNone((await best(stocked)).costCents)).toBeLessThanOrEqual(cost);
        expect(mostIfNone((await best(supplyWith(cheaperStep, problem))).costCents)).toBeLessThanOrEqual(cost);
      }),
      runs,
    );
  });

  it("pins hold, and a life-safety loop is excluded and nothing else", async () => {
    let pinned = 0;
    let excluded = 0;
    await fc.assert(
      fc.asyncProperty(anySeed, async (seed) => {
        const problem = randomProblem(seed, 8);
        const plan = await best(problem);
        for (const draft of [plan, greedyPlan(problem)]) {
          for (const choice of draft?.choices ?? []) {
            const loop = problem.loops.find((one) => one.id === choice.loop);
            if (loop?.withoutInput[0]?.kind === "excluded") {
              excluded += 1;
              expect(choice).toEqual({ loop: choice.loop, kind: "excluded", option: 0 });
            }
            for (const pin of problem.pins ?? []) {
              if (pin.loop !== choice.loop) continue;
              pinned += 1;
              if (pin.kind) expect(choice.kind).toBe(pin.kind);
              else expect(choice.kind).not.toBe(pin.forbid);
            }
          }
        }
      }),
      { ...runs, numRuns: 40 },
    );
    expect(pinned).toBeGreaterThan(5);
    expect(excluded).toBeGreaterThan(5);
  });

  it("a life-safety loop cannot be pinned to anything else", async () => {
    const problem = randomProblem(5, 8);
    const [first, ...rest] = problem.loops;
    if (!first) throw new Error("the problem has loops");
    const offer = { kind: "excluded", cents: 0, items: {}, radioDevices: 0 } as const;
    const alarm = { ...first, withoutInput: [offer], keep: [], repair: [] };
    const pins = [{ loop: alarm.id, kind: "keep" }] as const;
    const plan = await best({ ...problem, together: [], loops: [alarm, ...rest], pins });
    expect(plan.status).toBe("infeasible");
    expect(plan.why).toContain("it is offered excluded");
  });

  it("the cheapest purchase is the least over every split between stock and one price step", () => {
    const supply = fc.record({
      stock: fc.nat(6),
      stockUnitCents: fc.nat(900),
      tiers: fc.uniqueArray(fc.record({ from: fc.integer({ min: 1, max: 12 }), unitCents: fc.nat(900) }), {
        selector: (tier) => tier.from,
        maxLength: 4,
      }),
    });
    fc.assert(
      fc.property(supply, fc.nat(20), (one, need) => {
        let least = Infinity;
        for (let taken = 0; taken <= Math.min(one.stock, need); taken += 1) {
          if (taken === need) least = Math.min(least, taken * one.stockUnitCents);
          for (let bought = need - taken; bought <= 40; bought += 1) {
            for (const { from, unitCents } of one.tiers) {
              if (bought >= from) least = Math.min(least, taken * one.stockUnitCents + bought * unitCents);
            }
          }
        }
        expect(cheapestPurchase(one, need)?.cents ?? Infinity).toBe(least);
      }),
      { numRuns: 500, seed: 7 },
    );
  });
});

describe("conflicts are named", () => {
  const contact: ArticleSupply = { stock: 0, stockUnitCents: 0, tiers: [{ from: 1, unitCents: 4000 }] };
  const loop = (id: string) => ({
    id,
    panel: "hall",
    joinKey: null,
    ohms: 10,
    withoutInput: [{ kind: "wireless", cents: 1000, items: { contact: 1 }, radioDevices: 1 } as const],
    keep: [{ module: "one", baseCents: 500, setCents: 0, removeCents: 0 }],
    repair: [],
  });
  const problem: PlanningProblem = {
    modules: [{ type: "one", inputs: 1, conductorSeats: 1, maxOhms: 100, fitCents: 100, supply: contact }],
    items: [{ code: "contact", supply: contact }],
    controllers: [{ id: "C", maxModules: 2, maxRadioDevices: 20 }],
    panels: [{ id: "hall", controller: "C" }],
    join: { maxLoops: 1, cents: 0 },
    extraConductorCents: 0,
    loops: ["3", "4", "7", "9"].map(loop),
  };

  it("pins that need more modules than the controller takes, and only those", async () => {
    const pins = [
      { loop: "3", kind: "wireless" } as const,
      ...["4", "7", "9"].map((id) => ({ loop: id, kind: "keep" }) as const),
    ];
    const plan = await best({ ...problem, pins });
    expect(plan).toMatchObject({ status: "infeasible", costCents: null, boundCents: null, choices: [] });
    expect(plan.why).toBe("pinning 4, 7 and 9 to keep needs 3 modules, the controller takes 2");
  });

  it("limits that leave too little for the loops, each by itself", async () => {
    const plan = await best({ ...problem, controllers: [{ id: "C", maxModules: 2, maxRadioDevices: 1 }] });
    expect(plan.why).toBe(
      "serving 3, 4, 7 and 9 needs 3 modules, the controller takes 2; or it needs 2 radio devices, the controller takes 1",
    );
  });

  it("spare inputs, stock that is not for sale, and ohms", async () => {
    const spare = await best({ ...problem, panels: [{ id: "hall", controller: "C", spareInputs: 3 }] });
    expect(spare.why).toContain("at most 2 spare inputs at hall, 3 asked for");
    const none: ArticleSupply = { stock: 1, stockUnitCents: 0, tiers: [] };
    const stock = await best({ ...problem, items: [{ code: "contact", supply: none }] });
    expect(stock.why).toContain("needs 2 of contact, 1 in stock and none for sale");
    const long = { ...loop("3"), ohms: 400, withoutInput: [] };
    expect((await best({ ...problem, loops: [long] })).why).toMatch(/loop 3 has no treatment.*400 Ω are more/);
  });
});
