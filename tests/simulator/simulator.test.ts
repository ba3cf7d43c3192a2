import { describe, expect, it } from "vitest";
import { judgeJob } from "../../lib/findings/judge-job.js";
import { judgeLoop } from "../../lib/findings/judge-loop.js";
import type { LoopJudgement } from "../../lib/findings/loop-record.js";
import { growTrees } from "./boosted-trees.js";
import { loopOhms } from "./loop-network.js";
import { draws } from "./random.js";
import { scoreOf } from "./score.js";
import { type Depth, faults, places, type SimulatedLoop, simulate } from "./simulate.js";
import { type Said, trainJudge } from "./trained-judge.js";

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

const rates = [0.15, 0.4, 0.65] as const;
const depths = ["closed", "opened", "all"] as const;

/** Fresh loops of one depth and fault rate, judged in their jobs. Made once: several tests read them. */
const judgedSample = (() => {
  const made = new Map<
    string,
    { readonly loops: readonly SimulatedLoop[]; readonly judged: readonly LoopJudgement[] }
  >();
  return (depth: Depth, faultRate: number) => {
    const key = `${depth} ${faultRate}`;
    const loops = made.get(key)?.loops ?? simulate({ seed: 3141, jobs: 260, depth, faultRate });
    const judged = made.get(key)?.judged ?? judgeJob(loops.map(({ record }) => record)).loops;
    made.set(key, { loops, judged });
    return { loops, judged };
  };
})();

describe("against an independent simulator with other frequencies than the judge's tables", () => {
  const run = (depth: Depth, faultRate: number) => {
    const { loops, judged } = judgedSample(depth, faultRate);
    expect(loops.length).toBeGreaterThan(3800);
    const alone = loops.map(({ record }) => judgeLoop(record));
    return { pooled: scoreOf(judged, loops), single: scoreOf(alone, loops) };
  };

  it.each(rates)("fault rate %d: more readings, more right; pooling is no worse than judging alone", (rate) => {
    const [closed, opened, all] = depths.map((depth) => run(depth, rate));
    expect(opened?.pooled.top).toBeGreaterThan(closed?.pooled.top ?? 1);
    expect(all?.pooled.top).toBeGreaterThan(opened?.pooled.top ?? 1);
    for (const one of [closed, opened, all]) expect(one?.pooled.top).toBeGreaterThan(one?.single.top ?? 1);
  });

  // About 4,200 loops a sample: sampling alone makes about 0.008 of calibration error.
  it.each((["opened", "all"] as const).flatMap((depth) => rates.map((rate) => [depth, rate] as const)))(
    "%s, fault rate %d: said against was within 0.02",
    (depth, faultRate) => {
      const { loops, judged } = judgedSample(depth, faultRate);
      expect(scoreOf(judged, loops).calibrationError).toBeLessThanOrEqual(0.02);
    },
  );

  it.each([0.15, 0.65])("fault rate %d, shut and one opened: a job judged alone is off by 0.04 at most", (rate) => {
    const { loops } = judgedSample("opened", rate);
    const byJob = byJobName(loops);
    expect(byJob.size).toBeGreaterThan(200);
    const judged = [...byJob.values()].flatMap((job) => judgeJob(job.map(({ record }) => record)).loops);
    expect(scoreOf(judged, [...byJob.values()].flat()).calibrationError).toBeLessThanOrEqual(0.04);
  });

  it.each([0.15, 0.65])("fault rate %d, shut and one opened: pooling halves the calibration error", (rate) => {
    const { pooled, single } = run("opened", rate);
    expect(pooled.calibrationError).toBeLessThan(0.5 * single.calibrationError);
  });
});

/** Share of loops right, and one standard error of the difference of two judges of the same loops (McNemar). */
function compared(a: readonly Said[], b: readonly Said[], loops: readonly SimulatedLoop[]) {
  let ahead = 0;
  let behind = 0;
  for (const [i, { truth }] of loops.entries()) {
    const [one, other] = [a[i]?.condition === truth, b[i]?.condition === truth];
    if (one && !other) ahead += 1;
    if (other && !one) behind += 1;
  }
  const error = Math.sqrt(ahead + behind) / loops.length;
  return { lead: (ahead - behind) / loops.length, error };
}

/**
 * The best any judge could do is not known; two references stand for it. A learner that was only shown loops and their
 * truth, and the same learner that is also shown what our judge says, so that it finds what our judge leaves in the
 * readings. Here both learn from few loops; tools/judge-report.mjs lets them learn from 40,000.
 */
describe("against a judge trained on loops with their truth (gradient-boosted trees, Friedman 2001)", () => {
  const growth = { rounds: 25, depth: 4, step: 0.2, seed: 5 };

  it("the learner learns: two classes by an exclusive or of two numbers, which no single split tells", () => {
    const draw = draws(3);
    const points = Array.from({ length: 600 }, () => [draw.between(-1, 1), draw.between(-1, 1)] as const);
    const classOf = ([x, y]: readonly [number, number]) => (x > 0 === y > 0 ? 1 : 0);
    const learn = growTrees(points.slice(0, 400), points.slice(0, 400).map(classOf), growth);
    const right = learn(points.slice(400)).filter(
      (chances, i) => ((chances[1] ?? 0) > 0.5 ? 1 : 0) === classOf(points[400 + i] ?? [0, 0]),
    );
    expect(right.length / 200).toBeGreaterThan(0.95);
  });

  it.each([
    ["opened", 0.15],
    ["opened", 0.65],
    ["all", 0.4],
  ] as const)(
    "%s, fault rate %d: within one point of both, less two standard errors of the difference",
    (depth, faultRate) => {
      const { loops, judged } = judgedSample(depth, faultRate);
      const shown = simulate({ seed: 99, jobs: 160, depth, faultRate });
      expect(shown.length).toBeGreaterThan(2200);
      const ownSaid = judgeJob(shown.map(({ record }) => record)).loops;
      const byReadings = trainJudge(shown, growth)(loops);
      const byBoth = trainJudge(shown, growth, ownSaid)(loops, judged);
      // A learner that learned nothing would prove nothing: it must beat "the commonest condition" by far.
      expect(scoreOf(byReadings, loops).top).toBeGreaterThan(0.7);
      for (const reference of [byReadings, byBoth]) {
        const { lead, error } = compared(judged, reference, loops);
        expect(lead).toBeGreaterThanOrEqual(-0.01 - 2 * error);
      }
    },
  );

  // Told the simulator's own frequencies, the same model: what the tables' other frequencies cost.
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
    ["opened", 0.65],
  ] as const)("%s, fault rate %d: within one point of the same model told the true frequencies", (depth, faultRate) => {
    const { loops, judged } = judgedSample(depth, faultRate);
    const told = { priors, faultRate, figures: { faultRateConcentration: 200 } };
    const best = judgeJob(
      loops.map(({ record }) => record),
      told,
    ).loops;
    expect(scoreOf(best, loops).calibrationError).toBeLessThanOrEqual(0.025);
    const { lead, error } = compared(judged, best, loops);
    expect(lead).toBeGreaterThanOrEqual(-0.01 - 2 * error);
  });
});
