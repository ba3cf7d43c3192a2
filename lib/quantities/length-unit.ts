import { lengthUnits } from "../reference/generated/length-units.js";

/** Metres of one unit, by the way people write it; undefined for a unit that the table does not know. [m] */
export function metersPerUnit(spelling: string): number | undefined {
  const wanted = spelling.trim().toLowerCase().replace(/\.$/, "");
  return lengthUnits.find((row) => row.spellings.includes(wanted))?.meters;
}

/** Every spelling as a pattern, longest first; for building larger patterns. */
export const LENGTH_UNIT = lengthUnits
  .flatMap((row) => row.spellings)
  .sort((a, b) => b.length - a.length)
  .join("|");
