import { InputError } from "../problems/input-error.js";
import type { Conductor } from "../wiring/conductor.js";
import { pairOhms } from "../wiring/pair-ohms.js";
import type { Span } from "./input-window.js";

/** One resistor as bought or found: printed value, tolerance, drift. */
export interface ResistorPart {
  /** [Ω] */
  readonly ohms: number;
  /** Bounded part tolerance, 0.05 for 5 %. [1] */
  readonly toleranceFraction: number;
  /** Bounded temperature coefficient. [ppm/K] */
  readonly ppmPerKelvin: number;
}

/** A loop of normally closed contacts in series, as an input sees it with everything shut. */
export interface TerminatedLoop {
  /** The pair. Absent only where its resistance is counted in `extraOhms`. */
  readonly cable?: {
    readonly conductor: Conductor;
    /** One-way length. [m] */
    readonly runMeters: Span;
    /** Conductors twisted together to make one leg; absent = 1. [count] */
    readonly conductorsPerLeg?: number;
  };
  /** Contacts in series and what each may add. [Ω] */
  readonly contacts: { readonly count: number; readonly ohms: Span };
  /** Joints, armoured leads, a known bad joint: whatever else stands in series. [Ω] */
  readonly extraOhms?: Span;
  /** The end-of-line resistor and where it sits, or null when there is none. */
  readonly eol: (ResistorPart & { readonly at: "device" | "panel" }) | null;
  /** A resistor across the EOL, past the last contact. */
  readonly parallelAtEnd?: ResistorPart;
  /** A resistor in series at the panel. */
  readonly seriesAtPanel?: ResistorPart;
  /** Lowest leakage across the pair; counted across the input terminals, where it does most. Absent = none known. [Ω] */
  readonly leakOhms?: number;
  /** Temperatures the loop will see; −20 to 60 °C when absent. [°C] */
  readonly temperatureCelsius?: Span;
}

/** Lowest and highest resistance, and the widths of the even spreads that make it up. [Ω] */
export interface OhmsRange {
  readonly lowOhms: number;
  readonly highOhms: number;
  /** Independent even spreads whose sum runs from `lowOhms` to `highOhms`. [Ω] */
  readonly widths: readonly number[];
}

export const OUTDOOR_CELSIUS: Span = { low: -20, high: 60 };

/** Adds ranges in series. */
export function inSeries(ranges: readonly OhmsRange[]): OhmsRange {
  return {
    lowOhms: ranges.reduce((sum, range) => sum + range.lowOhms, 0),
    highOhms: ranges.reduce((sum, range) => sum + range.highOhms, 0),
    widths: ranges.flatMap((range) => range.widths),
  };
}

/** Conductors, contacts and joints without any resistor: what a short at the far end leaves. [Ω] */
export function conductorRange(loop: TerminatedLoop): OhmsRange {
  return inSeries([cableRange(loop), contactsRange(loop), spread("extraOhms", loop.extraOhms ?? { low: 0, high: 0 })]);
}

/** The pair alone over its temperatures. [Ω] */
export function cableRange(loop: TerminatedLoop): OhmsRange {
  const { cable } = loop;
  if (cable === undefined) return { lowOhms: 0, highOhms: 0, widths: [] };
  const run = checkedSpan("cable.runMeters", cable.runMeters);
  const celsius = loop.temperatureCelsius ?? OUTDOOR_CELSIUS;
  const ohmsAt = (runMeters: number, temperatureCelsius: number): number =>
    pairOhms({
      conductor: { ...cable.conductor, temperatureCelsius },
      runMeters,
      conductorsPerLeg: cable.conductorsPerLeg ?? 1,
    });
  const lowOhms = ohmsAt(run.low, celsius.low);
  const highOhms = ohmsAt(run.high, celsius.high);
  return { lowOhms, highOhms, widths: [highOhms - lowOhms] };
}

function contactsRange(loop: TerminatedLoop): OhmsRange {
  const { count } = loop.contacts;
  if (!Number.isInteger(count) || count < 0) {
    throw new InputError({ field: "contacts.count", got: String(count), expected: "a whole number of 0 or more" });
  }
  const each = checkedSpan("contacts.ohms", loop.contacts.ohms);
  return {
    lowOhms: count * each.low,
    highOhms: count * each.high,
    widths: new Array<number>(count).fill(each.high - each.low),
  };
}

/**
 * One resistor over its tolerance and its drift away from 20 °C: E(1 ± tol)(1 ± TCR·ΔT), as two even spreads about
 * a centre shifted so that both corners are exact. [Ω]
 */
export function partRange(part: ResistorPart, celsius: Span): OhmsRange {
  if (!(part.ohms > 0 && part.toleranceFraction >= 0 && part.toleranceFraction < 1 && part.ppmPerKelvin >= 0)) {
    throw new InputError({
      field: "resistor",
      got: `${part.ohms} Ω, tolerance ${part.toleranceFraction}, ${part.ppmPerKelvin} ppm/K`,
      expected: "over 0 Ω, tolerance 0 to under 1, 0 ppm/K or more",
    });
  }
  const away = Math.max(Math.abs(celsius.low - 20), Math.abs(celsius.high - 20));
  const drift = part.ppmPerKelvin * 1e-6 * away;
  return {
    lowOhms: part.ohms * (1 - part.toleranceFraction) * (1 - drift),
    highOhms: part.ohms * (1 + part.toleranceFraction) * (1 + drift),
    widths: [2 * part.ohms * part.toleranceFraction, 2 * part.ohms * drift],
  };
}

/**
 * Two resistors in parallel. The corners are exact; the spreads inside are taken as linear, each weighted by its
 * share of the change, and scaled to meet the corners. [Ω]
 */
export function inParallel(one: OhmsRange, other: OhmsRange): OhmsRange {
  const lowOhms = (one.lowOhms * other.lowOhms) / (one.lowOhms + other.lowOhms);
  const highOhms = (one.highOhms * other.highOhms) / (one.highOhms + other.highOhms);
  const middleOne = (one.lowOhms + one.highOhms) / 2;
  const middleOther = (other.lowOhms + other.highOhms) / 2;
  const share = middleOther / (middleOne + middleOther);
  const weighted = [...one.widths.map((w) => w * share * share), ...other.widths.map((w) => w * (1 - share) ** 2)];
  const sum = weighted.reduce((all, width) => all + width, 0);
  const scale = sum === 0 ? 0 : (highOhms - lowOhms) / sum;
  return { lowOhms, highOhms, widths: weighted.map((width) => width * scale) };
}

/** The whole loop with everything shut, leakage left out. [Ω] */
export function dryLoopRange(loop: TerminatedLoop): OhmsRange {
  const celsius = checkedSpan("temperatureCelsius", loop.temperatureCelsius ?? OUTDOOR_CELSIUS, true);
  const end = loop.eol === null ? null : partRange(loop.eol, celsius);
  const parallel = loop.parallelAtEnd === undefined ? null : partRange(loop.parallelAtEnd, celsius);
  const ending = end !== null && parallel !== null ? inParallel(end, parallel) : (end ?? parallel);
  const trim = loop.seriesAtPanel === undefined ? [] : [partRange(loop.seriesAtPanel, celsius)];
  return inSeries([conductorRange(loop), ...(ending === null ? [] : [ending]), ...trim]);
}

function spread(field: string, span: Span): OhmsRange {
  const { low, high } = checkedSpan(field, span);
  return { lowOhms: low, highOhms: high, widths: [high - low] };
}

function checkedSpan(field: string, span: Span, mayBeNegative = false): Span {
  const ordered = Number.isFinite(span.low) && Number.isFinite(span.high) && span.low <= span.high;
  if (!ordered || (!mayBeNegative && span.low < 0)) {
    throw new InputError({
      field,
      got: `${span.low} to ${span.high}`,
      expected: `a low value not above the high one${mayBeNegative ? "" : ", both 0 or more"}`,
    });
  }
  return span;
}
