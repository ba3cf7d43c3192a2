import type { Cents } from "../quantities/money.js";
import { formulate, type PlanModel } from "./formulate.js";
import { type MilpModel, type Solve, type SolveOptions, withRow } from "./milp-model.js";
import type { ModuleCounts, PlanChoice, PlanDraft } from "./plan.js";
import { pricePlan } from "./price-plan.js";
import type { ArticleSupply, PlanningProblem } from "./problem.js";
import { articleSupplies, cheapestPurchase, deviceArticleKey, moduleArticleKey } from "./purchase.js";
import { readSolution } from "./read-solution.js";
import { subproblem } from "./subproblem.js";
import type { KnownNeed } from "./tighten-needs.js";

/** What a panel costs at least when every piece of an article costs so much, whatever the other panels do. */
export interface PanelBound {
  readonly panel: string;
  /** By article, of those with stock or price steps. [cents a piece] */
  readonly prices: ReadonlyMap<string, Cents>;
  readonly leastCents: Cents;
}

export interface PanelPricesInput {
  readonly problem: PlanningProblem;
  readonly needs: ReadonlyMap<string, KnownNeed>;
  /** Cost of a known plan. */
  readonly costCents: Cents;
  readonly solve: Solve;
  readonly options: () => SolveOptions;
  /** Whether there is time for another round. */
  readonly goOn: () => boolean;
}

export interface PanelPrices {
  /** No plan as cheap as the known one costs less. */
  readonly boundCents: Cents;
  readonly bounds: readonly PanelBound[];
  readonly best: (PlanDraft & { readonly costCents: Cents }) | undefined;
}

/** Most rounds of prices. */
const mostRounds = 14;

/** Rounds whose bounds are kept: the best ones; more would only make the model larger. */
const roundsKept = 3;

/** Branching nodes for one panel in one round; the bound holds wherever the search ends. */
const nodesForOnePanel = 20;

/**
 * Lagrangian relaxation of what couples the panels: articles with stock or price steps get one price a piece, every
 * panel is planned by itself at these prices, and Σ panels + Σ min over the needs of (purchase − price · need) bounds
 * every plan as cheap as the known one. Prices move along the difference between what the panels ask for and what
 * would be bought (subgradient, Polyak's step). See docs/decisions/cheapest-plan.md.
 */
export async function panelPrices(input: PanelPricesInput): Promise<PanelPrices> {
  const { problem, needs, costCents, goOn } = input;
  const supplies = new Map([...articleSupplies(problem)].filter(([key]) => needs.has(key)));
  let prices: ReadonlyMap<string, Cents> = new Map([...supplies].map(([key, supply]) => [key, firstPrice(supply)]));
  const rounds: { readonly dualCents: Cents; readonly bounds: readonly PanelBound[] }[] = [];
  let best: PanelPrices["best"];
  for (let round = 0; round < mostRounds && goOn(); round += 1) {
    const asked = await askPanels(input, prices);
    if (!asked) break;
    const wanted = new Map<string, { need: number; cents: number }>();
    for (const [key, supply] of supplies) wanted.set(key, cheapestNeed(supply, needs.get(key), prices.get(key) ?? 0));
    const dualCents = [...wanted.values()].reduce((sum, { cents }) => sum + cents, asked.leastCents);
    rounds.push({ dualCents, bounds: asked.bounds });
    const priced = pricePlan(problem, asked.draft);
    if (priced.violations.length === 0 && priced.costCents < (best?.costCents ?? Infinity)) {
      best = { ...asked.draft, costCents: priced.costCents };
    }
    const used = needsOf(problem, asked.draft);
    const target = Math.min(costCents, best?.costCents ?? Infinity);
    if (dualCents >= target - 1) break;
    const slopes = new Map([...wanted].map(([key, { need }]) => [key, (used.get(key) ?? 0) - need]));
    prices = movedPrices({ supplies, prices, slopes, rise: (round < 9 ? 0.8 : 0.4) * (target - dualCents) });
  }
  const kept = [...rounds].sort((a, b) => b.dualCents - a.dualCents).slice(0, roundsKept);
  const boundCents = Math.max(0, ...rounds.map(({ dualCents }) => dualCents));
  return { boundCents, bounds: kept.flatMap(({ bounds }) => bounds), best };
}

/** The model with a row for every bound: what a panel costs, articles at the bound's prices, is not less. */
export function withPanelBounds(problem: PlanningProblem, plan: PlanModel, bounds: readonly PanelBound[]): PlanModel {
  const articleAt = new Map(plan.articles.map(({ row, article }) => [row, article]));
  let model: MilpModel = plan.model;
  for (const { panel, prices, leastCents } of bounds) {
    const coefficients = plan.columns.map((_, column) => {
      if (panelOfColumn(problem, plan, column) !== panel) return 0;
      let cents = plan.model.columnCost[column] ?? 0;
      for (let at = plan.model.columnStart[column] ?? 0; at < (plan.model.columnStart[column + 1] ?? 0); at += 1) {
        const article = articleAt.get(plan.model.rowIndex[at] ?? -1);
        if (article !== undefined) cents -= (plan.model.value[at] ?? 0) * (prices.get(article) ?? 0);
      }
      return cents;
    });
    model = withRow(model, { coefficients, lower: leastCents, upper: Infinity });
  }
  return { ...plan, model };
}

/** Panel that a column belongs to; undefined for what is bought. */
export function panelOfColumn(problem: PlanningProblem, { columns }: PlanModel, column: number): string | undefined {
  const meaning = columns[column];
  if (meaning === undefined) return undefined;
  if (meaning.is === "modules" || meaning.is === "reckoning") return meaning.panel;
  const loop = meaning.is === "group" ? meaning.loops[0] : meaning.loop;
  return problem.loops[loop ?? 0]?.panel;
}

const dearest = ({ tiers, stockUnitCents }: ArticleSupply): Cents =>
  Math.max(stockUnitCents, ...tiers.map(({ unitCents }) => unitCents));

/** Somewhere between what stock and what a purchase costs. */
const firstPrice = (supply: ArticleSupply): Cents =>
  Math.round(supply.stock > 0 ? 0.4 * supply.stockUnitCents + 0.6 * dearest(supply) : dearest(supply));

function cheapestNeed(supply: ArticleSupply, known: KnownNeed | undefined, price: Cents) {
  let best = { need: known?.least ?? 0, cents: Infinity };
  for (let need = known?.least ?? 0; need <= (known?.most ?? 0); need += 1) {
    const cents = (cheapestPurchase(supply, need)?.cents ?? Infinity) - price * need;
    if (cents < best.cents) best = { need, cents };
  }
  return best;
}

function movedPrices({
  supplies,
  prices,
  slopes,
  rise,
}: {
  readonly supplies: ReadonlyMap<string, ArticleSupply>;
  readonly prices: ReadonlyMap<string, Cents>;
  readonly slopes: ReadonlyMap<string, number>;
  readonly rise: number;
}): ReadonlyMap<string, Cents> {
  const free = [...supplies].flatMap(([key, supply]) => {
    const price = prices.get(key) ?? 0;
    const slope = slopes.get(key) ?? 0;
    const most = dearest(supply);
    const held = (price >= most && slope > 0) || (price <= 0 && slope < 0);
    // Dear articles move by more: the step is measured in shares of the price.
    return held ? [] : [{ key, price, slope, most, weight: (most / 1000) ** 2 }];
  });
  const norm = free.reduce((sum, { slope, weight }) => sum + weight * slope * slope, 0);
  if (norm === 0) return prices;
  const moved = new Map(prices);
  for (const { key, price, slope, most, weight } of free) {
    moved.set(key, Math.max(0, Math.min(most, Math.round(price + (rise / norm) * weight * slope))));
  }
  return moved;
}

async function askPanels({ problem, solve, options }: PanelPricesInput, prices: ReadonlyMap<string, Cents>) {
  const at = (key: string, supply: ArticleSupply): ArticleSupply => {
    const unitCents = prices.get(key);
    return unitCents === undefined ? supply : { stock: 0, stockUnitCents: 0, tiers: [{ from: 1, unitCents }] };
  };
  const priced: PlanningProblem = {
    ...problem,
    items: problem.items.map((item) => ({ ...item, supply: at(deviceArticleKey(item.code), item.supply) })),
    modules: problem.modules.map((module) =>
      module.supply && module.sharesSupplyWith === undefined
        ? { ...module, supply: at(moduleArticleKey(problem, module.type), module.supply) }
        : module,
    ),
  };
  const bounds: PanelBound[] = [];
  const choices: PlanChoice[] = [];
  let modules: ModuleCounts = {};
  for (const { id } of problem.panels) {
    const part = subproblem(priced, [id]);
    const plan = formulate({ problem: part });
    const result = await solve(plan.model, { ...options(), maxNodes: nodesForOnePanel });
    if (result.bound === null || !result.values) return undefined;
    const draft = readSolution(part, plan, result.values);
    choices.push(...draft.choices);
    modules = { ...modules, ...draft.modules };
    bounds.push({ panel: id, prices, leastCents: Math.ceil(result.bound - 1e-2) });
  }
  const leastCents = bounds.reduce((sum, bound) => sum + bound.leastCents, 0);
  return { bounds, leastCents, draft: { choices, modules } };
}

/** Pieces of each article that a plan takes. */
function needsOf(problem: PlanningProblem, { choices, modules }: PlanDraft): ReadonlyMap<string, number> {
  const needs = new Map<string, number>();
  const add = (key: string, count: number) => needs.set(key, (needs.get(key) ?? 0) + count);
  for (const counts of Object.values(modules)) {
    for (const [type, count] of Object.entries(counts)) add(moduleArticleKey(problem, type), count);
  }
  const loops = new Map(problem.loops.map((loop) => [loop.id, loop]));
  for (const { loop, option, module, kind } of choices) {
    const offers = loops.get(loop);
    const offer =
      option !== undefined
        ? offers?.withoutInput[option]
        : kind === "keep"
          ? offers?.keep.find((one) => one.module === module)
          : undefined;
    for (const [code, count] of Object.entries(offer?.items ?? {})) add(deviceArticleKey(code), count);
  }
  return needs;
}
