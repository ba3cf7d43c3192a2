import type { EstimatedLoop, Query, SurveyLoop } from "../../loopwright-pane.js";
import { type Treatment, treatmentWords } from "../../loopwright-screen.js";
import type { LoopWish } from "../engine/engine-state.js";
import { isLeftAlone, type Look, nameOfLoop } from "./shown.js";

export interface SieveInput {
  readonly loops: readonly EstimatedLoop[];
  readonly survey: readonly SurveyLoop[];
  readonly queries: readonly Query[];
  readonly wishes: Readonly<Record<string, LoopWish>>;
  /** Standard deviation that a loop brings to the price, by key. [cents] */
  readonly spreads: ReadonlyMap<string, number>;
}

/** Below this a verdict leaves room for a second thought. */
const unsureBelow = 0.8;

/** What the list can be narrowed to, each with the number of loops it leaves. */
export function sievesFor(input: SieveInput): readonly (readonly [sieve: string, words: string, count: number])[] {
  const treatments = [...new Set(input.loops.map(({ treatment }) => treatment))];
  const offered: readonly (readonly [string, string])[] = [
    ["all", "all loops"],
    ...treatments.map((treatment) => [`treatment ${treatment}`, treatmentWords[treatment]] as const),
    ["queries", "with open queries"],
    ["unsure", "verdict less sure than 80 %"],
    ["departs", "plan departs from what the loop deserves by itself"],
    ["wishes", "with a wish of yours"],
  ];
  return offered
    .map(([sieve, words]) => [sieve, words, input.loops.filter((loop) => passes(input, loop, sieve)).length] as const)
    .filter(([sieve, , count]) => sieve === "all" || count > 0);
}

/** The name of the sieve that leaves the loops of one treatment. */
export const treatmentSieve = (treatment: Treatment): string => `treatment ${treatment}`;

/** Loops that hold every word looked for and pass the sieve, in the order asked for. */
export function sieved(input: SieveInput, look: Pick<Look, "find" | "sieve" | "order">): readonly EstimatedLoop[] {
  const words = look.find.toLowerCase().split(/\s+/).filter(Boolean);
  const rows = new Map(input.survey.map((row) => [row.key, row]));
  const left = input.loops.filter((loop) => {
    if (!passes(input, loop, look.sieve)) return false;
    if (words.length === 0) return true;
    const text = textOf(loop, rows.get(loop.key));
    return words.every((word) => text.includes(word));
  });
  if (look.order === "unsure") return [...left].sort((a, b) => sureness(a) - sureness(b));
  if (look.order === "dear") return [...left].sort((a, b) => b.cost.costCents - a.cost.costCents);
  if (look.order === "wide") {
    return [...left].sort((a, b) => (input.spreads.get(b.key) ?? 0) - (input.spreads.get(a.key) ?? 0));
  }
  return left;
}

/** A loop that is left alone has no verdict: it stands last. */
const sureness = (loop: EstimatedLoop): number => (isLeftAlone(loop) ? 2 : loop.probability);

function passes({ queries, wishes }: SieveInput, loop: EstimatedLoop, sieve: string): boolean {
  if (sieve === "queries") return queries.some(({ key }) => key === loop.key);
  if (sieve === "unsure") return !isLeftAlone(loop) && loop.probability < unsureBelow;
  if (sieve === "departs") return loop.treatment !== loop.recommended;
  if (sieve === "wishes") return wishes[loop.key] !== undefined;
  return sieve === "all" || sieve === treatmentSieve(loop.treatment);
}

/** Everything of the loop that was typed or said, in lower case. */
function textOf(loop: EstimatedLoop, row: SurveyLoop | undefined): string {
  const said = isLeftAlone(loop) ? [] : loop.findings.slice(0, 1).map(({ words }) => words);
  return [loop.key, nameOfLoop(loop), loop.protects, treatmentWords[loop.treatment], ...said]
    .concat(row === undefined ? [] : Object.values(row.typed))
    .join("\n")
    .toLowerCase();
}
