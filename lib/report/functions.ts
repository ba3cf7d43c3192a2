/** How a function takes one argument: a single value, a column of cells, either, or an array worked out cell by cell. */
export type ArgumentKind = "value" | "range" | "either" | "array";

/** What we know of one spreadsheet function. */
export interface FunctionFacts {
  readonly least: number;
  readonly most: number;
  /** Kinds of the arguments in order; the last one (or the last `cycle` ones) repeats. */
  readonly kinds: readonly ArgumentKind[];
}

const many = 255;

/**
 * The only functions a report may use: Excel 2019 and LibreOffice 7 both know them, none is volatile, none builds an
 * address from text, none depends on the reader's language.
 */
export const spreadsheetFunctions = {
  ABS: { least: 1, most: 1, kinds: ["value"] },
  AND: { least: 1, most: many, kinds: ["either"] },
  AVERAGE: { least: 1, most: many, kinds: ["either"] },
  COUNT: { least: 1, most: many, kinds: ["either"] },
  COUNTA: { least: 1, most: many, kinds: ["either"] },
  COUNTIF: { least: 2, most: 2, kinds: ["range", "value"] },
  COUNTIFS: { least: 2, most: 254, kinds: ["range", "value"] },
  IF: { least: 3, most: 3, kinds: ["value"] },
  IFERROR: { least: 2, most: 2, kinds: ["value"] },
  INDEX: { least: 2, most: 2, kinds: ["range", "value"] },
  INT: { least: 1, most: 1, kinds: ["value"] },
  ISBLANK: { least: 1, most: 1, kinds: ["value"] },
  ISNUMBER: { least: 1, most: 1, kinds: ["value"] },
  MATCH: { least: 3, most: 3, kinds: ["value", "range", "value"] },
  MAX: { least: 1, most: many, kinds: ["either"] },
  MIN: { least: 1, most: many, kinds: ["either"] },
  NOT: { least: 1, most: 1, kinds: ["value"] },
  OR: { least: 1, most: many, kinds: ["either"] },
  ROUND: { least: 2, most: 2, kinds: ["value"] },
  ROUNDDOWN: { least: 2, most: 2, kinds: ["value"] },
  ROUNDUP: { least: 2, most: 2, kinds: ["value"] },
  SQRT: { least: 1, most: 1, kinds: ["value"] },
  SUM: { least: 1, most: many, kinds: ["either"] },
  SUMIF: { least: 2, most: 3, kinds: ["range", "value", "range"] },
  SUMIFS: { least: 3, most: 255, kinds: ["range", "range", "value"] },
  SUMPRODUCT: { least: 1, most: many, kinds: ["array"] },
} as const satisfies Readonly<Record<string, FunctionFacts>>;

/** Name of an allowed spreadsheet function. */
export type FunctionName = keyof typeof spreadsheetFunctions;

/** The kind of argument number `index` (from 0) of a function. */
export function argumentKind(name: FunctionName, index: number): ArgumentKind {
  const kinds: readonly ArgumentKind[] = spreadsheetFunctions[name].kinds;
  if (name === "COUNTIFS") return index % 2 === 0 ? "range" : "value";
  if (name === "SUMIFS") return index === 0 || index % 2 === 1 ? "range" : "value";
  return kinds[Math.min(index, kinds.length - 1)] ?? "value";
}
