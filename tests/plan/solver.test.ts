import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import ts from "typescript";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { choosePlan } from "../../lib/plan/choose-plan.js";
import { formulate } from "../../lib/plan/formulate.js";
import type { MilpModel, Solve } from "../../lib/plan/milp-model.js";
import { MilpBuilder } from "../../lib/plan/milp-model.js";
import { pricePlan } from "../../lib/plan/price-plan.js";
import type { PlanningProblem } from "../../lib/plan/problem.js";
import { solveWithHighs } from "../../lib/solver/highs.js";

const fixture = new URL("../fixtures/plan-cases/plan-21-40-loops.json", import.meta.url);
const { problem, expected } = JSON.parse(readFileSync(fixture, "utf8")) as {
  problem: PlanningProblem;
  expected: { costCents: number };
};

/** Least number of coins of 1, 5, 10 and 25 for 41: 25 + 10 + 5 + 1. */
function coins(): MilpModel {
  const builder = new MilpBuilder();
  const row = builder.row(41, 41);
  for (const value of [1, 5, 10, 25]) builder.entry(row, builder.column({ cost: 1, upper: 41 }), value);
  return builder.build();
}

describe("the exact solver in this thread", () => {
  it("solves the change-making problem for 41 (25 + 10 + 5 + 1, arithmetic)", async () => {
    const result = await solveWithHighs(coins(), { seconds: 10 });
    expect(result.status).toBe("optimal");
    expect(result.values?.map(Math.round)).toEqual([1, 1, 1, 1]);
    expect(result.bound).toBeGreaterThan(3);
  });

  it("does not take a model without columns for solved when its rows ask for something", async () => {
    const builder = new MilpBuilder();
    builder.row(1, 1);
    expect((await solveWithHighs(builder.build(), { seconds: 10 })).status).toBe("infeasible");
    expect((await solveWithHighs(new MilpBuilder().build(), { seconds: 10 })).objective).toBe(0);
  });

  it("does nothing after the signal was raised or without time", async () => {
    expect((await solveWithHighs(coins(), { seconds: 10, signal: { aborted: true } })).status).toBe("cut short");
    expect((await solveWithHighs(coins(), { seconds: 0 })).values).toBeNull();
  });

  it("gives the same values twice", async () => {
    const { model } = formulate({ problem });
    const [first, second] = [
      await solveWithHighs(model, { seconds: 60 }),
      await solveWithHighs(model, { seconds: 60 }),
    ];
    expect(first.values?.length).toBeGreaterThan(100);
    expect(second.values).toEqual(first.values);
  });
});

describe("a plan without a full solve", () => {
  it("is the quick plan, unproved and with the reason, when the solver cannot run", async () => {
    const broken: Solve = () => Promise.reject(new Error("no WebAssembly here"));
    const plan = await choosePlan({ problem, solve: broken });
    expect(plan.status).toBe("feasible");
    expect(plan.why).toMatch(/no WebAssembly here.*Not proved lowest/);
    expect(plan.boundCents).toBeLessThanOrEqual(expected.costCents);
    expect(plan.costCents).toBeGreaterThanOrEqual(expected.costCents);
    expect(pricePlan(problem, plan)).toMatchObject({ costCents: plan.costCents, violations: [] });
  });

  it("carries a bound not above the optimum when there is no time", async () => {
    const plan = await choosePlan({ problem, solve: solveWithHighs, seconds: 0 });
    expect(plan.status).toBe("feasible");
    expect(plan.boundCents).toBeLessThanOrEqual(expected.costCents);
  });

  it("is refused when a solver hands back values that break a rule", async () => {
    const liar: Solve = (model) =>
      Promise.resolve({ status: "optimal", objective: 0, values: model.columnCost.map(() => 0), bound: 0, seconds: 0 });
    await expect(choosePlan({ problem, solve: liar })).rejects.toThrow(/breaks a rule/);
  });
});

describe("the exact solver in a thread of its own", () => {
  let folder = "";
  let inWorker: Solve;
  beforeAll(async () => {
    const root = fileURLToPath(new URL("../../", import.meta.url));
    folder = mkdtempSync(join(tmpdir(), "solver-"));
    writeFileSync(join(folder, "package.json"), '{"type":"module"}');
    symlinkSync(join(root, "node_modules"), join(folder, "node_modules"));
    for (const stage of ["solver", "plan"]) {
      mkdirSync(join(folder, stage));
      for (const name of readdirSync(join(root, "lib", stage)).filter((one) => one.endsWith(".ts"))) {
        const { outputText } = ts.transpileModule(readFileSync(join(root, "lib", stage, name), "utf8"), {
          compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022, verbatimModuleSyntax: true },
        });
        writeFileSync(join(folder, stage, name.replace(/ts$/, "js")), outputText);
      }
    }
    const url = pathToFileURL(join(folder, "solver", "highs-in-worker.js")).href;
    inWorker = ((await import(/* @vite-ignore */ url)) as { solveWithHighsInWorker: Solve }).solveWithHighsInWorker;
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it("finds the same optimum, and reports progress on the way", async () => {
    let reports = 0;
    const plan = await choosePlan({ problem, solve: inWorker, onProgress: () => (reports += 1) });
    expect(plan).toMatchObject({ status: "optimal", costCents: expected.costCents });
    expect(reports).toBeGreaterThan(1);
  });

  it("ends when the signal is raised while it works", async () => {
    const signal = { aborted: false };
    const { model } = formulate({ problem });
    const running = inWorker(model, { seconds: 600, signal });
    signal.aborted = true;
    expect((await running).status).toMatch(/cut short|optimal/);
  });
});
