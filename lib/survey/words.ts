import { plainText } from "../quantities/typed-cell.js";

/** Words of a text in small letters; punctuation separates, "#" means "no". */
export function wordsOf(text: string): readonly string[] {
  if (text === "") return [];
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
  const [first] = phrase;
  if (first === undefined) return -1;
  for (let at = words.indexOf(first); at >= 0; at = words.indexOf(first, at + 1)) {
    let same = 1;
    while (same < phrase.length && words[at + same] === phrase[same]) same += 1;
    if (same === phrase.length) return at;
  }
  return -1;
}

/** Whether the text holds the phrase as whole words. */
export const hasPhrase = (text: string, phrase: string): boolean =>
  text !== "" && phraseAt(wordsOf(text), wordsOf(phrase)) >= 0;
