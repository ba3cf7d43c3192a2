import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Condition } from "../../lib/findings/loop-record.js";
import { betaUpdate } from "../../lib/learning/beta-update.js";
import { type FinishedJobs, withJob, withoutJob } from "../../lib/learning/finished-jobs.js";
import { hoursUpdate } from "../../lib/learning/hours-update.js";
import type { JobStatistics } from "../../lib/learning/job-statistics.js";
import { learn, learningWeights } from "../../lib/learning/learn.js";
import { jobsFromRows, learningRows } from "../../lib/learning/learning-rows.js";
import { statisticsOfJob } from "../../lib/learning/statistics-of-job.js";
import { InputError } from "../../lib/problems/input-error.js";
import { labourUnits } from "../../lib/reference/generated/labour-units.js";

const conditions: readonly Condition[] = ["open", "highResistance", "leakage"];
const tasks = ["repair", "verifyLoop", "wirelessContact"];
const anyJob = (job: string): fc.Arbitrary<JobStatistics> =>
  fc
    .record({
      loops: fc.array(
        fc.record({
          condition: fc.constantFrom(...conditions, "soundNoEol" as const),
          repairOutcome: fc.constantFrom("repaired", "notRepaired", "notTried", undefined),
          asLeftShut: fc.constantFrom("OL" as const, 0, 2200, 2500, undefined),
          hoursSpent: fc.option(fc.double({ min: 0.05, max: 8, noNaN: true }), { nil: undefined }),
        }),
        { maxLength: 12 },
      ),
      hours: fc.array(
        fc.record({
          task: fc.constantFrom(...tasks),
          count: fc.integer({ min: 1, max: 9 }),
          hours: fc.double({ min: 0.02, max: 20, noNaN: true }),
        }),
        { maxLength: 6 },
      ),
    })
    .map(
      ({ loops, hours }) =>
        statisticsOfJob({
          job,
          finished: "May",
          loops: loops.map((loop, index) => ({
            ...loop,
            key: `R${index}`,
            expectedShut: { lowOhms: 2100, highOhms: 2300 },
            tasks: tasks.slice(0, 2).map((task) => ({ task, count: 1 })),
          })),
          taskHours: hours,
          labour: labourUnits,
        }).statistics,
    );
const anyJobs = fc
  .uniqueArray(
    fc.string({ minLength: 1, maxLength: 6 }).filter((name) => name.trim() === name && name !== ""),
    { maxLength: 6 },
  )
  .chain((names) => fc.tuple(...names.map(anyJob)));
const gathered = (jobs: readonly JobStatistics[]) => jobs.reduce<FinishedJobs>((all, job) => withJob(all, job), []);

/** Integral of f over 0 to 1 by Simpson's rule. */
function integral(f: (x: number) => number, steps = 20_000): number {
  let sum = 0;
  for (let i = 0; i <= steps; i += 1) sum += f(i / steps) * (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2);
  return sum / (3 * steps);
}

describe("Beta update", () => {
  test.each([
    // Uniform prior, s of n: Laplace's rule of succession (s + 1)/(n + 2)
    [{ mean: 0.5, weight: 2, tried: 0, succeeded: 0 }, 1 / 2],
    [{ mean: 0.5, weight: 2, tried: 9, succeeded: 9 }, 10 / 11],
    [{ mean: 0.5, weight: 2, tried: 10, succeeded: 3 }, 4 / 12],
  ])("Laplace's rule of succession: %j gives %d", (input, mean) => {
    expect(betaUpdate(input).mean).toBeCloseTo(mean, 12);
  });
  test.each([
    { mean: 0.7, weight: 4, tried: 6, succeeded: 3 },
    { mean: 0.35, weight: 10, tried: 2, succeeded: 2 },
    { mean: 0.8, weight: 20, tried: 30, succeeded: 12 },
  ])("Bayes' theorem integrated numerically: %j", ({ mean, weight, tried, succeeded }) => {
    const density = (p: number) =>
      p ** (mean * weight - 1 + succeeded) * (1 - p) ** ((1 - mean) * weight - 1 + tried - succeeded);
    const whole = integral(density);
    const first = integral((p) => p * density(p)) / whole;
    const second = integral((p) => p * p * density(p)) / whole;
    const { mean: after, deviation } = betaUpdate({ mean, weight, tried, succeeded });
    expect(after).toBeCloseTo(first, 5);
    expect(deviation).toBeCloseTo(Math.sqrt(second - first * first), 5);
  });
  test("one after the other is the same as all at once", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.integer({ min: 1, max: 30 }),
        fc.array(fc.boolean(), { maxLength: 20 }),
        (mean, weight, trials) => {
          let now = betaUpdate({ mean, weight, tried: 0, succeeded: 0 });
          for (const success of trials) {
            now = betaUpdate({ mean: now.mean, weight: now.alpha + now.beta, tried: 1, succeeded: success ? 1 : 0 });
          }
          const all = betaUpdate({ mean, weight, tried: trials.length, succeeded: trials.filter((one) => one).length });
          expect(now.alpha).toBeCloseTo(all.alpha, 9);
          expect(now.beta).toBeCloseTo(all.beta, 9);
        },
      ),
    );
  });
  test("more successes than trials are refused", () => {
    expect(() => betaUpdate({ mean: 0.5, weight: 2, tried: 1, succeeded: 2 })).toThrow(InputError);
    expect(() => betaUpdate({ mean: Number.NaN, weight: 2, tried: 1, succeeded: 1 })).toThrow(InputError);
  });
});

describe("normal–gamma update of ln(hours)", () => {
  const sums = (values: readonly number[]) => ({
    weight: values.length,
    sumLog: values.reduce((sum, x) => sum + x, 0),
    sumLogSquares: values.reduce((sum, x) => sum + x * x, 0),
  });
  const prior = { mean: 0, weight: 4, shape: 2, rate: 0.16 };
  test("by hand: 0.2 and 0.6 against a mean of 0 worth 4", () => {
    // κ 6, μ 0.8/6, α 3, β 0.16 + ½·0.08 + 4·2·0.4²/(2·6)
    const after = hoursUpdate(prior, sums([0.2, 0.6]));
    expect(after.weight).toBe(6);
    expect(after.mean).toBeCloseTo(0.8 / 6, 12);
    expect(after.shape).toBe(3);
    expect(after.rate).toBeCloseTo(0.16 + 0.04 + 1.28 / 12, 12);
  });
  test("one after the other is the same as all at once, in any order", () => {
    const values = fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 1, maxLength: 15 });
    fc.assert(
      fc.property(values, (xs) => {
        const all = hoursUpdate(prior, sums(xs));
        const steps = [...xs].reverse().reduce((now, x) => hoursUpdate(now, sums([x])), prior);
        for (const field of ["mean", "weight", "shape", "rate"] as const)
          expect(steps[field]).toBeCloseTo(all[field], 8);
      }),
    );
  });
  test("nothing observed changes nothing", () => {
    expect(hoursUpdate(prior, { weight: 0, sumLog: 0, sumLogSquares: 0 })).toEqual(prior);
  });
});

describe("statistics of a finished job, counted by hand", () => {
  const band = { lowOhms: 2100, highOhms: 2300 };
  const one = (tasks: readonly { task: string; count: number }[] = []) => ({ key: "R1", tasks, expectedShut: band });
  const { statistics, queries } = statisticsOfJob({
    job: "Quay 3",
    finished: "4 May",
    labour: labourUnits,
    loops: [
      { ...one(), condition: "open", repairOutcome: "repaired", asLeftShut: 2200 },
      { ...one(), condition: "open", repairOutcome: "notRepaired" },
      { ...one(), condition: "leakage", repairOutcome: "notTried", asLeftShut: "OL" },
      { ...one(), condition: "soundNoEol", asLeftShut: 2300 },
      { ...one(), condition: "soundNoEol", asLeftShut: 0 },
      { ...one(), condition: "soundNoEol" },
      { ...one(), condition: "lifeSafety", asLeftShut: 2200, repairOutcome: "repaired" },
      // 0.08 + 0.32 = 0.4 h planned as 1 verify and 4 units of 0.08; 0.8 h spent: twice
      {
        ...one([
          { task: "verifyLoop", count: 1 },
          { task: "extendPair", count: 4 },
        ]),
        condition: "soundNoEol",
        hoursSpent: 0.8,
      },
      { ...one([{ task: "verifyLoop", count: 1 }]), condition: "soundNoEol", hoursSpent: 0 },
    ],
    taskHours: [
      { task: "repair", count: 2, hours: 3 },
      { task: "juggling", count: 1, hours: 1 },
    ],
  });
  test("loops, bands and repairs", () => {
    expect(statistics.loops).toEqual({ counted: 5, faulty: 4 });
    expect(statistics.asLeft).toEqual({ inBand: 2, outside: 2 });
    expect(statistics.repairs).toEqual([{ condition: "open", tried: 2, succeeded: 1 }]);
  });
  test("hours are shared as planned", () => {
    expect(statistics.hours.map(({ task, weight }) => [task, Math.round(weight * 1e9) / 1e9])).toEqual([
      ["extendPair", 0.8],
      ["repair", 1],
      ["verifyLoop", 0.2],
    ]);
    const [extend, repair, verify] = statistics.hours;
    expect(Math.exp((extend?.sumLog ?? 0) / (extend?.weight ?? 1))).toBeCloseTo(0.16, 12);
    expect(Math.exp(repair?.sumLog ?? 0)).toBeCloseTo(1.5, 12);
    expect(Math.exp((verify?.sumLog ?? 0) / (verify?.weight ?? 1))).toBeCloseTo(0.16, 12);
  });
  test("0 h and an unknown task are asked about", () => {
    expect(queries.map(({ column, typed }) => [column, typed])).toEqual([
      ["hoursSpent", "0"],
      ["task", "juggling: 1 in 1 h"],
    ]);
    expect(() => statisticsOfJob({ job: " ", finished: "", labour: [], loops: [] })).toThrow(InputError);
  });
  test("learned: odds of an open loop from 0.7 worth 4 to (2.8 + 1)/(4 + 2), repair hours towards 1.5", () => {
    const learned = learn({ jobs: [statistics], labour: labourUnits });
    const open = learned.repairs.find(({ condition }) => condition === "open");
    expect(open?.before.mean).toBeCloseTo(0.7, 12);
    expect(open?.after.mean).toBeCloseTo(3.8 / 6, 12);
    const repair = learned.hours.find(({ before }) => before.task === "repair");
    // exp((4·ln 1 + ln 1.5)/5)
    expect(repair?.factor).toBeCloseTo(1.5 ** 0.2, 12);
    expect(repair?.after.highHours).toBeCloseTo(2.5 * 1.5 ** 0.2, 12);
    expect(learned.faultRate).toMatchObject({ tried: 5, succeeded: 4, jobs: 1 });
    expect(learned.words).toMatch(/From 1 finished job\. Before about 20 finished jobs such figures mean little/);
  });
});

describe("finished jobs, added and taken out", () => {
  test("the order in which jobs come changes no bit of the figures", () => {
    fc.assert(
      fc.property(anyJobs, (jobs) => {
        const forth = learn({ jobs: gathered(jobs), labour: labourUnits });
        const back = learn({ jobs: gathered([...jobs].reverse()), labour: labourUnits });
        expect(back).toEqual(forth);
      }),
    );
  });
  test("taking a job out is the inverse of adding it, to the bit", () => {
    fc.assert(
      fc.property(anyJobs, anyJob("a job of its own"), (jobs, extra) => {
        const before = gathered(jobs);
        const after = withoutJob(withJob(before, extra), extra.job);
        expect(after).toEqual(before);
        expect(learn({ jobs: after, labour: labourUnits })).toEqual(learn({ jobs: before, labour: labourUnits }));
      }),
    );
  });
  test("a success never lowers the odds, low ≤ likely ≤ high stays, no job leaves the tables as they are", () => {
    fc.assert(
      fc.property(anyJobs, (jobs) => {
        const { repairs, hours } = learn({ jobs: gathered(jobs), labour: labourUnits });
        for (const { before, after, tried, succeeded } of repairs) {
          if (tried > 0 && succeeded === tried) expect(after.mean).toBeGreaterThanOrEqual(before.mean);
          if (tried > 0 && succeeded === 0) expect(after.mean).toBeLessThanOrEqual(before.mean);
          expect(after.mean).toBeGreaterThan(0);
          expect(after.mean).toBeLessThan(1);
        }
        for (const { after } of hours) {
          expect(after.lowHours).toBeLessThanOrEqual(after.likelyHours);
          expect(after.likelyHours).toBeLessThanOrEqual(after.highHours);
          expect(Number.isFinite(after.highHours)).toBe(true);
        }
      }),
    );
    const none = learn({ jobs: [], labour: labourUnits });
    expect(none.hours.length).toBeGreaterThan(20);
    for (const { before, after } of none.hours) expect(after).toEqual(before);
    for (const { before, after } of none.repairs) expect(after).toEqual(before);
    expect(none.words).toMatch(/No finished job yet/);
  });
  test("the same job twice and a job that is not there are refused", () => {
    const job: JobStatistics = {
      job: "A",
      finished: "",
      loops: { counted: 1, faulty: 0 },
      asLeft: { inBand: 0, outside: 0 },
      repairs: [],
      hours: [],
    };
    expect(() => withJob([job], job)).toThrow(InputError);
    expect(() => withoutJob([job], "B")).toThrow('job: got "B", expected one of "A"');
  });
  test("weights of the table are above 0 and the spread is defined", () => {
    const weights = Object.values(learningWeights());
    expect(weights.length).toBe(5);
    for (const weight of weights) expect(weight).toBeGreaterThan(0);
    expect(learningWeights().hoursShape).toBeGreaterThan(1);
  });
});

describe("the table of finished jobs in a workbook", () => {
  test("written and read gives the same jobs", () => {
    fc.assert(
      fc.property(anyJobs, (jobs) => {
        const stored = gathered(jobs);
        const { jobs: read, queries } = jobsFromRows(JSON.parse(JSON.stringify(learningRows(stored))));
        expect(queries).toEqual([]);
        expect(learn({ jobs: read, labour: labourUnits })).toEqual(learn({ jobs: stored, labour: labourUnits }));
        expect(read).toEqual(stored);
      }),
    );
  });
  const good = { job: "A", finished: "", kind: "repair", name: "open", first: 2, second: 1, third: 0 };
  test.each([
    [{ ...good, second: 3 }, /above the first/],
    [{ ...good, name: "witchcraft" }, /no condition/],
    [{ ...good, first: Number.NaN }, /three numbers/],
    [{ ...good, first: 1.5 }, /whole counts/],
    [{ ...good, kind: "other" }, /expected loops/],
    [{ ...good, job: " " }, /no name/],
    [good, /twice/],
  ])("%j is asked about", (bad, message) => {
    const { jobs, queries } = jobsFromRows([good, bad]);
    expect(queries.length).toBe(1);
    expect(queries[0]?.message).toMatch(message);
    expect(jobs[0]?.repairs).toEqual([{ condition: "open", tried: 2, succeeded: 1 }]);
  });
});
