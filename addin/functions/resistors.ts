import * as library from "../loopwright-functions.js";
import { type Answer, type CellValue, inCells, spill } from "./answer.js";
import {
  choice,
  ifGiven,
  isLeftOut,
  number,
  ohms,
  ohmsOrOpen,
  plainCell,
  plainRows,
  refused,
  run,
} from "./arguments.js";

/**
 * A resistance as typed ("2.2k", "4k7", "1.2M", "OL") as a number of Ω. OL stays the text OL.
 * @customfunction OHMS OHMS
 * @param text Reading as text, or a number in Ω.
 * @returns Resistance in Ω, or OL for over-range.
 * @example =LOOPW.OHMS("2.2k") → 2200
 * @example =LOOPW.OHMS("OL") → "OL"
 */
export function ohmsFromText(text: unknown): unknown {
  return inCells(() => ohmsAnswer(text));
}

export function ohmsAnswer(text: unknown): Answer<CellValue> {
  const { value, remarks } = ohmsOrOpen({ name: "text", cell: text });
  return { value, words: [library.formatOhms(value), ...remarks] };
}

/**
 * A length as typed ("120 ft", "55'", "35-55 ft") as a number of metres; of a range its middle.
 * @customfunction METERS METERS
 * @param text Length as text with its unit, or a number in metres, 0 to 3000.
 * @returns Length in metres.
 * @example =LOOPW.METERS("120 ft") → 36.576
 */
export function metersFromText(text: unknown): number {
  return inCells(() => metersAnswer(text));
}

export function metersAnswer(text: unknown): Answer<number> {
  const { value, remarks } = run({ name: "text", cell: text });
  const range = value.lowMeters === value.highMeters ? "" : `, between ${value.lowMeters} and ${value.highMeters} m`;
  return { value: value.meters, words: [`${value.meters} m${range}.`, ...remarks] };
}

/**
 * Resistance in Ω of parts one after the other; OL when one of them is open. Empty cells are left out.
 * @customfunction IN_SERIES IN_SERIES
 * @param parts Parts as text such as "2.2k" or "OL", or numbers in Ω; cells or ranges.
 * @returns Sum in Ω, or OL.
 * @example =LOOPW.IN_SERIES("2.2k", 4.5, 0.3) → 2204.8
 */
export function inSeries(parts: unknown[][][]): unknown {
  return inCells(() => inSeriesAnswer(...parts));
}

export function inSeriesAnswer(...parts: readonly unknown[]): Answer<CellValue> {
  const values = partOhms(parts);
  const last = values.length;
  const elements = values.map((value, i) => ({ from: `n${i}`, to: `n${i + 1}`, ohms: value }));
  return network({ probe: ["n0", `n${last}`], elements }, values.join(" + "));
}

/**
 * Resistance in Ω of parts across each other; OL when all of them are open. Empty cells are left out.
 * @customfunction IN_PARALLEL IN_PARALLEL
 * @param parts Parts as text such as "2.2k" or "OL", or numbers in Ω; cells or ranges.
 * @returns Resistance in Ω, or OL above 1 GΩ.
 * @example =LOOPW.IN_PARALLEL(100, 250) → 71.43
 */
export function inParallel(parts: unknown[][][]): unknown {
  return inCells(() => inParallelAnswer(...parts));
}

export function inParallelAnswer(...parts: readonly unknown[]): Answer<CellValue> {
  const values = partOhms(parts);
  const elements = values.map((value) => ({ from: "a", to: "b", ohms: value }));
  return network({ probe: ["a", "b"], elements }, values.map((value) => `1/${value}`).join(" + "));
}

function partOhms(parts: readonly unknown[]): readonly number[] {
  const values = parts.flatMap((part, index) => {
    const name = `parts ${index + 1}`;
    return plainRows({ name, cell: part })
      .flat()
      .filter((cell) => !isLeftOut(cell))
      .map((cell) => {
        const { value } = ohmsOrOpen({ name, cell });
        return value === "OL" ? Number.POSITIVE_INFINITY : value;
      });
  });
  if (values.length === 0) throw refused("parts", "no resistance", "one or more");
  return values;
}

function network(circuit: Parameters<typeof library.terminalOhms>[0], arithmetic: string): Answer<CellValue> {
  const total = library.terminalOhms(circuit);
  const value = Number.isFinite(total) ? total : "OL";
  return { value, words: [`${arithmetic.replaceAll("Infinity", "OL")}: ${library.formatOhms(value)}.`] };
}

/**
 * Preferred value nearest to a resistance, by ratio, in Ω; or the nearest one below or above it. 0.1 Ω to 100 MΩ. Source: IEC 60063.
 * @customfunction NEAREST_RESISTOR NEAREST_RESISTOR
 * @param ohms Resistance as text such as "2.27k", or a number in Ω.
 * @param series E3, E6, E12, E24, E48, E96 or E192. Left out: E24.
 * @param side "nearest", "below" or "above". Left out: nearest.
 * @returns Preferred value in Ω.
 * @example =LOOPW.NEAREST_RESISTOR("2.27k") → 2200
 * @example =LOOPW.NEAREST_RESISTOR(2270, "E96", "above") → 2320
 */
export function nearestResistor(ohms: unknown, series?: unknown, side?: unknown): number {
  return inCells(() => nearestResistorAnswer(ohms, series, side));
}

const SERIES: readonly library.PreferredSeries[] = ["E3", "E6", "E12", "E24", "E48", "E96", "E192"];

export function nearestResistorAnswer(asked: unknown, family?: unknown, side?: unknown): Answer<number> {
  const { value, remarks } = ohms({ name: "ohms", cell: asked });
  const series = ifGiven({ name: "series", cell: family }, (given) => choice(given, SERIES)) ?? "E24";
  const wanted =
    ifGiven({ name: "side", cell: side }, (given) => choice(given, ["nearest", "below", "above"])) ?? "nearest";
  const found = library.preferredNeighbours({ ohms: value, series });
  const words = library.preferredWords(found, library.formatOhms).map((line) => `${line}.`);
  return { value: found[wanted].ohms, words: [...words, ...remarks] };
}

/**
 * Colour bands of a resistor, first digit first. 0.01 Ω to 999 GΩ, two significant digits on four bands, three on five. Source: IEC 60062.
 * @customfunction RESISTOR_BANDS RESISTOR_BANDS
 * @param ohms Printed value as text such as "2.2k", or a number in Ω.
 * @param tolerancePercent 20, 10, 5, 2, 1, 0.5 or 0.25, in percent. Left out: 5.
 * @param bands 4 or 5. Left out: as few as hold the value.
 * @returns Colours, separated by blanks.
 * @example =LOOPW.RESISTOR_BANDS("2.2k") → "red red red gold"
 * @example =LOOPW.RESISTOR_BANDS(2210, 1) → "red red brown brown brown"
 */
export function resistorBands(ohms: unknown, tolerancePercent?: unknown, bands?: unknown): string {
  return inCells(() => resistorBandsAnswer(ohms, tolerancePercent, bands));
}

export function resistorBandsAnswer(asked: unknown, tolerance?: unknown, count?: unknown): Answer<string> {
  const { value, remarks } = ohms({ name: "ohms", cell: asked });
  const tolerancePercent = ifGiven({ name: "tolerancePercent", cell: tolerance }, number) ?? 5;
  const wanted = ifGiven({ name: "bands", cell: count }, number);
  if (wanted !== undefined && wanted !== 4 && wanted !== 5) throw refused("bands", `${wanted}`, "4 or 5");
  if (tolerancePercent > 0 && tolerancePercent < 0.25) {
    const hint = "20, 10, 5, 2, 1, 0.5 or 0.25; a cell that shows 5% holds 0.05, write 5";
    throw refused("tolerancePercent", `${tolerancePercent}`, hint);
  }
  const colours = library.bandsFromOhms({
    ohms: value,
    tolerancePercent,
    ...(wanted === undefined ? {} : { bands: wanted }),
  });
  return {
    value: colours.join(" "),
    words: [`${library.formatOhms(value)}, ${tolerancePercent} %: ${colours.join(", ")}.`, ...remarks],
  };
}

/**
 * Value of a resistor from its three to five colour bands, in one row of two cells: Ω and tolerance in percent (empty where the sources disagree on the colour). Source: IEC 60062.
 * @customfunction OHMS_FROM_BANDS OHMS_FROM_BANDS
 * @param bands Colours from the end nearer a band, separated by blanks or commas.
 * @returns Value in Ω | tolerance in percent.
 * @example =LOOPW.OHMS_FROM_BANDS("yellow violet orange gold") → 47000 | 5
 */
export function ohmsFromBands(bands: unknown): unknown[][] {
  return inCells(() => ohmsFromBandsAnswer(bands));
}

export function ohmsFromBandsAnswer(bands: unknown): Answer<CellValue[][]> {
  const typed = String(plainCell({ name: "bands", cell: bands }) ?? "");
  const colours = typed.split(/[\s,;/-]+/).filter((colour) => colour !== "");
  const { ohms: value, tolerancePercent, disputedTolerancePercent } = library.ohmsFromBands(colours);
  const tolerance = tolerancePercent === undefined ? "tolerance not settled" : `± ${tolerancePercent} %`;
  const quoted = disputedTolerancePercent === undefined ? [] : [`One source reads ± ${disputedTolerancePercent} %.`];
  return {
    value: spill([[value, tolerancePercent ?? ""]]),
    words: [`${library.formatOhms(value)}, ${tolerance}.`, ...quoted],
  };
}
