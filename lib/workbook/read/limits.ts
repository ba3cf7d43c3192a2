/** What a file may ask of us. A survey of 2,000 loops stays under a tenth of each. */
export interface ReadLimits {
  /** The file as it lies on disk. [bytes] */
  readonly fileBytes: number;
  /** One part of the package, unpacked. [bytes] */
  readonly partBytes: number;
  /** All parts that are read, unpacked. [bytes] */
  readonly totalBytes: number;
  readonly entries: number;
  readonly sheets: number;
  /** Rows with something in them, per sheet. */
  readonly rows: number;
  readonly columns: number;
  /** Cells with something in them, over all sheets. */
  readonly cells: number;
  /** Characters of one cell: what spreadsheets themselves allow. */
  readonly characters: number;
}

export const readLimits: ReadLimits = {
  fileBytes: 32 * 1024 * 1024,
  partBytes: 96 * 1024 * 1024,
  totalBytes: 160 * 1024 * 1024,
  entries: 5000,
  sheets: 200,
  rows: 50_000,
  columns: 256,
  cells: 1_000_000,
  characters: 32_767,
};
