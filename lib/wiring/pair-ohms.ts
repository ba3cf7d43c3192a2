import { InputError } from "../problems/input-error.js";
import { requireBetween } from "../problems/require-between.js";
import { conductorOhmsPerMeter, type WarmConductor } from "./conductor-ohms-per-meter.js";

/** One stretch of a two-wire run in one kind of cable. */
export interface PairStretch {
  readonly conductor: WarmConductor;
  /** One-way length along the cable, 0 to 10 000. [m] */
  readonly runMeters: number;
  /** Conductors twisted together to make one leg: 2 for a doubled 22/4. Absent = 1. [count] */
  readonly conductorsPerLeg?: number;
}

/**
 * Resistance of a pair shorted at its far end: out and back, 2 · run · Ω/m ÷ conductors per leg. [Ω]
 * @throws {@link InputError} when the run or the conductor is outside its range.
 * @example pairOhms({ conductor: { gaugeAwg: 22 }, runMeters: 30 }); // 3.177…
 * @example pairOhms({ conductor: { gaugeAwg: 22 }, runMeters: 30, conductorsPerLeg: 2 }); // half of it
 */
export function pairOhms({ conductor, runMeters, conductorsPerLeg = 1 }: PairStretch): number {
  requireBetween({ field: "runMeters", value: runMeters, unit: "m", from: 0, to: 10_000 });
  requireBetween({ field: "conductorsPerLeg", value: conductorsPerLeg, unit: "", from: 1, to: 50, whole: true });
  return (2 * runMeters * conductorOhmsPerMeter(conductor)) / conductorsPerLeg;
}

/** A run made of several cables one after the other, each with its own share. */
export interface MixedPairOhms {
  /** Sum over the stretches. [Ω] */
  readonly ohms: number;
  /** Sum of the one-way lengths. [m] */
  readonly runMeters: number;
  /** Each stretch's share, in the order given. [Ω] */
  readonly stretchOhms: readonly number[];
}

/**
 * Resistance of a run of different cables in series: an old 22/4 with a 24/4 added later, or an extension.
 * @throws {@link InputError} when there is no stretch or one of them is outside its range.
 * @example mixedPairOhms([
 *   { conductor: { gaugeAwg: 22 }, runMeters: 20 },
 *   { conductor: { gaugeAwg: 24 }, runMeters: 10 },
 * ]).ohms; // 3.802…
 */
export function mixedPairOhms(stretches: readonly PairStretch[]): MixedPairOhms {
  if (stretches.length === 0) {
    throw new InputError({ field: "stretches", got: "none", expected: "one stretch of cable or more" });
  }
  const stretchOhms = stretches.map(pairOhms);
  return {
    ohms: stretchOhms.reduce((sum, part) => sum + part, 0),
    runMeters: stretches.reduce((sum, stretch) => sum + stretch.runMeters, 0),
    stretchOhms,
  };
}
