import type { Article, PriceBook } from "../price-book/article.js";
import { articleByCode, unknownCodes } from "../price-book/look-up.js";
import type { Query } from "../problems/query.js";
import type { Cents } from "../quantities/money.js";
import { type CoverItem, stepsToReach } from "./cover-item.js";
import type { Need } from "./order-records.js";
import { workingDaysFrom } from "./working-days.js";

/** A supplier for one radio band: what one order is. */
export interface Vendor {
  readonly supplier: string;
  readonly radioBand?: string;
  readonly shippingCents: Cents;
}

/** One article to be covered, with where its offers come from. */
export interface OrderItem extends CoverItem {
  readonly article: Article;
  readonly loops: readonly string[];
  /** Index into the vendors, one per offer of the cover item. */
  readonly vendors: readonly number[];
  readonly leadDays: readonly number[];
  readonly late: readonly boolean[];
}

export interface OrderProblem {
  readonly vendors: readonly Vendor[];
  readonly items: readonly OrderItem[];
  readonly queries: readonly Query[];
}

export interface OrderProblemInput {
  readonly needs: readonly Need[];
  readonly priceBook: PriceBook;
  readonly stock: "first" | "cheapest" | "none";
  readonly stockAt: "free" | "bookPrice";
  readonly startOn?: string;
  readonly orderOn?: string;
  readonly holidays?: readonly string[];
}

/** Needs of one article added up, its loops in order of first mention. Parts of a unit are kept. */
function gather(needs: readonly Need[]): Map<string, { quantity: number; loops: Set<string> }> {
  const sums = new Map<string, { quantity: number; loops: Set<string> }>();
  for (const { code, quantity, loops } of needs) {
    const sum = sums.get(code) ?? { quantity: 0, loops: new Set<string>() };
    sum.quantity += quantity;
    for (const loop of loops) sum.loops.add(loop);
    sums.set(code, sum);
  }
  return sums;
}

/** Puts needs and book into the shape the searches take: vendors, items with offers, queries for what is left out. */
export function orderProblem(input: OrderProblemInput): OrderProblem {
  const { needs, priceBook } = input;
  const queries: Query[] = [];
  const usable = needs.filter((need, index) => {
    if (Number.isFinite(need.quantity) && need.quantity >= 0) return true;
    const message = `${need.code}: the need is not a quantity of 0 or more; left out of the order`;
    queries.push({ sheet: "bill", row: index + 1, column: "need", typed: String(need.quantity), message });
    return false;
  });
  const uses = usable.map(({ code }, index) => ({ code, sheet: "bill", row: index + 1, column: "code" }));
  queries.push(...unknownCodes({ book: priceBook, uses }));
  const wanted = [...gather(usable)].flatMap(([code, sum]) => {
    const article = articleByCode({ book: priceBook, code });
    return article && sum.quantity > 0 ? [{ article, ...sum }] : [];
  });
  const bands = [...new Set(wanted.flatMap(({ article }) => (article.radioBand ? [article.radioBand] : [])))];
  if (bands.length > 1) {
    const message = `The needs mix the radio bands ${bands.join(", ")}; each goes into its own order. Is one of them wrong?`;
    queries.push({ sheet: "bill", row: null, column: "radioBand", typed: bands.join(", "), message });
  }
  const vendors = vendorsOf(priceBook, wanted, bands);
  const items = wanted.map(({ article, quantity, loops }) =>
    itemOf({ article, quantity, loops: [...loops], vendors, input }),
  );
  return { vendors, items, queries };
}

function vendorsOf(
  book: PriceBook,
  wanted: readonly { readonly article: Article }[],
  bands: readonly string[],
): readonly Vendor[] {
  const selling = new Set(wanted.flatMap(({ article }) => article.offers.map(({ supplier }) => supplier)));
  return book.suppliers
    .filter(({ supplier }) => selling.has(supplier))
    .flatMap(({ supplier, shippingCents }): Vendor[] => {
      const sold = bands.filter((band) =>
        wanted.some(({ article }) => article.radioBand === band && article.offers.some((o) => o.supplier === supplier)),
      );
      if (sold.length === 0) return [{ supplier, shippingCents }];
      return sold.map((radioBand) => ({ supplier, radioBand, shippingCents }));
    });
}

function itemOf({
  article,
  quantity,
  loops,
  vendors,
  input,
}: {
  readonly article: Article;
  readonly quantity: number;
  readonly loops: readonly string[];
  readonly vendors: readonly Vendor[];
  readonly input: OrderProblemInput;
}): OrderItem {
  const { startOn, orderOn, holidays = [] } = input;
  const placed = vendors.flatMap((vendor, index) => {
    if (article.radioBand !== undefined && vendor.radioBand !== article.radioBand) return [];
    const offer = article.offers.find(({ supplier }) => supplier === vendor.supplier);
    if (!offer) return [];
    const late =
      startOn !== undefined &&
      orderOn !== undefined &&
      workingDaysFrom({ from: orderOn, days: offer.leadDays, holidays }) > startOn;
    return [{ index, offer, late }];
  });
  const inTime = placed.filter(({ late }) => !late);
  const used = inTime.length > 0 ? inTime : placed;
  return {
    article,
    loops,
    need: quantity,
    stock: input.stock === "none" ? 0 : article.stock,
    stockFirst: input.stock === "first",
    stockUnitCents: input.stockAt === "free" ? 0 : bookPrice(article),
    offers: used.map(({ offer }) => offer),
    vendors: used.map(({ index }) => index),
    leadDays: used.map(({ offer }) => offer.leadDays),
    late: used.map(({ late }) => late),
  };
}

/** What one unit costs when one pack is bought at the cheapest supplier. [cents per unit] */
export function bookPrice(article: Article): number {
  const prices = article.offers.map(({ packSize, tiers }) => {
    const tier = [...tiers].reverse().find(({ fromQuantity }) => fromQuantity <= packSize + 1e-9) ?? tiers[0];
    return tier?.unitCents ?? Number.POSITIVE_INFINITY;
  });
  return Math.min(...prices);
}

/** Most packs of an offer that are ever worth buying: the need, or up to its last tier. */
export function mostPacks(item: OrderItem, offer: number): number {
  const { packSize, tiers } = item.offers[offer] ?? { packSize: 1, tiers: [] };
  const last = tiers[tiers.length - 1]?.fromQuantity ?? 0;
  return Math.max(stepsToReach(item.need, packSize), stepsToReach(last, packSize));
}
