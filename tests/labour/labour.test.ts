import { describe, expect, test } from "vitest";
import { daysOnSite } from "../../lib/labour/days-on-site.js";
import { hoursSpread } from "../../lib/labour/hours-spread.js";
import { labourProblems } from "../../lib/labour/labour-problems.js";

const hours = { lowHours: 0.5, likelyHours: 1, highHours: 2.5 };

/** Moments of a density on low…high by Simpson's rule, written without the closed forms. */
function moments(density: (x: number) => number, low: number, high: number) {
  const n = 20_000;
  const h = (high - low) / n;
  let mass = 0;
  let mean = 0;
  let square = 0;
  for (let i = 0; i <= n; i++) {
    const x = low + i * h;
    const w = (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * density(x);
    mass += w;
    mean += w * x;
    square += w * x * x;
  }
  return { mean: mean / mass, variance: square / mass - (mean / mass) ** 2 };
}

describe("three-point hours against their densities integrated", () => {
  test("PERT: beta with weight 4", () => {
    const alpha = 1 + (4 * (1 - 0.5)) / 2;
    const beta = 6 - alpha;
    const found = moments((x) => (x - 0.5) ** (alpha - 1) * (2.5 - x) ** (beta - 1), 0.5, 2.5);
    const spread = hoursSpread({ hours });
    expect(spread.meanHours).toBeCloseTo(found.mean, 6);
    expect(spread.varianceHours2).toBeCloseTo(found.variance, 6);
  });

  test("triangular", () => {
    const found = moments((x) => (x < 1 ? (x - 0.5) / 0.5 : (2.5 - x) / 1.5), 0.5, 2.5);
    const spread = hoursSpread({ hours, method: "triangular" });
    expect(spread.meanHours).toBeCloseTo(found.mean, 6);
    expect(spread.varianceHours2).toBeCloseTo(found.variance, 6);
  });

  test("hours out of order are refused with their values", () => {
    expect(() => hoursSpread({ hours: { lowHours: 2, likelyHours: 1, highHours: 3 } })).toThrow("2 / 1 / 3 h");
  });
});

test("days: work fits into the days found and not into one day fewer; minimum call holds", () => {
  for (const workHours of [0.5, 5.9, 6, 6.1, 24.5, 60]) {
    const { personDays, totalHours } = daysOnSite({ workHours, setUpHoursPerDay: 0.75 });
    expect(totalHours).toBeLessThanOrEqual(personDays * 6.75 + 1e-9);
    expect(workHours + (personDays - 1) * 0.75).toBeGreaterThan((personDays - 1) * 6.75 - 1e-9);
  }
  expect(daysOnSite({ workHours: 24.5, setUpHoursPerDay: 0.75, people: 2 }).days).toBe(3);
  expect(daysOnSite({ workHours: 1, setUpHoursPerDay: 0.75, minimumCallHours: 3 }).chargedHours).toBe(3);
  expect(daysOnSite({ workHours: 0, setUpHoursPerDay: 0.75, minimumCallHours: 3 }).chargedHours).toBe(0);
  expect(() => daysOnSite({ workHours: 1, setUpHoursPerDay: 7 })).toThrow(/productiveHoursPerDay/);
});

test("labour rows out of order or twice are asked about with their row", () => {
  const queries = labourProblems({
    labour: [
      { task: "repair", ...hours },
      { task: "split", lowHours: 2, likelyHours: 1, highHours: 3 },
      { task: "repair", ...hours },
    ],
  });
  expect(queries.map(({ row, column }) => [row, column])).toEqual([
    [3, "likelyHours"],
    [4, "task"],
  ]);
});
