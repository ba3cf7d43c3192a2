import { hoursSpread, type ThreePointHours } from "../labour/hours-spread.js";
import type { Atom } from "./distribution.js";

const CELLS = 48;

/**
 * The beta distribution of PERT (low, likely, high, weight 4) as 48 equal cells of its range, density
 * u^(α−1)·(1 − u)^(β−1) with α = 1 + 4(likely − low)/(high − low), β = 6 − α, moved by less than a cell so that the mean
 * is (low + 4·likely + high)/6 exactly. A fixed number of hours is one atom.
 */
export function pertAtoms(hours: ThreePointHours): readonly Atom[] {
  const { meanHours } = hoursSpread({ hours });
  const { lowHours, likelyHours, highHours } = hours;
  const range = highHours - lowHours;
  if (range === 0) return [{ value: lowHours, probability: 1 }];
  const alpha = 1 + (4 * (likelyHours - lowHours)) / range;
  const cells = Array.from({ length: CELLS }, (_, index) => {
    const u = (index + 0.5) / CELLS;
    return { value: lowHours + range * u, probability: u ** (alpha - 1) * (1 - u) ** (5 - alpha) };
  });
  const total = cells.reduce((sum, { probability }) => sum + probability, 0);
  const mean = cells.reduce((sum, { value, probability }) => sum + (value * probability) / total, 0);
  return cells.map(({ value, probability }) => ({
    value: value + meanHours - mean,
    probability: probability / total,
  }));
}
