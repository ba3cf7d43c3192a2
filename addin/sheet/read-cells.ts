/// <reference types="office-js" />
import { type Area, areaAddress } from "../loopwright.js";

/**
 * So many cells are asked for in one answer: Excel on the web hands out 5 MB, and a cell of long text takes some 60
 * bytes as value and as much again as formula.
 */
const cellsPerAnswer = 25_000;

/** What is read of each cell. */
export type CellFact = "values" | "formulas" | "numberFormat";

/** A rectangle to be read. */
export interface CellsToRead<F extends CellFact> {
  readonly sheet: string;
  readonly area: Area;
  readonly facts: readonly F[];
}

/** The facts of a rectangle, as rows of cells. */
export type CellsRead<F extends CellFact> = { readonly [K in F]: readonly (readonly unknown[])[] };

/** Reads rectangles in bands of rows, as many in one answer as Excel hands out. */
export async function readCells<F extends CellFact>(
  context: Excel.RequestContext,
  wanted: readonly CellsToRead<F>[],
): Promise<readonly CellsRead<F>[]> {
  const bands: { readonly of: number; readonly range: Excel.Range }[] = [];
  let cells = 0;
  for (const [of, { sheet, area, facts }] of wanted.entries()) {
    const perRow = (area.right - area.left + 1) * facts.length;
    const rowsPerBand = Math.max(1, Math.floor(cellsPerAnswer / perRow));
    for (let top = area.top; top <= area.bottom; top += rowsPerBand) {
      const bottom = Math.min(area.bottom, top + rowsPerBand - 1);
      const size = (bottom - top + 1) * perRow;
      if (cells > 0 && cells + size > cellsPerAnswer) {
        await context.sync();
        cells = 0;
      }
      cells += size;
      const range = context.workbook.worksheets.getItem(sheet).getRange(areaAddress({ ...area, top, bottom }));
      bands.push({ of, range: range.load(facts.join(",")) });
    }
  }
  if (cells > 0) await context.sync();
  return wanted.map(({ facts }, index) => {
    const own = bands.filter(({ of }) => of === index).map(({ range }) => range);
    const of = (fact: F): readonly (readonly unknown[])[] => own.flatMap((range) => range[fact] as unknown[][]);
    return Object.fromEntries(facts.map((fact) => [fact, of(fact)])) as unknown as CellsRead<F>;
  });
}

/** The rectangle of a range whose place was loaded. */
export const areaOf = ({ rowIndex, columnIndex, rowCount, columnCount }: Excel.Range): Area => ({
  top: rowIndex + 1,
  left: columnIndex + 1,
  bottom: rowIndex + rowCount,
  right: columnIndex + columnCount,
});

/** What is loaded for {@link areaOf}. */
export const placeOfRange = "rowIndex,columnIndex,rowCount,columnCount";
