import type { Condition, LoopRecord } from "../../lib/findings/loop-record.js";
import type { Ohms } from "../../lib/quantities/ohms-reading.js";
import { type BuiltLoop, loopOhms } from "./loop-network.js";
import { type Draw, draws } from "./random.js";

/** One simulated loop: what a surveyor would have written, and what stands behind it. */
export interface SimulatedLoop {
  readonly record: LoopRecord;
  readonly truth: Condition;
}

/** The same with the loop as built. */
export interface DrawnLoop extends SimulatedLoop {
  readonly built: BuiltLoop;
}

/** What is read of every loop. */
export type Depth = "closed" | "opened" | "all";

/** How the simulator draws. */
export interface Simulation {
  readonly seed: number;
  readonly jobs: number;
  readonly depth: Depth;
  /** Share of loops with a fault. [1] */
  readonly faultRate: number;
}

type Place = "atEnd" | "none" | "atPanel";

/** Own frequencies, on purpose not those of the judge's tables. */
export const faults: readonly (readonly [Condition, number])[] = [
  ["open", 0.2],
  ["highResistance", 0.14],
  ["shorted", 0.08],
  ["leakage", 0.09],
  ["wrongEol", 0.09],
  ["bypassed", 0.1],
  ["earthFault", 0.05],
  ["crossed", 0.04],
  ["doubleEol", 0.06],
  ["normallyOpen", 0.06],
  ["poweredDevice", 0.07],
  ["parallelContacts", 0.01],
  ["unexplained", 0.01],
];

const values: readonly (readonly [number, number])[] = [
  [1000, 12],
  [2200, 20],
  [4700, 14],
  [5600, 14],
  [2000, 6],
  [3300, 5],
  [6800, 4],
  [10_000, 10],
  [1500, 3],
  [8200, 3],
];

const restNormal: Partial<Record<Condition, number>> = {
  open: 0.05,
  highResistance: 0.5,
  shorted: 0.75,
  leakage: 0.8,
  wrongEol: 0.25,
  poweredDevice: 0.9,
  crossed: 0.8,
  unexplained: 0.5,
};

/** Shares of the places among jobs. */
export const places: readonly (readonly [Place, number])[] = [
  ["atEnd", 0.45],
  ["none", 0.25],
  ["atPanel", 0.3],
];

interface Job {
  readonly name: string;
  readonly place: Place;
  readonly eolOhms: number;
  readonly expected: boolean;
  readonly gaugeAwg: number;
  readonly leadOhms: number;
  readonly zeroed: boolean;
  readonly gain: number;
}

/** Jobs of 8 to 24 loops; installer, meter and old panel are drawn once per job. */
export function simulate(simulation: Simulation): readonly SimulatedLoop[] {
  return drawnLoops(simulation).map(({ record, truth }) => ({ record, truth }));
}

/** {@link simulate} with the networks behind the readings. */
export function drawnLoops({ seed, jobs, depth, faultRate }: Simulation): readonly DrawnLoop[] {
  const draw = draws(seed);
  const loops: DrawnLoop[] = [];
  for (let j = 0; j < jobs; j += 1) {
    const job = drawJob(`S${j}`, draw);
    const count = draw.whole(8, 24);
    for (let k = 0; k < count; k += 1) loops.push(drawLoop(`${job.name}-${k}`, job, faultRate, depth, draw));
  }
  return loops;
}

function drawJob(name: string, draw: Draw): Job {
  const zeroed = draw.chance(0.4);
  return {
    name,
    place: draw.pick(places),
    eolOhms: draw.pick(values),
    expected: draw.chance(0.35),
    gaugeAwg: draw.pick([
      [22, 0.7],
      [24, 0.15],
      [20, 0.05],
      [18, 0.1],
    ] as const),
    leadOhms: zeroed ? draw.between(0, 0.05) : draw.between(0.1, 0.45),
    zeroed,
    gain: 1 + draw.between(-0.006, 0.006),
  };
}

function drawLoop(id: string, job: Job, faultRate: number, depth: Depth, draw: Draw): DrawnLoop {
  const place = draw.chance(0.92)
    ? job.place
    : draw.pick([
        ["atEnd", 0.4],
        ["none", 0.3],
        ["atPanel", 0.3],
      ] as const);
  const openings = draw.pick([
    [1, 0.45],
    [2, 0.2],
    [3, 0.15],
    [4, 0.1],
    [6, 0.1],
  ] as const);
  const truth = draw.chance(faultRate) ? drawFault(place, openings, draw) : sound(place);
  const run = Math.max(3, draw.logBetween(5, 90));
  const loop = build(truth, place, job, openings, run, draw);
  const normal = restNormal[truth] ?? 0.94;
  const supplied = draw.chance(truth === "poweredDevice" ? 0.7 : 0.08);
  const record: LoopRecord = {
    id,
    job: job.name,
    openings,
    runMeters: Math.round(run * Math.exp(draw.normal(0, 0.3))),
    cable: { gaugeAwg: job.gaugeAwg },
    temperatureCelsius: 20,
    poweredDetector: supplied,
    meter: { percent: 0.8, counts: 5, displayCounts: 6000, overRangeOhms: 40e6, leadsZeroed: job.zeroed },
    oldPanel: {
      restingState: draw.chance(0.15) ? "unknown" : draw.chance(normal) ? "normal" : "faulted",
      resistorAtPanel: draw.chance(0.3)
        ? "notLooked"
        : draw.chance(place === "atPanel" ? 0.92 : 0.04)
          ? "seenNotTraced"
          : "none",
      ...(job.expected ? { expectedEolOhms: job.eolOhms } : {}),
    },
    readings: readings(truth, loop, openings, depth, job, draw),
  };
  return { record, truth, built: loop };
}

function sound(place: Place): Condition {
  return place === "atEnd" ? "soundEolAtEnd" : place === "none" ? "soundNoEol" : "eolInPanel";
}

function drawFault(place: Place, openings: number, draw: Draw): Condition {
  for (;;) {
    const fault = draw.pick(faults);
    if (fault === "doubleEol" && place !== "atEnd") continue;
    if (fault === "parallelContacts" && openings < 2) continue;
    return fault;
  }
}

function part(nominal: number, draw: Draw): number {
  return draw.chance(0.9) ? nominal * draw.between(0.95, 1.05) : nominal * (1 + draw.normal(0.03, 0.06));
}

function build(truth: Condition, place: Place, job: Job, openings: number, run: number, draw: Draw): BuiltLoop {
  // 22 AWG solid copper has 52.96 mΩ/m (ASTM B258 with IEC 60028); three gauge numbers double the area.
  const perMeter = 0.05296 * 2 ** ((job.gaugeAwg - 22) / 3.01);
  const cuts = Array.from({ length: openings + 1 }, () => draw.between(0.3, 1));
  const total = cuts.reduce((sum, cut) => sum + cut, 0);
  const wrong = truth === "wrongEol";
  const eol = wrong ? wrongPart(job, draw) : place === "atEnd" ? part(job.eolOhms, draw) : undefined;
  const bypass = draw.whole(0, openings - 1);
  const doubled = draw.whole(0, openings - 1);
  const every = draw.chance(0.3);
  const across = draw.chance(0.5) ? job.eolOhms : draw.pick(values);
  return {
    segmentOhms: cuts.map((cut) => (cut / total) * run * perMeter + draw.between(0.01, 0.06)),
    contactOhms: cuts.slice(1).map(() => draw.logBetween(0.05, 0.4)),
    bypassed: cuts.slice(1).map((_, i) => truth === "bypassed" && (i === bypass || draw.chance(0.1))),
    normallyOpen: truth === "normallyOpen",
    acrossContactOhms: cuts
      .slice(1)
      .map((_, i) => (truth === "doubleEol" && (every || i === doubled) ? part(across, draw) : undefined)),
    ...(eol === undefined ? {} : { eolOhms: eol }),
    jointOhms: truth === "highResistance" ? draw.logBetween(15, 15_000) : 0,
    jointPlace: draw.whole(0, openings - 1),
    ...bridge(truth, openings, draw),
    cut:
      truth === "open" ||
      (truth === "poweredDevice" && draw.chance(0.93)) ||
      (truth === "crossed" && draw.chance(0.35)),
    parallel: truth === "parallelContacts",
  };
}

function wrongPart(job: Job, draw: Draw): number {
  const kind = draw.unit();
  if (kind < 0.3) return 1 / (1 / part(job.eolOhms, draw) + 1 / part(job.eolOhms, draw));
  if (kind < 0.5) return part(job.eolOhms, draw) + part(job.eolOhms, draw);
  for (;;) {
    const other = draw.pick(values);
    if (other !== job.eolOhms) return part(other, draw);
  }
}

function bridge(truth: Condition, openings: number, draw: Draw): Pick<BuiltLoop, "bridge"> {
  if (truth === "shorted") return { bridge: { ohms: draw.between(0.02, 0.4), place: draw.whole(0, openings) } };
  if (truth === "leakage") return { bridge: { ohms: draw.logBetween(800, 3e6), place: draw.whole(0, openings) } };
  return {};
}

function readings(
  truth: Condition,
  loop: BuiltLoop,
  openings: number,
  depth: Depth,
  job: Job,
  draw: Draw,
): LoopRecord["readings"] {
  const read = (opened: readonly number[]): Ohms =>
    truth === "unexplained"
      ? draw.chance(0.2)
        ? "OL"
        : shown(draw.logBetween(0.3, 5e6))
      : metered(loopOhms(loop, opened), job, draw);
  const opening = draw.whole(1, openings);
  const which =
    depth === "closed" ? [] : depth === "opened" ? [opening] : Array.from({ length: openings }, (_, i) => i + 1);
  const shut = read([]);
  const base = {
    closedOhms: shut,
    voltsDc: draw.normal(0, 0.02),
    opened: which.map((k) => ({ opening: k, ohms: read([k]) })),
  };
  if (depth !== "all") return base;
  const moves = truth === "highResistance" && typeof shut === "number" && draw.chance(0.6);
  const low = typeof shut === "number" ? shut : 0;
  return {
    ...base,
    tapped:
      typeof shut === "number"
        ? { minOhms: low, maxOhms: moves ? shown(low * draw.logBetween(1.1, 20)) : low }
        : { minOhms: "OL", maxOhms: "OL" },
    earth: { aOhms: truth === "earthFault" ? shown(draw.logBetween(2, 150_000)) : "OL", bOhms: "OL" },
    toOtherPairOhms: draw.chance(truth === "crossed" ? 0.65 : 0.01) ? shown(draw.logBetween(1, 500)) : "OL",
  };
}

function metered(ohms: number, job: Job, draw: Draw): Ohms {
  const with_ = ohms + job.leadOhms + Math.abs(draw.normal(0, 0.1));
  return with_ > 4e7 ? "OL" : shown(with_ * job.gain);
}

/** As a 6000-count display shows it. [Ω] */
function shown(ohms: number): number {
  let digit = 0.1;
  while (ohms >= 6000 * digit) digit *= 10;
  return Number((Math.round(ohms / digit) * digit).toPrecision(6));
}
