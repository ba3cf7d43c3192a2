import { InputError } from "../loopwright.js";

/** What may be written to a cell; null leaves the cell as it is. */
export type WireValue = string | number | boolean | null;

/** Format of cells whose contents stay text whatever they look like. */
export const textFormat = "@";

/**
 * Text as it must be sent so that it stays text: with an apostrophe in front, which Excel takes away, unless the cell's
 * format is text and the text could not begin a formula.
 */
export function wireText(text: string, numberFormat: string): string {
  if (text === "") return "";
  return numberFormat === textFormat && !/^[=+\-@'\t\r\n]/.test(text) ? text : `'${text}`;
}

/** A number that may be sent. NaN and Infinity would arrive as "leave the cell as it is". */
export function wireNumber(value: number, where: string): number {
  if (Number.isFinite(value)) return value;
  throw new InputError({ field: where, got: String(value), expected: "a finite number" });
}

const encoder = new TextEncoder();
/** Size of a value in a request. [bytes] */
export const wireBytes = (value: unknown): number => encoder.encode(JSON.stringify(value)).length;
