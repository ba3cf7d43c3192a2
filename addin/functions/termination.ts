import * as library from "../loopwright-functions.js";
import { type Answer, type CellValue, inCells, spill } from "./answer.js";
import { choice, conductor, ifGiven, number, ohms, refused, run } from "./arguments.js";

const PLACES = ["device", "panel"] as const;
const REACHES = ["farEnd", "lastContact", "panel"] as const;

/**
 * Which end-of-line resistor, where, brings a loop into an input's normal band with the widest margin, over tolerance and -20 to 60 °C, in one row of seven cells. Source: interval arithmetic; preferred values by IEC 60063; tolerances of parts, contacts and joints are common practice.
 * @customfunction EOL_TO_FIT EOL_TO_FIT
 * @param eolSetting Value that the input is set for, as text such as "5.6k" or a number in Ω.
 * @param bandLow Low end of the input's normal band as a fraction of that value, such as 0.8, from its data sheet.
 * @param bandHigh High end as a fraction, such as 1.2.
 * @param openings Contacts in series, 0 or more.
 * @param cable Size as text such as "22/4", or a gauge number in AWG. Empty with an empty run: cable not counted.
 * @param run One-way length as text such as "120 ft" or "35-55 ft", or a number in metres.
 * @param eolNow Resistor fitted now, as text or a number in Ω, taken as a 5 % part of 350 ppm/K. Left out: none.
 * @param eolAt Where it sits: "device" or "panel". Left out: device.
 * @param reach How far out somebody can work: "farEnd", "lastContact" or "panel". Left out: farEnd.
 * @returns What to do (nothing, fit, repairFirst, noneServes) | new resistor Ω | series | where | loop lowest Ω | loop highest Ω | margin as a share of half the band. Cells that do not apply are empty.
 * @example =LOOPW.EOL_TO_FIT("5.6k", 0.8, 1.2, 2) → "fit" | 5600 to 5650 | "E96" | "device" | 5300 to 5600 | 5600 to 5800 | 0.8 to 1
 */
export function eolToFit(
  eolSetting: unknown,
  bandLow: unknown,
  bandHigh: unknown,
  openings: unknown,
  cable?: unknown,
  run?: unknown,
  eolNow?: unknown,
  eolAt?: unknown,
  reach?: unknown,
): unknown[][] {
  return inCells(() => eolToFitAnswer(eolSetting, bandLow, bandHigh, openings, cable, run, eolNow, eolAt, reach));
}

export function eolToFitAnswer(
  setting: unknown,
  low: unknown,
  high: unknown,
  count: unknown,
  cable?: unknown,
  length?: unknown,
  resistor?: unknown,
  place?: unknown,
  within?: unknown,
): Answer<CellValue[][]> {
  const eolOhms = ohms({ name: "eolSetting", cell: setting }).value;
  const bandLow = number({ name: "bandLow", cell: low });
  const bandHigh = number({ name: "bandHigh", cell: high });
  const input = library.windowFromBand({ eolOhms, bandLow, bandHigh });
  const reach = ifGiven({ name: "reach", cell: within }, (given) => choice(given, REACHES)) ?? "farEnd";
  const loop = loopOf({ count, cable, length, resistor, place });
  const { action, recommended, asIs, words, refused: ways } = library.resistorFor({ loop, input, reach });
  const fit = recommended?.fit ?? asIs;
  const cells = recommended ? [recommended.ohms, recommended.series, recommended.partAt] : ["", "", ""];
  const notes = [...(recommended?.notes ?? fit.notes), ...ways];
  return {
    value: spill([[action, ...cells, fit.lowOhms, fit.highOhms, fit.marginFraction]]),
    words: [`${words}.`, ...notes.map((note) => `${note}.`)],
  };
}

interface LoopCells {
  readonly count: unknown;
  readonly cable: unknown;
  readonly length: unknown;
  readonly resistor: unknown;
  readonly place: unknown;
}

function loopOf({ count, cable, length, resistor, place }: LoopCells): library.TerminatedLoop {
  const openings = number({ name: "openings", cell: count });
  const wire = ifGiven({ name: "cable", cell: cable }, conductor)?.value;
  const oneWay = ifGiven({ name: "run", cell: length }, run)?.value;
  if ((wire === undefined) !== (oneWay === undefined)) {
    const missing = wire === undefined ? "cable" : "run";
    throw refused(missing, "nothing", "cable and run together, or neither");
  }
  const eol = ifGiven({ name: "eolNow", cell: resistor }, ohms)?.value;
  const at = ifGiven({ name: "eolAt", cell: place }, (given) => choice(given, PLACES)) ?? "device";
  const splice = library.partOhms("splice");
  return {
    ...(wire === undefined || oneWay === undefined
      ? {}
      : { cable: { conductor: wire, runMeters: { low: oneWay.lowMeters, high: oneWay.highMeters } } }),
    contacts: { count: openings, ohms: library.assumedLoop.contactOhms },
    extraOhms: { low: (openings + 1) * splice.lowOhms, high: (openings + 1) * splice.highOhms },
    eol: eol === undefined ? null : { ohms: eol, ...library.assumedLoop.oldEol, at },
  };
}
