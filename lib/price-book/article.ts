import type { Cents } from "../quantities/money.js";

/** One all-units price step: from this many units on, every unit of the purchase costs this. */
export interface PriceTier {
  /** Least quantity the price holds for. [units] */
  readonly fromQuantity: number;
  /** May be a fraction of a cent; only lines are rounded. [cents per unit] */
  readonly unitCents: number;
}

/** What one supplier asks for an article. Tiers ascend by quantity; the first starts at or below one pack. */
export interface SupplierOffer {
  readonly supplier: string;
  /** Units in one pack; only whole packs are sold. */
  readonly packSize: number;
  readonly tiers: readonly PriceTier[];
  /** Working days from order to door. */
  readonly leadDays: number;
}

/** One article of the price book, with everyone who sells it. */
export interface Article {
  readonly code: string;
  /** What it is in the quantity rules of the bill. */
  readonly class: string;
  readonly description: string;
  /** Unit the price is for: each, ft, m … */
  readonly unit: string;
  readonly taxClass: string;
  /** Radio band family; absent = has no radio. */
  readonly radioBand?: string;
  /** For end-of-line resistors. [Ω] */
  readonly eolOhms?: number;
  /** For batteries. [Ah] */
  readonly ampereHours?: number;
  /** For wire: conductor size and how many conductors. */
  readonly gaugeAwg?: number;
  readonly conductors?: number;
  /** On the van. [units] */
  readonly stock: number;
  /** Never empty. In the order of the book. */
  readonly offers: readonly SupplierOffer[];
}

/** A supplier and the flat shipping of one order there. */
export interface Supplier {
  readonly supplier: string;
  readonly shippingCents: Cents;
}

/** The price book, read: articles in the order of their first row. */
export interface PriceBook {
  readonly articles: readonly Article[];
  readonly suppliers: readonly Supplier[];
  readonly currency: string;
}
