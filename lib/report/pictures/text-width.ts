/** Advance widths of DejaVu Sans from space to tilde, in thousandths of the font size. */
const WIDTHS = [
  318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636, 636, 636,
  636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863,
  748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635,
  615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636,
  337, 636, 838,
];
const OTHERS: Readonly<Record<string, number>> = {
  Ω: 764,
  µ: 636,
  "·": 318,
  "°": 500,
  "–": 500,
  "²": 401,
  "\u00a0": 318,
};
/** No bold letter is wider than this times the normal one. */
const BOLD = 1.27;

/**
 * Width of a line of DejaVu Sans; characters outside the table count a full em, bold counts as wide as its widest
 * letters, so that the true line is never wider. [px]
 * @example textWidth("Ω", 10); // 7.64
 */
export function textWidth(text: string, sizePx: number, bold = false): number {
  let thousandths = 0;
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    thousandths += (code >= 32 && code < 127 ? WIDTHS[code - 32] : OTHERS[character]) ?? 1000;
  }
  return (thousandths / 1000) * sizePx * (bold ? BOLD : 1);
}

/**
 * Breaks a text into lines no wider than asked: at spaces, and inside a word that is too long by itself. Nothing is
 * left out.
 * @example wrapText({ text: "kitchen window", sizePx: 10, widthPx: 60 }); // ["kitchen", "window"]
 */
export function wrapText(asked: {
  readonly text: string;
  readonly sizePx: number;
  readonly widthPx: number;
  readonly bold?: boolean;
}): string[] {
  const { sizePx, widthPx, bold = false } = asked;
  const fits = (line: string): boolean => textWidth(line, sizePx, bold) <= widthPx;
  const lines: string[] = [];
  for (const paragraph of asked.text.split("\n")) {
    let line = "";
    for (const word of paragraph.split(/[ \t]+/)) {
      const longer = line === "" ? word : `${line} ${word}`;
      if (fits(longer)) {
        line = longer;
        continue;
      }
      if (line !== "") lines.push(line);
      line = "";
      for (const character of word) {
        if (line !== "" && !fits(line + character)) {
          lines.push(line);
          line = "";
        }
        line += character;
      }
    }
    lines.push(line);
  }
  return lines;
}
