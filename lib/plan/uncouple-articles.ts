import type { Cents } from "../quantities/money.js";
import type { ArticleSupply, PlanningProblem } from "./problem.js";
import { cheapestPurchase, deviceArticleKey, moduleArticleKey } from "./purchase.js";
import type { KnownNeed } from "./tighten-needs.js";

/** A problem whose articles cost the same each, and by how much its plans are then too dear. */
export interface UncoupledProblem {
  readonly problem: PlanningProblem;
  /** Saving of the stock that every plan worth finding uses up. [cents] */
  readonly creditCents: Cents;
}

/**
 * The same problem with every article at one price a piece where, for all needs that a plan worth finding can have,
 * only the fixed saving of used-up stock lies between the two. Other articles stay as they are.
 */
export function uncoupleArticles(problem: PlanningProblem, needs: ReadonlyMap<string, KnownNeed>): UncoupledProblem {
  let creditCents = 0;
  const priced = (key: string, supply: ArticleSupply | undefined): ArticleSupply | undefined => {
    const need = needs.get(key);
    const one = supply && need ? onePrice(supply, need) : undefined;
    if (!supply || one === undefined) return supply;
    const { unitCents } = one;
    creditCents += one.creditCents;
    return { stock: 0, stockUnitCents: 0, tiers: [{ from: 1, unitCents }] };
  };
  const items = problem.items.map((item) => ({
    ...item,
    supply: priced(deviceArticleKey(item.code), item.supply) ?? item.supply,
  }));
  const modules = problem.modules.map((module) =>
    module.sharesSupplyWith === undefined
      ? { ...module, supply: priced(moduleArticleKey(problem, module.type), module.supply) }
      : module,
  );
  return { problem: { ...problem, items, modules }, creditCents };
}

/** The price, and the fixed saving, at which need · price − stock · (price − stock's price) is the cheapest purchase for every need. */
function onePrice(supply: ArticleSupply, { least, most }: KnownNeed) {
  const unitCents = supply.tiers.find((tier) => tier.from <= 1)?.unitCents;
  // Stock that covers every need is one price by itself, where nobody buys to save it.
  if (most >= least && most <= supply.stock && supply.tiers.every((tier) => tier.unitCents >= supply.stockUnitCents)) {
    return { unitCents: supply.stockUnitCents, creditCents: 0 };
  }
  if (unitCents === undefined || least < supply.stock || most < least) return undefined;
  const credit = supply.stock * (unitCents - supply.stockUnitCents);
  for (let need = least; need <= most; need += 1) {
    if (cheapestPurchase(supply, need)?.cents !== need * unitCents - credit) return undefined;
  }
  return { unitCents, creditCents: credit };
}
