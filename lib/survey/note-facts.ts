import { noteWords } from "../reference/generated/note-words.js";
import type { NoteFact } from "./survey.js";
import { phraseAt, wordsOf } from "./words.js";

/** Facts that a text states, one per fact, by the whole-word phrases of reference-data/note-words. */
export function noteFactsIn(text: string): readonly NoteFact[] {
  const words = wordsOf(text);
  const facts: NoteFact[] = [];
  for (const row of noteWords) {
    const found = row.words.find((phrase) => phraseAt(words, wordsOf(phrase)) >= 0);
    if (found !== undefined) facts.push({ fact: row.fact, value: row.value, words: found });
  }
  return facts;
}

/** What a phrase such as "fed from corr A" names after its "from", up to the next comma. */
export function fedFromIn(text: string): string | undefined {
  return /\b(?:fed|powered|supply)\s+from\s+([^,;.]+)/i.exec(text)?.[1]?.trim();
}

/** What a phrase such as "power daisy chained to 6 and 7" names after its "to". */
export function feedsIn(text: string): string | undefined {
  return /\bdaisy\s?-?chain(?:ed)?\s+to\s+([^,;.]+)/i.exec(text)?.[1]?.trim();
}
