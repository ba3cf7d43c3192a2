import { ituP1238 } from "../reference/generated/itu-p1238.js";
import { onlyRow } from "../reference/rows.js";
import { type MeasuredRadio, radioMargin } from "./radio-margin.js";

/** One radio test: from where to where. */
export interface RadioLink {
  /** The controller's radio, or a place tried for a repeater. */
  readonly from: string;
  readonly location: string;
  /** [m] */
  readonly meters?: number;
  readonly measured: MeasuredRadio;
}

/** A place for a repeater and whom it would carry. */
export interface RepeaterPlace {
  readonly at: string;
  readonly serves: readonly string[];
  /** Its own link to the controller was measured and carries. */
  readonly linkMeasured: boolean;
  readonly words: string;
}

/** How many repeaters, where. */
export interface RepeaterPlan {
  /** Places that tests carry. */
  readonly places: readonly RepeaterPlace[];
  /** Places too weak from the controller, for which no tried place carries: what to try. */
  readonly toTry: readonly {
    readonly location: string;
    readonly withinMeters: number | null;
    readonly words: string;
  }[];
  /** Places whose test has to be repeated before anything is said. */
  readonly testAgain: readonly string[];
  /** `places`, and one for each of `toTry`: repeaters to allow for. */
  readonly count: { readonly fromTests: number; readonly atMost: number };
}

/** Up to so many tried places, every subset is looked at; beyond, the place that serves most comes first. */
const EXACT_PLACES = 14;

/**
 * Repeaters needed, from measured tests: the fewest of the tried places that carry every location which the
 * controller's radio does not reach. For a location that no tried place carries, how near a repeater would have to
 * stand: d·10^(−short/N), N the office coefficient of ITU-R P.1238 at 900 MHz, to be tested there.
 * @throws {@link InputError} when a test's figures are outside their range.
 */
export function placeRepeaters(asked: {
  readonly controller: string;
  readonly tests: readonly RadioLink[];
  /** Absent = 10. [dB] */
  readonly neededMarginDb?: number;
}): RepeaterPlan {
  const { controller, tests } = asked;
  const needed = asked.neededMarginDb === undefined ? {} : { neededMarginDb: asked.neededMarginDb };
  const judged = tests.map((test) => ({ ...test, result: radioMargin({ measured: test.measured, ...needed }) }));
  const direct = judged.filter((test) => test.from === controller);
  const weak = direct.filter((test) => test.result.verdict === "repeater");
  const carried = (at: string, location: string): boolean =>
    judged.some((test) => test.from === at && same(test.location, location) && test.result.verdict === "enough");
  const tried = [...new Set(judged.map((test) => test.from))].filter((from) => from !== controller);
  const servable = weak.map((test) => test.location).filter((place) => tried.some((at) => carried(at, place)));
  const chosen = fewestPlaces(tried, servable, carried);
  const places = chosen.map((at) => {
    const serves = servable.filter((location) => carried(at, location));
    const linkMeasured = direct.some((test) => same(test.location, at) && test.result.verdict === "enough");
    const link = linkMeasured ? "" : "; its own link to the controller is not measured, test it";
    return { at, serves, linkMeasured, words: `repeater at ${at} for ${serves.join(", ")}${link}` };
  });
  const toTry = weak
    .filter((test) => !servable.includes(test.location))
    .map((test) => tryNearer(test.location, controller, test.meters, test.result));
  const testAgain = direct
    .filter((test) => test.result.verdict === "testAgain" || test.result.verdict === "testOnSite")
    .map((test) => test.location);
  return { places, toTry, testAgain, count: { fromTests: places.length, atMost: places.length + toTry.length } };
}

/** Location names agree when one begins with the other, letter case aside ("roof hatch", "roof hatch closed"). */
function same(one: string, other: string): boolean {
  const a = one.trim().toLowerCase();
  const b = other.trim().toLowerCase();
  return a === b || (a !== "" && b.startsWith(`${a} `)) || (b !== "" && a.startsWith(`${b} `));
}

function fewestPlaces(
  tried: readonly string[],
  wanted: readonly string[],
  carried: (at: string, location: string) => boolean,
): readonly string[] {
  if (wanted.length === 0) return [];
  const serves = (places: readonly string[]): boolean =>
    wanted.every((location) => places.some((at) => carried(at, location)));
  if (tried.length <= EXACT_PLACES) {
    const subsets = Array.from({ length: 2 ** tried.length }, (_, mask) => tried.filter((_p, i) => (mask >> i) & 1));
    return subsets.sort((a, b) => a.length - b.length).find(serves) ?? [];
  }
  const chosen: string[] = [];
  let left = [...wanted];
  while (left.length > 0) {
    const gain = (at: string): number => left.filter((location) => carried(at, location)).length;
    const best = tried.reduce((top, at) => (gain(at) > gain(top) ? at : top), tried[0] ?? "");
    chosen.push(best);
    left = left.filter((location) => !carried(best, location));
  }
  return chosen;
}

function tryNearer(
  location: string,
  controller: string,
  meters: number | undefined,
  result: { readonly marginDb: number | null; readonly neededMarginDb: number },
): RepeaterPlan["toTry"][number] {
  if (meters === undefined || result.marginDb === null) {
    const words = `${location}: too weak from ${controller}; try a repeater on the way and test both links`;
    return { location, withinMeters: null, words };
  }
  const isOffice900 = (row: (typeof ituP1238)[number]) => row.building === "office" && row.lowMegahertz === 900;
  const coefficient = onlyRow("itu-p1238", ituP1238, isOffice900).powerLossCoefficient;
  const short = Math.max(0, result.neededMarginDb - result.marginDb);
  const withinMeters = meters * 10 ** (-short / coefficient);
  const words = `${location}: ${short.toFixed(0)} dB short over ${meters.toFixed(0)} m from ${controller}; try a repeater within about ${Math.floor(withinMeters)} m of it (estimate) and test both links`;
  return { location, withinMeters, words };
}
