import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { choosePlan } from "../../lib/plan/choose-plan.js";
import type { Plan, PlanDraft } from "../../lib/plan/plan.js";
import { pricePlan } from "../../lib/plan/price-plan.js";
import type { PlanningProblem } from "../../lib/plan/problem.js";
import { solveWithHighs } from "../../lib/solver/highs.js";

interface PlanCase {
  readonly id: string;
  readonly problem: PlanningProblem;
  readonly expected: {
    readonly status: string;
    readonly costCents: number | null;
    readonly habitCents: number | null;
    readonly examplePlan: PlanDraft | null;
  };
}

const folder = new URL("../fixtures/plan-cases/", import.meta.url);
const cases: PlanCase[] = readdirSync(folder).map((name) => JSON.parse(readFileSync(new URL(name, folder), "utf8")));

it("has eight cases, one of them infeasible", () => {
  expect(cases.length).toBe(8);
  expect(cases.filter((one) => one.expected.status === "infeasible").length).toBe(1);
});

describe.each(cases)("$id, optimum agreed on by HiGHS, CBC and GLPK", ({ problem, expected }) => {
  let plan: Plan;
  beforeAll(async () => {
    plan = await choosePlan({ problem, solve: solveWithHighs });
  });

  it("is found and proved, or proved infeasible", () => {
    expect(plan.status).toBe(expected.status);
    expect(plan.costCents).toBe(expected.costCents);
    expect(plan.boundCents).toBe(expected.costCents);
    if (plan.status === "infeasible") expect(plan.why).toMatch(/needs \d+ radio devices, the controller takes 2/);
  });

  it("costs the same priced again, and breaks no rule", () => {
    if (expected.costCents === null) return;
    expect(pricePlan(problem, plan)).toMatchObject({ costCents: expected.costCents, violations: [] });
    expect(plan.costCents).toBeLessThanOrEqual(expected.habitCents ?? 0);
  });

  it("prices the example plan of those solvers at the agreed cost", () => {
    if (!expected.examplePlan) return;
    expect(pricePlan(problem, expected.examplePlan)).toMatchObject({ costCents: expected.costCents, violations: [] });
  });
});
