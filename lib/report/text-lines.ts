/** Height of one line of the normal font. [points] */
export const linePoints = 13.5;
/** Height of a row that nothing stretches. [points] */
export const rowPoints = 15;

/**
 * How many lines a text takes in a cell that wraps, broken at spaces; a spreadsheet does not stretch merged rows itself.
 * @example linesOfText({ text: "one two", widthCharacters: 4 }); // 2
 */
export function linesOfText(options: { readonly text: string; readonly widthCharacters: number }): number {
  const width = Math.max(1, Math.floor(options.widthCharacters));
  let lines = 0;
  for (const paragraph of options.text.split("\n")) {
    let used = 0;
    lines += 1;
    for (const word of paragraph.split(" ")) {
      if (used > 0 && used + 1 + word.length > width) {
        lines += 1;
        used = 0;
      }
      const alone = used === 0 ? word.length : used + 1 + word.length;
      lines += Math.max(0, Math.ceil(alone / width) - 1);
      used = alone % width === 0 && alone > 0 ? width : alone % width;
    }
  }
  return lines;
}
