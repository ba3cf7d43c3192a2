/**
 * What became of one typed cell. Three outcomes, never a silent guess:
 * read, with every assumption the reader made as a remark; empty ("-", "?", nothing), which is not measured and not 0;
 * or not readable, with a message that says what is expected and how to mend it.
 */
export type Parsed<T> = ReadCell<T> | EmptyCell | UnreadableCell;

export interface ReadCell<T> {
  readonly ok: true;
  readonly value: T;
  /** Whole sentences about what was assumed or stands open. Each is worth a query to the surveyor. */
  readonly remarks: readonly string[];
}

export interface EmptyCell {
  readonly ok: true;
  readonly value: undefined;
  readonly remarks: readonly string[];
}

export interface UnreadableCell {
  readonly ok: false;
  readonly message: string;
}

/** The cell was understood. */
export function read<T>(value: T, remarks: readonly string[] = []): ReadCell<T> {
  return { ok: true, value, remarks };
}

/** Nothing was measured or known; a question mark is such a cell too. */
export function notMeasured(remarks: readonly string[] = []): EmptyCell {
  return { ok: true, value: undefined, remarks };
}

/** What stands there and what is expected instead. */
export function unreadable({ typed, expected }: { readonly typed: string; readonly expected: string }): UnreadableCell {
  const shown = typed.length > 80 ? `${typed.slice(0, 77)}...` : typed;
  return { ok: false, message: `"${shown}" cannot be read here: ${expected}` };
}
