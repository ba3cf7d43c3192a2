/** Which sign stands before the decimals; absent = nobody said, both are met. */
export type DecimalMark = "." | ",";

export interface TypedNumber {
  readonly value: number;
  /** Set when the other decimal mark would give another number: how it was read, as a sentence. */
  readonly doubt?: string;
}

/** Matches one number as people type it, thousands separators included; for building larger patterns. */
export const NUMBER = String.raw`(?:\d+(?:[.,]\d+)*|[.,]\d+)(?:e[-+]?\d+)?`;

/** Groups of three with the same separator, at least two of them, or one group after which the other mark follows. */
const GROUPED = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$|^\d{1,3}(?:\.\d{3})+(?:,\d+)?$/;

/**
 * A number as people type it: 5710, 5,710 (thousands), 5,710.5, 5.710,5, 5,7 (decimal comma), .5.
 * Where one separator and three digits leave two readings (5,710 and 5.710) the comma is taken for thousands and the
 * point for decimals, with the doubt in words, unless `decimalMark` settles it. Undefined when it is no number.
 */
export function typedNumber(text: string, decimalMark?: DecimalMark): TypedNumber | undefined {
  const match = /^([\d.,]+)(e[-+]?\d+)?$/i.exec(text.trim());
  const digits = match?.[1] ?? "";
  const exponent = match?.[2] ?? "";
  const points = digits.split(".").length - 1;
  const commas = digits.split(",").length - 1;
  const plain = (mark: "." | "," | null) => {
    const cleaned = [...digits].filter((c) => (c === "." || c === "," ? c === mark : true)).join("");
    const value = Number(`${cleaned.replace(",", ".")}${exponent}`);
    return /\d/.test(digits) && Number.isFinite(value) ? { value } : undefined;
  };
  if (points + commas === 0) return plain(null);
  if (points > 0 && commas > 0) {
    const last: DecimalMark = digits.lastIndexOf(".") > digits.lastIndexOf(",") ? "." : ",";
    return GROUPED.test(digits) && (decimalMark ?? last) === last ? plain(last) : undefined;
  }
  const mark: DecimalMark = points > 0 ? "." : ",";
  if (points + commas > 1) return GROUPED.test(digits) && decimalMark !== mark ? plain(null) : undefined;
  const twoReadings = /^[1-9]\d{0,2}[.,]\d{3}$/.test(digits);
  if (decimalMark !== undefined) {
    if (mark === decimalMark) return plain(mark);
    return twoReadings ? plain(null) : undefined;
  }
  const asTyped = plain(twoReadings && mark === "," ? null : mark);
  if (asTyped === undefined || !twoReadings) return asTyped;
  return { ...asTyped, doubt: doubtAbout(digits, asTyped.value) };
}

function doubtAbout(digits: string, value: number): string {
  const other = digits.includes(",") ? digits.replace(",", ".") : digits.replace(".", "");
  return `"${digits}" was read as ${value}; write ${other} if that was meant.`;
}
