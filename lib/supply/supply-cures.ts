import { InputError } from "../problems/input-error.js";
import { conductorOhmsPerMeter } from "../wiring/conductor-ohms-per-meter.js";
import { pathTo, type SupplyState, type SupplyTreeInput, supplyTree } from "./supply-tree.js";

/** Gauges a heavier feed is chosen from, thinnest first: common practice, no source. [AWG] */
export const FEED_GAUGES: readonly number[] = [24, 22, 20, 18, 16, 14, 12];

/** What would lift one detector to its minimum. `null` = this way does not. */
export interface SupplyCures {
  readonly detector: string;
  readonly state: SupplyState;
  readonly volts: number;
  readonly minimumVolts: number;
  /** The feed may lose this much on its way. [V] */
  readonly allowedDropVolts: number;
  /** With every known extra joint mended and nothing else done. [V] */
  readonly voltsWithoutJoints: number;
  readonly mendingJointsSuffices: boolean;
  /** Thinnest solid copper for every stretch on the way, joints mended, loads unchanged. [AWG] */
  readonly wholePathGaugeAwg: number | null;
  /** Thinnest solid copper for a pair of its own from the panel along the same way. [AWG] */
  readonly ownFeedGaugeAwg: number | null;
  /** How far a pair of its own reaches in each size. [m] */
  readonly ownFeedReach: readonly { readonly gaugeAwg: number; readonly meters: number }[];
  /** Longest its last stretch may be in the wire it has, all else unchanged. [m] */
  readonly lastStretchMeters: number | null;
  /** Most it may draw where it stands, all else unchanged. [mA] */
  readonly milliamps: number | null;
  readonly words: readonly string[];
}

/**
 * Which size, distance or load would keep a detector at its minimum voltage in one state of the supply.
 * @throws {@link InputError} when the detector is not in the tree.
 */
export function supplyCures(asked: {
  readonly tree: SupplyTreeInput;
  readonly detector: string;
  readonly state: SupplyState;
}): SupplyCures {
  const { tree, state } = asked;
  const solved = supplyTree(tree);
  const detector = solved.detectors.find((one) => one.id === asked.detector);
  if (detector === undefined) {
    throw new InputError({ field: "detector", got: asked.detector, expected: "the id of a detector in the tree" });
  }
  const { minimumVolts, milliamps } = detector;
  const allowedDropVolts = Math.max(0, solved.sourceVolts[state] - minimumVolts);
  const path = pathTo(tree, detector.at);
  const onPath = new Set(path.map((segment) => segment.id));
  const voltsWith = (changed: SupplyTreeInput): number =>
    supplyTree(changed).detectors.find((one) => one.id === detector.id)?.volts[state] ?? 0;
  const mended = { ...tree, segments: tree.segments.map(({ extraOhms: _joint, ...segment }) => segment) };
  const voltsWithoutJoints = voltsWith(mended);
  const meters = path.reduce((sum, segment) => sum + segment.meters, 0);
  const perMeter = (gaugeAwg: number): number =>
    conductorOhmsPerMeter({ gaugeAwg, temperatureCelsius: tree.temperatureCelsius ?? 20 });
  const wholePathGaugeAwg = FEED_GAUGES.find((gaugeAwg) => {
    const segments = mended.segments.map((segment) => (onPath.has(segment.id) ? inGauge(segment, gaugeAwg) : segment));
    return solved.sourceVolts[state] >= minimumVolts && voltsWith({ ...mended, segments }) >= minimumVolts;
  });
  const amps = milliamps / 1000;
  const reach = FEED_GAUGES.map((gaugeAwg) => ({
    gaugeAwg,
    meters: amps === 0 ? 0 : allowedDropVolts / (2 * perMeter(gaugeAwg) * amps),
  }));
  const ownFeedReach = amps === 0 ? [] : reach;
  const ownFeedGaugeAwg = reach.find((one) => one.meters >= meters && allowedDropVolts > 0)?.gaugeAwg;
  const cures = {
    detector: detector.id,
    state,
    volts: detector.volts[state],
    minimumVolts,
    allowedDropVolts,
    voltsWithoutJoints,
    mendingJointsSuffices: voltsWithoutJoints >= minimumVolts,
    wholePathGaugeAwg: wholePathGaugeAwg ?? null,
    ownFeedGaugeAwg: ownFeedGaugeAwg ?? null,
    ownFeedReach,
    lastStretchMeters: longestLastStretch(tree, detector.at, minimumVolts, state),
    milliamps: mostMilliamps(tree, detector.at, milliamps, minimumVolts, state),
  };
  return { ...cures, words: cureWords(cures, meters) };
}

function inGauge<T extends { readonly id: string }>(segment: T, gaugeAwg: number) {
  const {
    conductor: _c,
    ohmsPerMeter: _o,
    conductorsPerLeg: _l,
    ...bare
  } = segment as T & {
    conductor?: unknown;
    ohmsPerMeter?: unknown;
    conductorsPerLeg?: unknown;
  };
  return { ...bare, conductor: { gaugeAwg } };
}

/** Volts left over the minimum at a node, negative when short; reckoned from the drops, so that 0 V is no floor. */
function leftOver(tree: SupplyTreeInput, node: string, minimumVolts: number, state: SupplyState): number {
  const solved = supplyTree(tree);
  const path = pathTo(tree, node).map((segment) => segment.id);
  const lost = solved.segments.reduce((sum, s) => (path.includes(s.id) ? sum + s.dropVolts : sum), 0);
  return solved.sourceVolts[state] - lost - minimumVolts;
}

function longestLastStretch(
  tree: SupplyTreeInput,
  node: string,
  minimumVolts: number,
  state: SupplyState,
): number | null {
  const last = pathTo(tree, node).at(-1);
  const solved = supplyTree(tree).segments.find((segment) => segment.id === last?.id);
  if (last === undefined || solved === undefined || last.meters === 0 || solved.milliamps === 0) return null;
  const perMeter = (solved.ohms - (last.extraOhms ?? 0)) / last.meters;
  if (perMeter === 0) return null;
  const meters = last.meters + leftOver(tree, node, minimumVolts, state) / (perMeter * (solved.milliamps / 1000));
  return meters >= 0 ? meters : null;
}

function mostMilliamps(
  tree: SupplyTreeInput,
  node: string,
  milliamps: number,
  minimumVolts: number,
  state: SupplyState,
): number | null {
  const path = pathTo(tree, node).map((segment) => segment.id);
  const ohms = supplyTree(tree).segments.reduce((sum, s) => (path.includes(s.id) ? sum + s.ohms : sum), 0);
  if (ohms === 0) return null;
  const most = milliamps + (1000 * leftOver(tree, node, minimumVolts, state)) / ohms;
  return most >= 0 ? most : null;
}

function cureWords(cures: Omit<SupplyCures, "words">, meters: number): string[] {
  const words: string[] = [];
  if (cures.volts >= cures.minimumVolts) {
    return [`${cures.volts.toFixed(2)} V is at or over its minimum of ${cures.minimumVolts} V: nothing to do`];
  }
  if (cures.allowedDropVolts === 0) {
    return [
      `the supply itself is at or under ${cures.minimumVolts} V in this state: only a local supply or wireless helps`,
    ];
  }
  if (cures.voltsWithoutJoints > cures.volts) {
    const enough = cures.mendingJointsSuffices ? "enough" : `still under ${cures.minimumVolts} V`;
    words.push(`joints mended: ${cures.voltsWithoutJoints.toFixed(2)} V, ${enough}`);
  }
  words.push(
    cures.wholePathGaugeAwg === null
      ? `no size down to ${FEED_GAUGES.at(-1)} AWG for the whole way suffices`
      : `whole way in ${cures.wholePathGaugeAwg} AWG, joints mended`,
    cures.ownFeedGaugeAwg === null
      ? `no pair of its own down to ${FEED_GAUGES.at(-1)} AWG suffices over ${meters.toFixed(0)} m`
      : `a pair of its own in ${cures.ownFeedGaugeAwg} AWG over ${meters.toFixed(0)} m`,
    "a local supply, or wireless",
  );
  return words;
}
