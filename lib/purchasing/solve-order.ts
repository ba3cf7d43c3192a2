import { MilpBuilder, type MilpModel, type Solve } from "../plan/milp-model.js";
import { roundCents } from "../quantities/money.js";
import { type CoverPurchase, type ItemCover, packsCost } from "./cover-item.js";
import { mostPacks, type OrderItem, type OrderProblem } from "./order-problem.js";
import type { FoundOrder } from "./search-suppliers.js";

interface PackVariable {
  readonly item: number;
  readonly offer: number;
  readonly variable: number;
}

/** Costs enter the model in thousandths of a cent where a unit price is a fraction of a cent. */
const FINE = 1000;

/**
 * The order as a mixed-integer linear model. For item i, offer o, tier t: packs n, tier used y (binary);
 * for vendor v: order z (binary); for item i: units from the van s.
 * min Σ pack·unitCents_t·n + Σ shipping·z + Σ stockUnitCents·s
 * s.t. Σ pack·n + s ≥ need, s ≤ stock (s = min(stock, need) with the van first), from_t·y ≤ pack·n ≤ pack·most·y,
 * Σ_t y ≤ z per item and offer.
 */
export function orderModel({ vendors, items }: OrderProblem): {
  readonly model: MilpModel;
  readonly packs: readonly PackVariable[];
  /** What one cent is in the model's objective. */
  readonly scale: number;
} {
  const prices = items.flatMap(({ stockUnitCents, offers }) => [
    stockUnitCents,
    ...offers.flatMap(({ packSize, tiers }) => tiers.map(({ unitCents }) => packSize * unitCents)),
  ]);
  const scale = prices.every(Number.isInteger) ? 1 : FINE;
  const build = new MilpBuilder();
  const cost = (cents: number): number => Math.round(cents * scale);
  const orders = vendors.map(({ shippingCents }) => build.column({ cost: cost(shippingCents), upper: 1 }));
  const packs: PackVariable[] = [];
  for (const [i, item] of items.entries()) {
    const upper = Math.min(item.stock, item.need);
    const lower = item.stockFirst ? upper : 0;
    const cover = build.row(item.need, Number.POSITIVE_INFINITY);
    build.entry(cover, build.column({ cost: cost(item.stockUnitCents), lower, upper, integer: false }), 1);
    for (const [o, { packSize, tiers }] of item.offers.entries()) {
      const most = mostPacks(item, o);
      const oneTier = build.row(Number.NEGATIVE_INFINITY, 0);
      build.entry(oneTier, orders[item.vendors[o] ?? 0] ?? 0, -1);
      for (const [t, { fromQuantity, unitCents }] of tiers.entries()) {
        const n = build.column({ cost: cost(packSize * unitCents), upper: most });
        const y = build.column({ cost: 0, upper: 1 });
        packs.push({ item: i, offer: o, variable: n });
        build.entry(cover, n, packSize);
        build.entry(oneTier, y, 1);
        const used = build.row(Number.NEGATIVE_INFINITY, 0);
        build.entry(used, n, 1);
        build.entry(used, y, -most);
        if (t === 0) continue; // under the first tier the first tier's price holds too
        const reached = build.row(0, Number.POSITIVE_INFINITY);
        build.entry(reached, n, packSize);
        build.entry(reached, y, -fromQuantity);
      }
    }
  }
  return { model: build.build(), packs, scale };
}

/** Solves the model and prices the answer again from the book; undefined when the solver gave nothing usable. */
export async function solveOrder(
  problem: OrderProblem,
  solve: Solve,
  seconds: number,
): Promise<FoundOrder | undefined> {
  const { model, packs, scale } = orderModel(problem);
  const { values, bound } = await solve(model, { seconds });
  if (!values) return undefined;
  const covers: ItemCover[] = [];
  const used = new Set<number>();
  for (const [i, item] of problem.items.entries()) {
    const counts = item.offers.map((_, o) =>
      packs
        .filter((pack) => pack.item === i && pack.offer === o)
        .reduce((sum, { variable }) => sum + Math.round(values[variable] ?? 0), 0),
    );
    const cover = priced(item, counts);
    if (!cover) return undefined;
    for (const { offer } of cover.purchases) used.add(item.vendors[offer] ?? 0);
    covers.push(cover);
  }
  const goods = covers.reduce((sum, { cents }) => sum + cents, 0);
  const cents = [...used].reduce((sum, vendor) => sum + (problem.vendors[vendor]?.shippingCents ?? 0), goods);
  // Each printed line may differ from the model's unrounded cost by half a cent.
  const lines = problem.items.reduce((sum, { offers }) => sum + offers.length + 1, 0);
  const slack = scale === 1 ? 1e-3 : lines / 2;
  const boundCents = bound === null ? 0 : Math.min(cents, Math.ceil(bound / scale - slack));
  return {
    status: boundCents >= cents ? "optimal" : "feasible",
    cents,
    boundCents,
    covers,
    method: "mixed-integer model of the whole order",
  };
}

function priced(item: OrderItem, counts: readonly number[]): ItemCover | undefined {
  const purchases = counts.flatMap((count, offer): CoverPurchase[] => {
    const source = item.offers[offer];
    return source && count > 0 ? [{ ...packsCost(source, count), offer }] : [];
  });
  const bought = purchases.reduce((sum, { quantity }) => sum + quantity, 0);
  const left = Math.max(0, item.need - bought);
  if (left > item.stock + 1e-6) return undefined;
  const fromStock = Math.min(item.stock, item.stockFirst ? item.need : left);
  const stockCents = roundCents(fromStock * item.stockUnitCents);
  return {
    cents: purchases.reduce((sum, { lineCents }) => sum + lineCents, stockCents),
    fromStock,
    stockCents,
    purchases,
  };
}
