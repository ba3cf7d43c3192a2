/**
 * One resistance reading. Three different things are kept apart: a reading that was not taken is `undefined`
 * at the place where it would stand, over-range is `"OL"`, and zero ohms is the number 0.
 * [Ω]
 */
export type Ohms = number | "OL";

/** A reading as typed, with the spread that the typing itself shows. */
export interface OhmsReading {
  /** The value to reckon with. [Ω] */
  readonly ohms: Ohms;
  /** Lowest and highest value seen while reading; equal to `ohms` for a steady reading. [Ω] */
  readonly lowOhms: Ohms;
  readonly highOhms: Ohms;
  /** What the reading did, when the surveyor wrote it down. */
  readonly behaviour?: "steady" | "climbing" | "falling" | "jumping";
}
