import type { Cents } from "../quantities/money.js";
import type { ArticleSupply, PlanningProblem } from "./problem.js";

/** The cheapest way to get a number of pieces of one article. */
export interface Purchase {
  readonly need: number;
  readonly fromStock: number;
  /** Pieces bought, never fewer than need less stock; more where a price step is worth reaching. */
  readonly bought: number;
  readonly unitCents: Cents;
  readonly cents: Cents;
}

/**
 * Cheapest purchase of `need` pieces: any number from stock, the rest in one price step; undefined when the article
 * cannot be had in that number. Ties prefer fewer pieces bought.
 * @example cheapestPurchase({ stock: 1, stockUnitCents: 0, tiers: [{ from: 1, unitCents: 500 }] }, 3)?.cents; // 1000
 */
export function cheapestPurchase(supply: ArticleSupply, need: number): Purchase | undefined {
  let best: Purchase | undefined;
  const consider = (fromStock: number, bought: number, unitCents: Cents) => {
    if (fromStock < 0 || fromStock > supply.stock) return;
    const cents = fromStock * supply.stockUnitCents + bought * unitCents;
    if (best && (cents > best.cents || (cents === best.cents && bought >= best.bought))) return;
    best = { need, fromStock, bought, unitCents, cents };
  };
  if (need <= supply.stock) consider(need, 0, 0);
  // The cost is linear between "everything from stock", "nothing from stock" and "bought exactly up to the step".
  const mostFromStock = Math.min(need, supply.stock);
  for (const tier of supply.tiers) {
    for (const fromStock of [0, mostFromStock, need - tier.from]) {
      consider(fromStock, Math.max(need - fromStock, tier.from), tier.unitCents);
    }
  }
  return best;
}

/** Key of the article that a module type is drawn from. */
export function moduleArticleKey(problem: PlanningProblem, type: string): string {
  const module = problem.modules.find((candidate) => candidate.type === type);
  return `module ${module?.sharesSupplyWith ?? type}`;
}

/** Key of a wireless device as an article. */
export function deviceArticleKey(code: string): string {
  return `device ${code}`;
}

const nothingOffered: ArticleSupply = { stock: 0, stockUnitCents: 0, tiers: [] };

/** Every article with its supply, by key: modules (variants of one article together) and devices. */
export function articleSupplies(problem: PlanningProblem): ReadonlyMap<string, ArticleSupply> {
  const supplies = new Map<string, ArticleSupply>();
  for (const module of problem.modules) {
    if (module.sharesSupplyWith === undefined) {
      supplies.set(moduleArticleKey(problem, module.type), module.supply ?? nothingOffered);
    }
  }
  for (const item of problem.items) supplies.set(deviceArticleKey(item.code), item.supply);
  return supplies;
}
