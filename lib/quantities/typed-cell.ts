/** A cell as a file or a person gives it; a date that a spreadsheet made of something typed is `{ isoDate }`. */
export type CellTyped = string | number | boolean | null | undefined | { readonly isoDate: string };

/** Text that is plain already: printed ASCII without the grave accent, single blanks between words. Most cells are. */
const PLAIN = /^(?:[!-_a-~]+(?: [!-_a-~]+)*)?$/;

/** Compatibility forms made one (Ω, fractions, full-width digits, no-break spaces), dashes and quotes made plain. */
export function plainText(text: string): string {
  if (PLAIN.test(text)) return text;
  return (
    text
      // Before NFKC, which would turn a double prime into two primes.
      .replace(/[″“”„]/gu, '"')
      .replace(/[′’‘`´]/gu, "'")
      .normalize("NFKC")
      .replace(/[‐‑‒–—―−]/gu, "-")
      .replace(/[\u200B-\u200D\uFEFF]/gu, "")
      .replace(/\s+/gu, " ")
      .trim()
  );
}

/** No quantity takes more letters than this; the rest of a longer text is cut before it is looked at. */
const LONGEST_QUANTITY = 500;

/** The cell as text, for messages and for readers that only know text. */
export function cellText(cell: CellTyped): string {
  if (cell === null || cell === undefined) return "";
  return plainText((typeof cell === "object" ? cell.isoDate : String(cell)).slice(0, LONGEST_QUANTITY));
}

/** Empty, a dash, a question mark, "n/a" and the like: nothing was measured or nothing is known. */
export function isNothing(text: string): boolean {
  return /^(-+|\?+|n\/?a|n\/?m|n\.?a\.?|none taken|not (measured|metered|taken|known)|unknown|tbd|\.+)?$/i.test(text);
}

/** A date where no date belongs: a spreadsheet has turned something like 22/4 into one. */
export function isDateCell(cell: CellTyped): cell is { readonly isoDate: string } {
  return typeof cell === "object" && cell !== null;
}
