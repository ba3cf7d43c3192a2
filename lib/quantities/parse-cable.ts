import { notMeasured, type Parsed, read, unreadable } from "./parsed.js";
import { type DayAndMonth, spreadsheetDate } from "./spreadsheet-date.js";
import { type CellTyped, cellText, isDateCell, isNothing } from "./typed-cell.js";

/** What a cable cell says. Absent = not written. */
export interface TypedCable {
  readonly gaugeAwg?: number;
  /** Cross-section of one conductor. [mm²] */
  readonly areaMm2?: number;
  readonly strands?: number;
  readonly metal?: "copper" | "tinnedCopper" | "copperCladAluminium" | "aluminium" | "copperCladSteel";
  /** Conductors in one cable. */
  readonly conductors?: number;
  /** Cables side by side ("2x 22/2"), where more than one. */
  readonly cables?: number;
  /** The size carries a question mark, or was read out of a date. */
  readonly assumed: boolean;
  /** As typed. */
  readonly words: string;
}

const EXPECTED = "write gauge and conductors such as 22/4, #22 2c or 24 AWG 4c, or strands and diameter such as 7/0.2";
const GAUGES = { thickest: 10, thinnest: 30 };
const MOST_CONDUCTORS = 100;

const METALS: readonly (readonly [RegExp, NonNullable<TypedCable["metal"]>])[] = [
  [/\b(cca|cu ?clad al\w*|copper[- ]clad al\w*)\b/i, "copperCladAluminium"],
  [/\b(ccs|copper[- ]clad steel)\b/i, "copperCladSteel"],
  [/\btinned\b/i, "tinnedCopper"],
  [/\balum\w*\b/i, "aluminium"],
  [/\b(bare )?copper\b/i, "copper"],
];

/**
 * Reads a cable: `22/4`, `22-2`, `#22 2c`, `24ga`, `7/0.2`, `4 x 0.22 mm²`, `2x 22/2 twisted tog`, `grey pair`, and the
 * date that a spreadsheet made of `22/4` (with a remark that says so). Words stay in `words`: colours and "red" matter.
 * @example parseCable("22/4"); // { ok: true, value: { gaugeAwg: 22, conductors: 4, assumed: false, words: "22/4" } }
 */
export function parseCable(cell: CellTyped): Parsed<TypedCable> {
  const typed = cellText(cell);
  if (isNothing(typed)) return notMeasured();
  const date = spreadsheetDate(typeof cell === "string" ? typed : cell);
  if (date !== undefined) return fromDate(typed, date);
  if (isDateCell(cell) || typeof cell === "boolean") return unreadable({ typed, expected: EXPECTED });
  const size = sizeOf(typed);
  if ("problem" in size) return unreadable({ typed, expected: `${size.problem}; ${EXPECTED}` });
  const metal = METALS.find(([pattern]) => pattern.test(typed))?.[1];
  const cables = /^(\d)\s?x\s?(?=#?\d\d\s?[/-]|\d\d ?(?:ga|awg))/i.exec(typed)?.[1];
  const questioned = typed.includes("?");
  const remarks: string[] = [];
  if (questioned)
    remarks.push(`"${typed}" carries a question mark: look at the print on the jacket or measure a conductor.`);
  if (cables !== undefined && Number(cables) > 1) {
    remarks.push(`${cables} cables: say whether they are joined end to end or lie side by side as legs in parallel.`);
  }
  const sized = size.gaugeAwg !== undefined || size.areaMm2 !== undefined;
  if (!sized) remarks.push(`"${typed}" names no conductor size: ${EXPECTED}.`);
  if (/\b(added|extended|spliced to|then)\b/i.test(typed)) {
    remarks.push(`"${typed}" may be a mixed run: write each size with its own length if another cable leads up to it.`);
  }
  return read(
    {
      ...size,
      ...(metal === undefined ? {} : { metal }),
      ...(cables === undefined || Number(cables) < 2 ? {} : { cables: Number(cables) }),
      assumed: questioned,
      words: typed,
    },
    remarks,
  );
}

function fromDate(typed: string, { day, month }: DayAndMonth): Parsed<TypedCable> {
  const readings = [
    [day, month],
    [month, day],
  ].filter(([gauge = 0, conductors = 0]) => isGauge(gauge) && conductors >= 1 && conductors < gauge);
  const [first] = readings;
  if (first === undefined || readings.length > 1) {
    return unreadable({
      typed,
      expected: `a spreadsheet made a date of what was typed; format the cell as text and ${EXPECTED}`,
    });
  }
  const [gaugeAwg = 0, conductors = 0] = first;
  const words = `${gaugeAwg}/${conductors}`;
  return read({ gaugeAwg, conductors, assumed: true, words }, [
    `A spreadsheet made a date (${typed}) of what was typed; it was read as ${words}. Format the cell as text and write the size again.`,
  ]);
}

const isGauge = (gauge: number): boolean =>
  Number.isInteger(gauge) && gauge >= GAUGES.thickest && gauge <= GAUGES.thinnest;

interface Size {
  readonly gaugeAwg?: number;
  readonly areaMm2?: number;
  readonly strands?: number;
  readonly conductors?: number;
}

function sizeOf(text: string): Size | { readonly problem: string } {
  const stranded = /(?<![\d.,/])(\d{1,2})\s?\/\s?(0?[.,]\d+)(?![\d/])/.exec(text);
  if (stranded !== null) return { ...fromStrands(stranded), ...conductorsIn(text) };
  const area = /(?:(\d{1,2})\s?x\s?)?(\d*[.,]?\d+)\s?(?:mm\s?2|mm\^2|sq\.? ?mm)/i.exec(text);
  if (area !== null) {
    const areaMm2 = decimal(area[2] ?? "");
    if (!(areaMm2 > 0.01 && areaMm2 < 10)) return { problem: "a conductor of such a cable has 0.01 to 10 mm²" };
    return { areaMm2, ...(area[1] === undefined ? conductorsIn(text) : { conductors: Number(area[1]) }) };
  }
  const diameter = /(?:(\d{1,2})\s?x\s?)?(\d*[.,]\d+)\s?mm\b(?!\s?2)/i.exec(text);
  if (diameter !== null) {
    const areaMm2 = (Math.PI / 4) * decimal(diameter[2] ?? "") ** 2;
    if (!(areaMm2 > 0.01 && areaMm2 < 10)) return { problem: "a conductor of such a cable has 0.1 to 3.5 mm diameter" };
    return {
      areaMm2,
      strands: 1,
      ...(diameter[1] === undefined ? conductorsIn(text) : { conductors: Number(diameter[1]) }),
    };
  }
  return gaugeIn(text);
}

const decimal = (digits: string): number => Number(digits.replace(",", "."));

function fromStrands(match: RegExpExecArray): Size {
  const strands = Number(match[1]);
  return { strands, areaMm2: strands * (Math.PI / 4) * decimal(match[2] ?? "") ** 2 };
}

/** "2c", "4 core", "4 cond", "3 pair", "pair". */
function conductorsIn(text: string): Size {
  const counted = /(?<![\d.])(\d{1,3})\s?(?:c|cond|conductors?|cores?|wires?)\b/i.exec(text)?.[1];
  if (counted !== undefined) return { conductors: Number(counted) };
  const pairs = /(?<![\d.])(\d{1,2})\s?(?:pr|pairs?)\b/i.exec(text)?.[1];
  if (pairs !== undefined) return { conductors: 2 * Number(pairs) };
  return /\bpair\b/i.test(text) ? { conductors: 2 } : {};
}

function gaugeIn(text: string): Size | { readonly problem: string } {
  const cable = text.replace(/\bcat(egory)?\s?\.?\s?\d[a-z]?\b/gi, " ").replace(/^\s*\d\s?x\s+/i, " ");
  const sizes = [...cable.matchAll(/(?<![\d.,/-])#?\d{1,2}\s?[/-]\s?\d{1,3}(?![\d.,/])/g)];
  if (sizes.length > 1)
    return { problem: "two sizes stand there; write a row for each, or the thinner one with its length" };
  const slashed = /(?<![\d.,/-])#?(\d{1,2})\s?[/-]\s?(\d{1,3})(?![\d.,/])/.exec(cable);
  const named = /#\s?(\d{1,2})(?!\d)|(?<![\d.,])(\d{1,2})\s?(?:ga|gauge|awg)\b\.?/i.exec(cable);
  const bare = /^\s*(\d{1,2})\s*\??\s*$/.exec(cable);
  const digits = slashed?.[1] ?? named?.[1] ?? named?.[2] ?? bare?.[1];
  if (digits === undefined) {
    const counted = conductorsIn(text);
    const left = cable.replace(/(?<![\d.])\d{1,3}\s?(c|cond|conductors?|cores?|wires?|pr|pairs?)\b/gi, " ");
    return /\d/.test(left) ? { problem: "no size is recognised in it" } : counted;
  }
  const gaugeAwg = Number(digits);
  if (!isGauge(gaugeAwg))
    return { problem: `gauge ${gaugeAwg} is not one of ${GAUGES.thickest} to ${GAUGES.thinnest} AWG` };
  const conductors =
    slashed?.[2] === undefined ? conductorsIn(cable.replace(slashed?.[0] ?? "\0", " ")).conductors : Number(slashed[2]);
  if (conductors !== undefined && !(conductors >= 1 && conductors <= MOST_CONDUCTORS)) {
    return { problem: `${conductors} conductors are not 1 to ${MOST_CONDUCTORS}` };
  }
  return { gaugeAwg, ...(conductors === undefined ? {} : { conductors }) };
}
