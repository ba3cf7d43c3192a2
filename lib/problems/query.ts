/** Where something stands in what the surveyor handed in. */
export interface Place {
  /** Sheet or file name as the user knows it. */
  readonly sheet: string;
  /** Row number as the user sees it (1 = first row of the sheet), or null when it is about the whole sheet. */
  readonly row: number | null;
  /** Column heading as typed, or our column name, or null when it is about the whole row. */
  readonly column: string | null;
}

/** A question to the surveyor: something the data does not settle. Nothing is silently corrected. */
export interface Query extends Place {
  /** What was typed there, verbatim; "" when the cell is empty. */
  readonly typed: string;
  /** What is wrong or open, and what to write or do instead. */
  readonly message: string;
  /** Stable key of the loop row it concerns (R001 …), where there is one. */
  readonly key?: string;
  /** It asks for a reading or a look at the device; dropped for a loop that turns out to be life safety. */
  readonly asksOnSite?: true;
}
