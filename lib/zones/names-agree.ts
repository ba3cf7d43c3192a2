import { deviceWords } from "../reference/generated/device-words.js";
import { phraseAt, wordsOf } from "../survey/words.js";
import { phrasesFor } from "./phrases.js";

const generic = new Set(phrasesFor("generic").flat());

/**
 * Whether a printed zone name can mean the thing that tag and place describe. A word counts as the same when one begins
 * the other or is its abbreviation ("bsmt", "basement"); kinds of device and words such as door say nothing about which
 * one it is; numbers and letters that stand on both must share one. What cannot be compared agrees.
 */
export function namesAgree(printed: string, tag: string, place: string): boolean {
  const onList = split(printed);
  const onTag = split(`${tag} ${place}`);
  const marksOnTag = split(tag).marks;
  if (onList.marks.length > 0 && marksOnTag.length > 0 && !onList.marks.some((mark) => marksOnTag.includes(mark))) {
    const compass = onList.names.length > 0 && onList.marks.every((mark) => /^[nsew]$/.test(mark));
    if (!compass) return false;
  }
  if (onList.names.length === 0 || onTag.names.length === 0) return sameKind(printed, `${tag} ${place}`);
  // The tag keeps its kinds of device here: "Glass" on the list does name "glass breaks".
  const words = wordsOf(`${tag} ${place}`);
  return onList.names.some((name) => words.some((other) => sameWord(name, other)));
}

function split(text: string): { readonly names: readonly string[]; readonly marks: readonly string[] } {
  const words = withoutKinds(wordsOf(text)).filter((word) => !generic.has(word));
  return {
    names: words.filter((word) => !isMark(word)),
    marks: words.filter(isMark),
  };
}

const isMark = (word: string): boolean => /^\d+$|^\p{L}$/u.test(word);

function withoutKinds(words: readonly string[]): readonly string[] {
  const kinds = deviceWords.flatMap(({ words: phrases }) => phrases.map(wordsOf)).sort((a, b) => b.length - a.length);
  let rest = [...words];
  for (const phrase of kinds) {
    const at = phraseAt(rest, phrase);
    if (at >= 0) rest = [...rest.slice(0, at), ...rest.slice(at + phrase.length)];
  }
  return rest;
}

/** Neither names a place: then they must at least not name two different kinds of device. */
function sameKind(a: string, b: string): boolean {
  const kinds = (text: string) => {
    const words = wordsOf(text);
    return deviceWords
      .filter((row) => row.words.some((phrase) => phraseAt(words, wordsOf(phrase)) >= 0))
      .map(({ kind }) => kind);
  };
  const [ofA, ofB] = [kinds(a), kinds(b)];
  return ofA.length === 0 || ofB.length === 0 || ofA.some((kind) => ofB.includes(kind));
}

function sameWord(a: string, b: string): boolean {
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  if (short.length >= 2 && long.startsWith(short)) return true;
  if (short.length < 3 || short[0] !== long[0]) return false;
  let at = 0;
  for (const letter of long) if (letter === short[at]) at += 1;
  return at === short.length;
}
