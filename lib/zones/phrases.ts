import { entryDoorWords } from "../reference/generated/entry-door-words.js";
import { zoneWords } from "../reference/generated/zone-words.js";
import { phraseAt, wordsOf } from "../survey/words.js";

type Means = "entryDoor" | "dailyUse" | "oneDoor" | "window" | "unused" | "entryPath" | "generic" | "ownArea" | "door";

/** Phrases of the zone tables that mean this, longest first, as words. */
export function phrasesFor(means: Means): readonly (readonly string[])[] {
  return [...entryDoorWords, ...zoneWords]
    .filter((row) => row.means === means)
    .flatMap((row) => row.words.map(wordsOf))
    .sort((a, b) => b.length - a.length);
}

/** The first phrase of this meaning that stands in the text as whole words, or undefined. */
export function phraseIn(text: string | undefined, means: Means): string | undefined {
  const words = wordsOf(text ?? "");
  return phrasesFor(means)
    .find((phrase) => phraseAt(words, phrase) >= 0)
    ?.join(" ");
}

/**
 * Whether a printed zone name says that nothing is connected: an "unused" phrase and beside it at most numbers and the
 * word zone. "Spare 2" does, "Spare bedroom" does not.
 */
export function saysUnused(name: string | undefined): boolean {
  const words = wordsOf(name ?? "").filter((word) => word !== "zone" && !/^\d+$/.test(word));
  return words.length > 0 && phrasesFor("unused").some((phrase) => phrase.join(" ") === words.join(" "));
}
