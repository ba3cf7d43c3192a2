// Orders, cut lists, carry lists and price ranges of growing size: CPU milliseconds of one run each, on the built library.
import { readPriceBook } from "../../dist/price-book/read-price-book.js";
import { priceRange } from "../../dist/pricing/price-range.js";
import { carryList } from "../../dist/purchasing/carry-list.js";
import { cutFrom } from "../../dist/purchasing/cut-from.js";
import { orderFor } from "../../dist/purchasing/order-for.js";
import { solveWithHighs } from "../../dist/solver/highs.js";

/** @param {number} seed Linear congruential generator, Numerical Recipes constants. */
function drawer(seed) {
  let state = seed >>> 0;
  return (/** @type {number} */ low, /** @type {number} */ high) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return low + Math.floor(((high - low + 1) * state) / 2 ** 32);
  };
}

/** @param {number} articles @param {number} suppliers */
function order(articles, suppliers) {
  const draw = drawer(articles);
  const rows = [];
  const needs = [];
  for (let a = 0; a < articles; a += 1) {
    const code = `A${a}`;
    needs.push({ code, quantity: draw(1, 60), loops: [] });
    const base = draw(20, 4000);
    for (let s = 0; s < suppliers; s += 1) {
      const unitCents = Math.round((base * draw(80, 120)) / 100);
      const packSize = [1, 5, 10, 25][draw(0, 3)];
      const shared = { code, class: "part", description: "", unit: "each", packSize, stock: 2, supplier: `S${s}` };
      const rest = { shippingCents: 700 + 100 * s, leadDays: 2, taxClass: "material" };
      rows.push({ ...shared, ...rest, unitCents, fromQuantity: 1 });
      rows.push({ ...shared, ...rest, unitCents: Math.floor(unitCents * 0.9), fromQuantity: 40 });
    }
  }
  return { needs, priceBook: readPriceBook({ rows, currency: "EUR" }).book };
}

/** @param {number} count @param {number} low @param {number} high */
function pieces(count, low, high) {
  const draw = drawer(count);
  return Array.from({ length: count }, (_, index) => ({ meters: draw(low * 10, high * 10) / 10, for: `R${index}` }));
}

const spools = [
  { code: "500 ft", meters: 152.4, cents: 8500, stock: 0 },
  { code: "1000 ft", meters: 304.8, cents: 16000, stock: 0 },
];

/** @param {number} loops @param {number} articles */
function carry(loops, articles) {
  return Array.from({ length: loops }, (_, index) => ({
    key: `R${index}`,
    outcomes: [
      { probability: 0.7, items: [] },
      { probability: 0.3, items: [{ code: `W${index % articles}`, quantity: 1 + (index % 2) }] },
    ],
  }));
}

/** @param {number} count */
function range(count) {
  const hours = (/** @type {number} */ l, /** @type {number} */ m, /** @type {number} */ h) => ({
    lowHours: l,
    likelyHours: m,
    highHours: h,
  });
  return {
    loops: Array.from({ length: count }, (_, index) => ({
      key: `R${index}`,
      access: index % 3 === 0,
      outcomes: [
        { probability: 0.75, materialCents: 450, hours: hours(0.2, 0.28, 0.45), faulty: false },
        { probability: 0.18, materialCents: 1200, hours: hours(0.7, 1.3, 2.9), faulty: true },
        { probability: 0.07, materialCents: 7600, hours: hours(1, 1.8, 3.6), faulty: true },
      ],
    })),
    fixed: { materialCents: 30_000, hours: [hours(1, 1.5, 2.5), hours(0.5, 1, 2)] },
    centsPerHour: 5200,
    common: { crew: { logSd: 0.2 }, access: { logSd: 0.15 }, faultRate: { logSd: 0.4 } },
  };
}

/** @template T @param {string} name @param {() => T | Promise<T>} run @param {(answer: T) => string} [say] */
async function timed(name, run, say) {
  const start = process.cpuUsage();
  const answer = await run();
  const used = process.cpuUsage(start);
  return { name: say ? `${name}: ${say(answer)}` : name, value: (used.user + used.system) / 1000, unit: "ms CPU" };
}

export async function bench() {
  const status = (/** @type {{ status: string }} */ answer) => answer.status;
  await orderFor({ ...order(2, 2), mostSuppliers: 0, solve: solveWithHighs }); // loads the solver
  return [
    await timed("order, 30 articles, 3 suppliers, every set", () => orderFor(order(30, 3)), status),
    await timed("order, 30 articles, 8 suppliers, every set", () => orderFor(order(30, 8)), status),
    await timed(
      "order, 30 articles, 8 suppliers, solver",
      () => orderFor({ ...order(30, 8), mostSuppliers: 0, solve: solveWithHighs }),
      status,
    ),
    await timed("cut list, 12 pieces of 1 to 40 m", () => cutFrom({ pieces: pieces(12, 1, 40), spools }), status),
    await timed("cut list, 60 pieces of 1 to 40 m", () => cutFrom({ pieces: pieces(60, 1, 40), spools }), status),
    await timed(
      "cut list, 30 pieces of 40 to 110 m, solver",
      () => cutFrom({ pieces: pieces(30, 40, 110), spools, solve: solveWithHighs, mostSteps: 2000 }),
      status,
    ),
    await timed("carry list, 40 loops, 6 articles", () =>
      carryList({ loops: carry(40, 6), confidence: 0.9, returnCents: { W0: 400 }, tripCents: 12_000 }),
    ),
    await timed("carry list, 200 loops, 6 articles", () =>
      carryList({ loops: carry(200, 6), confidence: 0.9, returnCents: { W0: 400 }, tripCents: 12_000 }),
    ),
    await timed("price range, 40 loops, three common factors", () => priceRange(range(40))),
    await timed("price range, 400 loops, three common factors", () => priceRange(range(400))),
  ];
}
