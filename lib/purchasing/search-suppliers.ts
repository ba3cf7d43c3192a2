import { InputError } from "../problems/input-error.js";
import { coverItem, type ItemCover } from "./cover-item.js";
import type { OrderItem, OrderProblem } from "./order-problem.js";

/** A set of covers, one per item, with what was proved about it. */
export interface FoundOrder {
  readonly status: "optimal" | "feasible";
  readonly cents: number;
  readonly boundCents: number;
  /** Parallel to the problem's items; offers index the item's own offers. */
  readonly covers: readonly ItemCover[];
  readonly method: string;
}

/** Cover of one item by the vendors in a set (bit v = vendor v), remembered by the bits that matter to it. */
function coverer(item: OrderItem): (vendors: number) => ItemCover | undefined {
  const own = item.vendors.reduce((bits, vendor) => bits | (1 << vendor), 0);
  const known = new Map<number, ItemCover | undefined>();
  return (vendors) => {
    const bits = vendors & own;
    if (known.has(bits)) return known.get(bits);
    const cover = coverBy(item, (vendor) => ((bits >> vendor) & 1) === 1);
    known.set(bits, cover);
    return cover;
  };
}

/** Exact cover from the allowed vendors where the table allows it, else the cheapest single vendor. */
function coverBy(item: OrderItem, allowed: (vendor: number) => boolean): ItemCover | undefined {
  const kept = item.vendors.flatMap((vendor, offer) => (allowed(vendor) ? [offer] : []));
  const offersOf = (indexes: readonly number[]) =>
    indexes.flatMap((index) => {
      const offer = item.offers[index];
      return offer ? [offer] : [];
    });
  const rename = (cover: ItemCover, indexes: readonly number[]): ItemCover => ({
    ...cover,
    purchases: cover.purchases.map((purchase) => ({ ...purchase, offer: indexes[purchase.offer] ?? 0 })),
  });
  const exact = coverItem({ ...item, offers: offersOf(kept) });
  if (exact === undefined) return undefined;
  if (exact !== "tooLarge") return rename(exact, kept);
  let best: ItemCover | undefined;
  for (const offer of kept) {
    const single = coverItem({ ...item, offers: offersOf([offer]) });
    if (single === undefined || single === "tooLarge") continue;
    if (!best || single.cents < best.cents) best = rename(single, [offer]);
  }
  return best;
}

/** Least any cover of this item can cost: the exact one over all vendors, or its need at the lowest price there is. */
function leastCents(item: OrderItem): { readonly cents: number; readonly exact: boolean } {
  const cover = coverItem(item);
  if (cover !== "tooLarge") return { cents: cover?.cents ?? 0, exact: true };
  const lowest = Math.min(...item.offers.flatMap(({ tiers }) => tiers.map(({ unitCents }) => unitCents)));
  const fromStock = Math.min(item.stock, item.need) * Math.min(item.stockUnitCents, lowest);
  const bought = Math.max(0, item.need - item.stock) * lowest;
  return { cents: Math.floor(fromStock + bought - item.offers.length), exact: false };
}

const bitCount = (bits: number): number => {
  let count = 0;
  for (let left = bits; left > 0; left &= left - 1) count++;
  return count;
};

/**
 * Tries every set of vendors (fewest first, so that a tie goes to fewer orders) and covers each item exactly within
 * it. With more vendors than `most`, only all, each alone, and dropping one after another are tried.
 */
export function searchSuppliers(problem: OrderProblem, most: number): FoundOrder {
  const { vendors, items } = problem;
  if (vendors.length > 30) {
    throw new InputError({ field: "priceBook", got: `${vendors.length} suppliers`, expected: "at most 30 suppliers" });
  }
  const cover = items.map(coverer);
  const least = items.map(leastCents);
  const exactItems = least.every(({ exact }) => exact);
  let best: { cents: number; covers: ItemCover[] } | undefined;
  const consider = (set: number): number => {
    const covers: ItemCover[] = [];
    const used = new Set<number>();
    let cents = 0;
    for (const [index, item] of items.entries()) {
      const one = cover[index]?.(set);
      if (!one) return Number.POSITIVE_INFINITY;
      covers.push(one);
      cents += one.cents;
      for (const { offer } of one.purchases) used.add(item.vendors[offer] ?? 0);
    }
    // A vendor of the set that nothing is bought from ships nothing.
    for (const vendor of used) cents += vendors[vendor]?.shippingCents ?? 0;
    if (!best || cents < best.cents) best = { cents, covers };
    return cents;
  };
  const enumerated = vendors.length <= Math.min(most, 20);
  const all = 2 ** Math.min(vendors.length, 30) - 1;
  if (enumerated) {
    const sets = Array.from({ length: all + 1 }, (_, set) => set).sort((a, b) => bitCount(a) - bitCount(b) || a - b);
    for (const set of sets) consider(set);
  } else {
    for (let vendor = 0; vendor < vendors.length; vendor++) consider(1 << vendor);
    dropOneAfterAnother(all, vendors.length, consider);
  }
  const found = best ?? { cents: 0, covers: [] };
  const proved = enumerated && exactItems;
  const shipping = items.map((item) => forcedShipping(item, problem));
  const floor = least.reduce((sum, { cents }) => sum + cents, 0) + Math.max(0, ...shipping);
  return {
    status: proved ? "optimal" : "feasible",
    cents: found.cents,
    boundCents: proved ? found.cents : Math.min(found.cents, floor),
    covers: found.covers,
    method: proved
      ? `every set of the ${vendors.length} orders possible was tried, each with an exact cover of every article`
      : "a few plain choices of suppliers were tried; the bound takes every article at its cheapest",
  };
}

/** Shipping that an item forces by itself: the cheapest among its vendors, unless the van has enough. */
function forcedShipping(item: OrderItem, { vendors }: OrderProblem): number {
  if (item.stock >= item.need) return 0;
  return Math.min(...item.vendors.map((vendor) => vendors[vendor]?.shippingCents ?? 0));
}

function dropOneAfterAnother(all: number, count: number, consider: (set: number) => number): void {
  let set = all;
  let cents = consider(set);
  for (;;) {
    let next: { readonly set: number; readonly cents: number } | undefined;
    for (let vendor = 0; vendor < count; vendor++) {
      if (((set >> vendor) & 1) === 0) continue;
      const without = set & ~(1 << vendor);
      const price = consider(without);
      if (price < (next?.cents ?? cents)) next = { set: without, cents: price };
    }
    if (!next) return;
    set = next.set;
    cents = next.cents;
  }
}
