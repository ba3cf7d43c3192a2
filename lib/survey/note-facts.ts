import { noteWords } from "../reference/generated/note-words.js";
import type { NoteFact } from "./survey.js";
import { phraseAt, wordsOf } from "./words.js";

/** The phrases of every fact, split once. */
const rows = noteWords.map(({ fact, value, words }) => ({
  fact,
  value,
  phrases: words.map((typed) => ({ typed, split: wordsOf(typed) })),
}));

/** Facts that a text states, one per fact, by the whole-word phrases of reference-data/note-words. */
export function noteFactsIn(text: string): readonly NoteFact[] {
  const words = wordsOf(text);
  if (words.length === 0) return [];
  return rows.flatMap(({ fact, value, phrases }): readonly NoteFact[] => {
    const found = phrases.find(({ split }) => phraseAt(words, split) >= 0);
    return found === undefined ? [] : [{ fact, value, words: found.typed }];
  });
}

/** What a phrase such as "fed from corr A" names after its "from", up to the next comma. */
export function fedFromIn(text: string): string | undefined {
  return /\b(?:fed|powered|supply)\s+from\s+([^,;.]+)/i.exec(text)?.[1]?.trim();
}

/** What a phrase such as "power daisy chained to 6 and 7" names after its "to". */
export function feedsIn(text: string): string | undefined {
  return /\bdaisy\s?-?chain(?:ed)?\s+to\s+([^,;.]+)/i.exec(text)?.[1]?.trim();
}
