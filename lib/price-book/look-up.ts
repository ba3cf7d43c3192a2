import { InputError } from "../problems/input-error.js";
import type { Query } from "../problems/query.js";
import type { Article, PriceBook } from "./article.js";

/** The article with this code, or undefined when the book has none. */
export function articleByCode({
  book,
  code,
}: {
  readonly book: PriceBook;
  readonly code: string;
}): Article | undefined {
  return book.articles.find((article) => article.code === code);
}

/**
 * Articles of one class, in the order of the book. With `radioBand` only those of that band or
 * without a radio.
 * @example articlesOfClass({ book, class: "battery" }).map(({ code }) => code)
 */
export function articlesOfClass({
  book,
  class: wanted,
  radioBand,
}: {
  readonly book: PriceBook;
  readonly class: string;
  readonly radioBand?: string;
}): readonly Article[] {
  return book.articles.filter(
    (article) =>
      article.class === wanted &&
      (radioBand === undefined || article.radioBand === undefined || article.radioBand === radioBand),
  );
}

/** A place that names an article by code: an input module profile, a bill line, a typed list. */
export interface CodeUse {
  readonly code: string;
  readonly sheet: string;
  readonly row: number | null;
  readonly column: string | null;
}

/** Queries for codes that the price book does not hold, in the order given. */
export function unknownCodes({
  book,
  uses,
}: {
  readonly book: PriceBook;
  readonly uses: readonly CodeUse[];
}): readonly Query[] {
  const known = new Set(book.articles.map(({ code }) => code));
  return uses
    .filter(({ code }) => !known.has(code))
    .map(({ code, sheet, row, column }) => ({
      sheet,
      row,
      column,
      typed: code,
      message: `${code || "An empty code"} is not in the price book: add a row for it or write another code`,
    }));
}

/**
 * Price of one unit when this many are bought at once, all units at the price of the highest tier reached; a quantity
 * under the first tier pays the first tier's price. [cents per unit]
 * @throws {@link InputError} when there are no tiers.
 * @example unitCentsAt({ tiers: [{ fromQuantity: 1, unitCents: 98 }, { fromQuantity: 5, unitCents: 92 }], quantity: 5 }); // 92
 */
export function unitCentsAt({
  tiers,
  quantity,
}: {
  readonly tiers: readonly { readonly fromQuantity: number; readonly unitCents: number }[];
  readonly quantity: number;
}): number {
  const first = tiers[0];
  if (first === undefined) throw new InputError({ field: "tiers", got: "none", expected: "at least one price tier" });
  let { unitCents } = first;
  for (const tier of tiers) if (quantity >= tier.fromQuantity) unitCents = tier.unitCents;
  return unitCents;
}
