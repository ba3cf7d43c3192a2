import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { solveLinear } from "../../lib/linear-algebra/solve-linear.js";
import type { NetworkElement } from "../../lib/network/resistor-network.js";
import { terminalOhms } from "../../lib/network/terminal-ohms.js";
import { terminalOhmsByNodalAnalysis } from "../../lib/network/terminal-ohms-by-nodal-analysis.js";
import { InputError } from "../../lib/problems/input-error.js";

const part = (from: string | number, to: string | number, ohms: number): NetworkElement => ({ from, to, ohms });
const between = (elements: readonly NetworkElement[]) => terminalOhms({ probe: ["a", "b"], elements });
const relative = (value: number, exact: number) => Math.abs(value / exact - 1);
const MILLI = 1e-3;
const GIGA = 1e9;

describe("terminal resistance where the circuit has a closed form", () => {
  it("1 mΩ and 1 GΩ keep nine digits in series, in parallel and in ladders", () => {
    expect(relative(between([part("a", "m", MILLI), part("m", "b", 1e8)]), 1e8 + MILLI)).toBeLessThan(1e-9);
    // x ∥ y = x·y/(x + y); here 1 mΩ less its 1e-12 part.
    expect(
      relative(between([part("a", "b", MILLI), part("a", "b", GIGA)]), (MILLI * GIGA) / (MILLI + GIGA)),
    ).toBeLessThan(1e-9);
    const small = between([
      part("a", "m", MILLI),
      part("m", "b", MILLI),
      part("a", "x", GIGA),
      part("x", "b", GIGA),
      part("m", "x", GIGA),
    ]);
    // By symmetry the 1 GΩ bridge arm carries nothing.
    expect(relative(small, 1 / (1 / (2 * MILLI) + 1 / (2 * GIGA)))).toBeLessThan(1e-9);
  });

  it("an unbalanced bridge of 1 mΩ and 100 MΩ arms equals its closed form", () => {
    const [r1, r2, r3, r4, r5] = [1e-3, 1e8, 2e8, 3e-3, 5e-3] as const;
    // Delta (r1, r2, r5) to star, then series and parallel; all terms are sums and products of positives.
    const sum = r1 + r2 + r5;
    const [top, left, right] = [(r1 * r2) / sum, (r1 * r5) / sum, (r2 * r5) / sum];
    const [one, two] = [left + r3, right + r4];
    const exact = top + (one * two) / (one + two);
    const value = between([
      part("a", "l", r1),
      part("a", "r", r2),
      part("l", "b", r3),
      part("r", "b", r4),
      part("l", "r", r5),
    ]);
    expect(relative(value, exact)).toBeLessThan(1e-9);
  });

  it("an endless ladder of 1 Ω along and 1 Ω across is the golden ratio (textbook result)", () => {
    const rungs = Array.from({ length: 60 }, (_, i) => [part(i === 0 ? "a" : i, i + 1, 1), part(i + 1, "b", 1)]).flat();
    expect(relative(between(rungs), (1 + Math.sqrt(5)) / 2)).toBeLessThan(1e-12);
  });

  it("a cube of 1 Ω edges: 5/6 Ω across the body, 3/4 Ω across a face, 7/12 Ω along an edge (textbook results)", () => {
    const edges = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((corner) =>
      [1, 2, 4].filter((bit) => (corner & bit) === 0).map((bit) => part(corner, corner | bit, 1)),
    );
    expect(edges).toHaveLength(12);
    for (const [corner, exact] of [
      [7, 5 / 6],
      [3, 3 / 4],
      [1, 7 / 12],
    ] as const) {
      expect(relative(terminalOhms({ probe: [0, corner], elements: edges }), exact)).toBeLessThan(1e-12);
    }
  });

  it("n nodes each joined to each by R: 2R/n (textbook result)", () => {
    const nodes = Array.from({ length: 30 }, (_, i) => i);
    const elements = nodes.flatMap((i) => nodes.filter((j) => j > i).map((j) => part(i, j, 470)));
    expect(relative(terminalOhms({ probe: [3, 17], elements }), (2 * 470) / 30)).toBeLessThan(1e-12);
  });

  it("0 Ω merges, open contacts part, dead ends and floating pieces do not count", () => {
    expect(between([part("a", "b", 0)])).toBe(0);
    expect(between([part("a", "m", 0), part("m", "b", 47), part("m", "n", 0), part("n", "b", 0)])).toBe(0);
    expect(between([part("a", "b", Number.POSITIVE_INFINITY)])).toBe(Number.POSITIVE_INFINITY);
    expect(between([])).toBe(Number.POSITIVE_INFINITY);
    expect(
      between([part("a", "b", 2200), part("b", "dead", 10), part("dead", "end", 10), part("x", "y", 5)]),
    ).toBeCloseTo(2200, 9);
    expect(between([part("a", "a", 5), part("a", "b", 100)])).toBeCloseTo(100, 10);
    expect(terminalOhms({ probe: ["p", "p"], elements: [] })).toBe(0);
    expect(terminalOhms({ probe: [1, "2"], elements: [part("1", 2, 33)] })).toBeCloseTo(33, 12);
  });

  it("reads as open above 1 GΩ, and 1 GΩ itself is still a resistance", () => {
    expect(relative(between([part("a", "b", GIGA)]), GIGA)).toBeLessThan(1e-12);
    expect(between([part("a", "b", 1.001 * GIGA)])).toBe(Number.POSITIVE_INFINITY);
    expect(between([part("a", "m", GIGA), part("m", "b", GIGA)])).toBe(Number.POSITIVE_INFINITY);
  });

  it("refuses negative and not-a-number parts with their place", () => {
    expect(() => between([part("a", "b", 1), part("a", "b", -1)])).toThrow(
      "elements[1].ohms: got -1 Ω, expected 0 Ω or more",
    );
    expect(() => between([part("a", "b", Number.NaN)])).toThrow(InputError);
    expect(() => between([part("a", Number.NaN, 1)])).toThrow(InputError);
  });

  it("two thousand rungs end in a blink and in a number", () => {
    const rungs = Array.from({ length: 2000 }, (_, i) => [
      part(i === 0 ? "a" : i, i + 1, 1),
      part(i + 1, "b", 1e6),
    ]).flat();
    expect(between(rungs)).toBeGreaterThan(0);
  });
});

const ohms = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: -3, max: 9, noNaN: true }).map((exponent) => 10 ** exponent) },
  { weight: 1, arbitrary: fc.constant(0) },
  { weight: 1, arbitrary: fc.constant(Number.POSITIVE_INFINITY) },
);
const node = fc.constantFrom("a", "b", "c", "d", "e", "f", "g");
const network = fc.array(fc.record({ from: node, to: node, ohms }), { minLength: 1, maxLength: 18 });

describe("terminal resistance, properties", () => {
  it("does not depend on the order of the parts, their direction, or which lead stands where", () => {
    const shuffled = network.chain((elements) =>
      fc.tuple(fc.constant(elements), fc.shuffledSubarray(elements, { minLength: elements.length })),
    );
    fc.assert(
      fc.property(shuffled, ([elements, other]) => {
        const one = between(elements);
        const turned = other.map(({ from, to, ohms: value }) => part(to, from, value));
        const two = terminalOhms({ probe: ["b", "a"], elements: turned });
        expect(one === two || relative(two, one) < 1e-12).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it("a part more never raises it, a larger part never lowers it (Rayleigh's monotonicity law)", () => {
    fc.assert(
      fc.property(network, node, node, ohms, (elements, from, to, extra) => {
        const before = between(elements);
        expect(between([...elements, part(from, to, extra)])).toBeLessThanOrEqual(before * (1 + 1e-12));
        const [first, ...rest] = elements;
        if (first !== undefined) {
          expect(between([{ ...first, ohms: first.ohms * 2 }, ...rest])).toBeGreaterThanOrEqual(before * (1 - 1e-12));
        }
      }),
      { numRuns: 500 },
    );
  });

  it("all parts k times as large: k times the resistance", () => {
    fc.assert(
      fc.property(network, (elements) => {
        const one = between(elements);
        const scaled = between(elements.map((e) => ({ ...e, ohms: e.ohms / 8 })));
        if (Number.isFinite(one)) expect(Math.abs(scaled * 8 - one)).toBeLessThanOrEqual(1e-12 * one);
      }),
    );
  });

  it("a second opinion by node equations (mathjs LU) agrees to 1e-7 where parts differ by 1e5 at most", () => {
    let compared = 0;
    const near = fc.double({ min: 0, max: 5, noNaN: true }).map((exponent) => 10 ** exponent);
    const mild = fc.array(fc.record({ from: node, to: node, ohms: near }), { minLength: 6, maxLength: 18 });
    fc.assert(
      fc.property(mild, (elements) => {
        const value = between(elements);
        const other = terminalOhmsByNodalAnalysis({ probe: ["a", "b"], elements, solve: solveLinear });
        if (!Number.isFinite(value)) expect(other).toBe(value);
        else {
          compared += 1;
          expect(relative(other, value)).toBeLessThan(1e-7);
        }
      }),
      { numRuns: 300 },
    );
    expect(compared).toBeGreaterThan(100);
  });
});

/** The same elimination in exact fractions: a check of the floating-point digits over the whole range of parts. */
function exactOhms(elements: readonly { from: string; to: string; milliohms: bigint }[]): number | undefined {
  type Fraction = { readonly n: bigint; readonly d: bigint };
  const gcd = (a: bigint, b: bigint): bigint => {
    let [x, y] = [a, b];
    while (y !== 0n) [x, y] = [y, x % y];
    return x;
  };
  const fraction = (n: bigint, d: bigint): Fraction => {
    const g = gcd(n, d);
    return { n: n / g, d: d / g };
  };
  const names = [...new Set(elements.flatMap((e) => [e.from, e.to]))].filter((name) => name !== "b");
  // Gauss elimination of the node equations, probe "a" last: its pivot is the conductance from "a" to "b".
  const order = [...names.filter((name) => name !== "a"), "a"];
  const zero: Fraction = { n: 0n, d: 1n };
  const add = (p: Fraction, q: Fraction) => fraction(p.n * q.d + q.n * p.d, p.d * q.d);
  const matrix = order.map(() => order.map(() => zero));
  const put = (i: number, j: number, value: Fraction) => {
    const row = matrix[i];
    if (row !== undefined && j >= 0) row[j] = add(row[j] ?? zero, value);
  };
  for (const { from, to, milliohms } of elements) {
    if (from === to) continue;
    const [i, j] = [order.indexOf(from), order.indexOf(to)];
    for (const [p, q] of [
      [i, j],
      [j, i],
    ] as const) {
      if (p < 0) continue;
      put(p, p, { n: 1n, d: milliohms });
      put(p, q, { n: -1n, d: milliohms });
    }
  }
  for (let k = 0; k < order.length - 1; k++) {
    const pivot = matrix[k]?.[k] ?? zero;
    if (pivot.n === 0n) return undefined;
    for (let i = k + 1; i < order.length; i++) {
      const lead = matrix[i]?.[k] ?? zero;
      if (lead.n === 0n) continue;
      const factor = fraction(-lead.n * pivot.d, lead.d * pivot.n);
      for (let j = k; j < order.length; j++) {
        const above = matrix[k]?.[j] ?? zero;
        put(i, j, fraction(factor.n * above.n, factor.d * above.d));
      }
    }
  }
  const last = matrix[order.length - 1]?.[order.length - 1] ?? zero;
  // Conductance in 1/mΩ. 60 digits of the quotient are more than a double holds.
  return last.n === 0n ? undefined : Number((last.d * 10n ** 30n) / last.n) / 1e33;
}

describe("terminal resistance against exact rational arithmetic", () => {
  it("1e-9 relative for random networks of 1 mΩ to 1 GΩ", () => {
    const whole = fc
      .tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 1, max: 9 }))
      .map(([exponent, digit]) => (exponent === 12 ? 10n ** 12n : BigInt(digit) * 10n ** BigInt(exponent)));
    const exactNode = fc.constantFrom("a", "b", "c", "d", "e", "f");
    const wide = fc.array(fc.record({ from: exactNode, to: exactNode, milliohms: whole }), {
      minLength: 5,
      maxLength: 16,
    });
    let compared = 0;
    let worst = 0;
    fc.assert(
      fc.property(wide, (parts) => {
        const exact = exactOhms(parts);
        if (exact === undefined || exact > 0.999e9) return;
        compared += 1;
        const value = between(parts.map(({ from, to, milliohms }) => part(from, to, Number(milliohms) / 1000)));
        worst = Math.max(worst, relative(value, exact));
        expect(relative(value, exact)).toBeLessThan(1e-9);
      }),
      { numRuns: 400 },
    );
    expect(compared).toBeGreaterThan(150);
    expect(worst).toBeLessThan(1e-12);
  });
});
