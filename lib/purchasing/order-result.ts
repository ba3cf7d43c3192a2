import type { Article } from "../price-book/article.js";
import { unitCentsAt } from "../price-book/look-up.js";
import type { OrderInput } from "./order-for.js";
import type { OrderItem, OrderProblem } from "./order-problem.js";
import type { Alternate, NeedCover, Order, OrderLine, OrderResult } from "./order-records.js";
import type { FoundOrder } from "./search-suppliers.js";
import { workingDaysFrom } from "./working-days.js";

/** Writes what was found as orders by supplier and a cover per article. */
export function orderResult(
  found: FoundOrder & { readonly problem: OrderProblem; readonly input: OrderInput },
): OrderResult {
  const { problem, input } = found;
  const linesOf = problem.vendors.map((): OrderLine[] => []);
  const covers: NeedCover[] = problem.items.map((item, index) => {
    const cover = found.covers[index];
    for (const { offer, packs, quantity, unitCents, lineCents } of cover?.purchases ?? []) {
      const { code, description, unit, taxClass } = item.article;
      const leadDays = item.leadDays[offer] ?? 0;
      linesOf[item.vendors[offer] ?? 0]?.push({
        code,
        class: item.article.class,
        description,
        unit,
        packs,
        packSize: item.offers[offer]?.packSize ?? quantity,
        quantity,
        unitCents,
        lineCents,
        taxClass,
        loops: item.loops,
        leadDays,
        ...(input.startOn === undefined ? {} : { orderBy: orderBy(input, leadDays) }),
        late: item.late[offer] ?? false,
        alternates: alternatesOf({ item, offer, quantity, input }),
      });
    }
    const purchases = cover?.purchases ?? [];
    const bought = purchases.reduce((sum, { quantity }) => sum + quantity, 0);
    const fromStock = cover?.fromStock ?? 0;
    return {
      code: item.article.code,
      need: item.need,
      fromStock,
      stockCents: cover?.stockCents ?? 0,
      bought,
      packs: purchases.reduce((sum, { packs }) => sum + packs, 0),
      leftOver: Math.max(0, bought + fromStock - item.need),
      loops: item.loops,
    };
  });
  const orders = problem.vendors.flatMap((vendor, index): Order[] => {
    const lines = linesOf[index] ?? [];
    if (lines.length === 0) return [];
    const goodsCents = lines.reduce((sum, { lineCents }) => sum + lineCents, 0);
    const dates = lines.flatMap((line) => (line.orderBy === undefined ? [] : [line.orderBy])).sort();
    const first = dates[0];
    return [
      {
        supplier: vendor.supplier,
        ...(lines.some(({ code }) => bandOf(problem, code) !== undefined) && vendor.radioBand !== undefined
          ? { radioBand: vendor.radioBand }
          : {}),
        lines,
        goodsCents,
        shippingCents: vendor.shippingCents,
        totalCents: goodsCents + vendor.shippingCents,
        ...(first === undefined ? {} : { orderBy: first }),
        ...(input.startOn === undefined ? {} : { needBy: input.startOn }),
      },
    ];
  });
  const { status, boundCents, method } = found;
  return { status, totalCents: found.cents, boundCents, orders, covers, method, queries: problem.queries };
}

const bandOf = ({ items }: OrderProblem, code: string): string | undefined =>
  items.find(({ article }) => article.code === code)?.article.radioBand;

function orderBy({ startOn = "", holidays = [] }: OrderInput, leadDays: number): string {
  return workingDaysFrom({ from: startOn, days: -leadDays, holidays });
}

/** Other suppliers of the article, then the articles named as its equivalents, of the same band. */
function alternatesOf({
  item,
  offer,
  quantity,
  input,
}: {
  readonly item: OrderItem;
  readonly offer: number;
  readonly quantity: number;
  readonly input: OrderInput;
}): readonly Alternate[] {
  const { article } = item;
  const chosen = item.offers[offer];
  const offersOf = (other: Article): Alternate[] =>
    other.offers
      .filter((candidate) => candidate !== chosen)
      .map(({ supplier, packSize, tiers, leadDays }) => ({
        code: other.code,
        supplier,
        unitCents: unitCentsAt({ tiers, quantity }),
        packSize,
        leadDays,
        sameArticle: other.code === article.code,
      }));
  const group = input.equivalents?.find((codes) => codes.includes(article.code)) ?? [];
  const kin = input.priceBook.articles.filter(
    ({ code, radioBand }) => code !== article.code && group.includes(code) && radioBand === article.radioBand,
  );
  return [...offersOf(article), ...kin.flatMap(offersOf)];
}
