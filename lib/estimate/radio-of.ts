import type { PlannedLoop } from "../plan/planned-loop.js";
import type { PriceBook } from "../price-book/article.js";
import type { JobSettings } from "../price-book/job-settings.js";
import { articlesOfClass } from "../price-book/look-up.js";
import type { Query } from "../problems/query.js";
import { placeRepeaters, type RepeaterPlan } from "../radio/place-repeaters.js";
import { radioDefault } from "../radio/radio-defaults.js";
import { type MeasuredRadio, type RadioMargin, type RadioPath, radioMargin } from "../radio/radio-margin.js";
import { radioNoteWords } from "../reference/generated/radio-note-words.js";
import type { RadioTest, Survey, SurveyLoop } from "../survey/survey.js";
import { hasPhrase } from "../survey/words.js";
import type { FittedModule } from "../terminals/terminal-schedule.js";
import { noWork, type Work } from "../treatments/treatment.js";
import { type TestedPlace, testedPlace } from "./radio-places.js";

/** One radio test row and what it says. */
export interface RadioTestRecord extends RadioMargin, TestedPlace {
  readonly record: "test";
  readonly from: string;
  readonly location: string;
  readonly kind: string | null;
  /** [m] */
  readonly meters: number | null;
  readonly signalDbm: number | null;
  readonly noiseDbm: number | null;
  readonly heard: number | null;
  readonly sent: number | null;
  readonly state: NonNullable<MeasuredRadio["state"]> | null;
  /** The plan puts a module or a wireless device there. */
  readonly planned: boolean;
}

/** A repeater that is in the bill. */
export interface RepeaterRecord {
  readonly record: "repeater";
  /** Where; null = to be tried on site. */
  readonly at: string | null;
  readonly serves: readonly string[];
  /** Tests carry it; false = a place for it has to be tried. */
  readonly fromTests: boolean;
  readonly words: string;
}

/** Places that get a radio device and were not tested. */
export interface UntestedRecord {
  readonly record: "untested";
  readonly panels: readonly string[];
  readonly loops: readonly string[];
  readonly words: string;
}

export type RadioRecord = RadioTestRecord | RepeaterRecord | UntestedRecord;

interface RadioInputs {
  readonly survey: Survey;
  readonly planned: readonly PlannedLoop[];
  readonly fitted: readonly FittedModule[];
  readonly book: PriceBook;
  readonly job: JobSettings;
}

/**
 * Radio of the plan: every test row judged, repeaters for planned places that the controller's radio does not reach,
 * and one query for the places that nobody tested. The modules' own links count like those of the devices.
 */
export function radioOf(inputs: RadioInputs): {
  readonly radio: readonly RadioRecord[];
  /** Repeaters, to buy and to fit. */
  readonly work: Work;
  readonly queries: readonly Query[];
} {
  const { survey, planned, fitted, job } = inputs;
  const wireless = new Set(planned.filter(({ items }) => Object.keys(items).length > 0).map(({ key }) => key));
  const places = new Set(fitted.map(({ panel }) => panel));
  const controller = controllerOf(survey.radioTests);
  const tests = survey.radioTests.map((test) => testRecord({ test, survey, controller, wireless, places, job }));
  const plan = repeatersFor(tests, controller, job);
  const repeaters = repeaterRecords(plan);
  const untested = untestedRecord(inputs, tests, wireless, places);
  const queries = [
    ...(untested ? [untestedQuery(untested)] : []),
    ...againQueries(tests, plan),
    ...(repeaters.length > 0 && !repeaterOf(inputs.book) ? [noRepeaterQuery] : []),
  ];
  return {
    radio: [...tests, ...repeaters, ...(untested ? [untested] : [])],
    work: workFor(repeaters, inputs.book),
    queries,
  };
}

const isTried = (from: string) => /\brepeater\b/i.test(from);
/** A place tried for a repeater by its own name. */
const placeName = (from: string) => from.replace(/^\s*repeater\s+(at\s+|in\s+|on\s+)?/i, "").trim() || from;

/** The first place tested from that is not called a repeater; rows that name none are tested from the controller. */
function controllerOf(tests: readonly RadioTest[]): string {
  return tests.find(({ from }) => from !== undefined && !isTried(from))?.from ?? "the controller";
}

function testRecord({
  test,
  survey,
  controller,
  wireless,
  places,
  job,
}: {
  readonly test: RadioTest;
  readonly survey: Survey;
  readonly controller: string;
  readonly wireless: ReadonlySet<string>;
  readonly places: ReadonlySet<string>;
  readonly job: JobSettings;
}): RadioTestRecord {
  const place = testedPlace({ test, survey });
  const from = test.from === undefined ? controller : isTried(test.from) ? placeName(test.from) : test.from;
  const state = stateOf(test);
  const path = pathOf(test);
  const margin = radioMargin({
    measured: measuredOf(test, state),
    ...(path ? { path } : {}),
    neededMarginDb: job.radioMarginDb,
  });
  return {
    record: "test",
    from,
    location: test.location,
    kind: test.kind ?? null,
    meters: test.meters ?? null,
    signalDbm: test.signalDbm ?? null,
    noiseDbm: test.noiseDbm ?? null,
    heard: test.heard ?? null,
    sent: test.sent ?? null,
    state: state ?? null,
    ...place,
    planned: place.loops.some((key) => wireless.has(key)) || place.panels.some((panel) => places.has(panel)),
    ...margin,
  };
}

/** Doors as in use or not, by the words of the row; undefined when it does not say. */
function stateOf({ location, note = "" }: RadioTest): MeasuredRadio["state"] {
  const row = radioNoteWords.find(({ words }) =>
    words.some((phrase) => hasPhrase(note, phrase) || hasPhrase(location, phrase)),
  );
  return row === undefined ? undefined : row.state === "asUsed" ? "asUsed" : "notAsUsed";
}

function measuredOf(test: RadioTest, state: MeasuredRadio["state"]): MeasuredRadio {
  const { signalDbm, noiseDbm, heard, sent } = test;
  return {
    ...(signalDbm === undefined ? {} : { signalDbm }),
    ...(noiseDbm === undefined ? {} : { noiseDbm }),
    ...(heard === undefined || sent === undefined ? {} : { heard, sent }),
    ...(state === undefined ? {} : { state }),
  };
}

/** The way of a row with a distance and no reading, for an estimate that decides nothing. */
function pathOf({ meters, noiseDbm }: RadioTest): RadioPath | undefined {
  if (meters === undefined || meters < 1) return undefined;
  return {
    megahertz: radioDefault("estimateMegahertz"),
    meters,
    building: "office",
    transmitDbm: radioDefault("estimateTransmitDbm"),
    noiseDbm: noiseDbm ?? radioDefault("estimateNoiseDbm"),
  };
}

/** Repeaters for what is planned; a weak test at a place that gets nothing asks for none. */
function repeatersFor(tests: readonly RadioTestRecord[], controller: string, job: JobSettings): RepeaterPlan {
  const links = tests
    .filter(({ from, planned, basis }) => basis === "measured" && (from !== controller || planned))
    .map(({ from, location, meters, signalDbm, noiseDbm, heard, sent, state }) => ({
      from,
      location,
      ...(meters === null ? {} : { meters }),
      measured: {
        ...(signalDbm === null ? {} : { signalDbm }),
        ...(noiseDbm === null ? {} : { noiseDbm }),
        ...(heard === null || sent === null ? {} : { heard, sent }),
        ...(state === null ? {} : { state }),
      },
    }));
  return placeRepeaters({ controller, tests: links, neededMarginDb: job.radioMarginDb });
}

function repeaterRecords({ places, toTry }: RepeaterPlan): readonly RepeaterRecord[] {
  return [
    ...places.map(({ at, serves, words }) => ({ record: "repeater" as const, at, serves, fromTests: true, words })),
    ...toTry.map(({ location, words }) => ({
      record: "repeater" as const,
      at: null,
      serves: [location],
      fromTests: false,
      words,
    })),
  ];
}

const repeaterOf = (book: PriceBook) => articlesOfClass({ book, class: "repeater" })[0];

function workFor(repeaters: readonly RepeaterRecord[], book: PriceBook): Work {
  const count = repeaters.length;
  if (count === 0) return noWork;
  const article = repeaterOf(book);
  const carried = repeaters.filter(({ fromTests }) => fromTests).length;
  const rule = `${carried} where tests carry ${carried === 1 ? "it" : "them"}, ${count - carried} to be tried for places too weak without`;
  return {
    tasks: [{ task: "repeater", count }],
    parts: article ? [{ code: article.code, quantity: count, rule }] : [],
  };
}

function untestedRecord(
  { survey, planned }: RadioInputs,
  tests: readonly RadioTestRecord[],
  wireless: ReadonlySet<string>,
  places: ReadonlySet<string>,
): UntestedRecord | null {
  const tested = tests.filter(({ basis }) => basis === "measured");
  const loops = planned
    .map(({ key }) => key)
    .filter((key) => wireless.has(key) && !tested.some((test) => test.loops.includes(key)));
  const panels = [...places].filter((panel) => !tested.some((test) => test.panels.includes(panel)));
  if (loops.length + panels.length === 0) return null;
  const named = survey.loops.filter(({ key }) => loops.includes(key)).map(loopName);
  const modules = panels.map((panel) => `modules at ${panel}`);
  return { record: "untested", panels, loops, words: [...modules, ...named].join(", ") };
}

const loopName = ({ panel, loop, label, protects, place }: SurveyLoop) =>
  `${panel} ${loop} ${label ?? protects ?? place ?? ""}`.trim();

const untestedQuery = ({ words }: UntestedRecord): Query => ({
  sheet: "Radio tests",
  row: null,
  column: "location",
  typed: "",
  message: `No radio test stands for these places: ${words}. Test the radio there, doors and covers as in use, and write signal, background and messages heard before the devices are ordered.`,
});

/** One query for the planned places whose test decides nothing yet; a place that a repeater serves is settled by it. */
function againQueries(tests: readonly RadioTestRecord[], { places }: RepeaterPlan): readonly Query[] {
  const served = new Set(places.flatMap(({ serves }) => serves));
  const again = tests.filter(
    ({ planned, verdict, needs, location }) =>
      planned && !served.has(location) && (verdict === "testAgain" || needs.includes("asUsedState")),
  );
  if (again.length === 0) return [];
  const words = again.map(({ location, words: own }) => `${location} (${own.join("; ")})`).join(", ");
  const message = `Test the radio again at ${words}.`;
  return [{ sheet: "Radio tests", row: null, column: "location", typed: "", message }];
}

const noRepeaterQuery: Query = {
  sheet: "Price book",
  row: null,
  column: "class",
  typed: "",
  message: "A repeater is needed and the price book sells none (class repeater): add one; until then it costs nothing.",
};
