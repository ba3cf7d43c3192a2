import { InputError } from "../problems/input-error.js";
import { preferredNumbers } from "../reference/generated/preferred-numbers.js";
import { onlyRow } from "../reference/rows.js";
import { fitsInput, halfBand, type InputFit, PANEL_EOL_NOTE } from "./fits-input.js";
import type { InputWindow } from "./input-window.js";
import { dryLoopRange, OUTDOOR_CELSIUS, partRange, type ResistorPart, type TerminatedLoop } from "./loop-range.js";

/** A family of resistors that can be bought. */
export interface ResistorSeries {
  readonly series: "E3" | "E6" | "E12" | "E24" | "E48" | "E96" | "E192";
  /** [1] */
  readonly toleranceFraction: number;
  /** [ppm/K] */
  readonly ppmPerKelvin: number;
}

/** E24 5 % 250 ppm/K and E96 1 % 100 ppm/K: common practice, no source. */
export const USUAL_RESISTORS: readonly ResistorSeries[] = [
  { series: "E24", toleranceFraction: 0.05, ppmPerKelvin: 250 },
  { series: "E96", toleranceFraction: 0.01, ppmPerKelvin: 100 },
];

/** What the resistor question needs. */
export interface ResistorQuestion {
  /** The loop as it is. Any trim already fitted counts as part of it. */
  readonly loop: TerminatedLoop;
  readonly input: InputWindow;
  /**
   * How far out somebody can work: at the far end; at the last contact but not at the EOL (potted, inside a
   * detector); or only at the panel. Absent = farEnd.
   */
  readonly reach?: "farEnd" | "lastContact" | "panel";
  /** What can be bought; absent = {@link USUAL_RESISTORS}. */
  readonly parts?: readonly ResistorSeries[];
}

/** One resistor that would bring the loop into the band. */
export interface ResistorOffer {
  /** fit: there was none. replace: in place of the old one. seriesTrim, parallelTrim: beside the old one. */
  readonly how: "fit" | "replace" | "seriesTrim" | "parallelTrim";
  /** Where the new part goes. */
  readonly partAt: "device" | "panel";
  /** Where the EOL then sits. A trim leaves it where it was. */
  readonly eolAt: "device" | "panel";
  readonly series: ResistorSeries["series"];
  /** Printed value of the new part. [Ω] */
  readonly ohms: number;
  /** Of half the band. [1] */
  readonly marginFraction: number;
  readonly fit: InputFit;
  readonly words: string;
  readonly notes: readonly string[];
}

/** What to do about the resistor of one loop. */
export interface ResistorAdvice {
  readonly action: "nothing" | "fit" | "repairFirst" | "noneServes";
  /** The offer with the widest margin; null unless the action is `fit`. */
  readonly recommended: ResistorOffer | null;
  /** Everything that brings the loop into the band, widest margin first. With `nothing` it is for comparison only. */
  readonly offers: readonly ResistorOffer[];
  readonly asIs: InputFit;
  readonly words: string;
  /** Ways that were looked at and refused, with the reason. */
  readonly refused: readonly string[];
}

/**
 * Which resistor, where, brings a loop into an input's band with the widest margin.
 * In band: nothing. Leaking: repair first, a resistor does not mend it. At the far end the EOL is replaced, never
 * trimmed. At the panel a series trim raises a low EOL, but only where the input calls a short through the trim a
 * fault. Past the last contact a parallel trim lowers a high EOL that is out of reach; never at the panel, where an
 * opened loop would read the trim in place of over-range. Ideal values: series (A + B − Rmin − Rmax)/2, parallel
 * E·C/(E − C); every preferred value near them is tried.
 * @throws {@link InputError} when a field is outside its range.
 * @example resistorFor({ loop: { contacts: { count: 2, ohms: { low: 0.1, high: 2 } }, eol: null },
 *   input: windowFromBand({ eolOhms: 5600, bandLow: 0.8, bandHigh: 1.2 }) }).recommended?.ohms; // 5620
 */
export function resistorFor(question: ResistorQuestion): ResistorAdvice {
  const { loop, input } = question;
  const parts = question.parts ?? USUAL_RESISTORS;
  if (parts.length === 0) throw new InputError({ field: "parts", got: "none", expected: "one series or more" });
  const asIs = fitsInput({ loop, input });
  if (leakStandsAgainst(loop, asIs, input)) {
    const words = `leakage of ${loop.leakOhms} Ω across the pair (margin ${percent(asIs.marginFraction)} of half the band): repair it first, no resistor mends a leak`;
    return { action: "repairFirst", recommended: null, offers: [], asIs, words, refused: [] };
  }
  const ways = waysOf(question);
  const tried = ways.flatMap((way) => parts.map((part) => bestOffer(question, way, part)));
  const offers = tried.filter((offer) => typeof offer !== "string").sort(byMarginThenDevice);
  const refused = [...new Set([...tried.filter((offer) => typeof offer === "string"), ...refusedWays(question)])];
  if (asIs.fits) {
    const words = `in band as it is, margin ${percent(asIs.marginFraction)} of half the band: change nothing`;
    return { action: "nothing", recommended: null, offers, asIs, words, refused };
  }
  const recommended = offers[0] ?? null;
  if (recommended === null) {
    const words = `no resistor brings this loop into ${input.lowOhms.toFixed(0)} to ${input.highOhms.toFixed(0)} Ω: ${asIs.reasons.join("; ")}`;
    return { action: "noneServes", recommended, offers, asIs, words, refused };
  }
  return { action: "fit", recommended, offers, asIs, words: recommended.words, refused };
}

/** A leak settles the matter when the input does not bear it, or when without it the loop would have been wider off. */
function leakStandsAgainst(loop: TerminatedLoop, asIs: InputFit, input: InputWindow): boolean {
  if (loop.leakOhms === undefined || !Number.isFinite(loop.leakOhms)) return false;
  if (input.minLeakOhms !== undefined && loop.leakOhms < input.minLeakOhms) return true;
  if (!asIs.opened.reported) return true;
  const dry = dryLoopRange(loop);
  const lost = (dry.lowOhms - asIs.lowOhms) / halfBand(input);
  return lost > LEAK_EATS;
}

/** A leak that eats more of half the band than this is a fault to mend, not a value to live with (common practice). */
const LEAK_EATS = 0.1;

interface Way {
  readonly how: ResistorOffer["how"];
  readonly partAt: "device" | "panel";
}

function waysOf({ loop, reach = "farEnd" }: ResistorQuestion): Way[] {
  const ways: Way[] = [];
  const renew = loop.eol === null ? "fit" : "replace";
  const outward = reach === "farEnd" || (reach === "lastContact" && loop.eol?.at !== "device");
  if (outward) ways.push({ how: renew, partAt: "device" });
  // An EOL at the panel is only offered where nobody can get to the far end, or where it already sits there.
  if (loop.eol?.at === "panel" || (loop.eol === null && !outward)) ways.push({ how: renew, partAt: "panel" });
  if (loop.eol?.at === "device" && loop.seriesAtPanel === undefined) ways.push({ how: "seriesTrim", partAt: "panel" });
  if (loop.eol?.at === "device" && reach === "lastContact" && loop.parallelAtEnd === undefined) {
    ways.push({ how: "parallelTrim", partAt: "device" });
  }
  return ways;
}

function refusedWays({ loop, input, reach = "farEnd" }: ResistorQuestion): string[] {
  if (loop.eol?.at !== "device") return [];
  const range = dryLoopRange(loop);
  if (range.highOhms <= input.highOhms || reach === "lastContact") return [];
  return reach === "panel"
    ? ["parallel trim at the panel: an opened loop would read the trim in place of over-range"]
    : ["parallel trim: the far end can be reached, so the EOL is replaced"];
}

function withPart(loop: TerminatedLoop, way: Way, part: ResistorPart): TerminatedLoop {
  if (way.how === "seriesTrim") return { ...loop, seriesAtPanel: part };
  if (way.how === "parallelTrim") return { ...loop, parallelAtEnd: part };
  const { parallelAtEnd: _gone, seriesAtPanel: _too, ...bare } = loop;
  return { ...bare, eol: { ...part, at: way.partAt } };
}

/** The ideal value of the new part, before rounding to a preferred one; 0 or less where the way cannot help. [Ω] */
function idealOhms({ loop, input }: ResistorQuestion, way: Way): number {
  const centre = (input.lowOhms + input.highOhms) / 2;
  if (way.how === "seriesTrim") {
    const { lowOhms, highOhms } = dryLoopRange(loop);
    return centre - (lowOhms + highOhms) / 2;
  }
  const bare = dryLoopRange({ ...loop, eol: null });
  const wanted = centre - (bare.lowOhms + bare.highOhms) / 2;
  if (way.how !== "parallelTrim" || loop.eol === null) return wanted;
  return loop.eol.ohms > wanted ? (loop.eol.ohms * wanted) / (loop.eol.ohms - wanted) : 0;
}

function bestOffer(question: ResistorQuestion, way: Way, part: ResistorSeries): ResistorOffer | string {
  const ideal = idealOhms(question, way);
  const name = `${WAY_WORDS[way.how]} at the ${way.partAt === "panel" ? "panel" : "far end"} from ${part.series}`;
  if (!(ideal > 0)) return `${name}: the loop is already too ${way.how === "parallelTrim" ? "low" : "high"}`;
  let best: { ohms: number; margin: number } | null = null;
  for (const ohms of preferredNear(part.series, ideal)) {
    const margin = marginOf(question, way, { ...part, ohms });
    if (best === null || margin > best.margin) best = { ohms, margin };
  }
  if (best === null || best.margin < 0) return `${name}: no value brings both ends of the loop into the band`;
  const fit = fitsInput({ loop: withPart(question.loop, way, { ...part, ohms: best.ohms }), input: question.input });
  if (!fit.fits) return `${name}: ${fit.reasons.join("; ")}`;
  if (way.how === "seriesTrim" && !fit.farShort.reported) {
    return `${name}: a short at the far end would read up to ${fit.farShort.highOhms.toFixed(0)} Ω, which the input does not surely report`;
  }
  return offerOf(question, way, part, best.ohms, fit);
}

function marginOf({ loop, input }: ResistorQuestion, way: Way, part: ResistorPart): number {
  const { lowOhms, highOhms } = dryLoopRange(withPart(loop, way, part));
  return Math.min(lowOhms - input.lowOhms, input.highOhms - highOhms) / halfBand(input);
}

/** Preferred values within a third of the ideal one, rising. [Ω] */
export function preferredNear(series: ResistorSeries["series"], ideal: number): readonly number[] {
  const row = onlyRow("preferred-numbers", preferredNumbers, (one) => one.series === series);
  const decade = Math.floor(Math.log10(ideal));
  return [decade - 1, decade, decade + 1]
    .flatMap((power) => row.values.map((value) => Number(`${value}e${power}`)))
    .filter((ohms) => ohms >= ideal / 1.6 && ohms <= ideal * 1.6);
}

const WAY_WORDS: Readonly<Record<ResistorOffer["how"], string>> = {
  fit: "new EOL",
  replace: "new EOL in place of the old one",
  seriesTrim: "resistor in series",
  parallelTrim: "resistor across the EOL past the last contact",
};

function offerOf(
  { loop }: ResistorQuestion,
  way: Way,
  part: ResistorSeries,
  ohms: number,
  fit: InputFit,
): ResistorOffer {
  const eolAt = way.how === "seriesTrim" || way.how === "parallelTrim" ? (loop.eol?.at ?? way.partAt) : way.partAt;
  const place = way.partAt === "panel" ? "at the panel" : "at the far end";
  const notes = eolAt === "panel" ? [PANEL_EOL_NOTE] : [];
  if (way.how === "seriesTrim") {
    const range = partRange({ ...part, ohms }, loop.temperatureCelsius ?? OUTDOOR_CELSIUS);
    notes.push(`a short at the far end then reads from ${range.lowOhms.toFixed(0)} Ω, the trim alone`);
  }
  const old = way.how === "replace" && loop.eol?.at === "panel" && way.partAt === "device";
  if (old) notes.push("take the old resistor out at the panel");
  const value = `${formatOhms(ohms)} ${part.series} ${Number((part.toleranceFraction * 100).toPrecision(3))} %`;
  const words = `${WAY_WORDS[way.how]} ${place}: ${value}, loop then ${fit.lowOhms.toFixed(0)} to ${fit.highOhms.toFixed(0)} Ω, margin ${percent(fit.marginFraction)} of half the band`;
  return {
    how: way.how,
    partAt: way.partAt,
    eolAt,
    series: part.series,
    ohms,
    marginFraction: fit.marginFraction,
    fit,
    words,
    notes,
  };
}

/** Supervised ways come before unsupervised ones whatever the margin. */
function byMarginThenDevice(a: ResistorOffer, b: ResistorOffer): number {
  if (a.eolAt !== b.eolAt) return a.eolAt === "device" ? -1 : 1;
  return b.marginFraction - a.marginFraction || a.ohms - b.ohms;
}

function percent(fraction: number): string {
  return `${Math.round(fraction * 100)} %`;
}

function formatOhms(ohms: number): string {
  if (ohms >= 1e6) return `${Number((ohms / 1e6).toPrecision(4))} MΩ`;
  return ohms >= 1000 ? `${Number((ohms / 1000).toPrecision(4))} kΩ` : `${Number(ohms.toPrecision(4))} Ω`;
}
