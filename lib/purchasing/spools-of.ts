import type { Article } from "../price-book/article.js";
import { unitCentsAt } from "../price-book/look-up.js";
import { InputError } from "../problems/input-error.js";
import { metersPerUnit } from "../quantities/length-unit.js";
import { roundCents } from "../quantities/money.js";
import type { Spool } from "./cut-records.js";

/**
 * Spools that wire articles are sold on, one per article: a pack of the supplier whose pack is cheapest per metre, at
 * the price of one pack. Stock is taken for whole packs and one opened spool with the rest, a remnant of its own.
 * @throws {@link InputError} when an article is not sold by length.
 * @example spoolsOf(articlesOfClass({ book, class: "wire" }))[0]?.meters; // 152.4 for 500 ft
 */
export function spoolsOf(articles: readonly Article[]): readonly Spool[] {
  return articles.flatMap((article): Spool[] => {
    const perUnit = metersPerUnit(article.unit);
    if (perUnit === undefined) {
      throw new InputError({
        field: `unit of ${article.code}`,
        got: article.unit,
        expected: "a unit of length, such as ft or m",
      });
    }
    const packs = article.offers.map(({ packSize, tiers }) => ({
      packSize,
      meters: packSize * perUnit,
      cents: roundCents(packSize * unitCentsAt({ tiers, quantity: packSize })),
    }));
    const best = packs.sort((a, b) => a.cents / a.meters - b.cents / b.meters)[0];
    if (!best) return [];
    const stock = Math.floor(article.stock / best.packSize + 1e-9);
    const rest = (article.stock - stock * best.packSize) * perUnit;
    const { code } = article;
    return [
      ...(rest > 1e-6 ? [{ code, meters: rest, cents: 0, stock: 1, mostBought: 0 }] : []),
      { code, meters: best.meters, cents: best.cents, stock },
    ];
  });
}
