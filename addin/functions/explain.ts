import { type Answer, messageOf, NoResult } from "./answer.js";
import { billAnswer } from "./bill.js";
import { expectedBandAnswer, loopsVerdictAnswer, loopVerdictAnswer } from "./loops.js";
import { radioMarginAnswer } from "./radio.js";
import {
  inParallelAnswer,
  inSeriesAnswer,
  metersAnswer,
  nearestResistorAnswer,
  ohmsAnswer,
  ohmsFromBandsAnswer,
  resistorBandsAnswer,
} from "./resistors.js";
import { batteryAhAnswer, extraJointAnswer, supplyDropAnswer } from "./supply.js";
import { eolToFitAnswer } from "./termination.js";
import { pairOhmsAnswer, runFromOhmsAnswer, wireAnswer } from "./wire.js";

type AnswerOf = (...cells: readonly unknown[]) => Answer<unknown> | Promise<Answer<unknown>>;

/** Every other function's answer by its name, for EXPLAIN. */
export const answers: ReadonlyMap<string, AnswerOf> = new Map<string, AnswerOf>([
  ["BATTERY_AH", batteryAhAnswer],
  ["BILL", billAnswer],
  ["EOL_TO_FIT", eolToFitAnswer],
  ["EXPECTED_BAND", expectedBandAnswer],
  ["EXTRA_JOINT", extraJointAnswer],
  ["IN_PARALLEL", inParallelAnswer],
  ["IN_SERIES", inSeriesAnswer],
  ["LOOPS_VERDICT", loopsVerdictAnswer],
  ["LOOP_VERDICT", loopVerdictAnswer],
  ["METERS", metersAnswer],
  ["NEAREST_RESISTOR", nearestResistorAnswer],
  ["OHMS", ohmsAnswer],
  ["OHMS_FROM_BANDS", ohmsFromBandsAnswer],
  ["PAIR_OHMS", pairOhmsAnswer],
  ["RADIO_MARGIN", radioMarginAnswer],
  ["RESISTOR_BANDS", resistorBandsAnswer],
  ["RUN_FROM_OHMS", runFromOhmsAnswer],
  ["SUPPLY_DROP", supplyDropAnswer],
  ["WIRE", wireAnswer],
]);

/** Excel shows no longer text in a cell. */
const LONGEST = 32_000;

/**
 * What one of the other functions has to say in words: its arithmetic and what it assumed, or why it shows #VALUE! or #N/A. Give the same arguments as there.
 * @customfunction EXPLAIN EXPLAIN
 * @param functionName Name of the function, such as "PAIR_OHMS".
 * @param values The same arguments, in the same order; an empty cell stands for one left out.
 * @returns Words.
 * @example =LOOPW.EXPLAIN("PAIR_OHMS", "22 AWG", "120 furlongs") → "#VALUE! run: *"
 */
export function explain(functionName: unknown, values: unknown[][][]): Promise<string> {
  return explained(functionName, values);
}

async function explained(functionName: unknown, values: readonly unknown[] | null | undefined): Promise<string> {
  const name = String(functionName ?? "")
    .trim()
    .toUpperCase()
    .replace(/^LOOPW\./, "");
  const answer = answers.get(name);
  if (answer === undefined)
    return `#VALUE! functionName: got "${name}", expected one of ${[...answers.keys()].join(", ")}`;
  try {
    const { words } = await answer(...(values ?? []));
    return words
      .filter((line) => line !== "")
      .join(" ")
      .slice(0, LONGEST);
  } catch (error) {
    return `${error instanceof NoResult ? "#N/A" : "#VALUE!"} ${messageOf(error)}`.slice(0, LONGEST);
  }
}
