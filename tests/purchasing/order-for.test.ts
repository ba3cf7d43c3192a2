import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type PlacedPriceRow, readPriceBook } from "../../lib/price-book/read-price-book.js";
import { orderFor } from "../../lib/purchasing/order-for.js";
import { workingDaysFrom } from "../../lib/purchasing/working-days.js";
import { solveWithHighs } from "../../lib/solver/highs.js";
import { type BruteArticle, bruteForceOrder } from "./order-brute-force.js";

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

const bookOf = (rows: readonly PlacedPriceRow[]) => {
  const { book, queries } = readPriceBook({ rows, currency: "EUR" });
  expect(queries).toEqual([]);
  return book;
};

const offer = (supplier: string) =>
  fc.record({
    supplier: fc.constant(supplier),
    packSize: fc.integer({ min: 1, max: 4 }),
    base: fc.integer({ min: 1, max: 60 }),
    tierAt: fc.option(fc.integer({ min: 2, max: 8 }), { nil: undefined }),
    cut: fc.integer({ min: 0, max: 40 }),
  });

const article = (code: string) =>
  fc
    .record({
      need: fc.integer({ min: 0, max: 6 }),
      stock: fc.integer({ min: 0, max: 2 }),
      offers: fc.tuple(
        offer("North"),
        fc.option(offer("South"), { nil: undefined }),
        fc.option(offer("West"), { nil: undefined }),
      ),
    })
    .map(
      ({ need, stock, offers }): BruteArticle => ({
        code,
        need,
        stock,
        offers: offers.flatMap((one) =>
          one
            ? [
                {
                  supplier: one.supplier,
                  packSize: one.packSize,
                  tiers: [
                    { fromQuantity: 1, unitCents: one.base },
                    ...(one.tierAt === undefined
                      ? []
                      : [{ fromQuantity: one.tierAt, unitCents: Math.max(0, one.base - one.cut) }]),
                  ],
                },
              ]
            : [],
        ),
      }),
    );

const shippings = fc.record({
  North: fc.integer({ min: 0, max: 60 }),
  South: fc.integer({ min: 0, max: 60 }),
  West: fc.integer({ min: 0, max: 60 }),
});

const rowsOf = (articles: readonly BruteArticle[], shipping: Readonly<Record<string, number>>) =>
  articles.flatMap(({ code, stock, offers }) =>
    offers.flatMap(({ supplier, packSize, tiers }) =>
      tiers.map((tier) => row({ code, stock, supplier, packSize, ...tier, shippingCents: shipping[supplier] ?? 0 })),
    ),
  );

describe("ordering against every combination of packs tried one by one", () => {
  test("two articles, up to three suppliers, packs, tiers, stock, flat shipping", async () => {
    await fc.assert(
      fc.asyncProperty(article("A"), article("B"), shippings, async (a, b, shipping) => {
        const articles = [a, b];
        const book = bookOf(rowsOf(articles, shipping));
        const needs = articles.map(({ code, need }) => ({ code, quantity: need, loops: [code] }));
        const result = await orderFor({ needs, priceBook: book });
        expect(result.status).toBe("optimal");
        expect(result.totalCents).toBe(bruteForceOrder(articles, shipping, 8));
        expect(result.boundCents).toBe(result.totalCents);
        const sum = result.orders.reduce((s, order) => s + order.totalCents, 0);
        expect(sum + result.covers.reduce((s, c) => s + c.stockCents, 0)).toBe(result.totalCents);
        for (const cover of result.covers) expect(cover.bought + cover.fromStock).toBeGreaterThanOrEqual(cover.need);
        for (const order of result.orders) {
          expect(order.goodsCents).toBe(order.lines.reduce((s, line) => s + line.lineCents, 0));
        }
      }),
      { numRuns: 25 },
    );
  });

  test("more stock or a cheaper tier never raises the total; stock may be charged", async () => {
    await fc.assert(
      fc.asyncProperty(
        article("A"),
        article("B"),
        shippings,
        fc.constantFrom("free" as const, "bookPrice" as const),
        fc.integer({ min: 2, max: 9 }),
        async (a, b, shipping, stockAt, from) => {
          const needs = [a, b].map(({ code, need }) => ({ code, quantity: need, loops: [] }));
          const total = async (articles: readonly BruteArticle[]) =>
            (await orderFor({ needs, priceBook: bookOf(rowsOf(articles, shipping)), stockAt })).totalCents ?? NaN;
          const before = await total([a, b]);
          expect(await total([{ ...a, stock: a.stock + 1 }, b])).toBeLessThanOrEqual(before);
          if (stockAt === "bookPrice") return; // a cheaper tier may also lower what the van is charged at
          const cheaper = a.offers.map((one) => {
            const last = one.tiers[one.tiers.length - 1];
            if (!last || last.fromQuantity >= from) return one;
            return { ...one, tiers: [...one.tiers, { fromQuantity: from, unitCents: Math.floor(last.unitCents / 2) }] };
          });
          expect(await total([{ ...a, offers: cheaper }, b])).toBeLessThanOrEqual(before);
        },
      ),
      { numRuns: 60 },
    );
  });
});

/** Repeatable draws: a linear congruential generator (Numerical Recipes constants). */
function drawer(seed: number): (low: number, high: number) => number {
  let state = seed >>> 0;
  return (low, high) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return low + Math.floor(((high - low + 1) * state) / 2 ** 32);
  };
}

/** A larger order: articles sold by some of six suppliers, packs, two tiers, some fractional unit prices. */
function largeOrder(seed: number, articles: number, fraction: number) {
  const draw = drawer(seed);
  const rows: PlacedPriceRow[] = [];
  const needs: { code: string; quantity: number; loops: string[] }[] = [];
  for (let a = 0; a < articles; a++) {
    const code = `A${a}`;
    needs.push({ code, quantity: draw(1, 60), loops: [] });
    const stock = draw(0, 4);
    const base = draw(20, 4000);
    for (let s = 0; s < 6; s++) {
      if (s > 0 && draw(0, 2) === 0) continue;
      const unitCents = Math.round((base * draw(80, 120)) / fraction) / (100 / fraction);
      const packSize = [1, 5, 10, 25][draw(0, 3)] ?? 1;
      const at = { code, supplier: `S${s}`, packSize, stock, shippingCents: 700 + 100 * s };
      rows.push(row({ ...at, unitCents }));
      rows.push(row({ ...at, unitCents: unitCents * 0.9 - ((unitCents * 0.9) % (fraction / 100)), fromQuantity: 40 }));
    }
  }
  return { needs, priceBook: bookOf(rows) };
}

describe("ordering against the mixed-integer model solved by HiGHS", () => {
  test.each([
    [1, 100],
    [2, 100],
    [3, 100],
  ])("25 articles, 6 suppliers, whole-cent prices, seed %i: the same cost, both proved", async (seed, fraction) => {
    const order = largeOrder(seed, 25, fraction);
    const enumerated = await orderFor(order);
    const solved = await orderFor({ ...order, mostSuppliers: 0, solve: solveWithHighs });
    expect(enumerated.status).toBe("optimal");
    expect(solved.status).toBe("optimal");
    expect(solved.method).toContain("mixed-integer");
    expect(solved.totalCents).toBe(enumerated.totalCents);
    const unaided = await orderFor({ ...order, mostSuppliers: 0 });
    expect(unaided.totalCents).toBeGreaterThanOrEqual(enumerated.totalCents ?? Number.NaN);
    expect(unaided.boundCents).toBeLessThanOrEqual(enumerated.totalCents ?? Number.NaN);
    expect(unaided.status === "optimal" ? unaided.totalCents : enumerated.totalCents).toBe(enumerated.totalCents);
  });

  test("tenths of a cent: the bound brackets the cost of the enumeration", async () => {
    const order = largeOrder(4, 20, 10);
    const enumerated = await orderFor(order);
    const solved = await orderFor({ ...order, mostSuppliers: 0, solve: solveWithHighs });
    expect(
      order.priceBook.articles.some(({ offers }) =>
        offers.some(({ tiers }) => tiers.some((t) => t.unitCents % 1 !== 0)),
      ),
    ).toBe(true);
    expect(solved.boundCents).toBeLessThanOrEqual(enumerated.totalCents ?? Number.NaN);
    expect(Math.abs((solved.totalCents ?? 0) - (enumerated.totalCents ?? 0))).toBeLessThanOrEqual(20);
  });

  test("a solver that cannot run leaves a labelled answer with its bound", async () => {
    const order = largeOrder(5, 8, 100);
    const solve = () => Promise.reject(new Error("no WebAssembly here"));
    const answer = await orderFor({ ...order, mostSuppliers: 0, solve });
    expect(answer.method).toContain("could not run");
    expect(answer.totalCents).toBeGreaterThanOrEqual(answer.boundCents ?? Number.NaN);
  });
});

describe("what an order says", () => {
  const book = bookOf([
    row({ code: "SENSOR", class: "wireless", radioBand: "low", unitCents: 3000, supplier: "North" }),
    row({
      code: "SENSOR",
      class: "wireless",
      radioBand: "low",
      unitCents: 2900,
      supplier: "South",
      shippingCents: 900,
      leadDays: 9,
    }),
    row({ code: "OTHER", class: "wireless", radioBand: "high", unitCents: 2000, supplier: "North" }),
    row({ code: "WIRE", class: "wire", unit: "ft", unitCents: 17, packSize: 500, fromQuantity: 1, supplier: "North" }),
  ]);

  test("bands are never mixed: two orders, two shippings, one query", async () => {
    const result = await orderFor({
      needs: [
        { code: "SENSOR", quantity: 1, loops: ["R001"] },
        { code: "OTHER", quantity: 1, loops: ["R002"] },
        { code: "WIRE", quantity: 17, loops: ["R001", "R003"] },
      ],
      priceBook: book,
    });
    expect(result.orders.map(({ radioBand }) => radioBand).sort()).toEqual(["high", "low"]);
    expect(result.totalCents).toBe(3000 + 2000 + 500 * 17 + 2 * 500);
    expect(result.queries.map(({ column }) => column)).toEqual(["radioBand"]);
    const wire = result.orders.flatMap(({ lines }) => lines).find(({ code }) => code === "WIRE");
    expect(wire?.loops).toEqual(["R001", "R003"]);
    expect(result.covers.find(({ code }) => code === "WIRE")?.leftOver).toBe(483);
  });

  test("dates count working days back from the first day; late offers are used only when nobody is in time", async () => {
    const needs = [{ code: "SENSOR", quantity: 10, loops: [] }];
    const dated = { needs, priceBook: book, startOn: "2026-03-02" };
    const open = await orderFor(dated);
    expect(open.orders[0]?.supplier).toBe("South"); // 29 900 against 30 500
    expect(open.orders[0]?.orderBy).toBe("2026-02-17");
    expect(open.orders[0]?.needBy).toBe("2026-03-02");
    const pressed = await orderFor({ ...dated, orderOn: "2026-02-25" });
    expect(pressed.orders[0]?.supplier).toBe("North");
    expect(pressed.orders[0]?.lines[0]?.alternates.map(({ supplier }) => supplier)).toEqual(["South"]);
    const tooLate = await orderFor({ ...dated, orderOn: "2026-03-02" });
    expect(tooLate.orders[0]?.lines[0]?.late).toBe(true);
  });

  test("working days agree with a calendar: Friday 27 February 2026 plus one is Monday 2 March", () => {
    expect(workingDaysFrom({ from: "2026-02-27", days: 1 })).toBe("2026-03-02");
    expect(workingDaysFrom({ from: "2026-03-02", days: -1, holidays: ["2026-02-27"] })).toBe("2026-02-26");
    expect(() => workingDaysFrom({ from: "2026-02-30", days: 1 })).toThrow(/2026-02-30/);
  });

  test("unknown codes and senseless needs are asked about, an article nobody sells stops the order by name", async () => {
    const result = await orderFor({
      needs: [
        { code: "NONE", quantity: 1, loops: [] },
        { code: "WIRE", quantity: -3, loops: [] },
      ],
      priceBook: book,
    });
    expect(result.queries.map(({ typed }) => typed).sort()).toEqual(["-3", "NONE"]);
    expect(result.orders).toEqual([]);
    expect(result.totalCents).toBe(0);
    const unsold = { ...book, articles: book.articles.map((one) => ({ ...one, offers: [] })) };
    const none = await orderFor({ needs: [{ code: "WIRE", quantity: 3, loops: [] }], priceBook: unsold });
    expect(none.status).toBe("infeasible");
    expect(none.totalCents).toBeNull();
    expect(none.why).toContain("WIRE");
  });
});
