import { expect, test } from "vitest";
import { billLines } from "../../lib/estimate/bill-lines.js";
import type { MaterialNeed } from "../../lib/materials/bill-of-materials.js";
import { readPriceBook } from "../../lib/price-book/read-price-book.js";
import { orderFor } from "../../lib/purchasing/order-for.js";

const row = { class: "gelSplice", description: "a splice", unit: "each", fromQuantity: 1, leadDays: 2 };
const sold = { ...row, code: "SP", taxClass: "material", stock: 4 };
const need: MaterialNeed = {
  code: "SP",
  description: "a splice",
  class: "gelSplice",
  unit: "each",
  taxClass: "material",
  bare: 134,
  need: 134,
  rule: "by hand",
  loops: ["R1"],
};

test("an article that two suppliers together sell cheapest stands on two lines, and nothing of it is lost", async () => {
  // 130 to buy: 100 at 10.00 from North and 30 at 4.50 from South; 200 from North are 20.00, 150 from South 22.50.
  const { book } = readPriceBook({
    rows: [
      { ...sold, unitCents: 10, packSize: 100, supplier: "North", shippingCents: 0 },
      { ...sold, unitCents: 15, packSize: 30, supplier: "South", shippingCents: 0 },
    ],
    currency: "EUR",
  });
  const ordered = await orderFor({
    needs: [{ code: "SP", quantity: 134, loops: ["R1"] }],
    priceBook: book,
    stock: "first",
    stockAt: "bookPrice",
  });
  expect(ordered.orders).toHaveLength(2);
  const lines = billLines({ needs: [need], ordered });
  expect(lines.map(({ supplier, packs, packSize }) => [supplier, packs, packSize])).toEqual([
    ["North", 1, 100],
    ["South", 1, 30],
  ]);
  expect(new Set(lines.map(({ id }) => id)).size).toBe(2);
  expect(lines.map(({ code }) => code)).toEqual(["SP", "SP"]);
  // 4 from the van at North's price: (100 + 4) × 0.10 = 10.40; 30 × 0.15 = 4.50.
  expect(lines.map(({ lineCents }) => lineCents)).toEqual([1040, 450]);
  expect(lines.reduce((sum, line) => sum + line.need, 0)).toBe(134);
  expect(lines.reduce((sum, line) => sum + line.packs * line.packSize + line.fromStock, 0)).toBe(134);
});
