import type { Query } from "../problems/query.js";
import { parseRun } from "../quantities/parse-run.js";
import type { SurveyLoop } from "./survey.js";

/** Powers of ten by which people slip, with the words for them. */
const slips: readonly (readonly [number, string])[] = [
  [1000, "a missing k"],
  [0.001, "a k too many"],
  [10, "a digit or point slipped"],
  [0.1, "a digit or point slipped"],
];
const near = (a: number, b: number, fraction: number) => Math.abs(a - b) <= fraction * b;
const ohmsOf = (loop: SurveyLoop): number | undefined => {
  const ohms = loop.closed?.ohms;
  return typeof ohms === "number" && ohms > 0 ? ohms : undefined;
};

interface Neighbour {
  readonly ohms: number;
  readonly words: string;
}

function slipOf(
  ohms: number,
  neighbours: readonly Neighbour[],
): { readonly factor: number; readonly words: string; readonly like: Neighbour } | undefined {
  const own = neighbours.filter((other) => near(other.ohms, ohms, 0.15)).length;
  for (const [factor, words] of slips) {
    const like = neighbours.filter((other) => other.ohms >= 500 && near(other.ohms, ohms * factor, 0.05));
    // Company of its own kind clears a reading of a slipped point; a forgotten k is often forgotten twice.
    const fits = factor === 1000 ? like.length >= 1 : own === 0 && like.length >= 2;
    if (fits && like[0] !== undefined) return { factor, words, like: like[0] };
  }
  return undefined;
}

/**
 * Asks about readings that would fit their neighbours if they were 10 or 1000 times larger or smaller: 22k where the
 * others read 2.2k, a bare 2.2 among 2.2k. Only readings typed without that unit are asked about; none is changed.
 */
export function unitSlipQueries(loops: readonly SurveyLoop[], heading: string): readonly Query[] {
  return loops.flatMap((loop): Query[] => {
    const ohms = ohmsOf(loop);
    const typed = loop.typed["closed"] ?? "";
    // With its resistor at the panel a lifted pair reads its wire alone, whatever the others read.
    if (ohms === undefined || loop.eolPlace === "panel") return [];
    const neighbours = loops.flatMap((other): Neighbour[] => {
      const otherOhms = ohmsOf(other);
      const eol = other.eolOhms;
      const place = `row ${other.row}`;
      const readings =
        other === loop || otherOhms === undefined
          ? []
          : [{ ohms: otherOhms, words: `${place} reads ${other.typed["closed"] ?? ""}` }];
      return eol === undefined || other === loop
        ? readings
        : [
            ...readings,
            { ohms: eol, words: `${place} has an EOL of ${other.typed["eolValue"] ?? other.typed["eolPlace"] ?? ""}` },
          ];
    });
    const slip = slipOf(ohms, neighbours);
    if (slip === undefined) return [];
    // "2.2 ohms" or "2.2 Ω" says its unit: a person who wrote it meant it.
    if (slip.factor === 1000 && /[a-zΩ]/i.test(typed)) return [];
    const message = `${typed} was read as ${ohms} Ω. ${slip.like.words}: is it ${slip.words}? If ${ohms} Ω is right, write ${ohms} Ω; else correct it.`;
    return [{ sheet: loop.sheet, row: loop.row, column: heading, typed, message, key: loop.key }];
  });
}

/** What bare numbers in a column of lengths are, by the company they keep. */
export interface RunUnit {
  readonly unit?: "ft" | "m";
  readonly queries: readonly Query[];
}

/** What a typed length says of its unit, by the reader of lengths itself. */
export function lengthKind(text: string): "ft" | "m" | "other" | "bare" | "unreadable" {
  const stated = parseRun(text);
  if (stated.ok && stated.value !== undefined) {
    if (/\d\s*('|′|ft\b|feet\b|foot\b)/i.test(text)) return "ft";
    return /\d\s*(m|metres?|meters?)\b/i.test(text) ? "m" : "other";
  }
  const bare = parseRun(text, { bareUnit: "m" });
  return bare.ok && bare.value !== undefined ? "bare" : "unreadable";
}

/**
 * Finds the unit of bare run lengths of one sheet: what every run with a unit says, else what the rest of the survey
 * says. Feet and metres mixed leave bare numbers unread. One question per sheet, or per row where they are mixed.
 */
export function runUnit(input: {
  readonly sheet: string;
  readonly heading: string;
  readonly headingUnit: "ft" | "m" | undefined;
  readonly texts: readonly { readonly row: number; readonly text: string }[];
  /** A unit that other sheets of the survey use for lengths, with the words where. */
  readonly elsewhere?: { readonly unit: "ft" | "m"; readonly where: string };
}): RunUnit {
  const { sheet, heading, headingUnit, texts, elsewhere } = input;
  if (headingUnit !== undefined) return { unit: headingUnit, queries: [] };
  const kinds = texts.map(({ text }) => lengthKind(text));
  const bare = texts.filter((_, index) => kinds[index] === "bare");
  if (bare.length === 0) return { queries: [] };
  const feet = kinds.filter((kind) => kind === "ft").length;
  const meters = kinds.filter((kind) => kind === "m").length;
  const rows = bare.map(({ row }) => row).join(", ");
  const ask = (message: string): Query => ({
    sheet,
    row: null,
    column: heading,
    typed: bare.map(({ text }) => text).join("; "),
    message,
  });
  if (feet > 0 && meters > 0) {
    return {
      queries: [
        ask(
          `Feet (${feet} rows) and metres (${meters} rows) are mixed, and rows ${rows} say neither; those are unread. Write ft or m after each.`,
        ),
      ],
    };
  }
  const unit = feet > 0 ? "ft" : meters > 0 ? "m" : elsewhere?.unit;
  if (unit === undefined)
    return {
      queries: [
        ask(
          `Nothing says whether rows ${rows} are feet or metres; they are unread. Write the unit in the heading, such as "${heading} ft".`,
        ),
      ],
    };
  const why = feet + meters > 0 ? `every run with a unit (${feet + meters} rows) is` : `${elsewhere?.where ?? ""} is`;
  return {
    unit,
    queries: [
      ask(
        `Rows ${rows} say no unit and were read as ${unit === "ft" ? "feet" : "metres"}, because ${why} in that unit. Write the unit in the heading to settle it.`,
      ),
    ],
  };
}
