import { describe, expect, it } from "vitest";
import { checkPlanProblem } from "../../lib/plan/check-problem.js";
import { choosePlan } from "../../lib/plan/choose-plan.js";
import { formulate } from "../../lib/plan/formulate.js";
import { greedyPlan } from "../../lib/plan/greedy-plan.js";
import { pricePlan } from "../../lib/plan/price-plan.js";
import { solveWithHighs } from "../../lib/solver/highs.js";
import { bruteForce } from "./brute-force.js";
import { randomProblem } from "./random-problem.js";

const problems = [
  ...Array.from({ length: 60 }, (_, at) => ({ seed: at + 1, problem: randomProblem(at + 1, 6 + (at % 3)) })),
  ...Array.from({ length: 12 }, (_, at) => ({
    seed: 101 + at,
    problem: randomProblem(101 + at, 9 + (at % 4), { lean: true }),
  })),
];

describe("random problems of 6 to 12 loops against trying every plan", () => {
  it("covers every optional field, and both outcomes", () => {
    const has = (test: (one: (typeof problems)[number]["problem"]) => boolean) =>
      problems.filter(({ problem }) => test(problem)).length;
    expect(has((one) => one.panels.length > 1)).toBeGreaterThan(10);
    expect(has((one) => (one.together ?? []).length > 0)).toBeGreaterThan(5);
    expect(has((one) => (one.pins ?? []).length > 0)).toBeGreaterThan(10);
    expect(has((one) => one.panels.some((panel) => panel.spareInputs !== undefined))).toBeGreaterThan(5);
    expect(has((one) => one.panels.some((panel) => panel.spareInputsWhenUsed !== undefined))).toBeGreaterThan(5);
    expect(has((one) => one.panels.some((panel) => panel.openCents !== undefined))).toBeGreaterThan(5);
    expect(has((one) => one.panels.some((panel) => panel.supplyMilliamps !== undefined))).toBeGreaterThan(10);
    expect(has((one) => one.modules.some((module) => module.sharesSupplyWith !== undefined))).toBeGreaterThan(3);
    expect(has((one) => one.loops.some((loop) => loop.keep.some((offer) => offer.items)))).toBeGreaterThan(10);
    for (const { problem } of problems) expect(checkPlanProblem(problem)).toEqual([]);
  });

  let feasible = 0;
  let infeasible = 0;
  it.each(problems)("seed $seed", async ({ problem }) => {
    const least = bruteForce(problem);
    const plan = await choosePlan({ problem, solve: solveWithHighs });
    expect(plan.costCents).toBe(least);
    const quick = greedyPlan(problem);
    if (least === null) {
      infeasible += 1;
      expect(plan.status).toBe("infeasible");
      expect(plan.why).toMatch(/needs|leaves/);
      expect(quick).toBeUndefined();
      return;
    }
    feasible += 1;
    expect(plan.status).toBe("optimal");
    expect(pricePlan(problem, plan)).toMatchObject({ costCents: least, violations: [] });
    if (quick) expect(quick.costCents).toBeGreaterThanOrEqual(least);
    // The carrier and member form says the same, where no set of loops may be divided between modules.
    if ((problem.together ?? []).length > 0) return;
    const other = await solveWithHighs(formulate({ problem, form: "B" }).model, { seconds: 60 });
    expect(Math.round(other.objective ?? 0)).toBe(least);
  });

  it("had plans and impossible ones among them", () => {
    expect(feasible).toBeGreaterThan(20);
    expect(infeasible).toBeGreaterThan(3);
  });
});
