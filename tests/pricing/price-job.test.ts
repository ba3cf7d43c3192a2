import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { allocateCents } from "../../lib/pricing/allocate-cents.js";
import { paymentStages, usualPaymentShares } from "../../lib/pricing/payment-stages.js";
import { type CostLine, priceJob } from "../../lib/pricing/price-job.js";
import { roundCents } from "../../lib/quantities/money.js";

const line = (over: Partial<CostLine>): CostLine => ({
  id: "L",
  kind: "material",
  class: "contact",
  description: "a contact",
  quantity: 1,
  unitCents: 100,
  taxClass: "material",
  loops: [],
  ...over,
});

const rules = {
  marginByClass: { material: 0.35, labour: 0.45 },
  taxByClass: { material: 0.08, labour: 0 },
};

/** Half away from zero on a decimal text, digit by digit: no binary arithmetic of the value itself. */
function roundedText(text: string): number {
  const negative = text.startsWith("-");
  const [whole = "0", part = ""] = text.replace("-", "").split(".");
  const up = Number(part.charAt(0) || "0") >= 5;
  const value = Number(BigInt(whole) + (up ? 1n : 0n));
  return negative && value !== 0 ? -value : value;
}

describe("rounding as a spreadsheet rounds: half away from zero", () => {
  test("decimal texts with up to four places, as written", () => {
    fc.assert(
      fc.property(fc.integer({ min: -5_000_000, max: 5_000_000 }), fc.integer({ min: 0, max: 9999 }), (whole, part) => {
        const text = `${whole}.${String(part).padStart(4, "0")}`;
        expect(roundCents(Number(text))).toBe(roundedText(text));
      }),
    );
  });

  test("price × quantity in hundredths: 1.005 × 100, 2.675 × 100 and the like round up", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999 }), (thousandths) => {
        const text = (thousandths / 1000).toFixed(3);
        expect(roundCents(Number(text) * 100)).toBe(roundedText(`${Math.floor(thousandths / 10)}.${thousandths % 10}`));
      }),
    );
  });
});

describe("allocation by largest remainder", () => {
  test("shares equal the whole, none is a cent or more from its exact share, order of weights is kept", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -10_000_000, max: 10_000_000 }),
        fc
          .array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 30 })
          .filter((w) => w.some((x) => x > 0)),
        (totalCents, weights) => {
          const parts = allocateCents({ totalCents, weights });
          const sum = weights.reduce((a, b) => a + b, 0);
          expect(parts.reduce((a, b) => a + b, 0)).toBe(totalCents);
          parts.forEach((part, i) => {
            expect(Number.isInteger(part)).toBe(true);
            expect(Math.abs(part - (totalCents * (weights[i] ?? 0)) / sum)).toBeLessThan(1 + 1e-6);
            parts.forEach((other, j) => {
              if ((weights[i] ?? 0) > (weights[j] ?? 0)) expect(Math.abs(part)).toBeGreaterThanOrEqual(Math.abs(other));
            });
          });
        },
      ),
    );
    expect(() => allocateCents({ totalCents: 5, weights: [0, 0] })).toThrow(/weights/);
    expect(() => allocateCents({ totalCents: 1.5, weights: [1] })).toThrow(/totalCents/);
  });

  test("payment stages add up to the total", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), (totalCents) => {
        const stages = paymentStages({ totalCents, shares: usualPaymentShares });
        expect(stages.reduce((sum, { cents }) => sum + cents, 0)).toBe(totalCents);
      }),
    );
  });
});

const anyLine = fc
  .record({
    kind: fc.constantFrom("material" as const, "labour" as const, "travel" as const),
    quantity: fc.integer({ min: 0, max: 40_000 }).map((n) => n / 100),
    unitCents: fc.integer({ min: 0, max: 200_000 }).map((n) => n / 10),
    loops: fc.uniqueArray(fc.constantFrom("R1", "R2", "R3", "R4"), { maxLength: 4 }),
  })
  .map(({ kind, ...rest }) =>
    line({ kind, class: kind, taxClass: kind === "material" ? "material" : "labour", ...rest }),
  );

const anyRules = fc.record({
  marginByClass: fc.record({
    material: fc.integer({ min: 0, max: 70 }).map((n) => n / 100),
    labour: fc.integer({ min: 0, max: 70 }).map((n) => n / 100),
    travel: fc.constant(0),
  }),
  taxByClass: fc.record({
    material: fc.integer({ min: 0, max: 2500 }).map((n) => n / 10_000),
    labour: fc.constant(0.19),
  }),
  freight: fc.constantFrom(undefined, { fraction: 0.03, taxClass: "material" }),
  minimumCharge: fc.constantFrom(undefined, { cents: 25_000, taxClass: "labour" }),
});

describe("price of a job", () => {
  test("sums of lines equal totals to the cent: by class, by tax class, by loop", () => {
    fc.assert(
      fc.property(fc.array(anyLine, { minLength: 1, maxLength: 25 }), anyRules, (lines, given) => {
        const { freight, minimumCharge, ...rest } = given;
        const all = { ...rest, ...(freight ? { freight } : {}), ...(minimumCharge ? { minimumCharge } : {}) };
        const price = priceJob({ lines, rules: all });
        const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
        expect(sum(price.lines.map((l) => l.costCents))).toBe(price.costCents);
        expect(sum(price.lines.map((l) => l.sellCents))).toBe(price.sellCents);
        expect(sum(price.lines.map((l) => l.taxCents))).toBe(price.taxCents);
        expect(sum(price.byClass.map((l) => l.sellCents))).toBe(price.sellCents);
        expect(sum(price.byClass.map((l) => l.costCents))).toBe(price.costCents);
        expect(sum(price.byTaxClass.map((l) => l.sellCents))).toBe(price.sellCents);
        expect(sum(price.byTaxClass.map((l) => l.taxCents))).toBe(price.taxCents);
        expect(sum(price.byLoop.map((l) => l.sellCents))).toBe(price.sellCents);
        expect(price.totalCents).toBe(price.sellCents + price.taxCents);
        if (minimumCharge) expect(price.sellCents).toBeGreaterThanOrEqual(minimumCharge.cents);
        for (const l of price.lines) expect([l.costCents, l.sellCents, l.taxCents].every(Number.isInteger)).toBe(true);
      }),
    );
  });

  test("a margin of 35 % is a markup of 53.8 % (arithmetic: 0.35/0.65), both shown", () => {
    const price = priceJob({ lines: [line({ quantity: 100, unitCents: 6500 })], rules });
    expect(price.sellCents).toBe(1_000_000);
    expect(price.marginFraction).toBeCloseTo(0.35, 12);
    expect(price.markupFraction).toBeCloseTo(0.35 / 0.65, 12);
    expect(price.byClass[0]?.markupFraction).toBeCloseTo(0.5385, 4);
    expect(price.taxCents).toBe(80_000);
  });

  test("a line of nothing has neither margin nor markup, not NaN", () => {
    const price = priceJob({ lines: [line({ quantity: 0 })], rules });
    expect([price.marginFraction, price.markupFraction]).toEqual([null, null]);
  });

  test("a class without margin or tax, a negative price and a margin of 1 are refused by the line's name", () => {
    expect(() => priceJob({ lines: [line({ id: "T1", kind: "travel", class: "van" })], rules })).toThrow(/T1/);
    expect(() => priceJob({ lines: [line({ taxClass: "none" })], rules })).toThrow(/no rate for none/);
    expect(() => priceJob({ lines: [line({ unitCents: -1 })], rules })).toThrow(/unitCents of L/);
    const all = { ...rules, marginByClass: { material: 1 } };
    expect(() => priceJob({ lines: [line({})], rules: all })).toThrow(/margin of L/);
  });
});
