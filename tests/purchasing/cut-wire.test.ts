import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { MaterialNeed } from "../../lib/materials/bill-of-materials.js";
import type { PriceBook } from "../../lib/price-book/article.js";
import { readPriceBook } from "../../lib/price-book/read-price-book.js";
import { cutWire, type WireSpool } from "../../lib/purchasing/cut-wire.js";
import { orderFor } from "../../lib/purchasing/order-for.js";

const wire = { class: "wire", unit: "ft", fromQuantity: 1, shippingCents: 1400, leadDays: 4, taxClass: "material" };
const row = (code: string, conductors: number, packSize: number, unitCents: number, stock = 0) => ({
  ...wire,
  code,
  description: `Cable of ${conductors}, ${packSize} ft`,
  conductors,
  gaugeAwg: 22,
  packSize,
  unitCents,
  stock,
  supplier: "North",
});
const bookOf = (rows: readonly ReturnType<typeof row>[]): PriceBook =>
  readPriceBook({ rows: [...rows], currency: "EUR" }).book;

const needOf = (code: string, lengths: readonly number[], from = 1): MaterialNeed => ({
  code,
  description: code,
  class: "wire",
  unit: "ft",
  taxClass: "material",
  bare: lengths.reduce((sum, length) => sum + length, 0),
  need: Math.ceil(lengths.reduce((sum, length) => sum + length, 0)),
  rule: "by hand",
  loops: lengths.map((_, at) => `R${from + at}`),
  pieces: lengths.map((quantity, at) => ({ loop: `R${from + at}`, quantity })),
});

/** Every loop's length comes from one spool, in full, and no spool gives more than it holds. */
function expectNoJoints(spools: readonly WireSpool[], needs: readonly MaterialNeed[]): void {
  const wanted = needs.flatMap(({ pieces = [] }) =>
    pieces.map(({ loop, quantity }) => `${loop} ${quantity.toFixed(1)}`),
  );
  const given = spools.flatMap(({ cuts }) => cuts.map(({ loop, quantity }) => `${loop} ${quantity.toFixed(1)}`));
  expect(given.sort()).toEqual(wanted.sort());
  for (const { cuts, holds, leftOver } of spools) {
    expect(leftOver).toBeGreaterThanOrEqual(0);
    expect(cuts.reduce((sum, { quantity }) => sum + quantity, leftOver)).toBeCloseTo(holds, 0);
  }
}

describe("wire is bought by what can be cut", () => {
  test("three lengths of 260 ft do not fit on one spool of 500 ft nor on a rest of 250 ft, whatever their sum", async () => {
    const book = bookOf([row("W-500", 2, 500, 11, 250)]);
    const needs = [needOf("W-500", [260, 260, 260])];
    const found = await cutWire({ needs, book });
    expectNoJoints(found.spools, needs);
    const { orders } = await orderFor({ needs: found.toOrder, priceBook: found.book, stock: "first" });
    // By the sum, 780 − 250 on the van, two spools would seem enough; the third length would need a joint.
    expect(orders[0]?.lines[0]?.packs).toBe(3);
    expect(found.spools.map(({ fromStock }) => fromStock)).toEqual([false, false, false]);
  });

  test("a rest on the van gives the lengths that fit it; the rest is bought and only what leaves the van is taken", async () => {
    const book = bookOf([row("W-500", 2, 500, 11, 120)]);
    const needs = [needOf("W-500", [100, 450])];
    const found = await cutWire({ needs, book });
    expectNoJoints(found.spools, needs);
    const { orders, covers } = await orderFor({ needs: found.toOrder, priceBook: found.book, stock: "first" });
    expect(covers[0]).toMatchObject({ fromStock: 100, packs: 1, bought: 500 });
    expect(orders[0]?.lines[0]?.lineCents).toBe(5500);
    const fromVan = found.spools.find(({ fromStock }) => fromStock);
    expect(fromVan).toMatchObject({ cuts: [{ loop: "R1", quantity: 100 }], leftOver: 20 });
  });

  test("spools of two sizes compete: 900 ft in short lengths from one of 1,000 ft for 100 instead of two of 500 ft for 110", async () => {
    const book = bookOf([row("W-500", 2, 500, 11), row("W-1000", 2, 1000, 10)]);
    const needs = [needOf("W-500", [300, 300, 300])];
    const found = await cutWire({ needs, book });
    expect(found.toOrder).toEqual([{ code: "W-1000", quantity: 1000, loops: ["R1", "R2", "R3"] }]);
    expect(found.needs.map(({ code, need }) => [code, need])).toEqual([["W-1000", 900]]);
  });

  test("cable of 4 that is bought anyway gives the lengths of 2 as well: 85.00 instead of 85.00 + 55.00", async () => {
    const book = bookOf([row("W2-500", 2, 500, 11), row("W4-500", 4, 500, 17)]);
    const needs = [needOf("W2-500", [100, 100]), needOf("W4-500", [40], 3)];
    const found = await cutWire({ needs, book });
    expectNoJoints(found.spools, needs);
    expect(found.toOrder).toEqual([{ code: "W4-500", quantity: 500, loops: ["R1", "R2", "R3"] }]);
    expect(found.needs[0]?.rule).toContain("cut from it too");
    // Never the other way round: a detector's four conductors do not fit into a pair.
    const dear = bookOf([row("W2-500", 2, 500, 11), row("W4-500", 4, 500, 90)]);
    const apart = await cutWire({ needs, book: dear });
    expect(apart.toOrder.map(({ code }) => code).sort()).toEqual(["W4-500"]);
    const much = [needOf("W2-500", [400, 100]), needOf("W4-500", [40], 3)];
    const both = await cutWire({ needs: much, book: dear });
    expect(both.toOrder.map(({ code }) => code).sort()).toEqual(["W2-500", "W4-500"]);
  });

  test("a length that no spool holds is asked about by name and ordered by its sum", async () => {
    const book = bookOf([row("W-500", 2, 500, 11)]);
    const found = await cutWire({ needs: [needOf("W-500", [600])], book });
    expect(found.spools).toEqual([]);
    expect(found.queries[0]?.message).toMatch(/R1.*152\.4/);
    expect(found.toOrder).toEqual([{ code: "W-500", quantity: 600, loops: ["R1"] }]);
  });

  test("never cheaper than the length alone allows, never more spools than one for each length", async () => {
    let seen = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 5, max: 480 }), { minLength: 1, maxLength: 9 }),
        fc.integer({ min: 0, max: 1200 }),
        async (lengths, stock) => {
          seen++;
          const needs = [needOf("W-500", lengths)];
          const found = await cutWire({ needs, book: bookOf([row("W-500", 2, 500, 11, stock)]) });
          expectNoJoints(found.spools, needs);
          const bought = found.spools.filter(({ fromStock }) => !fromStock).length;
          const sum = lengths.reduce((total, length) => total + length, 0);
          expect(bought).toBeGreaterThanOrEqual(Math.ceil((sum - stock) / 500 - 1e-9));
          expect(bought).toBeLessThanOrEqual(lengths.length);
        },
      ),
      { numRuns: 60 },
    );
    expect(seen).toBeGreaterThan(30);
  });
});
