import type { Query } from "../problems/query.js";
import { requireBetween } from "../problems/require-between.js";
import { entryExitTimes as table } from "../reference/generated/entry-exit-times.js";
import { onlyRow } from "../reference/rows.js";

/** One delay against its range. Absent limits: none was read in the source. [s] */
export interface CheckedTime {
  readonly time: "exit" | "entry" | "abort" | "entryPlusAbort";
  readonly words: string;
  readonly seconds: number;
  readonly lowSeconds?: number;
  readonly highSeconds?: number;
  readonly inRange: boolean;
}

/** Delays of an area with what is wrong about them. */
export interface EntryExitCheck {
  readonly times: readonly CheckedTime[];
  /** Wait after power returns before a walk test counts. [s] */
  readonly settleSeconds: number;
  readonly queries: readonly Query[];
}

const rowOf = (time: string) => onlyRow("entry-exit-times", table, (row) => row.time === time);

/**
 * Exit time, entry delay and abort window against the ranges of ANSI/SIA CP-01, entry delay and abort window together
 * no longer than its 60 s. [s] Absent times are the table's defaults. A time outside its range is a query, not an error:
 * the listing of the control decides.
 * @throws {@link InputError} when a time is not 0 to 3600 s.
 * @example entryExitTimes({ exitSeconds: 60, entrySeconds: 45, abortSeconds: 30 }).queries.length; // 1: 75 s together
 */
export function entryExitTimes({
  exitSeconds,
  entrySeconds,
  abortSeconds,
}: {
  readonly exitSeconds?: number;
  readonly entrySeconds?: number;
  readonly abortSeconds?: number;
}): EntryExitCheck {
  const given = (field: string, time: string, value: number | undefined): number =>
    requireBetween({ field, value: value ?? rowOf(time).defaultSeconds ?? 0, unit: "s", from: 0, to: 3600 });
  const entry = given("entrySeconds", "entry", entrySeconds);
  const abort = given("abortSeconds", "abort", abortSeconds);
  const times = [
    checked("exit", given("exitSeconds", "exit", exitSeconds)),
    checked("entry", entry),
    checked("abort", abort),
    checked("entryPlusAbort", entry + abort),
  ];
  return {
    times,
    settleSeconds: rowOf("settleAfterPower").lowSeconds ?? 60,
    queries: times.filter(({ inRange }) => !inRange).map(outOfRange),
  };
}

function checked(time: CheckedTime["time"], seconds: number): CheckedTime {
  const { words, lowSeconds, highSeconds } = rowOf(time);
  return {
    time,
    words,
    seconds,
    ...(lowSeconds === undefined ? {} : { lowSeconds }),
    ...(highSeconds === undefined ? {} : { highSeconds }),
    inRange: seconds >= (lowSeconds ?? 0) && seconds <= (highSeconds ?? Number.POSITIVE_INFINITY),
  };
}

function outOfRange({ time, words, seconds, lowSeconds, highSeconds }: CheckedTime): Query {
  const range = lowSeconds === undefined ? `at most ${highSeconds} s` : `${lowSeconds} to ${highSeconds} s`;
  const newer = time === "abort" && seconds < (lowSeconds ?? 0) ? " A newer table prints 0 s as the lower limit." : "";
  return {
    sheet: "Settings",
    row: null,
    column: time === "entryPlusAbort" ? "entrySeconds, abortSeconds" : `${time}Seconds`,
    typed: `${seconds} s`,
    message:
      `The ${words} is ${seconds} s; ANSI/SIA CP-01 tables give ${range}.${newer} Change it, or write down why the ` +
      "listing of this control allows it.",
  };
}
