/** A rectangle of cells; rows and columns count from 1 and both ends belong to it. */
export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** Letters of a column number: 1 is A, 27 is AA. */
export function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return letters;
}

/** Address of one cell, for example B7. */
export const cellAddress = (row: number, column: number): string => `${columnLetters(column)}${row}`;

/** Address with both parts fixed, for example $B$7. */
export const fixedAddress = (row: number, column: number): string => `$${columnLetters(column)}$${row}`;

/** Address of an area, for example A1:C9; one cell gives its own address. */
export function areaAddress(area: Area): string {
  const first = cellAddress(area.top, area.left);
  return area.top === area.bottom && area.left === area.right
    ? first
    : `${first}:${cellAddress(area.bottom, area.right)}`;
}

/** Area with fixed ends, for example $A$1:$C$9. */
export const fixedArea = (area: Area): string =>
  area.top === area.bottom && area.left === area.right
    ? fixedAddress(area.top, area.left)
    : `${fixedAddress(area.top, area.left)}:${fixedAddress(area.bottom, area.right)}`;

/** Sheet name as formulas write it: in quotes, quotes doubled. */
export const quotedSheet = (name: string): string => `'${name.replaceAll("'", "''")}'`;

/** Whether two areas share a cell. */
export const overlaps = (one: Area, other: Area): boolean =>
  one.top <= other.bottom && other.top <= one.bottom && one.left <= other.right && other.left <= one.right;
