import * as library from "../loopwright-functions.js";
import { type Answer, type CellValue, cellWords, inCells, NoResult, spill } from "./answer.js";
import {
  celsius,
  conductor,
  ifGiven,
  number,
  ohms,
  ohmsOrOpen,
  plainCell,
  plainRows,
  run,
  volts,
  yesNo,
} from "./arguments.js";
import { ourHeading, type ReadRow, readRange } from "./loop-rows.js";

/**
 * Band in which a sound loop with everything shut would read, in Ω, in one row of three cells: lowest, likely, highest. Cable, contacts, joints and end-of-line resistor with all spreads together; test leads and meter are not in it. Source: ASTM B258 and IEC 60028 for the cable; contacts, joints and aging are common practice.
 * @customfunction EXPECTED_BAND EXPECTED_BAND
 * @param cable Size as text such as "22/4", or a gauge number in AWG. Empty: taken as 22 AWG copper.
 * @param run One-way length as text such as "120 ft" or "35-55 ft", or a number in metres. Empty: taken as 6 to 60 m.
 * @param openings Contacts in series that are shut, 0 to 500.
 * @param eol End-of-line resistor as text such as "2.2k", or a number in Ω. Left out: none fitted.
 * @param tolerancePercent Tolerance of the resistor in percent, 0 to 50. Left out: 5. Aging adds 3.
 * @param celsius Cable temperature as text such as "95 F", or a number in °C; ± 10 °C are allowed for. Left out: 20.
 * @returns Lowest | likely | highest Ω.
 * @example =LOOPW.EXPECTED_BAND("22 AWG", 30, 2) → 3.17 | 3.60 | 4.60
 */
export function expectedBand(
  cable: unknown,
  run: unknown,
  openings: unknown,
  eol?: unknown,
  tolerancePercent?: unknown,
  celsius?: unknown,
): unknown[][] {
  return inCells(() => expectedBandAnswer(cable, run, openings, eol, tolerancePercent, celsius));
}

export function expectedBandAnswer(
  cable: unknown,
  length: unknown,
  count: unknown,
  resistor?: unknown,
  tolerance?: unknown,
  temperature?: unknown,
): Answer<CellValue[][]> {
  const wire = ifGiven({ name: "cable", cell: cable }, conductor);
  const oneWay = ifGiven({ name: "run", cell: length }, run);
  const eol = ifGiven({ name: "eol", cell: resistor }, ohms);
  const tolerancePercent = ifGiven({ name: "tolerancePercent", cell: tolerance }, number);
  const warmth = ifGiven({ name: "celsius", cell: temperature }, celsius);
  const { lowMeters = 0, meters = 0, highMeters = 0 } = oneWay?.value ?? {};
  const expected = library.expectedLoopOhms({
    openings: number({ name: "openings", cell: count }),
    ...(wire === undefined ? {} : { conductor: wire.value }),
    ...(oneWay === undefined ? {} : { runMeters: { low: lowMeters, likely: meters, high: highMeters } }),
    ...(warmth === undefined ? {} : { temperatureCelsius: { low: warmth.value - 10, high: warmth.value + 10 } }),
    ...(eol === undefined
      ? {}
      : { eol: { ohms: eol.value, ...(tolerancePercent === undefined ? {} : { tolerancePercent }) } }),
  });
  const { parts, assumptions, lowOhms, likelyOhms, highOhms } = expected;
  const words = Object.entries(parts).map(
    ([part, band]) => `${part} ${round(band.lowOhms)} to ${round(band.highOhms)} Ω;`,
  );
  const remarks = [wire, oneWay, eol, warmth].flatMap((one) => one?.remarks ?? []);
  return {
    value: spill([[lowOhms, likelyOhms, highOhms]]),
    words: [...words, ...assumptions.map((one) => `${one}.`), ...remarks],
  };
}

const round = (value: number): number => Number(value.toPrecision(4));

/** Columns of a survey row in the order of the arguments; the loop's own name stands in front. */
const HEADINGS = ["loop", "closed", "opened", "openings", "cable", "run", "device", "eolValue", "voltsPairDc", "notes"];

/**
 * What one metered loop is, in one row of four cells: condition, probability 0 to 1, action, reason. Life-safety words in device or notes end the matter: leave alone. Source: docs/how-loops-are-judged; sound loops by ASTM B258, faults by common practice.
 * @customfunction LOOP_VERDICT LOOP_VERDICT
 * @param shut Reading at the panel with everything shut, pair lifted, as text such as "2.23k" or "OL", or a number in Ω.
 * @param opened Reading with one opening open, as text or a number in Ω. Empty: not measured.
 * @param openings How many leaves and devices open on their own. Empty: 1 is assumed.
 * @param cable Size as text such as "22/4", or a gauge number in AWG. Empty: not known.
 * @param run One-way length as text such as "120 ft", or a number in metres. Empty: not known.
 * @param device What stands on the loop, in words. Empty: not known.
 * @param eol Resistor that the old panel expects, as text such as "2.2k" or a number in Ω. Empty: not known.
 * @param volts DC volts across the lifted pair, as text or a number in V. Empty: not measured.
 * @param notes Notes in words; looked through for life safety and for what was seen.
 * @returns Condition | probability | action | reason.
 * @example =LOOPW.LOOP_VERDICT("2.23k", "OL", 1, "22/4", "66 ft", "recessed contact", "2.2k", 0) → "soundEolAtEnd" | 0.8 to 1 | "keep" | *
 */
export function loopVerdict(
  shut: unknown,
  opened?: unknown,
  openings?: unknown,
  cable?: unknown,
  run?: unknown,
  device?: unknown,
  eol?: unknown,
  volts?: unknown,
  notes?: unknown,
): unknown[][] {
  return inCells(() => loopVerdictAnswer(shut, opened, openings, cable, run, device, eol, volts, notes));
}

export function loopVerdictAnswer(...given: readonly unknown[]): Answer<CellValue[][]> {
  const [shut, opened, , cable, length, , eol, pairVolts] = given;
  ifGiven({ name: "shut", cell: shut }, ohmsOrOpen);
  ifGiven({ name: "opened", cell: opened }, ohmsOrOpen);
  ifGiven({ name: "cable", cell: cable }, conductor);
  ifGiven({ name: "run", cell: length }, run);
  ifGiven({ name: "eol", cell: eol }, ohms);
  ifGiven({ name: "volts", cell: pairVolts }, volts);
  const row = HEADINGS.map((column, i) => (column === "loop" ? "1" : plainCell({ name: column, cell: given[i - 1] })));
  const read = readRange([HEADINGS.map(ourHeading), row]).rows.get(1);
  if (read === undefined) throw new NoResult("the loop could not be read");
  const judgement = library.judgeLoop(library.loopRecord({ loop: read.loop, site: SITE }));
  const further = judgement.next.map(({ words }) => `Measure next: ${words}`);
  const others = judgement.findings
    .slice(1)
    .map(({ words, probability }) => `Or, ${Math.round(100 * probability)} %: ${words}`);
  return {
    value: spill([verdictCells(judgement)]),
    words: [reasonOf(judgement), ...others, ...judgement.cannotTell, ...further, ...questionsOf(read)],
  };
}

/** Meter, temperature and currency are not among the arguments. */
const SITE = { currency: "USD", typed: {} } as const;

function verdictCells(judgement: library.LoopJudgement): CellValue[] {
  const { condition, probability, action } = judgement;
  return [condition, Number(probability.toFixed(4)), action, reasonOf(judgement)];
}

function reasonOf({ findings, facts }: library.LoopJudgement): string {
  return cellWords([findings[0]?.words ?? "", ...facts.map(({ words }) => words)]);
}

const questionsOf = ({ questions }: ReadRow): readonly string[] =>
  questions.map(({ column, message }) => (column === null ? message : `${column}: ${message}`));

const VERDICT_HEADINGS = ["Condition", "Probability", "Action", "Reason", "Questions"];

/**
 * Verdicts of a whole table of loops at once: as many rows as the range, beside it. Columns are found by their headings, which are those of the survey's loops sheet or your own words for them; bare runs under our own heading are metres. Loops of one table share installer, meter and old panel, so they are judged together unless told otherwise. Source: docs/how-loops-are-judged.
 * @customfunction LOOPS_VERDICT LOOPS_VERDICT
 * @param loops Range with its row of headings; at least the loop's name and its reading shut.
 * @param pooled TRUE: loops judged together as one job. FALSE: each by itself. Left out: TRUE.
 * @returns Condition | probability 0 to 1 | action | reason | questions, a row of headings on top of them.
 * @example =LOOPW.LOOPS_VERDICT({"Loop","Shut","Openings";"1","OL",1}, FALSE) → "Condition" | "Probability" | "Action" | "Reason" | "Questions"
 */
export function loopsVerdict(loops: unknown[][], pooled?: unknown): unknown[][] {
  return inCells(() => loopsVerdictAnswer(loops, pooled));
}

export function loopsVerdictAnswer(loops: unknown, together?: unknown): Answer<CellValue[][]> {
  const cells = plainRows({ name: "loops", cell: loops });
  const pooled = ifGiven({ name: "pooled", cell: together }, yesNo) ?? true;
  const range = readRange(cells);
  if (range.rows.size === 0) throw new NoResult("loops: the range has headings but no loop below them");
  const read = [...range.rows.values()];
  const records = read.map(({ loop }) => library.loopRecord({ loop, site: SITE }));
  const options = { rankNext: false };
  const model = library.judgeModel(options);
  const judgements = pooled
    ? library.judgeJob(records, options).loops
    : records.map((record) => library.judgeLoopWith(record, model));
  const places = new Map([...range.rows.keys()].map((place, i) => [place, i]));
  const rows = cells.map((_, place): CellValue[] => {
    if (place === range.headingRow) return VERDICT_HEADINGS;
    const index = places.get(place);
    const judgement = index === undefined ? undefined : judgements[index];
    const row = index === undefined ? undefined : read[index];
    if (judgement === undefined || row === undefined) return VERDICT_HEADINGS.map(() => "");
    return [...verdictCells(judgement), cellWords(questionsOf(row))];
  });
  const counted = new Map<string, number>();
  for (const { action } of judgements) counted.set(action, (counted.get(action) ?? 0) + 1);
  const words = [...counted].map(([action, count]) => `${action}: ${count};`);
  return {
    value: rows,
    words: [`${records.length} loops.`, ...words, ...range.questions.map(({ message }) => message)],
  };
}
