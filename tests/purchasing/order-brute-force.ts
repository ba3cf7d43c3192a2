import { unitCentsAt } from "../../lib/price-book/look-up.js";
import { roundCents } from "../../lib/quantities/money.js";

export interface BruteArticle {
  readonly code: string;
  readonly need: number;
  readonly stock: number;
  readonly offers: readonly {
    readonly supplier: string;
    readonly packSize: number;
    readonly tiers: readonly { readonly fromQuantity: number; readonly unitCents: number }[];
  }[];
}

/**
 * Cheapest order by trying every number of packs (0 to `most`) of every offer of every article, all articles together;
 * written without any of the order search's ideas. Stock is free.
 */
export function bruteForceOrder(
  articles: readonly BruteArticle[],
  shipping: Readonly<Record<string, number>>,
  most: number,
): number {
  const tryArticle = (index: number, used: ReadonlySet<string>, cents: number): number => {
    const article = articles[index];
    if (!article) return [...used].reduce((sum, supplier) => sum + (shipping[supplier] ?? 0), cents);
    const tryOffer = (o: number, covered: number, now: ReadonlySet<string>, paid: number): number => {
      const offer = article.offers[o];
      if (!offer) return covered + article.stock >= article.need ? tryArticle(index + 1, now, paid) : Infinity;
      let best = tryOffer(o + 1, covered, now, paid);
      for (let packs = 1; packs <= most; packs++) {
        const quantity = packs * offer.packSize;
        const line = roundCents(quantity * unitCentsAt({ tiers: offer.tiers, quantity }));
        best = Math.min(best, tryOffer(o + 1, covered + quantity, new Set([...now, offer.supplier]), paid + line));
      }
      return best;
    };
    return tryOffer(0, 0, used, cents);
  };
  return tryArticle(0, new Set(), 0);
}
