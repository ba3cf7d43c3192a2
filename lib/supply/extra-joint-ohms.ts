import { InputError } from "../problems/input-error.js";
import { supplyDefault } from "./supply-defaults.js";
import { pathTo, type SupplySegment, type SupplyTreeInput, sourceNode, supplyTree } from "./supply-tree.js";

/** A voltage read at a node with the charger on. */
export interface MeasuredVolts {
  readonly at: string;
  /** [V] */
  readonly volts: number;
}

/** What a measured voltage says of the wire between it and the nearest reading nearer the source. */
export interface ExtraJoint {
  readonly at: string;
  /** Nearest node towards the source that was measured too, or the source. */
  readonly from: string;
  /** Plain wire should lose this between the two. [V] */
  readonly expectedDropVolts: number;
  readonly measuredDropVolts: number;
  /** Measured less expected; negative when less was lost than expected. [V] */
  readonly extraVolts: number;
  /** What the two readings may be off together. [V] */
  readonly boundVolts: number;
  /** More was lost than the readings' own uncertainty explains. */
  readonly beyondBound: boolean;
  /** If the extra sits in the last stretch before this node. [Ω] */
  readonly ohms: number;
  /** Whatever stretch it sits in and however far the readings are off. [Ω] */
  readonly lowOhms: number;
  readonly highOhms: number;
  /** Stretches in which it may sit. */
  readonly segments: readonly string[];
  readonly words: string;
}

/**
 * Resistance hidden in joints, from voltages read along the tree with the charger on: what is lost between two
 * readings beyond plain wire, over the current there. One entry per reading, in the order given. [Ω]
 * @throws {@link InputError} when a reading stands at a node without current, or a field is outside its range.
 */
export function extraJointOhms(asked: {
  readonly tree: SupplyTreeInput;
  readonly measured: readonly MeasuredVolts[];
  /** How far each reading may be off, either way; absent = 0.05. [V] */
  readonly voltsBound?: number;
}): ExtraJoint[] {
  const { tree, measured } = asked;
  const plain = { ...tree, segments: tree.segments.map(withoutJoints) };
  const solved = supplyTree(plain);
  const boundVolts = 2 * (asked.voltsBound ?? supplyDefault("voltsBound"));
  const readings = new Map(measured.map((reading) => [reading.at, reading.volts]));
  readings.set(sourceNode(tree.source), readings.get(sourceNode(tree.source)) ?? tree.source.chargerVolts);
  return measured
    .filter((reading) => reading.at !== sourceNode(tree.source))
    .map((reading) => {
      const path = pathTo(plain, reading.at);
      if (path.length === 0) {
        throw new InputError({ field: "measured.at", got: reading.at, expected: "a node that a segment leads to" });
      }
      const start = path.map((segment) => readings.has(segment.from)).lastIndexOf(true);
      const stretch = path.slice(start).map((segment) => solved.segments.find((one) => one.id === segment.id));
      const parts = stretch.filter((part) => part !== undefined);
      const from = path[start]?.from ?? sourceNode(tree.source);
      return jointOf(reading, from, readings.get(from) ?? tree.source.chargerVolts, parts, boundVolts);
    });
}

function withoutJoints(segment: SupplySegment): SupplySegment {
  const { extraOhms: _known, ...plain } = segment;
  return plain;
}

function jointOf(
  reading: MeasuredVolts,
  from: string,
  fromVolts: number,
  parts: readonly { readonly id: string; readonly milliamps: number; readonly dropVolts: number }[],
  boundVolts: number,
): ExtraJoint {
  const expectedDropVolts = parts.reduce((sum, part) => sum + part.dropVolts, 0);
  const measuredDropVolts = fromVolts - reading.volts;
  const extraVolts = measuredDropVolts - expectedDropVolts;
  const amps = parts.map((part) => part.milliamps / 1000);
  const lastAmps = amps[amps.length - 1] ?? 0;
  if (!(Math.min(...amps) > 0)) {
    throw new InputError({ field: "measured.at", got: `${reading.at}, no current there`, expected: "a loaded node" });
  }
  const ohms = Math.max(0, extraVolts) / lastAmps;
  const lowOhms = Math.max(0, extraVolts - boundVolts) / Math.max(...amps);
  const highOhms = Math.max(0, extraVolts + boundVolts) / Math.min(...amps);
  const beyondBound = extraVolts > boundVolts;
  const segments = parts.map((part) => part.id);
  const lost = `${measuredDropVolts.toFixed(2)} V lost between ${from} and ${reading.at}, plain wire loses ${expectedDropVolts.toFixed(2)} V`;
  const words = beyondBound
    ? `${lost}: ${extraVolts.toFixed(2)} V more at ${(lastAmps * 1000).toFixed(0)} mA, an extra ${lowOhms.toFixed(0)} to ${highOhms.toFixed(0)} Ω in joints or wire thinner or longer than written`
    : `${lost}: the difference is within what the readings may be off`;
  return {
    at: reading.at,
    from,
    expectedDropVolts,
    measuredDropVolts,
    extraVolts,
    boundVolts,
    beyondBound,
    ohms,
    lowOhms,
    highOhms,
    segments,
    words,
  };
}

/**
 * The tree with found joints put into the last stretch before each reading, so that it gives the measured voltages
 * again. Joints of 0 Ω change nothing.
 */
export function withJoints(tree: SupplyTreeInput, joints: readonly ExtraJoint[]): SupplyTreeInput {
  const extra = new Map(joints.map((joint) => [joint.segments[joint.segments.length - 1] ?? "", joint.ohms]));
  const segments = tree.segments.map((segment) => {
    const plain = withoutJoints(segment);
    const ohms = extra.get(segment.id) ?? segment.extraOhms ?? 0;
    return ohms === 0 ? plain : { ...plain, extraOhms: ohms };
  });
  return { ...tree, segments };
}
