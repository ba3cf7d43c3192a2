import { InputError } from "../problems/input-error.js";
import type { Ohms } from "../quantities/ohms-reading.js";
import type { InputWindow } from "./input-window.js";
import {
  cableRange,
  conductorRange,
  dryLoopRange,
  inSeries,
  type OhmsRange,
  OUTDOOR_CELSIUS,
  partRange,
  type TerminatedLoop,
} from "./loop-range.js";
import { chanceSumBelow } from "./sum-of-uniforms.js";

export const PANEL_EOL_NOTE = "cable not supervised against a short";

/** Whether a loop suits an input, with the figures behind it. */
export interface InputFit {
  /** In the band over all tolerances, faults seen as faults, and the input's own limits kept. */
  readonly fits: boolean;
  readonly inBand: boolean;
  /** The loop with everything shut over temperature and tolerance, lowest leakage counted for the low end. [Ω] */
  readonly lowOhms: number;
  readonly highOhms: number;
  /** Distance of the nearer end from its limit over half the band; negative when outside. [1] */
  readonly marginFraction: number;
  /** Chance that bounded, even, independent tolerances carry the loop out of the band. [1] */
  readonly chanceOutside: number;
  /** A short at the far end, and whether the input then surely reports it. */
  readonly farShort: { readonly lowOhms: number; readonly highOhms: number; readonly reported: boolean };
  /** The loop with a contact open: its leakage, or over-range where none is known; and whether that is surely reported. */
  readonly opened: { readonly lowOhms: Ohms; readonly reported: boolean };
  readonly conductorHighOhms: number;
  /** What stands against it, in words with the figures. Empty when it fits. */
  readonly reasons: readonly string[];
  /** True of every fit, and to be printed with it. */
  readonly notes: readonly string[];
}

/**
 * Does the loop suit the input, over temperature and tolerance?
 * Worst case by interval arithmetic; the chance of leaving the band from the exact sum of the even spreads, because
 * tolerances are bounded and a normal tail is about three times too pessimistic at the edge of a band. Leakage moves
 * the low limit only: R ∥ leak < A exactly when R < A·leak/(leak − A).
 * @throws {@link InputError} when a field is outside its range.
 * @example fitsInput({ loop: { contacts: { count: 2, ohms: { low: 0.1, high: 2 } },
 *   eol: { ohms: 5600, toleranceFraction: 0.05, ppmPerKelvin: 250, at: "device" } },
 *   input: windowFromBand({ eolOhms: 5600, bandLow: 0.8, bandHigh: 1.2 }) }).fits; // true
 */
export function fitsInput(asked: { readonly loop: TerminatedLoop; readonly input: InputWindow }): InputFit {
  const { loop, input } = asked;
  const { leakOhms } = loop;
  if (leakOhms !== undefined && !(leakOhms > 0)) {
    throw new InputError({ field: "leakOhms", got: `${leakOhms} Ω`, expected: "over 0 Ω, or absent" });
  }
  const dry = dryLoopRange(loop);
  const leak = leakOhms === undefined || !Number.isFinite(leakOhms) ? null : leakOhms;
  const lowOhms = leak === null ? dry.lowOhms : (dry.lowOhms * leak) / (dry.lowOhms + leak);
  const highOhms = dry.highOhms;
  const marginFraction = Math.min(lowOhms - input.lowOhms, input.highOhms - highOhms) / halfBand(input);
  const farShort = shortAtFarEnd(loop, input);
  const opened = openedLoop(loop, input, leak);
  const conductorHighOhms = cableRange(loop).highOhms;
  const found = { lowOhms, highOhms, marginFraction, farShort, opened, conductorHighOhms };
  const reasons = whyNot(loop, input, found, leak);
  return {
    fits: reasons.length === 0,
    inBand: marginFraction >= 0,
    ...found,
    chanceOutside: chanceOutside(dry, input, leak),
    reasons,
    notes: loop.eol?.at === "panel" ? [PANEL_EOL_NOTE] : [],
  };
}

/** Half the width of the normal band. [Ω] */
export function halfBand(input: InputWindow): number {
  if (!(input.lowOhms >= 0 && input.highOhms > input.lowOhms)) {
    throw new InputError({
      field: "input",
      got: `${input.lowOhms} to ${input.highOhms} Ω`,
      expected: "a low limit of 0 Ω or more under a high limit",
    });
  }
  return (input.highOhms - input.lowOhms) / 2;
}

function shortAtFarEnd(loop: TerminatedLoop, input: InputWindow): InputFit["farShort"] {
  const celsius = loop.temperatureCelsius ?? OUTDOOR_CELSIUS;
  const panelParts = [loop.eol?.at === "panel" ? loop.eol : null, loop.seriesAtPanel ?? null];
  const left: OhmsRange = inSeries([
    conductorRange(loop),
    ...panelParts.filter((part) => part !== null).map((part) => partRange(part, celsius)),
  ]);
  return { lowOhms: left.lowOhms, highOhms: left.highOhms, reported: left.highOhms <= input.shortBelowOhms };
}

function openedLoop(loop: TerminatedLoop, input: InputWindow, leak: number | null): InputFit["opened"] {
  if (leak === null) return { lowOhms: "OL", reported: true };
  const trim = loop.seriesAtPanel;
  const inFront = trim === undefined ? 0 : partRange(trim, loop.temperatureCelsius ?? OUTDOOR_CELSIUS).lowOhms;
  const lowOhms = leak + inFront;
  return { lowOhms, reported: lowOhms >= input.openAboveOhms };
}

function chanceOutside(dry: OhmsRange, input: InputWindow, leak: number | null): number {
  const lowLimit =
    leak === null
      ? input.lowOhms
      : leak <= input.lowOhms
        ? Number.POSITIVE_INFINITY
        : (input.lowOhms * leak) / (leak - input.lowOhms);
  const under = lowLimit > dry.lowOhms ? chanceBelow(dry, lowLimit) : 0;
  const over = input.highOhms < dry.highOhms ? 1 - chanceBelow(dry, input.highOhms) : 0;
  return Math.min(1, Math.max(0, under) + Math.max(0, over));
}

function chanceBelow(range: OhmsRange, ohms: number): number {
  return chanceSumBelow({ widths: range.widths, below: ohms - range.lowOhms });
}

type Found = Pick<InputFit, "lowOhms" | "highOhms" | "marginFraction" | "farShort" | "opened" | "conductorHighOhms">;

function whyNot(loop: TerminatedLoop, input: InputWindow, found: Found, leak: number | null): string[] {
  const reasons: string[] = [];
  const band = `${round(input.lowOhms)} to ${round(input.highOhms)} Ω`;
  if (found.marginFraction < 0) {
    reasons.push(
      `the shut loop lies between ${round(found.lowOhms)} and ${round(found.highOhms)} Ω, the input's band is ${band}`,
    );
  }
  if (!found.farShort.reported && loop.eol?.at === "device") {
    reasons.push(
      `a short at the far end may read ${round(found.farShort.highOhms)} Ω, the input is only sure of a short up to ${round(input.shortBelowOhms)} Ω`,
    );
  }
  if (!found.opened.reported && found.opened.lowOhms !== "OL") {
    reasons.push(
      `an opened loop may read only ${round(found.opened.lowOhms)} Ω through its leakage, the input is only sure of an open from ${round(input.openAboveOhms)} Ω`,
    );
  }
  if (input.maxConductorOhms !== undefined && found.conductorHighOhms > input.maxConductorOhms) {
    reasons.push(
      `the cable may add ${round(found.conductorHighOhms)} Ω, the input allows ${round(input.maxConductorOhms)} Ω`,
    );
  }
  if (input.minLeakOhms !== undefined && leak !== null && leak < input.minLeakOhms) {
    reasons.push(
      `the leakage of ${round(leak)} Ω across the pair is under the ${round(input.minLeakOhms)} Ω that the input bears`,
    );
  }
  return reasons;
}

function round(ohms: number): string {
  return ohms < 100 ? String(Number(ohms.toPrecision(2))) : ohms.toFixed(0);
}
