import type { Query } from "../problems/query.js";
import type { PriceBookRow } from "../survey/survey.js";
import type { Article, PriceBook, PriceTier, Supplier, SupplierOffer } from "./article.js";
import { priceRowProblems } from "./price-row-problems.js";

/** A row of the price book and, where it was typed, what money it is in and where it stands. */
export interface PlacedPriceRow extends PriceBookRow {
  /** Currency of this row; absent = the job's. */
  readonly currency?: string;
  /** Row number as the user sees it; absent = position in the list, counting a heading as row 1. */
  readonly row?: number;
}

export interface PriceBookRows {
  readonly rows: readonly PlacedPriceRow[];
  /** The job's one currency. */
  readonly currency: string;
  /** Sheet name for queries; "priceBook" unless given. */
  readonly sheet?: string;
}

interface Numbered {
  readonly row: PlacedPriceRow;
  readonly number: number;
}

/**
 * Gathers the rows of a price book (one per article, supplier and quantity tier) into articles. A row that cannot be
 * used is left out and named in a query; an article whose rows all fall is not in the book. Nothing is corrected.
 * Refused: negative or missing prices, packs of 0, negative stock, shipping or lead days, a second row for the same
 * article, supplier and quantity, a currency other than the job's. Asked about, and the first row kept: rows of one
 * article that differ in class, unit, tax class, band or stock; rows of one supplier that differ in shipping;
 * a tier dearer than the one before it (kept as typed).
 * @example readPriceBook({ rows, currency: "USD" }).book.articles[0]?.offers[0]?.tiers
 */
export function readPriceBook({ rows, currency, sheet = "priceBook" }: PriceBookRows): {
  readonly book: PriceBook;
  readonly queries: readonly Query[];
} {
  const queries: Query[] = [];
  const usable: Numbered[] = [];
  rows.forEach((row, index) => {
    const number = row.row ?? index + 2;
    const problems = priceRowProblems({ row, currency, sheet, number });
    queries.push(...problems);
    if (problems.length === 0) usable.push({ row, number });
  });
  if (rows.length === 0) {
    queries.push({
      sheet,
      row: null,
      column: null,
      typed: "",
      message: "The price book is empty: nothing can be priced. Enter at least one row per article.",
    });
  }
  const say = (at: Numbered, column: keyof PriceBookRow, message: string): void => {
    queries.push({ sheet, row: at.number, column, typed: String(at.row[column] ?? ""), message });
  };
  const articles = [...groupBy(usable, ({ row }) => row.code).values()].map((group) => articleOf(group, say));
  const suppliers = [...groupBy(usable, ({ row }) => row.supplier).values()].map((group) => supplierOf(group, say));
  return { book: { articles, suppliers, currency }, queries };
}

type Say = (at: Numbered, column: keyof PriceBookRow, message: string) => void;

function groupBy(rows: readonly Numbered[], nameOf: (row: Numbered) => string): Map<string, [Numbered, ...Numbered[]]> {
  const groups = new Map<string, [Numbered, ...Numbered[]]>();
  for (const row of rows) {
    const group = groups.get(nameOf(row));
    if (group) group.push(row);
    else groups.set(nameOf(row), [row]);
  }
  return groups;
}

function supplierOf(group: readonly [Numbered, ...Numbered[]], say: Say): Supplier {
  const first = group[0];
  for (const other of group) {
    if (other.row.shippingCents === first.row.shippingCents) continue;
    say(
      other,
      "shippingCents",
      `differs from row ${first.number}: write one shipping charge for ${first.row.supplier}`,
    );
  }
  return { supplier: first.row.supplier, shippingCents: first.row.shippingCents };
}

function articleOf(group: readonly [Numbered, ...Numbered[]], say: Say): Article {
  const first = group[0];
  for (const column of ["class", "unit", "taxClass", "radioBand", "stock"] as const) {
    for (const other of group) {
      if (other.row[column] === first.row[column]) continue;
      const kept = String(first.row[column] ?? "empty");
      say(other, column, `differs from row ${first.number} of ${first.row.code} (${kept}, reckoned with): write one`);
    }
  }
  const { code, description, unit, taxClass, radioBand, stock } = first.row;
  return {
    code,
    class: first.row.class,
    description,
    unit,
    taxClass,
    ...(radioBand === undefined || radioBand === "" ? {} : { radioBand }),
    ...attributesOf(first.row),
    stock,
    offers: [...groupBy(group, ({ row }) => row.supplier).values()].map((rows) => offerOf(rows, say)),
  };
}

const ATTRIBUTES = ["eolOhms", "ampereHours", "gaugeAwg", "conductors"] as const;

function attributesOf(row: PlacedPriceRow): Pick<Article, (typeof ATTRIBUTES)[number]> {
  return Object.fromEntries(ATTRIBUTES.filter((name) => row[name] !== undefined).map((name) => [name, row[name]]));
}

function offerOf(group: readonly [Numbered, ...Numbered[]], say: Say): SupplierOffer {
  const first = group[0];
  const tiers = new Map<number, PriceTier & { at: Numbered }>();
  for (const at of group) {
    const { fromQuantity, unitCents, packSize } = at.row;
    const twin = tiers.get(fromQuantity);
    if (twin) {
      say(at, "fromQuantity", `row ${twin.at.number} already prices ${at.row.code} from ${fromQuantity}: keep one row`);
    } else if (packSize !== first.row.packSize) {
      say(at, "packSize", `row ${first.number} sells ${at.row.code} in packs of ${first.row.packSize}: row left out`);
    } else tiers.set(fromQuantity, { fromQuantity, unitCents, at });
  }
  const sorted = [...tiers.values()].sort((a, b) => a.fromQuantity - b.fromQuantity);
  sorted.forEach((tier, index) => {
    const before = sorted[index - 1];
    if (before && tier.unitCents > before.unitCents) {
      say(tier.at, "unitCents", `dearer than the price from ${before.fromQuantity}: more should not cost more a unit`);
    }
  });
  return {
    supplier: first.row.supplier,
    packSize: first.row.packSize,
    tiers: sorted.map(({ fromQuantity, unitCents }) => ({ fromQuantity, unitCents })),
    leadDays: first.row.leadDays,
  };
}
