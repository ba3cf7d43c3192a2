import { describe, expect, test } from "vitest";
import { articleByCode, articlesOfClass, unitCentsAt, unknownCodes } from "../../lib/price-book/look-up.js";
import { type PlacedPriceRow, readPriceBook } from "../../lib/price-book/read-price-book.js";

const row = (over: Partial<PlacedPriceRow>): PlacedPriceRow => ({
  code: "A",
  class: "part",
  description: "a part",
  unit: "each",
  unitCents: 100,
  packSize: 1,
  fromQuantity: 1,
  stock: 0,
  supplier: "North",
  shippingCents: 500,
  leadDays: 2,
  taxClass: "material",
  ...over,
});

describe("rows of a price book become articles", () => {
  const { book, queries } = readPriceBook({
    rows: [
      row({ fromQuantity: 10, unitCents: 80 }),
      row({}),
      row({ supplier: "South", packSize: 5, unitCents: 90, shippingCents: 0 }),
      row({ code: "B", class: "radio", radioBand: "low" }),
      row({ code: "C", class: "radio", radioBand: "high" }),
    ],
    currency: "EUR",
  });

  test("one article per code, one offer per supplier, tiers ascending", () => {
    expect(queries).toEqual([]);
    const a = articleByCode({ book, code: "A" });
    expect(a?.offers.map(({ supplier }) => supplier)).toEqual(["North", "South"]);
    expect(a?.offers[0]?.tiers.map(({ fromQuantity }) => fromQuantity)).toEqual([1, 10]);
    expect(book.suppliers).toEqual([
      { supplier: "North", shippingCents: 500 },
      { supplier: "South", shippingCents: 0 },
    ]);
  });

  test("lookups by class and band; all-units price at a quantity; unknown codes asked about", () => {
    expect(articlesOfClass({ book, class: "radio" }).map(({ code }) => code)).toEqual(["B", "C"]);
    expect(articlesOfClass({ book, class: "radio", radioBand: "low" }).map(({ code }) => code)).toEqual(["B"]);
    const tiers = articleByCode({ book, code: "A" })?.offers[0]?.tiers ?? [];
    expect([0, 9, 10, 11].map((quantity) => unitCentsAt({ tiers, quantity }))).toEqual([100, 100, 80, 80]);
    expect(() => unitCentsAt({ tiers: [], quantity: 1 })).toThrow(/tiers/);
    const uses = ["A", "Z"].map((code, index) => ({ code, sheet: "modules", row: index + 2, column: "priceCode" }));
    expect(unknownCodes({ book, uses }).map(({ typed, row }) => [typed, row])).toEqual([["Z", 3]]);
  });
});

describe("bad rows are named, left out, and never make anything cheaper", () => {
  const bad: readonly [string, Partial<PlacedPriceRow>, string][] = [
    ["negative price", { unitCents: -1 }, "unitCents"],
    ["price not a number", { unitCents: Number.NaN }, "unitCents"],
    ["pack of 0", { packSize: 0 }, "packSize"],
    ["negative stock", { stock: -2 }, "stock"],
    ["negative shipping", { shippingCents: -500 }, "shippingCents"],
    ["negative lead time", { leadDays: -1 }, "leadDays"],
    ["another currency", { currency: "USD" }, "currency"],
    ["no code", { code: " " }, "code"],
    ["no supplier", { supplier: "" }, "supplier"],
  ];
  test.each(bad)("%s", (_, over, column) => {
    const { book, queries } = readPriceBook({ rows: [row(over), row({ code: "B" })], currency: "EUR" });
    expect(book.articles.map(({ code }) => code)).toEqual(["B"]);
    expect(queries.map((query) => [query.row, query.column])).toEqual([[2, column]]);
  });

  const odd: readonly [string, Partial<PlacedPriceRow>, string][] = [
    ["the same tier twice", { unitCents: 1 }, "fromQuantity"],
    ["another pack size at the same supplier", { packSize: 2, fromQuantity: 5 }, "packSize"],
    ["stock differs", { fromQuantity: 5, stock: 9 }, "stock"],
    ["class differs", { fromQuantity: 5, class: "else" }, "class"],
    ["shipping differs", { fromQuantity: 5, shippingCents: 0 }, "shippingCents"],
    ["dearer in quantity", { fromQuantity: 5, unitCents: 101 }, "unitCents"],
  ];
  test.each(odd)("%s: asked about, the first row stands", (_, over, column) => {
    const { book, queries } = readPriceBook({ rows: [row({}), row(over)], currency: "EUR" });
    expect(queries.map((query) => [query.row, query.column])).toEqual([[3, column]]);
    const a = articleByCode({ book, code: "A" });
    expect([a?.stock, a?.class, a?.offers[0]?.packSize, a?.offers[0]?.tiers[0]?.unitCents]).toEqual([
      0,
      "part",
      1,
      100,
    ]);
    expect(book.suppliers[0]?.shippingCents).toBe(500);
  });

  test("an empty book is one query", () => {
    const { book, queries } = readPriceBook({ rows: [], currency: "EUR" });
    expect(book.articles).toEqual([]);
    expect(queries.map(({ message }) => message)).toEqual([expect.stringContaining("empty")]);
  });
});
