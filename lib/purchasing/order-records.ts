import type { Query } from "../problems/query.js";
import type { Cents } from "../quantities/money.js";

/** One need of the bill: an article, how much, and the loops it serves (empty = the site as a whole). */
export interface Need {
  readonly code: string;
  /** [units of the article] */
  readonly quantity: number;
  readonly loops: readonly string[];
}

/** Somebody else who sells the article, or an article named as its equivalent. */
export interface Alternate {
  readonly code: string;
  readonly supplier: string;
  /** Price at the quantity of this line. [cents per unit] */
  readonly unitCents: number;
  readonly packSize: number;
  readonly leadDays: number;
  readonly sameArticle: boolean;
}

export interface OrderLine {
  readonly code: string;
  readonly class: string;
  readonly description: string;
  readonly unit: string;
  readonly packs: number;
  readonly packSize: number;
  /** packs × packSize. [units] */
  readonly quantity: number;
  readonly unitCents: number;
  /** ROUND(quantity × unitCents). */
  readonly lineCents: Cents;
  readonly taxClass: string;
  readonly loops: readonly string[];
  /** Working days from order to door. */
  readonly leadDays: number;
  /** Order by this date to have it on the first day; absent without a start date. */
  readonly orderBy?: string;
  /** Cannot be there on the first day; it is ordered all the same because nobody else is in time. */
  readonly late: boolean;
  readonly alternates: readonly Alternate[];
}

/** One order to one supplier; its radio articles are all of one band. */
export interface Order {
  readonly supplier: string;
  readonly radioBand?: string;
  readonly lines: readonly OrderLine[];
  readonly goodsCents: Cents;
  readonly shippingCents: Cents;
  readonly totalCents: Cents;
  /** Earliest order-by date of its lines; absent without a start date. */
  readonly orderBy?: string;
  /** On site by this date: the start date passed in. */
  readonly needBy?: string;
}

/** What each article of the needs comes to, van and orders together. */
export interface NeedCover {
  readonly code: string;
  readonly need: number;
  readonly fromStock: number;
  readonly stockCents: Cents;
  readonly bought: number;
  readonly packs: number;
  /** Bought and taken more than needed. [units] */
  readonly leftOver: number;
  readonly loops: readonly string[];
}

export interface OrderResult {
  /** optimal = no cheaper set of orders exists for these prices; infeasible = nobody sells something that is needed. */
  readonly status: "optimal" | "feasible" | "infeasible";
  /** Goods, shipping and van stock as charged. null when infeasible. */
  readonly totalCents: Cents | null;
  /** No set of orders can cost less than this. null when infeasible. */
  readonly boundCents: Cents | null;
  readonly orders: readonly Order[];
  readonly covers: readonly NeedCover[];
  /** How it was found, in words. */
  readonly method: string;
  readonly queries: readonly Query[];
  readonly why?: string;
}
