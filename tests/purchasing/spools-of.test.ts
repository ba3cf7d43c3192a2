import { expect, test } from "vitest";
import { articlesOfClass } from "../../lib/price-book/look-up.js";
import { readPriceBook } from "../../lib/price-book/read-price-book.js";
import { cutFrom } from "../../lib/purchasing/cut-from.js";
import { spoolsOf } from "../../lib/purchasing/spools-of.js";

const row = {
  class: "wire",
  description: "a wire",
  unit: "ft",
  fromQuantity: 1,
  stock: 0,
  supplier: "North",
  shippingCents: 500,
  leadDays: 2,
  taxClass: "material",
};

test("packs of 500 and 1,000 ft (1 ft = 0.3048 m exactly, international foot) become spools to cut from", async () => {
  const { book } = readPriceBook({
    rows: [
      { ...row, code: "W-500", unitCents: 17, packSize: 500, stock: 620 },
      { ...row, code: "W-1000", unitCents: 16, packSize: 1000 },
      { ...row, code: "LUG", class: "lug", unit: "each", unitCents: 5, packSize: 1 },
    ],
    currency: "EUR",
  });
  const spools = spoolsOf(articlesOfClass({ book, class: "wire" }));
  expect(spools.map(({ meters, ...rest }) => ({ meters: Number(meters.toFixed(6)), ...rest }))).toEqual([
    { code: "W-500", meters: 36.576, cents: 0, stock: 1, mostBought: 0 },
    { code: "W-500", meters: 152.4, cents: 8500, stock: 1 },
    { code: "W-1000", meters: 304.8, cents: 16000, stock: 0 },
  ]);
  // One spool is on the van; two pieces of 100 m do not fit on it together, so one more is bought.
  const pieces = ["R1", "R2"].map((use) => ({ meters: 100, for: use }));
  const plan = await cutFrom({ pieces, spools });
  expect(plan.buy).toEqual([{ code: "W-500", count: 1, cents: 8500 }]);
  expect(() => spoolsOf(articlesOfClass({ book, class: "lug" }))).toThrow(/unit of LUG/);
});
