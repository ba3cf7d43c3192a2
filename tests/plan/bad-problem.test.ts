import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checkPlanProblem } from "../../lib/plan/check-problem.js";
import { choosePlan } from "../../lib/plan/choose-plan.js";
import type { PlanningProblem } from "../../lib/plan/problem.js";
import { solveWithHighs } from "../../lib/solver/highs.js";
import { readPlanInput } from "../../lib/survey/plan-input.js";

const file = new URL("../fixtures/plan-cases/plan-01-6-loops.json", import.meta.url);
const fixture = () => JSON.parse(readFileSync(file, "utf8"));
type Loose = Record<string, unknown>;

describe("a planning problem read from JSON", () => {
  it("comes bare or in a file with id and expected", () => {
    const whole = fixture();
    expect(readPlanInput(whole)).toEqual(readPlanInput(whole.problem));
    expect(readPlanInput(whole).loops.length).toBe(6);
  });

  it.each([
    ["problem.loops[0].colour", (one: Loose) => Object.assign(at(one, "problem", "loops", 0), { colour: "red" })],
    [
      "problem.modules[1].supply.shipping",
      (one: Loose) => Object.assign(at(one, "problem", "modules", 1, "supply"), { shipping: 1 }),
    ],
    ["comment", (one: Loose) => Object.assign(one, { comment: "" })],
    [
      "problem.items[0].supply.tiers[0].unitCents",
      (one: Loose) => Object.assign(at(one, "problem", "items", 0, "supply", "tiers", 0), { unitCents: -1 }),
    ],
    [
      "problem.items[0].supply.tiers[0].from",
      (one: Loose) => Object.assign(at(one, "problem", "items", 0, "supply", "tiers", 0), { from: 0 }),
    ],
    ["problem.modules[0].inputs", (one: Loose) => Object.assign(at(one, "problem", "modules", 0), { inputs: 0 })],
    [
      "problem.modules[0].conductorSeats",
      (one: Loose) => Object.assign(at(one, "problem", "modules", 0), { conductorSeats: 0 }),
    ],
    [
      "problem.loops[0].keep[0].baseCents",
      (one: Loose) => Object.assign(at(one, "problem", "loops", 0, "keep", 0), { baseCents: 12.5 }),
    ],
  ])("names %s when it is wrong", (path, spoil) => {
    const whole = fixture();
    spoil(whole);
    expect(() => readPlanInput(whole)).toThrow(path);
  });

  it.each([null, 7, "x", [], {}])("refuses %j without crashing", (json) => {
    expect(() => readPlanInput(json)).toThrow(/cannot be read/);
  });
});

function at(from: Loose, ...path: (string | number)[]): Loose {
  return path.reduce<unknown>((value, step) => (value as Loose)[step], from) as Loose;
}

describe("a planning problem that is no sound data", () => {
  const spoiled: [string, (one: PlanningProblem) => PlanningProblem][] = [
    [
      "problem.items[0].supply.tiers[0].unitCents",
      (one) => ({ ...one, items: [priced(one, -100), ...one.items.slice(1)] }),
    ],
    ["problem.loops[1].id", (one) => ({ ...one, loops: one.loops.map((loop) => ({ ...loop, id: "L1" })) })],
    ["problem.loops[0].panel", (one) => ({ ...one, panels: [] })],
    ["problem.panels[0].controller", (one) => ({ ...one, controllers: [] })],
    ["problem.loops[0].keep[0].module", (one) => ({ ...one, modules: [] })],
    ["problem.loops[0].withoutInput[0].items.contact", (one) => ({ ...one, items: [] })],
    ["problem.pins[0]", (one) => ({ ...one, pins: [{ loop: "L1" }] })],
    ["problem.pins[0].loop", (one) => ({ ...one, pins: [{ loop: "L99", kind: "keep" }] })],
    [
      "problem.together[0].loops[1]",
      (one) => ({ ...one, together: [{ loops: ["L1", "L1"], sameModule: true, returnSeats: 1 }] }),
    ],
    ["problem.extraConductorCents", (one) => ({ ...one, extraConductorCents: Number.NaN })],
    ["problem.join.maxLoops", (one) => ({ ...one, join: { ...one.join, maxLoops: 0 } })],
    [
      "problem.modules[0].sharesSupplyWith",
      (one) => ({ ...one, modules: one.modules.map((m) => ({ ...m, sharesSupplyWith: m.type })) }),
    ],
  ];
  it.each(spoiled)("is named: %s", async (path, spoil) => {
    const problem = spoil(fixture().problem);
    const faults = checkPlanProblem(problem);
    expect(faults.map((fault) => fault.path)).toContain(path);
    for (const fault of faults) expect(fault.message).toContain(fault.expected);
    await expect(choosePlan({ problem, solve: solveWithHighs })).rejects.toThrow(faults[0]?.path);
  });

  it("sound data has no fault", () => {
    expect(checkPlanProblem(fixture().problem)).toEqual([]);
  });
});

function priced(one: PlanningProblem, unitCents: number) {
  const [item] = one.items;
  if (!item) throw new Error("the fixture has items");
  return { ...item, supply: { ...item.supply, tiers: [{ from: 1, unitCents }] } };
}
