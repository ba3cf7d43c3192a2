import * as library from "../loopwright-functions.js";
import { NoResult } from "./answer.js";

/** One argument as Excel hands it over, with its name for messages. */
export interface Argument {
  readonly name: string;
  readonly cell: unknown;
}

type TypedCell = string | number | boolean | null;

/** A quantity read from a cell, and what was assumed on the way. */
export interface ReadArgument<T> {
  readonly value: T;
  readonly remarks: readonly string[];
}

/** A cell that holds nothing, or an argument left out: Excel hands over null, undefined or "". */
export function isLeftOut(cell: unknown): boolean {
  const cells: readonly unknown[] = Array.isArray(cell) ? cell.flat(2) : [cell];
  const [first] = cells;
  if (cells.length > 1) return false;
  return first === null || first === undefined || (typeof first === "string" && first.trim() === "");
}

/**
 * The plain value of a cell. A single cell of a range comes as a table of one; a formatted number or entity as an object
 * with a basic value.
 * @throws {@link library.InputError} for a range of several cells or a cell with an error in it.
 */
export function plainCell({ name, cell }: Argument): TypedCell {
  if (cell === null || cell === undefined) return null;
  if (typeof cell === "string" || typeof cell === "boolean") return cell;
  if (typeof cell === "number") return cell;
  if (Array.isArray(cell)) {
    const cells: readonly unknown[] = cell.flat(2);
    if (cells.length > 1) throw refused(name, `${cells.length} cells`, "one cell");
    return plainCell({ name, cell: cells[0] });
  }
  const { type, basicValue } = cell as { readonly type?: unknown; readonly basicValue?: unknown };
  if (type === "Error") throw refused(name, `the error ${String(basicValue)}`, "a value; mend that cell first");
  if (typeof basicValue === "object") throw refused(name, `a cell of type ${String(type)}`, "text or a number");
  return plainCell({ name, cell: basicValue });
}

/** A range as rows of plain values; one cell is a range of one. */
export function plainRows({ name, cell }: Argument): readonly (readonly TypedCell[])[] {
  const rows: readonly unknown[] = Array.isArray(cell) ? cell : [[cell]];
  return rows.map((row, r) =>
    (Array.isArray(row) ? row : [row]).map((one: unknown, c) =>
      plainCell({ name: `${name}, row ${r + 1}, column ${c + 1}`, cell: one }),
    ),
  );
}

/** Text that the library's reader of its kind could not make out; the message says what to write. */
class UnreadableArgument extends Error {
  constructor(message: string) {
    super(message);
    this.name = "UnreadableArgument";
  }
}

/** The error to throw: what came, what was expected. */
export function refused(field: string, got: string, expected: string): library.InputError {
  return new library.InputError({ field, got, expected });
}

/** The argument, or undefined when it was left out. */
export function ifGiven<T>(argument: Argument, read: (given: Argument) => T): T | undefined {
  return isLeftOut(argument.cell) ? undefined : read(argument);
}

/** A cell through one of the library's readers. */
function through<T>(
  argument: Argument,
  expected: string,
  parse: (cell: TypedCell) => library.Parsed<T>,
): ReadArgument<T> {
  const cell = plainCell(argument);
  if (isLeftOut(cell)) throw refused(argument.name, "nothing", expected);
  const answer = parse(cell);
  if (!answer.ok) throw new UnreadableArgument(`${argument.name}: ${answer.message}`);
  if (answer.value === undefined) throw refused(argument.name, `"${cell}", which is not measured`, expected);
  return { value: answer.value, remarks: answer.remarks };
}

/** A resistance as text ("2.2k") or a number of Ω; "OL" is over-range. [Ω] */
export function ohmsOrOpen(argument: Argument): ReadArgument<number | "OL"> {
  const expected = "ohms such as 47, 2.2k or OL, a bare number in Ω";
  const { value, remarks } = through(argument, expected, (cell) => library.parseOhms(cell));
  const { reading, words } = value;
  if (reading === undefined)
    throw refused(argument.name, `"${String(plainCell(argument))}" without a number`, expected);
  const range =
    reading.lowOhms === reading.highOhms
      ? []
      : [`${argument.name} is a range: ${reading.ohms} Ω, its middle, is used.`];
  const unused = words.length === 0 ? [] : [`"${words.join(", ")}" beside ${argument.name} was not used.`];
  return { value: reading.ohms, remarks: [...remarks, ...range, ...unused] };
}

/** A resistance that must have a value. [Ω] */
export function ohms(argument: Argument): ReadArgument<number> {
  const { value, remarks } = ohmsOrOpen(argument);
  if (value === "OL") throw new NoResult(`${argument.name}: over-range is no resistance to reckon with`);
  return { value, remarks };
}

/** A length as text ("120 ft", "35-55 ft") or a number of metres. [m] */
export function run(
  argument: Argument,
): ReadArgument<{ readonly meters: number; readonly lowMeters: number; readonly highMeters: number }> {
  const expected = "a one-way length such as 120 ft or 36 m, a bare number in metres";
  return through(argument, expected, (cell) => library.parseRun(cell, { bareUnit: "m" }));
}

/** A cable as text ("22/4", "24 AWG", "7/0.2", "0.5 mm2") or a whole gauge number. */
export function conductor(argument: Argument): ReadArgument<library.Conductor> {
  const expected = "a cable such as 22/4, 24 AWG, 7/0.2 or 0.5 mm2, a bare number in AWG";
  const cell = plainCell(argument);
  if (typeof cell === "number" && cell > 1000) {
    const made = `${cell}, a date that Excel made of what was typed`;
    throw refused(argument.name, made, "text: format the cell as text and type 22/4 again");
  }
  const { value, remarks } = through(argument, expected, (one) => library.parseCable(one));
  const { gaugeAwg, areaMm2, strands, metal } = value;
  if (gaugeAwg === undefined && areaMm2 === undefined) {
    throw refused(argument.name, `"${value.words}" without a conductor size`, expected);
  }
  return {
    value: {
      ...(gaugeAwg === undefined ? { areaMm2: areaMm2 ?? 0 } : { gaugeAwg }),
      ...(strands === undefined ? {} : { strands }),
      ...(metal === undefined ? {} : { metal }),
    },
    remarks,
  };
}

/** A temperature as text ("95 F") or a number of °C. [°C] */
export function celsius(argument: Argument): ReadArgument<number> {
  const expected = "a temperature such as 35 C or 95 F, a bare number in °C";
  const { value, remarks } = through(argument, expected, (cell) => library.parseTemperature(cell, { bareUnit: "C" }));
  return { value: value.celsius, remarks };
}

/** A current as text ("18 mA", "0.5 A") or a number of mA. [mA] */
export function milliamps(argument: Argument): ReadArgument<number> {
  const expected = "a current such as 18 mA, a bare number in mA";
  const { value, remarks } = through(argument, expected, (cell) => library.parseMilliamps(cell));
  return { value: value.milliamps, remarks };
}

/** A supply voltage as text ("13.7 V") or a number of V. [V] */
export function volts(argument: Argument): ReadArgument<number> {
  const expected = "a voltage such as 13.7 V, a bare number in V";
  const { value, remarks } = through(argument, expected, (cell) => library.parseVolts(cell));
  if (value.volts === undefined) throw refused(argument.name, `"${String(plainCell(argument))}"`, expected);
  return { value: value.volts, remarks };
}

/** A time as text ("24 h", "90 min") or a number of hours. [h] */
export function hours(argument: Argument): ReadArgument<number> {
  const expected = "a time such as 24 h or 90 min, a bare number in hours";
  return through(argument, expected, (cell) => library.parseHours(cell));
}

/** A time as text ("5 min", "0.5 h") or a number of minutes. [min] */
export function minutes(argument: Argument): ReadArgument<number> {
  const expected = "a time such as 5 min, a bare number in minutes";
  const { value, remarks } = through(argument, expected, (cell) =>
    library.parseHours(typeof cell === "number" || /^\s*[\d.,]+\s*$/.test(String(cell)) ? `${String(cell)} min` : cell),
  );
  return { value: value * 60, remarks };
}

/** A plain number. The library's own checks name the range. */
export function number(argument: Argument): number {
  const cell = plainCell(argument);
  if (typeof cell === "number") return cell;
  const text = String(cell ?? "").trim();
  if (!/^[-+]?\d+([.,]\d+)?$/.test(text))
    throw refused(argument.name, text === "" ? "nothing" : `"${text}"`, "a number");
  return Number(text.replace(",", "."));
}

/** Yes or no: TRUE, FALSE, "yes", "no", 1 or 0. */
export function yesNo(argument: Argument): boolean {
  const cell = plainCell(argument);
  if (typeof cell === "boolean") return cell;
  const text = String(cell).trim().toLowerCase();
  if (["yes", "y", "true", "1"].includes(text)) return true;
  if (["no", "n", "false", "0"].includes(text)) return false;
  throw refused(argument.name, `"${text}"`, "TRUE or FALSE");
}

/** One of a few words, whatever the letters' case. */
export function choice<const T extends string>(argument: Argument, allowed: readonly T[]): T {
  const typed = String(plainCell(argument)).trim().toLowerCase();
  const found = allowed.find((word) => word.toLowerCase() === typed);
  if (found === undefined) throw refused(argument.name, `"${typed}"`, allowed.join(", "));
  return found;
}
