import { InputError } from "../problems/input-error.js";
import { requireBetween } from "../problems/require-between.js";
import { type PreferredNumbersRow, preferredNumbers } from "../reference/generated/preferred-numbers.js";
import { bandsFromOhms } from "./resistor-code.js";

/** Series of preferred values. */
export type PreferredSeries = "E3" | "E6" | "E12" | "E24" | "E48" | "E96" | "E192";

/** One preferred value beside the value that was asked for. */
export interface PreferredValue {
  /** [Ω] */
  readonly ohms: number;
  /** (preferred − asked) / asked. [%] */
  readonly percentOff: number;
  /** Colour bands at the series' usual tolerance; absent where the series has none. */
  readonly bands?: readonly string[];
}

/** The preferred values about a value. */
export interface PreferredNeighbours {
  readonly series: PreferredSeries;
  /** Tolerance of parts usually sold in the series; absent for E3. [%] */
  readonly usualTolerancePercent?: number;
  /** Highest preferred value that is not above the asked one. */
  readonly below: PreferredValue;
  /** Lowest preferred value that is not below the asked one; the same as `below` when the asked one is preferred. */
  readonly above: PreferredValue;
  /** Nearer of the two by ratio. */
  readonly nearest: PreferredValue;
}

/**
 * All values of a series in one decade, 1 up to 10, in rising order.
 * @throws {@link InputError} when there is no such series.
 * @example preferredDecade("E6"); // [1, 1.5, 2.2, 3.3, 4.7, 6.8]
 * @see IEC 60063, reference-data/preferred-numbers.json
 */
export function preferredDecade(series: PreferredSeries): readonly number[] {
  return rowOf(series).values;
}

/**
 * Preferred values just below and just above a value, and the nearer by ratio (the steps of a series are ratios).
 * @throws {@link InputError} when the value is outside 0.1 Ω to 100 MΩ or there is no such series.
 * @example preferredNeighbours({ ohms: 2270, series: "E24" }).nearest.ohms; // 2200
 * @see IEC 60063, reference-data/preferred-numbers.json
 */
export function preferredNeighbours(asked: {
  readonly ohms: number;
  readonly series: PreferredSeries;
}): PreferredNeighbours {
  const { ohms, series } = asked;
  requireBetween({ field: "ohms", value: ohms, unit: "Ω", from: 0.1, to: 100e6 });
  const { usualTolerancePercent, values } = rowOf(series);
  const decade = Math.floor(Math.log10(ohms));
  const ladder = [decade - 1, decade, decade + 1].flatMap((power) => values.map((value) => inDecade(value, power)));
  const below = ladder.filter((value) => value <= ohms).at(-1) ?? ohms;
  const above = ladder.find((value) => value >= ohms) ?? ohms;
  const beside = (value: number): PreferredValue => ({
    ohms: value,
    percentOff: (100 * (value - ohms)) / ohms,
    ...(usualTolerancePercent === undefined ? {} : { bands: bandsFor(value, usualTolerancePercent) }),
  });
  return {
    series,
    ...(usualTolerancePercent === undefined ? {} : { usualTolerancePercent }),
    below: beside(below),
    above: beside(above),
    nearest: beside(ohms / below <= above / ohms ? below : above),
  };
}

/**
 * The arithmetic of {@link preferredNeighbours} in lines for people.
 * @param format Writes a resistance for people.
 * @example preferredWords(preferredNeighbours({ ohms: 2270, series: "E24" }), (ohms) => `${ohms} Ω`)[0];
 * // "E24 below: 2200 Ω, -3.1 % off, red red red gold"
 */
export function preferredWords(found: PreferredNeighbours, format: (ohms: number) => string): string[] {
  const line = (name: string, { ohms, percentOff, bands }: PreferredValue): string => {
    const off = percentOff === 0 ? "exact" : `${percentOff > 0 ? "+" : ""}${percentOff.toFixed(1)} % off`;
    return [`${found.series} ${name}: ${format(ohms)}`, off, ...(bands ? [bands.join(" ")] : [])].join(", ");
  };
  return [line("below", found.below), line("above", found.above), line("nearest", found.nearest)];
}

/** Parts of 2 % and closer carry five bands. */
function bandsFor(ohms: number, tolerancePercent: number): string[] {
  return bandsFromOhms({ ohms, tolerancePercent, bands: tolerancePercent <= 2 ? 5 : 4 });
}

function rowOf(series: PreferredSeries): PreferredNumbersRow {
  const row = preferredNumbers.find((candidate) => candidate.series === series);
  if (row !== undefined) return row;
  const expected = preferredNumbers.map((candidate) => candidate.series).join(", ");
  throw new InputError({ field: "series", got: `${series}`, expected });
}

/** value · 10^power with the value's two decimals kept exact. */
function inDecade(value: number, power: number): number {
  const hundredths = Math.round(value * 100);
  return power >= 2 ? hundredths * 10 ** (power - 2) : hundredths / 10 ** (2 - power);
}
