import type { DeviceKind } from "../survey/survey.js";
import type { Treatment } from "../treatments/treatment.js";
import type { ZoneUse } from "../zones/zone-use.js";

/** A zone a loop becomes. A loop has none when it is left alone, several when it was split. */
export interface CutOverZone {
  /** null = arming input, no alarm zone. */
  readonly number: number | null;
  readonly name: string;
  /** null = nobody wrote what it is for; there is a query. */
  readonly use: ZoneUse | null;
  readonly area: string | null;
  /** Stands for a detector or a daily door that was taken off the pair: wireless, beside the contacts that stay. */
  readonly takenOff?: true;
}

/** One planned loop as the cut-over papers need it. */
export interface CutOverLoop {
  readonly key: string;
  readonly panel: string;
  readonly loop: string;
  /** What stands on the wire, or the loop's number. */
  readonly tag: string;
  readonly protects?: string;
  readonly place?: string;
  readonly zones: readonly CutOverZone[];
  readonly treatment: Treatment;
  readonly input: { readonly module: string; readonly number: number } | null;
  readonly eol: { readonly ohms: number; readonly at: "device" | "panel" } | null;
  readonly openings: { readonly count: number; readonly assumed: boolean };
  readonly openingsProved?: number;
  readonly devices: readonly { readonly kind: DeviceKind; readonly count: number }[];
  readonly contactForm: "NC" | "NO" | "mixed" | "unknown";
  /** Readings as found, as typed. */
  readonly asFound?: { readonly shut?: string; readonly opened?: string };
  readonly expectedShut?: { readonly lowOhms: number; readonly highOhms: number };
  /** Time the loop watches nothing while it is moved; absent = from the labour table. [min] */
  readonly darkMinutes?: number;
}

/** A place where an old control hangs. */
export interface CutOverPanel {
  readonly panel: string;
  readonly place?: string;
  /** As typed: plug-in, hardwired … */
  readonly mains?: string;
  readonly battery?: string;
  readonly sirens?: number;
  readonly keypads?: number;
}

/** Something that stops part of the work until a person lifts it. */
export interface CutOverHold {
  readonly hold: string;
  readonly loops: readonly string[];
}

/** A name for people: tag and where it comes back to. */
export const loopName = ({ panel, loop, tag }: CutOverLoop): string =>
  tag === loop ? `${panel} ${loop}`.trim() : `${panel} ${loop} ${tag}`.trim();

/** Left alone: excluded by the plan, or life safety by its use. */
export const isExcluded = ({ treatment, zones }: CutOverLoop): boolean =>
  treatment === "excluded" || zones.some(({ use }) => use === "lifeSafety");

/** A hold-up by its zone or by what hangs on it, whatever zone it was given. */
export const isHoldUp = ({ zones, devices }: CutOverLoop): boolean =>
  zones.some(({ use }) => use === "holdUp") || devices.some(({ kind }) => kind === "holdUp");

/** The zone of a daily door that a split takes off its pair; detectors taken off are never entry doors. */
export const doorTakenOff = ({ zones }: CutOverLoop): CutOverZone | undefined =>
  zones.find(({ takenOff, use }) => takenOff === true && use === "entryExit");

/** Stays on the wire, at least to begin with. */
export const staysOnWire = ({ treatment }: CutOverLoop): boolean =>
  treatment !== "wireless" && treatment !== "retire" && treatment !== "excluded";

/** In installation order: module, then input, then the order given; loops without an input last. */
export function installationOrder(loops: readonly CutOverLoop[]): readonly CutOverLoop[] {
  const rank = ({ input }: CutOverLoop): readonly [number, number] =>
    input === null ? [Number.MAX_SAFE_INTEGER, 0] : [Number(/\d+/.exec(input.module)?.[0] ?? 0), input.number];
  return [...loops].sort((a, b) => rank(a)[0] - rank(b)[0] || rank(a)[1] - rank(b)[1]);
}
