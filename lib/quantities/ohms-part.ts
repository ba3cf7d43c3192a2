import type { Ohms, OhmsReading } from "./ohms-reading.js";
import { type DecimalMark, NUMBER, typedNumber } from "./typed-number.js";

/** One reading of a cell and the condition it was taken in. */
export interface ConditionedReading {
  readonly condition: "plain" | "powered" | "unpowered" | "reversed";
  readonly reading?: OhmsReading;
  readonly behaviour?: NonNullable<OhmsReading["behaviour"]>;
  readonly each: boolean;
  readonly words: readonly string[];
  readonly remarks: readonly string[];
}

export interface WordProblem {
  readonly problem: string;
}

export function isWordProblem(part: ConditionedReading | WordProblem): part is WordProblem {
  return "problem" in part;
}

/** What a meter shows or a person writes for over-range. The first letter may be a typed zero. */
const OVER_RANGE = String.raw`\.?[o0]\s?\.?\s?l\.?(?:\s*[km]?(?:Ω|ohms?))?|∞|inf(?:inity|inite)?|over-?\s?(?:range|load|limit)|open(?:\s+circuit)?|o\/c`;
const UNIT_TEXT = String.raw`(?:k|kilo|meg|mega|m|g|r)?\s?-?(?:Ω|ohms?)|kilo|mega?|k|m|g|r`;
const VALUE = new RegExp(
  String.raw`(?<![\w.,])(?:(?<over>${OVER_RANGE})|(?<whole>\d+)(?<letter>[krmg])(?<rest>\d+)|r(?<below>\d+)|(?<number>${NUMBER})\s?(?<unit>${UNIT_TEXT})?)(?<ish>\s?ish)?(?![\w∞]|[.,]\d)`,
  "giu",
);

/** Factor of a multiplier letter; undefined for a small m, which people write for mega as well as for milli. */
function factorOf(unit: string): number | undefined {
  const letters = unit.replace(/Ω|ohms?|[\s-]/giu, "");
  if (letters === "" || /^r$/i.test(letters)) return 1;
  if (/^k/i.test(letters)) return 1e3;
  if (/^(M|meg|mega)$/.test(letters) || /^meg/i.test(letters)) return 1e6;
  if (/^g/i.test(letters)) return 1e9;
  return undefined;
}

interface FoundValue {
  readonly start: number;
  readonly end: number;
  readonly typed: string;
  readonly number: Ohms;
  /** Undefined: no unit was written. */
  readonly factor: number | undefined;
  readonly doubt: string | undefined;
  readonly approximate: boolean;
}

function foundValues(text: string, decimalMark: DecimalMark | undefined): readonly FoundValue[] | WordProblem {
  const found: FoundValue[] = [];
  for (const match of text.matchAll(VALUE)) {
    const groups = match.groups ?? {};
    const place = { start: match.index, end: match.index + match[0].length, typed: match[0] };
    const approximate = groups["ish"] !== undefined;
    if (groups["over"] !== undefined) {
      found.push({ ...place, number: "OL", factor: 1, doubt: undefined, approximate });
      continue;
    }
    const letter = groups["letter"];
    const unit = letter ?? (groups["below"] === undefined ? groups["unit"] : "r");
    const digits =
      letter !== undefined
        ? `${groups["whole"]}.${groups["rest"]}`
        : groups["below"] !== undefined
          ? `0.${groups["below"]}`
          : (groups["number"] ?? "");
    const number = typedNumber(digits, letter === undefined && groups["below"] === undefined ? decimalMark : ".");
    if (number === undefined) return { problem: `"${digits}" is no number` };
    const factor = unit === undefined ? undefined : factorOf(unit);
    if (unit !== undefined && factor === undefined) {
      return { problem: `a small m may be milli or mega: write 1.2M for megohms, 0.0012 for milliohms` };
    }
    // 5.710 k leaves no doubt: nobody groups kilohms with points. 5,600 k may be either.
    const settled = letter !== undefined || (factor !== undefined && factor > 1 && !digits.includes(","));
    const doubt = settled ? undefined : number.doubt;
    found.push({ ...place, number: number.value, factor, doubt, approximate });
  }
  return found;
}

const BEHAVIOURS: readonly (readonly [RegExp, NonNullable<OhmsReading["behaviour"]>])[] = [
  [/\b(climb\w*|rising|rises?|going up|creep\w* up)\b/i, "climbing"],
  [/\b(fall\w*|dropp?\w*|sinking|going down)\b/i, "falling"],
  [/\b(jump\w*|drift\w*|moving|moves|unsteady|erratic|intermittent|all over|bounc\w*|wander\w*)\b/i, "jumping"],
  [/\b(steady|stable)\b/i, "steady"],
];
const CONDITIONS: readonly (readonly [RegExp, ConditionedReading["condition"]])[] = [
  [/\b(rev(ersed)?|swap(ped)?( leads)?|leads swapped|other way( round)?)\b/i, "reversed"],
  [
    /\b((pwr|power|supply)\s?(is )?(off|down|removed)|unpowered|(without|no) (pwr|power|supply)|not powered)\b/i,
    "unpowered",
  ],
  [/\b((with|w) (pwr|power|supply)|(pwr|power|supply)\s?(is )?on|powered( up)?)\b/i, "powered"],
];
const FOREIGN_UNIT = /(?<![\w'])(v|vdc|vac|volts?|ma|amps?|ft|feet|cm|mm|hz|awg|w|watts?)(?!\w)|[%°$€£]/i;
const LONE_MULTIPLIER = /(?<![\w'])(k|kilo|mega?|m|g|r|[km]?Ω|[km]ohms?)(?!\w)/iu;
/** Tolerance and power of a resistor ("2.2k 5% 1/4W"): kept as words, no part of its value. */
const RATING =
  /(?:\+\/?-|±)?\s?(?<![\d.,])\d+(?:[.,]\d+)?\s?%|(?<![\d.,])(?:1\s?\/\s?[248]|0?[.,]\d+)\s?w(?:atts?)?(?![\w/])/giu;
const NEGATION = /\b(not|never|no)\b|n't\b/i;
const JOINS_RANGE = /^\s*(-+|\.\.+|to|\bto\b|and|up to)\s*$/i;
const JOINS_MOVING = /\b(jump\w*|then|to|drift\w*|goes|climb\w*|fall\w*|ris\w*|dropp?\w*|later|back|up|down)\b|->|→/i;

/** The cell without tolerance and power of a resistor, and those as words. */
export function withoutRating(text: string): { readonly text: string; readonly ratings: readonly string[] } {
  const ratings = (text.match(RATING) ?? []).map((rating) => rating.trim());
  return { text: text.replace(RATING, " ").trim(), ratings };
}

/** Reads one side of a slash: one value or a range, its condition, what it did, and the words left over. */
export function ohmsPart(text: string, decimalMark: DecimalMark | undefined): ConditionedReading | WordProblem {
  if (/^-\s?[\d.,]/.test(text)) return { problem: "a resistance is never below 0" };
  const values = foundValues(text, decimalMark);
  if ("problem" in values) return values;
  const between = values.slice(1).map((value, i) => text.slice(values[i]?.end ?? 0, value.start));
  const rest = leftOver(text, values);
  if (/\d/.test(rest)) return { problem: `which number is the reading? "${rest.trim()}" is left over` };
  const foreign = FOREIGN_UNIT.exec(rest)?.[0];
  if (foreign !== undefined) return { problem: `"${foreign}" is no unit of resistance` };
  const apart = LONE_MULTIPLIER.exec(rest)?.[0];
  if (apart !== undefined) return { problem: `"${apart}" stands apart from its number` };
  if (values.some((value) => value.number === "OL") && NEGATION.test(withoutConditions(rest))) {
    return { problem: "a sentence about over-range is no reading" };
  }
  const remarks = values.flatMap((value) => (value.doubt === undefined ? [] : [value.doubt]));
  const condition = CONDITIONS.find(([pattern]) => pattern.test(rest))?.[1] ?? "plain";
  const inWords = BEHAVIOURS.find(([pattern]) => pattern.test(rest))?.[1];
  if (/\bdrift/i.test(rest)) {
    remarks.push(
      "Drifting is taken as unsteady: write climbing or falling if it moved one way with nobody touching the loop.",
    );
  }
  if (/\?/.test(rest)) remarks.push(`"${text}" carries a question mark: read it again.`);
  const spread = spreadOf(text, values, between, remarks);
  if (spread !== undefined && "problem" in spread) return spread;
  const behaviour = inWords ?? spread?.behaviour;
  return {
    condition,
    ...(spread === undefined
      ? {}
      : {
          reading: {
            ohms: spread.ohms,
            lowOhms: spread.lowOhms,
            highOhms: spread.highOhms,
            ...(behaviour === undefined ? {} : { behaviour }),
          },
        }),
    ...(behaviour === undefined ? {} : { behaviour }),
    each: /\b(ea|each|per)\b\.?/i.test(rest),
    words: wordsOf(rest),
    remarks,
  };
}

const withoutConditions = (rest: string): string =>
  CONDITIONS.reduce((text, [pattern]) => text.replace(pattern, " "), rest);

function leftOver(text: string, values: readonly FoundValue[]): string {
  let rest = "";
  let from = 0;
  for (const { start, end } of values) {
    rest += `${text.slice(from, start)} `;
    from = end;
  }
  return rest + text.slice(from);
}

/** Words that stay for the notes: everything but what the reader itself has used. */
function wordsOf(rest: string): readonly string[] {
  const used = [...BEHAVIOURS, ...CONDITIONS].reduce((text, [pattern]) => text.replace(pattern, " "), rest);
  const words = used
    .replace(/\b(ea|each|reads?|then|to|ohms?|ish|approx\w*|about|ca|circa)\b\.?/gi, " ")
    .replace(/[^\p{L}\p{M}' ]/gu, " ")
    .replace(/\s+/g, " ")
    .trim();
  return words === "" ? [] : [words];
}

function spreadOf(
  text: string,
  values: readonly FoundValue[],
  between: readonly string[],
  remarks: string[],
): OhmsReading | WordProblem | undefined {
  const [first] = values;
  if (first === undefined) return undefined;
  if (values.length === 1) return single(text, first, remarks);
  const isRange = values.length === 2 && between.every((joint) => JOINS_RANGE.test(joint));
  const isMoving = between.every((joint) => JOINS_MOVING.test(joint));
  if (!isRange && !isMoving) return { problem: "several numbers and no word between them" };
  const ohms = sharedUnit(values, remarks);
  const lowOhms = least(ohms);
  const highOhms = greatest(ohms);
  const [start = 0] = ohms;
  if (isMoving && !isRange) return { ohms: start, lowOhms, highOhms, behaviour: "jumping" };
  const middle: Ohms = lowOhms === "OL" || highOhms === "OL" ? start : (lowOhms + highOhms) / 2;
  return { ohms: middle, lowOhms, highOhms };
}

function single(text: string, value: FoundValue, remarks: string[]): OhmsReading {
  const ohms: Ohms = value.number === "OL" ? "OL" : value.number * (value.factor ?? 1);
  const before = text.slice(0, value.start);
  if (ohms !== "OL" && /(<|≤|\b(less than|under|below))\s*=?\s*$/i.test(before)) {
    return { ohms: ohms / 2, lowOhms: 0, highOhms: ohms };
  }
  if (ohms !== "OL" && /(>|≥|\b(more than|over|above))\s*=?\s*$/i.test(before)) {
    remarks.push(`"${text}" is taken as over-range of a meter range that ends there: write the highest range used.`);
    return { ohms: "OL", lowOhms: ohms, highOhms: "OL" };
  }
  if (value.approximate || /(~|≈|\b(about|approx\w*|ca|circa)\b\.?)\s*$/i.test(before)) {
    remarks.push(`"${text}" is approximate: read it again and write what the meter shows.`);
  }
  return { ohms, lowOhms: ohms, highOhms: ohms };
}

/** 5.9-6.4k: the unit behind the last number holds for both, unless only the other way round rises. */
function sharedUnit(values: readonly FoundValue[], remarks: string[]): readonly Ohms[] {
  const last = [...values].reverse().find((value) => value.factor !== undefined && value.number !== "OL")?.factor ?? 1;
  const withUnit = (shared: number) =>
    values.map((value): Ohms => (value.number === "OL" ? "OL" : value.number * (value.factor ?? shared)));
  const rises = (list: readonly Ohms[]) => list.every((ohms, i) => i === 0 || rank(ohms) >= rank(list[i - 1] ?? 0));
  const shared = withUnit(last);
  if (last === 1 || rises(shared) || !rises(withUnit(1))) return shared;
  remarks.push("Only the last number carries a unit; the first was read as plain ohms. Write the unit behind both.");
  return withUnit(1);
}

const rank = (ohms: Ohms): number => (ohms === "OL" ? Number.MAX_VALUE : ohms);
const least = (list: readonly Ohms[]): Ohms => list.reduce((a, b) => (rank(b) < rank(a) ? b : a));
const greatest = (list: readonly Ohms[]): Ohms => list.reduce((a, b) => (rank(b) > rank(a) ? b : a));
