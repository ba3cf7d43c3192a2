/// <reference types="custom-functions-runtime" />

/** What a cell may hold when a function hands it back. */
export type CellValue = string | number | boolean;

/** What a function answers, and how it came to it. */
export interface Answer<T> {
  readonly value: T;
  /** Arithmetic, assumptions and reasons, one sentence or line each; shown by EXPLAIN. */
  readonly words: readonly string[];
}

/** The arguments are readable, but there is no result: shown as #N/A. */
export class NoResult extends Error {
  constructor(message: string) {
    super(message);
    this.name = "NoResult";
  }
}

/** Excel shows no more of a message, and a cell holds no more text. */
const LONGEST_MESSAGE = 1000;
const LONGEST_TEXT = 32_000;

/** The answer's value; a refusal becomes #VALUE! or #N/A with its message. */
export function inCells<T>(work: () => Answer<T>): T {
  try {
    return checked(work().value);
  } catch (error) {
    throw excelError(error);
  }
}

/** The same for an answer that takes its time. */
export async function inCellsLater<T>(work: () => Promise<Answer<T>>): Promise<T> {
  try {
    return checked((await work()).value);
  } catch (error) {
    throw excelError(error);
  }
}

/** A table of cells, as a spilling function hands it back. */
export function spill(rows: readonly (readonly CellValue[])[]): CellValue[][] {
  return rows.map((row) => [...row]);
}

/** Text that fits a cell. */
export function cellWords(words: readonly string[]): string {
  const text = words.filter((word) => word !== "").join(" ");
  return text.length > LONGEST_TEXT ? `${text.slice(0, LONGEST_TEXT - 2)} …` : text;
}

/** Not-a-number and infinity would become an empty cell on the way to Excel. */
function checked<T>(value: T): T {
  const cells: unknown[] = Array.isArray(value) ? value.flat(2) : [value];
  if (cells.some((cell) => typeof cell === "number" && !Number.isFinite(cell))) {
    throw new NoResult("the arithmetic ran out of range: check the units of the arguments");
  }
  return value;
}

/**
 * The error as Excel takes it: only #VALUE! and #N/A carry a message. Outside Excel the error itself. The class exists
 * only inside Excel and is looked for when it is needed.
 */
function excelError(error: unknown): unknown {
  if (typeof CustomFunctions === "undefined" || CustomFunctions.Error === undefined) return error;
  const { ErrorCode } = CustomFunctions;
  const message = messageOf(error).slice(0, LONGEST_MESSAGE);
  return new CustomFunctions.Error(
    error instanceof NoResult ? ErrorCode.notAvailable : ErrorCode.invalidValue,
    message,
  );
}

/** What an error says, for people. */
export function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
