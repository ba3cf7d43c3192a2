import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { choosePlan } from "../../lib/plan/choose-plan.js";
import { explainLoop, explainLoops } from "../../lib/plan/explain-loop.js";
import { pricePlan } from "../../lib/plan/price-plan.js";
import type { PlanningProblem } from "../../lib/plan/problem.js";
import { zonesFrontier } from "../../lib/plan/zones-frontier.js";
import { solveWithHighs } from "../../lib/solver/highs.js";
import { bruteForce } from "./brute-force.js";
import { randomProblem } from "./random-problem.js";

const fixture = new URL("../fixtures/plan-cases/plan-08-12-loops.json", import.meta.url);
const { problem: house } = JSON.parse(readFileSync(fixture, "utf8")) as { problem: PlanningProblem };
const solve = solveWithHighs;

describe("why a loop got its treatment", () => {
  const seeds = [3, 5, 9, 14, 25, 33];

  it.each(seeds)("the best plan without the chosen kind is what trying every plan finds (seed %i)", async (seed) => {
    const problem = randomProblem(seed, 6);
    const plan = await choosePlan({ problem, solve });
    if (plan.costCents === null) {
      expect(await explainLoop({ problem, plan, loop: "L1", solve })).toBeUndefined();
      return;
    }
    for (const choice of plan.choices) {
      const why = await explainLoop({ problem, plan, loop: choice.loop, solve });
      const pins = [...(problem.pins ?? []), { loop: choice.loop, forbid: choice.kind }];
      const least = bruteForce({ ...problem, pins });
      expect(why?.replanned?.moreCents ?? null).toBe(least === null ? null : least - plan.costCents);
      // Holding everything else fixed can only be dearer than planning anew.
      if (why?.heldFixed) expect(why.heldFixed.moreCents).toBeGreaterThanOrEqual(why.replanned?.moreCents ?? Infinity);
    }
  });

  it("the differences of the two bills add up to the amount, and other loops that change are named", async () => {
    const plan = await choosePlan({ problem: house, solve });
    const loops = house.loops.map((loop) => loop.id);
    const reasons = await explainLoops({ problem: house, plan, loops, solve, seconds: 60 });
    expect(reasons.length).toBe(12);
    let changedOthers = 0;
    let heldFixed = 0;
    for (const { heldFixed: held, replanned, chosen } of reasons) {
      for (const other of [held, replanned]) {
        if (!other) continue;
        expect(other.choice.kind).not.toBe(chosen.kind);
        expect(other.differences.reduce((sum, line) => sum + line.cents, 0)).toBe(other.moreCents);
        expect(other.moreCents).toBeGreaterThanOrEqual(0);
      }
      if (held) heldFixed += 1;
      expect(held?.otherLoops ?? []).toEqual([]);
      changedOthers += (replanned?.otherLoops.length ?? 0) > 0 ? 1 : 0;
    }
    expect(heldFixed).toBeGreaterThan(5);
    expect(changedOthers).toBeGreaterThan(0);
  });

  it("without a solver tells the first of the two only", async () => {
    const plan = await choosePlan({ problem: house, solve });
    const [one] = await explainLoops({ problem: house, plan, loops: ["L1"] });
    expect(one).toMatchObject({ replanned: null, replanStatus: "not asked" });
  });
});

describe("cost against zones lost", () => {
  it.each([2, 6, 11, 20, 26, 42])("is what trying every plan finds at each number of zones (seed %i)", async (seed) => {
    const problem = randomProblem(seed, 7);
    const { points, complete } = await zonesFrontier({ problem, solve });
    expect(complete).toBe(true);
    const [cheapest] = points;
    expect(cheapest?.costCents ?? null).toBe(bruteForce(problem));
    for (let lost = 0; lost <= 7; lost += 1) {
      const allowed = points.find((point) => point.zonesLost <= lost);
      expect(allowed?.costCents ?? null).toBe(bruteForce(problem, lost));
    }
  });

  it("costs more and loses fewer from point to point, every plan priced again", async () => {
    const { points } = await zonesFrontier({ problem: house, solve });
    expect(points.length).toBeGreaterThan(2);
    points.forEach((point, at) => {
      const { zonesLost, costCents } = point;
      expect(pricePlan(house, point)).toMatchObject({ zonesLost, costCents, violations: [] });
      const before = points[at - 1];
      if (!before) return;
      expect(costCents).toBeGreaterThan(before.costCents);
      expect(zonesLost).toBeLessThan(before.zonesLost);
    });
    expect(points[points.length - 1]?.zonesLost).toBe(0);
  });
});
