import { roundCents } from "../quantities/money.js";
import { type CoverPurchase, type ItemCover, packsCost } from "./cover-item.js";
import type { LinearModel, Solve } from "./linear-model.js";
import { mostPacks, type OrderItem, type OrderProblem } from "./order-problem.js";
import type { FoundOrder } from "./search-suppliers.js";

interface PackVariable {
  readonly item: number;
  readonly offer: number;
  readonly variable: number;
}

/**
 * The order as a mixed-integer linear model. For item i, offer o, tier t: packs n, tier used y (binary);
 * for vendor v: order z (binary); for item i: units from the van s.
 * min Σ pack·unitCents_t·n + Σ shipping·z + Σ stockUnitCents·s
 * s.t. Σ pack·n + s ≥ need, s ≤ stock (s = min(stock, need) with the van first), from_t·y ≤ pack·n ≤ pack·most·y,
 * Σ_t y ≤ 1 per item and offer, y ≤ z.
 */
export function orderModel({ vendors, items }: OrderProblem): {
  readonly model: LinearModel;
  readonly packs: readonly PackVariable[];
  readonly stock: readonly number[];
} {
  const variables: LinearModel["variables"][number][] = [];
  const rows: LinearModel["rows"][number][] = [];
  const packs: PackVariable[] = [];
  const add = (variable: LinearModel["variables"][number]): number => variables.push(variable) - 1;
  const orders = vendors.map(({ shippingCents }, v) =>
    add({ name: `z${v}`, cost: shippingCents, upper: 1, integer: true }),
  );
  const stock = items.map((item, i) => {
    const upper = Math.min(item.stock, item.need);
    return add({ name: `s${i}`, cost: item.stockUnitCents, lower: item.stockFirst ? upper : 0, upper, integer: false });
  });
  for (const [i, item] of items.entries()) {
    const cover = [{ variable: stock[i] ?? 0, factor: 1 }];
    for (const [o, offer] of item.offers.entries()) {
      const most = mostPacks(item, o);
      const one: { variable: number; factor: number }[] = [];
      for (const [t, tier] of offer.tiers.entries()) {
        const size = offer.packSize;
        // Under the first tier the first tier's price holds too.
        const from = t === 0 ? 0 : tier.fromQuantity;
        const n = add({ name: `n${i}_${o}_${t}`, cost: size * tier.unitCents, upper: most, integer: true });
        const y = add({ name: `y${i}_${o}_${t}`, cost: 0, upper: 1, integer: true });
        packs.push({ item: i, offer: o, variable: n });
        cover.push({ variable: n, factor: size });
        one.push({ variable: y, factor: 1 });
        const use = [
          { variable: n, factor: 1 },
          { variable: y, factor: -most },
        ];
        rows.push({ name: `u${i}_${o}_${t}`, upper: 0, terms: use });
        if (from > 0) {
          const reach = [
            { variable: n, factor: size },
            { variable: y, factor: -from },
          ];
          rows.push({ name: `r${i}_${o}_${t}`, lower: 0, terms: reach });
        }
      }
      rows.push({
        name: `t${i}_${o}`,
        upper: 0,
        terms: [...one, { variable: orders[item.vendors[o] ?? 0] ?? 0, factor: -1 }],
      });
    }
    rows.push({ name: `c${i}`, lower: item.need, terms: cover });
  }
  return { model: { variables, rows }, packs, stock };
}

/** Solves the model and prices the answer again from the book; undefined when the solver gave nothing usable. */
export async function solveOrder(problem: OrderProblem, solve: Solve): Promise<FoundOrder | undefined> {
  const { model, packs } = orderModel(problem);
  const answer = await solve(model);
  if (answer.status === "infeasible" || answer.status === "unknown") return undefined;
  const covers: ItemCover[] = [];
  const used = new Set<number>();
  for (const [i, item] of problem.items.entries()) {
    const counts = item.offers.map((_, o) =>
      packs
        .filter((pack) => pack.item === i && pack.offer === o)
        .reduce((sum, { variable }) => sum + Math.round(answer.values[variable] ?? 0), 0),
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
  const slack = model.variables.every(({ cost }) => Number.isInteger(cost)) ? 1e-3 : lines / 2;
  const boundCents = Math.min(cents, Math.ceil((answer.bound ?? 0) - slack));
  const status = boundCents >= cents ? "optimal" : "feasible";
  return { status, cents, boundCents, covers, method: "mixed-integer model of the whole order, solved exactly" };
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
