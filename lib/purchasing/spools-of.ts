import type { Article } from "../price-book/article.js";
import { unitCentsAt } from "../price-book/look-up.js";
import { InputError } from "../problems/input-error.js";
import { roundCents } from "../quantities/money.js";
import type { Spool } from "./cut-records.js";

/** Length units of the price book. [m] */
const METERS_PER_UNIT: Readonly<Record<string, number>> = { ft: 0.3048, m: 1, yd: 0.9144 };

/**
 * Spools that wire articles are sold on, one per article: a pack of the supplier whose pack is cheapest per metre, at
 * the price of one pack. Stock counts whole packs only; what is left on an opened spool is a remnant of its own
 * (`{ code, meters, cents: 0, stock: 1, mostBought: 0 }`).
 * @throws {@link InputError} when an article is not sold by ft, m or yd.
 * @example spoolsOf(articlesOfClass({ book, class: "wire" }))[0]?.meters; // 152.4 for 500 ft
 */
export function spoolsOf(articles: readonly Article[]): readonly Spool[] {
  return articles.flatMap((article): Spool[] => {
    const metersPerUnit = METERS_PER_UNIT[article.unit];
    if (metersPerUnit === undefined) {
      throw new InputError({ field: `unit of ${article.code}`, got: article.unit, expected: "ft, m or yd" });
    }
    const packs = article.offers.map(({ packSize, tiers }) => ({
      packSize,
      meters: packSize * metersPerUnit,
      cents: roundCents(packSize * unitCentsAt({ tiers, quantity: packSize })),
    }));
    const best = packs.sort((a, b) => a.cents / a.meters - b.cents / b.meters)[0];
    if (!best) return [];
    const stock = Math.floor(article.stock / best.packSize + 1e-9);
    return [{ code: article.code, meters: best.meters, cents: best.cents, stock }];
  });
}
