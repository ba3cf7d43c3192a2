import { choosePlan } from "../plan/choose-plan.js";
import type { CancelSignal, Solve } from "../plan/milp-model.js";
import { pricePlan } from "../plan/price-plan.js";
import type { LoopOffers, PlanningProblem } from "../plan/problem.js";
import { type ComparedOption, compareOptions, type PricedOption } from "../pricing/compare-options.js";
import { holdsPoweredDetector } from "../treatments/loop-devices.js";
import type { PreparedJob } from "./prepare-job.js";
import { NoEstimate, type WorkedOut, workOut } from "./work-out.js";

/** A way to do the job: how its planning problem differs from the base. */
interface Variant {
  readonly option: string;
  readonly words: string;
  readonly change: (problem: PlanningProblem, prepared: PreparedJob) => PlanningProblem;
}

/** Keeps only the offers without an input, where a loop has a wireless one. */
const offTheWire = (loop: LoopOffers): LoopOffers =>
  loop.withoutInput.some(({ kind }) => kind === "wireless")
    ? { ...loop, keep: [], repair: [], withoutInput: loop.withoutInput.filter(({ kind }) => kind !== "retire") }
    : loop;

const variants: readonly Variant[] = [
  {
    option: "noJoins",
    words: "every kept loop on an input of its own",
    change: (problem) => ({ ...problem, join: { ...problem.join, maxLoops: 1 } }),
  },
  {
    option: "replacePowered",
    words: "every powered detector replaced by a wireless one",
    change: (problem, { survey }) => {
      const powered = new Set(survey.loops.filter(holdsPoweredDetector).map(({ key }) => key));
      return { ...problem, loops: problem.loops.map((loop) => (powered.has(loop.id) ? offTheWire(loop) : loop)) };
    },
  },
  {
    option: "splitWindows",
    words: "every window and door its own wireless contact, single-opening loops as in the base",
    change: (problem) => ({
      ...problem,
      loops: problem.loops.map((loop) => ((loop.openings ?? 0) > 1 ? offTheWire(loop) : loop)),
    }),
  },
  {
    option: "allWireless",
    words: "nothing stays on the wire",
    change: (problem) => ({
      ...problem,
      loops: problem.loops.map(offTheWire),
    }),
  },
];

/**
 * The job's options side by side, each from the same survey with the same prices: pins are left out of the options
 * where they contradict them. An option that cannot be planned is left out.
 */
export async function jobOptions({
  prepared,
  base,
  solve,
  seconds,
  signal,
}: {
  readonly prepared: PreparedJob;
  readonly base: WorkedOut;
  readonly solve: Solve;
  readonly seconds: number;
  readonly signal?: CancelSignal;
}): Promise<readonly ComparedOption[]> {
  const options = [priced("base", "the cheapest plan, as estimated", prepared, base)];
  for (const { option, words, change } of variants) {
    if (signal?.aborted) break;
    const problem = change({ ...prepared.problem, pins: [] }, prepared);
    const plan = await choosePlan({ problem, solve, seconds, breakTies: false, ...(signal ? { signal } : {}) });
    if (plan.status === "infeasible") continue;
    try {
      options.push(priced(option, words, { ...prepared, problem }, await workOut({ prepared, plan, solve })));
    } catch (error) {
      if (!(error instanceof NoEstimate)) throw error;
    }
  }
  return compareOptions({ base: "base", options });
}

function priced(option: string, words: string, { problem }: PreparedJob, worked: WorkedOut): PricedOption {
  const { planned, price, range, plan, labour } = worked;
  const { zonesLost } = pricePlan(problem, plan);
  const counted = planned.filter(({ treatment }) => treatment !== "excluded" && treatment !== "retire");
  const wireless = planned.filter(({ treatment }) => treatment === "wireless");
  const devices = planned.reduce((sum, { items }) => sum + Object.values(items).reduce((a, b) => a + b, 0), 0);
  const wirelessDevices = wireless.reduce((sum, { items }) => sum + Object.values(items).reduce((a, b) => a + b, 0), 0);
  return {
    option,
    words,
    costCents: price.costCents,
    sellCents: price.sellCents,
    totalCents: price.totalCents,
    range: { p10Cents: range.p10Cents, p50Cents: range.p50Cents, p90Cents: range.p90Cents },
    zones: counted.length - zonesLost - wireless.length + wirelessDevices,
    openingsLost: planned.filter(({ treatment }) => treatment === "retire").map(({ key }) => key),
    loopsOnWire: planned.filter(({ input }) => input !== null).length,
    wirelessDevices: devices,
    days: labour.find(({ task }) => task === "setUpAndCleanUp")?.count ?? 0,
  };
}
