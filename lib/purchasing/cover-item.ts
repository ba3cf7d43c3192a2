import { unitCentsAt } from "../price-book/look-up.js";
import { type Cents, roundCents } from "../quantities/money.js";

/** One seller's offer as the cover search sees it. */
export interface CoverOffer {
  readonly packSize: number;
  readonly tiers: readonly { readonly fromQuantity: number; readonly unitCents: number }[];
}

export interface CoverItem {
  /** Wanted. [units] */
  readonly need: number;
  readonly offers: readonly CoverOffer[];
  /** Units on the van that may be taken, 0 = none. */
  readonly stock: number;
  /** What one unit from the van is charged at. [cents per unit] */
  readonly stockUnitCents: number;
  /** true = the van first, whatever it costs; false = whatever is cheapest together. */
  readonly stockFirst: boolean;
}

/** Packs bought of one offer. */
export interface CoverPurchase {
  /** Index into the offers given. */
  readonly offer: number;
  readonly packs: number;
  readonly quantity: number;
  readonly unitCents: number;
  /** ROUND(quantity × unitCents). */
  readonly lineCents: Cents;
}

export interface ItemCover {
  readonly cents: Cents;
  readonly fromStock: number;
  readonly stockCents: Cents;
  readonly purchases: readonly CoverPurchase[];
}

/** Largest table worked through; above it the caller needs a solver. */
export const COVER_WORK_LIMIT = 4_000_000;

const THOUSANDTHS = 1000;
const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
/** Whole steps that reach a length, free of binary noise. */
export const stepsToReach = (quantity: number, step: number): number => Math.max(0, Math.ceil(quantity / step - 1e-9));

/** Cost of exactly so many packs of an offer, as the order line will show it. */
export function packsCost({ packSize, tiers }: CoverOffer, packs: number): CoverPurchase {
  const quantity = packs * packSize;
  const unitCents = unitCentsAt({ tiers, quantity });
  return { offer: 0, packs, quantity, unitCents, lineCents: roundCents(quantity * unitCents) };
}

/** Cheapest way to get at least `packs` packs: that many, or more to reach a tier. */
function cheapestFrom(offer: CoverOffer, packs: number): CoverPurchase {
  let best = packsCost(offer, packs);
  for (const { fromQuantity } of offer.tiers) {
    const toReach = stepsToReach(fromQuantity, offer.packSize);
    if (toReach <= packs) continue;
    const more = packsCost(offer, toReach);
    if (more.lineCents < best.lineCents) best = more;
  }
  return best;
}

/**
 * Cheapest exact cover of one need from whole packs of several offers, all-units tiers and the van, by dynamic
 * programming over the quantity bought: A₀(0) = 0, A_v(q) = min over k of A_{v−1}(q − k·pack) + cost_v(≥ k packs),
 * then min over q of A(q) + (need − q)·stock price with need − q ≤ stock. Buying more than needed to reach a tier is
 * allowed. undefined when no offer and no stock can cover it; `"tooLarge"` when the table would pass
 * {@link COVER_WORK_LIMIT}. Work: need ÷ gcd(packs) × Σ packs.
 */
export function coverItem(item: CoverItem): ItemCover | undefined | "tooLarge" {
  const { need, offers, stockUnitCents } = item;
  const stock = Math.min(item.stock, need);
  const least = Math.max(0, need - stock);
  const step = offers.reduce((g, { packSize }) => gcd(g, Math.round(packSize * THOUSANDTHS)), 0) / THOUSANDTHS;
  if (step === 0) {
    if (least > 0) return undefined;
    return finish(item, [], 0);
  }
  const top = stepsToReach(item.stockFirst ? least : need, step);
  const work = offers.reduce((sum, { packSize }) => sum + top * stepsToReach(need, packSize), 0);
  if (work > COVER_WORK_LIMIT) return offers.length === 1 ? coverFromOne(item) : "tooLarge";
  let table: number[] = Array.from({ length: top + 1 }, (_, q) => (q === 0 ? 0 : Number.POSITIVE_INFINITY));
  const choices: { readonly packs: Int32Array; readonly bought: readonly CoverPurchase[]; readonly size: number }[] =
    [];
  for (const offer of offers) {
    const size = Math.round(offer.packSize / step);
    const bought = Array.from({ length: stepsToReach(top, size) + 1 }, (_, k) => cheapestFrom(offer, k));
    const next = [...table];
    const packs = new Int32Array(top + 1);
    for (let q = 1; q <= top; q++) {
      for (let k = 1; k < bought.length; k++) {
        const before = table[Math.max(0, q - k * size)] ?? Number.POSITIVE_INFINITY;
        const cents = before + (bought[k]?.lineCents ?? Number.POSITIVE_INFINITY);
        if (cents < (next[q] ?? Number.POSITIVE_INFINITY)) {
          next[q] = cents;
          packs[q] = k;
        }
        if (k * size >= q) break;
      }
    }
    table = next;
    choices.push({ packs, bought, size });
  }
  let bestQ = -1;
  let bestCents = Number.POSITIVE_INFINITY;
  for (let q = 0; q <= top; q++) {
    const left = Math.max(0, need - q * step);
    if (left > stock + 1e-9) continue;
    const cents = (table[q] ?? Number.POSITIVE_INFINITY) + roundCents(left * stockUnitCents);
    if (cents < bestCents) {
      bestCents = cents;
      bestQ = q;
    }
  }
  if (bestQ < 0 || !Number.isFinite(bestCents)) return undefined;
  const purchases: CoverPurchase[] = [];
  let q = bestQ;
  for (let v = choices.length - 1; v >= 0; v--) {
    const choice = choices[v];
    const k = choice?.packs[q] ?? 0;
    const line = choice?.bought[k];
    if (!choice || k === 0 || !line) continue;
    purchases.unshift({ ...line, offer: v });
    q = Math.max(0, q - k * choice.size);
  }
  return finish(item, purchases, Math.max(0, need - bestQ * step));
}

/**
 * One offer only: with all-units tiers the cost is linear in the packs between two tiers, so only the ends of each
 * stretch can be cheapest (to the rounding of one line).
 */
function coverFromOne(item: CoverItem): ItemCover | undefined {
  const offer = item.offers[0];
  if (!offer) return undefined;
  const least = stepsToReach(Math.max(0, item.need - item.stock), offer.packSize);
  const ends = offer.tiers.flatMap(({ fromQuantity }) => {
    const start = stepsToReach(fromQuantity, offer.packSize);
    return [start, start - 1];
  });
  const most = stepsToReach(item.need, offer.packSize);
  let best: ItemCover | undefined;
  for (const packs of [least, most, most - 1, ...ends]) {
    if (packs < least || (item.stockFirst && packs > least && !ends.includes(packs))) continue;
    const purchases = packs > 0 ? [packsCost(offer, packs)] : [];
    const cover = finish(item, purchases, Math.max(0, item.need - packs * offer.packSize));
    if (!best || cover.cents < best.cents) best = cover;
  }
  return best;
}

/** What the van still gives, once it is known what is bought. */
function finish(item: CoverItem, purchases: readonly CoverPurchase[], asked: number): ItemCover {
  const bought = purchases.reduce((sum, { quantity }) => sum + quantity, 0);
  const left = Math.max(0, item.need - bought);
  const fromStock = item.stockFirst || purchases.length === 0 ? Math.min(item.stock, item.need) : Math.min(asked, left);
  const stockCents = roundCents(fromStock * item.stockUnitCents);
  return {
    cents: purchases.reduce((sum, { lineCents }) => sum + lineCents, stockCents),
    fromStock,
    stockCents,
    purchases,
  };
}
