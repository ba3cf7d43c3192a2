import fc from "fast-check";
import { expect, test } from "vitest";
import { InputError } from "../../lib/problems/input-error.js";
import { chanceSumBelow } from "../../lib/termination/sum-of-uniforms.js";
import { seededRandom } from "./seeded-random.js";

/** Closed form for two uniforms of widths a ≤ b: a triangle, a plateau, a triangle. */
function twoUniforms(a: number, b: number, x: number): number {
  if (x <= 0) return 0;
  if (x >= a + b) return 1;
  if (x <= a) return (x * x) / (2 * a * b);
  if (x <= b) return (2 * x - a) / (2 * b);
  return 1 - (a + b - x) ** 2 / (2 * a * b);
}

test("two uniforms: closed form of the trapezoid (elementary probability)", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 100, noNaN: true }),
      fc.double({ min: 0.01, max: 100, noNaN: true }),
      fc.double({ min: -0.1, max: 1.1, noNaN: true }),
      (one, other, part) => {
        const [a, b] = [Math.min(one, other), Math.max(one, other)];
        const below = part * (a + b);
        expect(chanceSumBelow({ widths: [one, other], below })).toBeCloseTo(twoUniforms(a, b, below), 6);
      },
    ),
  );
});

test("equal uniforms: Irwin–Hall values at the tails, P(sum of m < 1) = 1/m! and its mirror", () => {
  let factorial = 1;
  for (let m = 1; m <= 12; m++) {
    factorial *= m;
    const widths = new Array<number>(m).fill(1);
    const low = chanceSumBelow({ widths, below: 1 });
    if (m > 1) expect(low * factorial).toBeCloseTo(1, 6);
    expect(chanceSumBelow({ widths, below: m / 2 })).toBeCloseTo(0.5, 9);
    expect(1 - chanceSumBelow({ widths, below: m - 0.5 })).toBeCloseTo(0.5 ** m / factorial, 9);
  }
});

test("40 contacts of 1.9 Ω beside a wide resistor: within four standard errors of a seeded Monte Carlo", () => {
  const random = seededRandom(20);
  const widths = [...new Array<number>(40).fill(1.9), 220, 30, 1.1];
  const draws = 200_000;
  for (const below of [60, 120, 163.5, 200, 260]) {
    let hits = 0;
    for (let i = 0; i < draws; i++) {
      let sum = 0;
      for (const width of widths) sum += width * random();
      if (sum < below) hits++;
    }
    const exact = chanceSumBelow({ widths, below });
    const error = Math.sqrt(Math.max(exact * (1 - exact), 1 / draws) / draws);
    expect(Math.abs(exact - hits / draws)).toBeLessThan(4 * error);
  }
});

test("never falls as the limit rises, stays within 0 and 1, is 0 and 1 at the ends", () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 1, maxLength: 7 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (widths, p, q) => {
        const total = widths.reduce((sum, width) => sum + width, 0);
        fc.pre(total > 0);
        const low = chanceSumBelow({ widths, below: Math.min(p, q) * total });
        const high = chanceSumBelow({ widths, below: Math.max(p, q) * total });
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(high).toBeGreaterThanOrEqual(low - 1e-9);
        expect(chanceSumBelow({ widths, below: 0 })).toBe(0);
        expect(chanceSumBelow({ widths, below: total })).toBe(1);
      },
    ),
  );
});

test("refuses a negative width and more than 16 different ones", () => {
  expect(() => chanceSumBelow({ widths: [1, -1], below: 1 })).toThrow(InputError);
  expect(() => chanceSumBelow({ widths: Array.from({ length: 17 }, (_, i) => i + 1), below: 20 })).toThrow(
    /17 different widths/,
  );
});
