import { InputError } from "../problems/input-error.js";

/** Independent quantities, each spread evenly over its own width, added up. */
export interface SumOfUniforms {
  /** Width of each quantity's range; the ranges all start at 0. Zero widths drop out. [any one unit] */
  readonly widths: readonly number[];
  /** Asked: the chance that the sum stays below this. [same unit] */
  readonly below: number;
}

/** Widths are reckoned in whole steps this many to the largest width, so that the alternating sum is exact. */
const STEPS = 1e9;

/**
 * Chance that a sum of independent uniform quantities lies below a value, exactly, by inclusion–exclusion over the
 * corners of their box: P = Σ_S (−1)^|S| · (x − Σ_S w)₊^m / (m! · Π w). [1]
 * The terms cancel almost completely, so they are added as whole numbers of any length, never as floating point;
 * the only rounding is that of the widths, to a billionth of the largest.
 * @throws {@link InputError} when a width is negative or not finite, or when more than 16 different widths come.
 * @example chanceSumBelow({ widths: [1, 1], below: 0.5 }); // 0.125
 */
export function chanceSumBelow(sum: SumOfUniforms): number {
  const groups = groupWidths(sum.widths);
  const total = sum.widths.reduce((all, width) => all + width, 0);
  if (sum.below <= 0) return total === 0 && sum.below === 0 ? 1 : 0;
  if (sum.below >= total) return 1;
  // The lower tail has the fewer terms; the sum is symmetric about half its total.
  if (sum.below > total / 2) return 1 - chanceSumBelow({ widths: sum.widths, below: total - sum.below });
  const largest = Math.max(...sum.widths);
  const inSteps = (value: number) => BigInt(Math.round((value / largest) * STEPS));
  const steps = groups.map((group) => ({ width: inSteps(group.width), count: group.count }));
  const used = steps.filter((group) => group.width > 0n);
  const dimensions = used.reduce((all, group) => all + group.count, 0);
  const volume = boxCorners(used, inSteps(sum.below), BigInt(dimensions));
  let box = 1n;
  for (const group of used) box *= group.width ** BigInt(group.count);
  return ratio(volume, box * factorial(dimensions));
}

interface WidthGroup<T> {
  readonly width: T;
  readonly count: number;
}

function groupWidths(widths: readonly number[]): WidthGroup<number>[] {
  const counts = new Map<number, number>();
  for (const width of widths) {
    if (!(width >= 0) || !Number.isFinite(width)) {
      throw new InputError({ field: "widths", got: String(width), expected: "finite widths of 0 or more" });
    }
    if (width > 0) counts.set(width, (counts.get(width) ?? 0) + 1);
  }
  if (counts.size > 16) {
    throw new InputError({
      field: "widths",
      got: `${counts.size} different widths`,
      expected: "at most 16 different widths",
    });
  }
  return [...counts].map(([width, count]) => ({ width, count }));
}

/** Σ over how many of each group are taken away: (−1)^k · Π C(n, k) · (x − taken)₊^m. */
function boxCorners(groups: readonly WidthGroup<bigint>[], left: bigint, power: bigint): bigint {
  if (left <= 0n) return 0n;
  const [first, ...rest] = groups;
  if (first === undefined) return left ** power;
  let sum = 0n;
  let ways = 1n;
  for (let taken = 0; taken <= first.count; taken++) {
    const inner = ways * boxCorners(rest, left - BigInt(taken) * first.width, power);
    sum += taken % 2 === 0 ? inner : -inner;
    ways = (ways * BigInt(first.count - taken)) / BigInt(taken + 1);
  }
  return sum;
}

function factorial(n: number): bigint {
  let product = 1n;
  for (let k = 2n; k <= BigInt(n); k++) product *= k;
  return product;
}

/** Quotient of two whole numbers of any length, to 18 significant digits and never under 1e-300. */
function ratio(part: bigint, whole: bigint): number {
  if (part <= 0n) return 0;
  const shift = Math.max(0, whole.toString(2).length - part.toString(2).length) + 64;
  return Number((part << BigInt(shift)) / whole) / 2 ** Math.min(shift, 1000) / 2 ** Math.max(0, shift - 1000);
}
