import { InputError } from "../problems/input-error.js";
import { requireBetween } from "../problems/require-between.js";
import type { Conductor } from "../wiring/conductor.js";
import { pairOhms } from "../wiring/pair-ohms.js";
import { supplyDefault } from "./supply-defaults.js";

/** Where the detectors' supply comes from. */
export interface SupplySource {
  /** Name of the node it feeds; absent = "panel". */
  readonly at?: string;
  /** Auxiliary terminals with the charger on. [V] */
  readonly chargerVolts: number;
  /** Battery at the end of its discharge; absent = 10.5. [V] */
  readonly batteryEndVolts?: number;
  /** Measured loss between battery and auxiliary terminals; absent = 0.5, assumed. [V] */
  readonly internalDropVolts?: number;
}

/** One stretch of pair from one device (or the panel) to the next. */
export interface SupplySegment {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** One-way length of this stretch alone. [m] */
  readonly meters: number;
  /** The wire; or `ohmsPerMeter` where only that is known. Exactly one of the two. */
  readonly conductor?: Conductor;
  /** One conductor at the tree's temperature. [Ω/m] */
  readonly ohmsPerMeter?: number;
  /** Conductors twisted together to make one leg; absent = 1. [count] */
  readonly conductorsPerLeg?: number;
  /** Joints beyond plain wire, both legs together. [Ω] */
  readonly extraOhms?: number;
}

/** A detector and what it draws, whatever its voltage. */
export interface SupplyDetector {
  readonly id: string;
  /** Node it stands at. */
  readonly at: string;
  /** [mA] */
  readonly milliamps: number;
  /** Least supply it works at; absent = 9.5. [V] */
  readonly minimumVolts?: number;
}

/** A tree of powered detectors. */
export interface SupplyTreeInput {
  readonly source: SupplySource;
  readonly segments: readonly SupplySegment[];
  readonly detectors: readonly SupplyDetector[];
  /** Of the cable, −40 to 90; absent = 20. [°C] */
  readonly temperatureCelsius?: number;
}

/** One figure for each state of the supply. */
export interface PerState<T> {
  readonly charger: T;
  /** Battery at the end of discharge, straight at the terminals. */
  readonly batteryEnd: T;
  /** The same less the panel's internal drop. */
  readonly batteryEndLessDrop: T;
}

export type SupplyState = keyof PerState<unknown>;
export const SUPPLY_STATES: readonly SupplyState[] = ["charger", "batteryEnd", "batteryEndLessDrop"];

/** Voltages of a supply tree. */
export interface SupplyTree {
  /** At the auxiliary terminals. [V] */
  readonly sourceVolts: PerState<number>;
  readonly internalDrop: { readonly volts: number; readonly assumed: boolean };
  readonly totalMilliamps: number;
  readonly segments: readonly {
    readonly id: string;
    readonly from: string;
    readonly to: string;
    /** Both legs with joints. [Ω] */
    readonly ohms: number;
    readonly milliamps: number;
    readonly dropVolts: number;
  }[];
  /** Voltage at every node; 0 where the wire cannot carry the load at all. [V] */
  readonly nodes: readonly { readonly node: string; readonly volts: PerState<number> }[];
  readonly detectors: readonly SupplyDetectorVolts[];
}

export interface SupplyDetectorVolts {
  readonly id: string;
  readonly at: string;
  readonly milliamps: number;
  readonly minimumVolts: number;
  readonly volts: PerState<number>;
  /** At or over its minimum. */
  readonly enough: PerState<boolean>;
}

/**
 * Voltage along a tree of powered detectors that draw constant current: in each stretch flows the sum of what stands
 * beyond it, and it loses that times both legs and joints. [V]
 * Three states: charger on; battery at the end of its discharge; and that less the panel's internal drop.
 * @throws {@link InputError} when the stretches are no tree from the source, or a field is outside its range.
 * @example supplyTree({ source: { chargerVolts: 12 }, detectors: [{ id: "d", at: "a", milliamps: 60 }],
 *   segments: [{ id: "s", from: "panel", to: "a", meters: 30.48, conductor: { gaugeAwg: 22 } }] }); // 11.806 V at a
 */
export function supplyTree(tree: SupplyTreeInput): SupplyTree {
  const { source, detectors } = tree;
  const order = outward(tree);
  const drawn = new Map<string, number>();
  for (const detector of detectors) {
    requireBetween({ field: `${detector.id}.milliamps`, value: detector.milliamps, unit: "mA", from: 0, to: 1e6 });
    if (detector.at !== sourceNode(source) && !order.some((segment) => segment.to === detector.at)) {
      throw new InputError({
        field: `${detector.id}.at`,
        got: detector.at,
        expected: "a node that a segment leads to, or the source",
      });
    }
    drawn.set(detector.at, (drawn.get(detector.at) ?? 0) + detector.milliamps);
  }
  for (const segment of [...order].reverse()) {
    drawn.set(segment.from, (drawn.get(segment.from) ?? 0) + (drawn.get(segment.to) ?? 0));
  }
  const segments = order.map((segment) => {
    const ohms = segmentOhms(segment, tree.temperatureCelsius ?? 20);
    const milliamps = drawn.get(segment.to) ?? 0;
    return {
      id: segment.id,
      from: segment.from,
      to: segment.to,
      ohms,
      milliamps,
      dropVolts: (ohms * milliamps) / 1000,
    };
  });
  const lost = new Map<string, number>([[sourceNode(source), 0]]);
  for (const segment of segments) lost.set(segment.to, (lost.get(segment.from) ?? 0) + segment.dropVolts);
  const internalDropVolts = source.internalDropVolts ?? supplyDefault("internalDropVolts");
  const sourceVolts = terminalVolts(source, internalDropVolts);
  const voltsAt = (node: string): PerState<number> =>
    eachState((state) => Math.max(0, sourceVolts[state] - (lost.get(node) ?? 0)));
  return {
    sourceVolts,
    internalDrop: { volts: internalDropVolts, assumed: source.internalDropVolts === undefined },
    totalMilliamps: drawn.get(sourceNode(source)) ?? 0,
    segments,
    nodes: [...lost.keys()].map((node) => ({ node, volts: voltsAt(node) })),
    detectors: detectors.map((detector) => {
      const volts = voltsAt(detector.at);
      const minimumVolts = detector.minimumVolts ?? supplyDefault("detectorMinimumVolts");
      const { id, at, milliamps } = detector;
      return { id, at, milliamps, minimumVolts, volts, enough: eachState((state) => volts[state] >= minimumVolts) };
    }),
  };
}

export function sourceNode(source: SupplySource): string {
  return source.at ?? "panel";
}

/** One value per state of the supply. */
export function eachState<T>(make: (state: SupplyState) => T): PerState<T> {
  return { charger: make("charger"), batteryEnd: make("batteryEnd"), batteryEndLessDrop: make("batteryEndLessDrop") };
}

/** Both legs of one stretch with its joints. [Ω] */
export function segmentOhms(segment: SupplySegment, temperatureCelsius: number): number {
  const { id, meters, conductor, ohmsPerMeter, conductorsPerLeg = 1, extraOhms = 0 } = segment;
  requireBetween({ field: `${id}.extraOhms`, value: extraOhms, unit: "Ω", from: 0, to: 1e6 });
  if (conductor !== undefined && ohmsPerMeter === undefined) {
    const warm = { ...conductor, temperatureCelsius };
    return pairOhms({ conductor: warm, runMeters: meters, conductorsPerLeg }) + extraOhms;
  }
  if (conductor !== undefined || ohmsPerMeter === undefined) {
    const got = conductor === undefined ? "neither" : "both";
    throw new InputError({ field: `${id}.conductor, ${id}.ohmsPerMeter`, got, expected: "exactly one of them" });
  }
  requireBetween({ field: `${id}.meters`, value: meters, unit: "m", from: 0, to: 10_000 });
  requireBetween({ field: `${id}.ohmsPerMeter`, value: ohmsPerMeter, unit: "Ω/m", from: 0, to: 1000 });
  return (2 * meters * ohmsPerMeter) / conductorsPerLeg + extraOhms;
}

function terminalVolts(source: SupplySource, internalDropVolts: number): PerState<number> {
  const charger = requireBetween({ field: "chargerVolts", value: source.chargerVolts, unit: "V", from: 0, to: 1000 });
  const end = source.batteryEndVolts ?? supplyDefault("batteryEndVolts");
  const batteryEnd = requireBetween({ field: "batteryEndVolts", value: end, unit: "V", from: 0, to: 1000 });
  requireBetween({ field: "internalDropVolts", value: internalDropVolts, unit: "V", from: 0, to: 100 });
  return { charger, batteryEnd, batteryEndLessDrop: Math.max(0, batteryEnd - internalDropVolts) };
}

/** The stretches in an order in which each comes after the one that feeds it. */
export function outward(tree: SupplyTreeInput): readonly SupplySegment[] {
  const root = sourceNode(tree.source);
  const feeders = new Map<string, SupplySegment>();
  for (const segment of tree.segments) {
    const rival = feeders.get(segment.to);
    if (rival !== undefined || segment.to === root) {
      const got = segment.to === root ? `${segment.id} leads back to the source` : `${rival?.id} and ${segment.id}`;
      throw new InputError({ field: "segments", got, expected: `one segment leading to ${segment.to} at most` });
    }
    feeders.set(segment.to, segment);
  }
  const ordered: SupplySegment[] = [];
  const reached = [root];
  for (const node of reached) {
    for (const segment of tree.segments) {
      if (segment.from !== node) continue;
      ordered.push(segment);
      reached.push(segment.to);
    }
  }
  if (ordered.length < tree.segments.length) {
    const left = tree.segments.filter((segment) => !ordered.includes(segment)).map((segment) => segment.id);
    throw new InputError({
      field: "segments",
      got: `${left.join(", ")} not fed`,
      expected: `a path from ${root} to each`,
    });
  }
  return ordered;
}

/** The stretches from the source to a node, in that order. */
export function pathTo(tree: SupplyTreeInput, node: string): readonly SupplySegment[] {
  const feeders = new Map(outward(tree).map((segment) => [segment.to, segment]));
  const path: SupplySegment[] = [];
  for (let segment = feeders.get(node); segment !== undefined; segment = feeders.get(segment.from)) {
    path.unshift(segment);
  }
  return path;
}
