import { zoneUses } from "../reference/generated/zone-uses.js";

/** How a zone is used: what its input does when it opens. */
export type ZoneUse =
  | "entryExit"
  | "perimeter"
  | "interior"
  | "interiorFollower"
  | "holdUp"
  | "tamper"
  | "environmental"
  | "audible24h"
  | "arming"
  | "lifeSafety";

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&");
const longestFirst = zoneUses
  .flatMap(({ use, spellings }) =>
    [use.toLowerCase(), ...spellings].map((spelling) => ({ use: use as ZoneUse, spelling })),
  )
  .sort((a, b) => b.spelling.length - a.spelling.length)
  .map(({ use, spelling }) => ({ use, pattern: new RegExp(`(^|[^a-z0-9])${escaped(spelling)}($|[^a-z0-9])`) }));

/**
 * The use a surveyor's words mean, or undefined when no whole word or phrase of the table occurs; our own keys, which
 * the survey workbook offers as choices, count too. The longest phrase decides: "24 hour silent" is a hold-up,
 * "24 hour" alone is audible.
 * @example zoneUse("24h silent"); // "holdUp"
 */
export function zoneUse(words: string | undefined): ZoneUse | undefined {
  const text = (words ?? "").toLowerCase().replace(/\s+/g, " ").trim();
  if (text === "") return undefined;
  return longestFirst.find(({ pattern }) => pattern.test(text))?.use;
}

/** The use for people. */
export function zoneUseWords(use: ZoneUse): string {
  return zoneUses.find((row) => row.use === use)?.words ?? use;
}

/** Whether loops of this use may share an input (with the owner's consent and within one area). */
export function mayJoin(use: ZoneUse): boolean {
  return zoneUses.some((row) => row.use === use && row.joins === "yes");
}
