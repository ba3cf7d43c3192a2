import { plainText } from "../quantities/typed-cell.js";

/** Words of a text in small letters; punctuation separates, "#" means "no". */
export function wordsOf(text: string): readonly string[] {
  return plainText(text)
    .toLowerCase()
    .replaceAll("#", " no ")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim()
    .split(" ")
    .filter((word) => word !== "");
}

/** Where `phrase` stands in `words` as whole consecutive words, or −1. */
export function phraseAt(words: readonly string[], phrase: readonly string[]): number {
  if (phrase.length === 0) return -1;
  for (let at = 0; at + phrase.length <= words.length; at++) {
    if (phrase.every((word, offset) => words[at + offset] === word)) return at;
  }
  return -1;
}

/** Whether the text holds the phrase as whole words. */
export const hasPhrase = (text: string, phrase: string): boolean => phraseAt(wordsOf(text), wordsOf(phrase)) >= 0;
