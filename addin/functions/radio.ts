import * as library from "../loopwright-functions.js";
import { type Answer, type CellValue, inCells, spill } from "./answer.js";
import { ifGiven, number, yesNo } from "./arguments.js";

/**
 * Whether a place carries radio, from what was measured there, in one row of four cells. 10 dB over the background are asked for, and 50 messages counted where it is under 15 dB or one was lost. A test with doors not as in use never shows that no repeater is needed. Source: binomial confidence bound (Clopper and Pearson); the limits are common practice.
 * @customfunction RADIO_MARGIN RADIO_MARGIN
 * @param signal Signal at the receiver in dBm, -160 to 30. Empty: not measured.
 * @param background Background at the receiver in dBm, -160 to 30. Empty: not measured.
 * @param heard Test messages that arrived. Empty: not counted.
 * @param sent Test messages that were sent. Empty: not counted.
 * @param asUsed TRUE: doors, covers and vehicles stood as they will in use. FALSE: they did not. Empty: not recorded.
 * @param neededMargin Margin asked for in dB, 0 to 60. Left out: 10.
 * @returns Margin in dB | share of messages that the count proves, one-sided 95 % | enough, testAgain, repeater or testOnSite | words. What was not measured is empty.
 * @example =LOOPW.RADIO_MARGIN(-82, -103, 10, 10, TRUE) → 21 | 0.741 | "enough" | *
 */
export function radioMargin(
  signal?: unknown,
  background?: unknown,
  heard?: unknown,
  sent?: unknown,
  asUsed?: unknown,
  neededMargin?: unknown,
): unknown[][] {
  return inCells(() => radioMarginAnswer(signal, background, heard, sent, asUsed, neededMargin));
}

export function radioMarginAnswer(
  signal?: unknown,
  background?: unknown,
  arrived?: unknown,
  tried?: unknown,
  state?: unknown,
  needed?: unknown,
): Answer<CellValue[][]> {
  const signalDbm = ifGiven({ name: "signal", cell: signal }, number);
  const noiseDbm = ifGiven({ name: "background", cell: background }, number);
  const heard = ifGiven({ name: "heard", cell: arrived }, number);
  const sent = ifGiven({ name: "sent", cell: tried }, number);
  const asUsed = ifGiven({ name: "asUsed", cell: state }, yesNo);
  const neededMarginDb = ifGiven({ name: "neededMargin", cell: needed }, number);
  const margin = library.radioMargin({
    measured: {
      ...(signalDbm === undefined ? {} : { signalDbm }),
      ...(noiseDbm === undefined ? {} : { noiseDbm }),
      ...(heard === undefined ? {} : { heard }),
      ...(sent === undefined ? {} : { sent }),
      ...(asUsed === undefined ? {} : { state: asUsed ? "asUsed" : "notAsUsed" }),
    },
    ...(neededMarginDb === undefined ? {} : { neededMarginDb }),
  });
  const words = margin.words.join("; ");
  return {
    value: spill([[margin.marginDb ?? "", margin.deliveryProved ?? "", margin.verdict, words]]),
    words: margin.words.map((line) => `${line}.`),
  };
}
