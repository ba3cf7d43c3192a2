/** Height of one line of the normal font. [points] */
export const linePoints = 12.75;
/** Height of a row that nothing stretches. [points] */
export const rowPoints = 15;

/** Advance widths of Helvetica from space to tilde, which Arial and its twins share, in thousandths of the font size. */
const normal = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
  556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833,
  722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556,
  556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334,
  260, 334, 584,
];
/** The same for its bold. */
const bold = [
  278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
  556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833,
  722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611,
  556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389,
  280, 389, 584,
];
/** Widths of signs that our sheets use beside letters and figures. */
const others: Readonly<Record<string, number>> = {
  "\u00a0": 278,
  Ω: 768,
  "×": 584,
  "±": 584,
  "–": 556,
  "·": 278,
  "°": 400,
  "−": 584,
};
/** Room for a character nothing is known of: the widest that letters take. */
const unknown = 1000;

/**
 * What one character of column width holds, in thousandths of the size of the text: columns count digits of 7 pixels,
 * the text is 10 points, 13⅓ pixels.
 */
const perCharacter = 525;

function widthOf(text: string, widths: readonly number[]): number {
  let sum = 0;
  // An accent stands on its letter and takes no room of its own.
  for (const character of text.normalize("NFD").replace(/[\u0300-\u036f]/g, "")) {
    const code = character.codePointAt(0) ?? 0;
    sum += (code >= 32 && code < 127 ? widths[code - 32] : others[character]) ?? unknown;
  }
  return sum;
}

/**
 * How many lines a text takes in a cell that wraps, broken at spaces; a spreadsheet does not stretch merged rows itself.
 * @example linesOfText({ text: "one two", widthCharacters: 4 }); // 2
 */
export function linesOfText(options: {
  readonly text: string;
  /** Width of the cell, in characters as columns count them. */
  readonly widthCharacters: number;
  readonly bold?: boolean;
}): number {
  const widths = options.bold === true ? bold : normal;
  const room = Math.max(1, options.widthCharacters) * perCharacter;
  const space = widths[0] ?? 0;
  let lines = 0;
  for (const paragraph of options.text.split("\n")) {
    let used = 0;
    lines += 1;
    for (const word of paragraph.split(" ")) {
      const wide = widthOf(word, widths);
      const joined = used === 0 ? wide : used + space + wide;
      if (joined <= room) {
        used = joined;
        continue;
      }
      if (used > 0) lines += 1;
      // A word wider than the cell is cut.
      const cuts = Math.max(0, Math.ceil(wide / room) - 1);
      lines += cuts;
      used = wide - cuts * room;
    }
  }
  return lines;
}
