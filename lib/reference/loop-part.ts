import { contactAndSpliceResistance } from "./generated/contact-and-splice-resistance.js";
import { onlyRow } from "./rows.js";

/** Parts of a loop that are neither cable nor end-of-line resistor; the keys of contact-and-splice-resistance. */
export type LoopPart = "contact" | "agedContact" | "newReed" | "splice" | "leads" | "leadsZeroed" | "detectorOutput";

/** What one such part adds to a reading. [Ω] */
export interface PartOhms {
  readonly words: string;
  readonly lowOhms: number;
  readonly likelyOhms: number;
  readonly highOhms: number;
  readonly standardDeviationOhms?: number;
}

/**
 * What one contact, joint or pair of test leads adds. [Ω]
 * @example partOhms("splice").likelyOhms; // 0.035
 * @see reference-data/contact-and-splice-resistance.json (common practice, no source)
 */
export function partOhms(part: LoopPart): PartOhms {
  return onlyRow("contact-and-splice-resistance", contactAndSpliceResistance, (row) => row.part === part);
}
