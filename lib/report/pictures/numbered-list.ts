import { lineHeight, textLines } from "./svg.js";
import { wrapText } from "./text-width.js";

/** One entry below a picture: the sign used in the drawing and what it stands for. */
export interface ListEntry {
  readonly sign: string;
  readonly text: string;
  readonly bold?: boolean;
}

/**
 * Entries in columns below a drawing, wrapped, never cut.
 * @returns The drawn text and the height it takes. [px]
 */
export function numberedList(asked: {
  readonly entries: readonly ListEntry[];
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly columns: number;
}): { readonly svg: string; readonly height: number } {
  const { entries, x, y, columns } = asked;
  const sizePx = 12;
  const signWidth = 46;
  const columnWidth = asked.width / columns;
  const perColumn = Math.ceil(entries.length / columns);
  const parts: string[] = [];
  let height = 0;
  for (let column = 0; column < columns; column++) {
    let down = 0;
    for (const entry of entries.slice(column * perColumn, (column + 1) * perColumn)) {
      const bold = entry.bold === true;
      const lines = wrapText({ text: entry.text, sizePx, widthPx: columnWidth - signWidth - 14, bold });
      const left = x + column * columnWidth;
      const base = y + down + sizePx;
      parts.push(textLines([entry.sign], { x: left, y: base }, { sizePx, bold: true }));
      parts.push(textLines(lines, { x: left + signWidth, y: base }, { sizePx, bold }));
      down += lines.length * lineHeight(sizePx) + 4;
    }
    height = Math.max(height, down);
  }
  return { svg: parts.join(""), height };
}
