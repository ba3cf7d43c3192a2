import { InputError } from "../problems/input-error.js";

/** A quantity known only to lie between two values. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** What a supervised input takes a loop resistance for. */
export interface InputWindow {
  /** Loops between these two read as normal, whatever the input's own spread. [Ω] */
  readonly lowOhms: number;
  readonly highOhms: number;
  /** A loop at or under this certainly reads as shorted (or tripped low). [Ω] */
  readonly shortBelowOhms: number;
  /** A loop at or over this certainly reads as open (or tripped high). [Ω] */
  readonly openAboveOhms: number;
  /** EOL value the window is set for, where it was given as a band about one. [Ω] */
  readonly eolOhms?: number;
  /** Most that the cable's conductors alone may add. [Ω] */
  readonly maxConductorOhms?: number;
  /** Least leakage across the pair that the input bears. [Ω] */
  readonly minLeakOhms?: number;
}

/** A normal band given as fractions of one EOL value, as module data sheets print it. */
export interface EolBand {
  /** [Ω] */
  readonly eolOhms: number;
  /** Fractions of the EOL value, for example 0.8 and 1.2. [1] */
  readonly bandLow: number;
  readonly bandHigh: number;
  /** Where the data sheet names them; otherwise everything outside the band counts as a fault. [Ω] */
  readonly shortBelowOhms?: number;
  readonly openAboveOhms?: number;
  readonly maxConductorOhms?: number;
  readonly minLeakOhms?: number;
  /** Instead of `minLeakOhms`: least leakage as a multiple of the EOL value. [1] */
  readonly minLeakTimesEol?: number;
}

/**
 * Window of an input whose normal band is EOL × bandLow … EOL × bandHigh. [Ω]
 * @throws {@link InputError} when the band does not enclose the EOL value.
 * @example windowFromBand({ eolOhms: 5600, bandLow: 0.8, bandHigh: 1.2 }); // 4480 to 6720 Ω
 */
export function windowFromBand(band: EolBand): InputWindow {
  if (!(band.eolOhms > 0) || !Number.isFinite(band.eolOhms)) {
    throw new InputError({ field: "eolOhms", got: `${band.eolOhms} Ω`, expected: "a value over 0 Ω" });
  }
  if (!(band.bandLow > 0 && band.bandLow < 1 && band.bandHigh > 1 && Number.isFinite(band.bandHigh))) {
    throw new InputError({
      field: "bandLow, bandHigh",
      got: `${band.bandLow} and ${band.bandHigh}`,
      expected: "fractions of the EOL value on either side of 1, the low one over 0",
    });
  }
  const lowOhms = band.eolOhms * band.bandLow;
  const highOhms = band.eolOhms * band.bandHigh;
  const minLeakOhms =
    band.minLeakOhms ?? (band.minLeakTimesEol === undefined ? undefined : band.minLeakTimesEol * band.eolOhms);
  return {
    eolOhms: band.eolOhms,
    lowOhms,
    highOhms,
    shortBelowOhms: band.shortBelowOhms ?? lowOhms,
    openAboveOhms: band.openAboveOhms ?? highOhms,
    ...(band.maxConductorOhms === undefined ? {} : { maxConductorOhms: band.maxConductorOhms }),
    ...(minLeakOhms === undefined ? {} : { minLeakOhms }),
  };
}

/** An input that compares the voltage of a divider: a pull-up resistor to its supply, the loop to its common. */
export interface DividerInput {
  /** Supply of the divider with its spread. [V] */
  readonly supplyVolts: Span;
  /** Pull-up resistor with its tolerance. [Ω] */
  readonly pullUpOhms: Span;
  /** Terminal voltage read as normal. [V] */
  readonly normalVolts: Span;
  /** At or under this the input reads short; at or over the other, open. [V] */
  readonly shortVolts: number;
  readonly openVolts: number;
  readonly maxConductorOhms?: number;
  readonly minLeakOhms?: number;
}

/**
 * Ohm window of a divider input, R = Rp·v/(Vs − v), at the worst corner of supply and pull-up for each limit: the
 * normal band shrinks to what is normal at every corner, short and open to what is a fault at every corner. [Ω]
 * @throws {@link InputError} when a voltage is not below the supply, or the limits are out of order, or nothing is
 * normal at every corner.
 * @example windowFromDivider({ supplyVolts: { low: 5, high: 5 }, pullUpOhms: { low: 680, high: 680 },
 *   normalVolts: { low: 1.1, high: 4.1 }, shortVolts: 0.75, openVolts: 4.6 }); // 191.8 to 3097.8 Ω, short 120 Ω
 */
export function windowFromDivider(input: DividerInput): InputWindow {
  const { supplyVolts, pullUpOhms, normalVolts, shortVolts, openVolts } = input;
  const rising = [0, shortVolts, normalVolts.low, normalVolts.high, openVolts, supplyVolts.low, supplyVolts.high];
  const ordered = rising.every((volts, i) => i === 0 || volts >= (rising[i - 1] ?? 0));
  if (!ordered || openVolts >= supplyVolts.low || !(pullUpOhms.low > 0 && pullUpOhms.high >= pullUpOhms.low)) {
    throw new InputError({
      field: "shortVolts, normalVolts, openVolts, supplyVolts, pullUpOhms",
      got: `${rising.slice(1).join(", ")} V, ${pullUpOhms.low} to ${pullUpOhms.high} Ω`,
      expected: "0 V ≤ short ≤ normal low ≤ normal high ≤ open < supply low ≤ supply high, and a pull-up over 0 Ω",
    });
  }
  const ohmsAt = (volts: number, pull: number, supply: number): number => (pull * volts) / (supply - volts);
  const most = (volts: number): number => ohmsAt(volts, pullUpOhms.high, supplyVolts.low);
  const least = (volts: number): number => ohmsAt(volts, pullUpOhms.low, supplyVolts.high);
  const lowOhms = most(normalVolts.low);
  const highOhms = least(normalVolts.high);
  if (lowOhms >= highOhms) {
    throw new InputError({
      field: "supplyVolts, pullUpOhms",
      got: `normal from ${lowOhms.toFixed(0)} Ω to ${highOhms.toFixed(0)} Ω`,
      expected: "a spread small enough that some resistance is normal at every corner",
    });
  }
  return {
    lowOhms,
    highOhms,
    shortBelowOhms: least(shortVolts),
    openAboveOhms: most(openVolts),
    ...(input.maxConductorOhms === undefined ? {} : { maxConductorOhms: input.maxConductorOhms }),
    ...(input.minLeakOhms === undefined ? {} : { minLeakOhms: input.minLeakOhms }),
  };
}
