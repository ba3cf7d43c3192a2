import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { choosePlan } from "../../lib/plan/choose-plan.js";
import { formulate } from "../../lib/plan/formulate.js";
import type { Solve } from "../../lib/plan/milp-model.js";
import { pricePlan } from "../../lib/plan/price-plan.js";
import type { ArticleSupply, PlanningProblem } from "../../lib/plan/problem.js";
import { deviceArticleKey } from "../../lib/plan/purchase.js";
import { uncoupleArticles } from "../../lib/plan/uncouple-articles.js";
import { solveWithHighs } from "../../lib/solver/highs.js";

const fixture = new URL("../fixtures/plan-cases/plan-25-100-loops.json", import.meta.url);
const { problem: site } = JSON.parse(readFileSync(fixture, "utf8")) as { problem: PlanningProblem };

/** The site twice over: 200 loops at 8 panels of one controller, with this supply rule. */
function twice(change: (supply: ArticleSupply) => ArticleSupply): PlanningProblem {
  const other = (id: string) => `${id}'`;
  return {
    ...site,
    modules: site.modules.map((one) => ({ ...one, ...(one.supply ? { supply: change(one.supply) } : {}) })),
    items: site.items.map((one) => ({ ...one, supply: change(one.supply) })),
    controllers: site.controllers.map((one) => ({ ...one, maxModules: 100, maxRadioDevices: 1000 })),
    panels: [...site.panels, ...site.panels.map((panel) => ({ ...panel, id: other(panel.id) }))],
    loops: [...site.loops, ...site.loops.map((loop) => ({ ...loop, id: other(loop.id), panel: other(loop.panel) }))],
  };
}

/** HiGHS, noting the largest model with whole-number columns it was given. */
function watched(): { solve: Solve; largest: () => number } {
  let columns = 0;
  return {
    largest: () => columns,
    solve: (model, options) => {
      if (model.columnInteger.some((integer) => integer)) columns = Math.max(columns, model.columnCost.length);
      return solveWithHighs(model, options);
    },
  };
}

describe("sites of more than 120 loops", () => {
  it("with a little stock and price steps out of reach: panels alone cost what the whole model costs", async () => {
    const problem = twice((supply) => ({
      ...supply,
      stock: 0,
      tiers: supply.tiers.map((tier, at) => (at === 0 ? tier : { ...tier, from: tier.from * 20 })),
    }));
    const { solve, largest } = watched();
    const plan = await choosePlan({ problem, solve, breakTies: false });
    const whole = formulate({ problem });
    const direct = await solveWithHighs(whole.model, { seconds: 60 });
    expect(direct.status).toBe("optimal");
    expect(plan).toMatchObject({ status: "optimal", costCents: Math.round(direct.objective ?? 0) });
    expect(pricePlan(problem, plan)).toMatchObject({ costCents: plan.costCents, violations: [] });
    expect(largest()).toBeLessThan(whole.columns.length / 2);
  });

  it("with stock that couples the panels: the same cost as the model without bounded needs", async () => {
    const problem = twice((supply) => supply);
    const plan = await choosePlan({ problem, solve: solveWithHighs });
    const direct = await solveWithHighs(formulate({ problem }).model, { seconds: 60 });
    expect(direct.status).toBe("optimal");
    expect(plan).toMatchObject({ status: "optimal", costCents: Math.round(direct.objective ?? 0) });
  });
});

describe("an article at one price", () => {
  const [item] = site.items;
  const priced = (supply: ArticleSupply, least: number, most: number) => {
    if (!item) throw new Error("the site has items");
    const problem = { ...site, items: [{ ...item, supply }] };
    return uncoupleArticles(problem, new Map([[deviceArticleKey(item.code), { least, most }]]));
  };
  const supply = {
    stock: 3,
    stockUnitCents: 100,
    tiers: [
      { from: 1, unitCents: 500 },
      { from: 20, unitCents: 400 },
    ],
  };

  it("stands for used-up stock and a step out of reach: 3 of 100 in place of 500 save 1,200", () => {
    const { problem, creditCents } = priced(supply, 3, 15);
    expect(problem.items[0]?.supply).toEqual({ stock: 0, stockUnitCents: 0, tiers: [{ from: 1, unitCents: 500 }] });
    expect(creditCents).toBe(1200);
  });

  it("is not put where stock may be left over, or where buying up to a step can pay", () => {
    expect(priced(supply, 2, 15)).toMatchObject({ creditCents: 0, problem: { items: [{ supply }] } });
    // 19: three of 100 and 16 of 500 cost 8,300, twenty of 400 cost 8,000. 18: 300 + 7,500 are less.
    expect(priced(supply, 3, 19).creditCents).toBe(0);
    expect(priced(supply, 3, 18).creditCents).toBe(1200);
  });
});
