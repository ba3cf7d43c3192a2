import { describe, expect, it } from "vitest";
import { judgeJob } from "../../lib/findings/judge-job.js";
import { judgeLoop } from "../../lib/findings/judge-loop.js";
import { loopOhms } from "./loop-network.js";
import { scoreOf } from "./score.js";
import { type Depth, faults, places, type SimulatedLoop, simulate } from "./simulate.js";

/** Loops of each job, in order. */
function byJobName(loops: readonly SimulatedLoop[]): ReadonlyMap<string, SimulatedLoop[]> {
  const groups = new Map<string, SimulatedLoop[]>();
  for (const loop of loops) groups.set(loop.record.job ?? "", [...(groups.get(loop.record.job ?? "") ?? []), loop]);
  return groups;
}

const plain = {
  segmentOhms: [1, 2, 3],
  contactOhms: [0.1, 0.2],
  bypassed: [false, false],
  normallyOpen: false,
  acrossContactOhms: [undefined, undefined],
  jointOhms: 0,
  jointPlace: 0,
  cut: false,
  parallel: false,
};

describe("the simulator's network, by hand", () => {
  it("shut: both conductors, contacts and the part in series", () => {
    expect(loopOhms({ ...plain, eolOhms: 2200 }, [])).toBeCloseTo(2 * (1 + 2 + 3) + 0.3 + 2200, 9);
  });
  it("opened: over-range, or the leak in parallel with nothing", () => {
    expect(loopOhms(plain, [1])).toBe(Number.POSITIVE_INFINITY);
    expect(loopOhms({ ...plain, bridge: { ohms: 50_000, place: 1 } }, [2])).toBeCloseTo(50_000 + 2 * 1 + 0.1, 6);
    expect(loopOhms({ ...plain, bridge: { ohms: 50_000, place: 1 } }, [1])).toBe(Number.POSITIVE_INFINITY);
  });
  it("a resistor across an opened contact adds itself", () => {
    expect(loopOhms({ ...plain, acrossContactOhms: [4700, undefined] }, [1])).toBeCloseTo(12 + 0.2 + 4700, 6);
  });
});

describe("against an independent simulator with other frequencies than the judge's tables", () => {
  const run = (depth: Depth, faultRate: number) => {
    const loops = simulate({ seed: 20261, jobs: 300, depth, faultRate });
    expect(loops.length).toBeGreaterThan(3000);
    const records = loops.map((one) => one.record);
    return {
      pooled: scoreOf(judgeJob(records).loops, loops),
      single: scoreOf(
        records.map((r) => judgeLoop(r)),
        loops,
      ),
    };
  };

  it.each([0.15, 0.4, 0.65])(
    "fault rate %d: more readings, more right; pooling is no worse than judging alone",
    (rate) => {
      const closed = run("closed", rate);
      const opened = run("opened", rate);
      const all = run("all", rate);
      expect(opened.pooled.top).toBeGreaterThan(closed.pooled.top);
      expect(all.pooled.top).toBeGreaterThan(opened.pooled.top);
      for (const { pooled, single } of [closed, opened, all]) expect(pooled.top).toBeGreaterThan(single.top);
    },
  );

  // About 6,500 loops a sample: sampling alone makes about 0.006 of calibration error.
  const samples = ([3141, 2718] as const).flatMap((seed) =>
    (["opened", "all"] as const).flatMap((depth) => [0.15, 0.4, 0.65].map((rate) => [depth, rate, seed] as const)),
  );
  it.each(samples)("%s, fault rate %d, seed %d: said against was within 0.02", (depth, faultRate, seed) => {
    const loops = simulate({ seed, jobs: 400, depth, faultRate });
    expect(loops.length).toBeGreaterThan(5000);
    const { loops: judged } = judgeJob(loops.map((one) => one.record));
    expect(scoreOf(judged, loops).calibrationError).toBeLessThanOrEqual(0.02);
  });

  it.each([0.15, 0.65])(
    "fault rate %d, shut and one opened: a job alone is less calibrated, but not by much",
    (rate) => {
      const loops = simulate({ seed: 20261, jobs: 300, depth: "opened", faultRate: rate });
      const byJob = byJobName(loops);
      const judged = [...byJob.values()].flatMap((job) => judgeJob(job.map(({ record }) => record)).loops);
      expect(scoreOf(judged, [...byJob.values()].flat()).calibrationError).toBeLessThanOrEqual(0.05);
    },
  );

  it.each([0.15, 0.65])("fault rate %d, shut and one opened: pooling halves the calibration error", (rate) => {
    const { pooled, single } = run("opened", rate);
    expect(pooled.calibrationError).toBeLessThan(0.5 * single.calibrationError);
  });

  // Told the simulator's own frequencies, the mixture is the nearest to the best any judge could do that we can run.
  const never = { foreignVoltage: 0, lifeSafety: 0, foil: 0, sharedReturn: 0, doubledPair: 0, tamperLoop: 0 };
  const shareAt = (place: string): number => places.find(([name]) => name === place)?.[1] ?? 0;
  const priors = {
    ...never,
    soundEolAtEnd: shareAt("atEnd"),
    soundNoEol: shareAt("none"),
    eolInPanel: shareAt("atPanel"),
    ...Object.fromEntries(faults),
  };

  it.each([
    ["closed", 0.15],
    ["closed", 0.65],
    ["opened", 0.15],
    ["opened", 0.65],
    ["all", 0.4],
  ] as const)("%s, fault rate %d: within one point of a judge told the true frequencies", (depth, faultRate) => {
    const loops = simulate({ seed: 4711, jobs: 300, depth, faultRate });
    const records = loops.map((one) => one.record);
    const told = { priors, faultRate, figures: { faultRateConcentration: 200 } };
    const best = scoreOf(judgeJob(records, told).loops, loops);
    expect(best.calibrationError).toBeLessThanOrEqual(0.02);
    expect(scoreOf(judgeJob(records).loops, loops).top).toBeGreaterThanOrEqual(best.top - 0.01);
  });
});
