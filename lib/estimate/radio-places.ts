import type { RadioTest, Survey, SurveyLoop } from "../survey/survey.js";
import { wordsOf } from "../survey/words.js";

/** What a radio test's place stands for. */
export interface TestedPlace {
  /** Panels whose modules would stand there. */
  readonly panels: readonly string[];
  /** Loops (keys) whose wireless devices would stand there. */
  readonly loops: readonly string[];
}

const passing = new Set(["closed", "shut", "open", "the", "at", "of", "to", "by"]);

/**
 * Panels or loops that the location of a radio test means. For a module: the panel named in it, or the only panel. For
 * a device: every loop whose label, words or place hold each word of the location, as written, begun or abbreviated;
 * a number has to be among the loop's numbers ("rm 7" lies in "rm 5-8").
 */
export function testedPlace({ test, survey }: { readonly test: RadioTest; readonly survey: Survey }): TestedPlace {
  const words = wordsOf(test.location).filter((word) => !passing.has(word));
  if (wordsOf(test.kind ?? "").some((word) => word.startsWith("module"))) {
    const named = survey.panels.filter(({ panel, place }) => {
      const own = wordsOf(place ?? "");
      return words.includes(wordsOf(panel).join("")) || (own.length > 0 && own.every((word) => words.includes(word)));
    });
    const panels = named.length > 0 || survey.panels.length > 1 ? named : survey.panels;
    return { panels: panels.map(({ panel }) => panel), loops: [] };
  }
  if (!words.some((word) => !isNumber(word))) return { panels: [], loops: [] };
  return { panels: [], loops: survey.loops.filter((loop) => standsAt(words, loop)).map(({ key }) => key) };
}

function standsAt(words: readonly string[], { label, protects, place }: SurveyLoop): boolean {
  const text = [label, protects, place].filter((part) => part !== undefined).join(" ");
  const own = wordsOf(text);
  const numbers = numbersIn(text);
  return words.every((word) =>
    isNumber(word)
      ? numbers.length === 0 || numbers.some(({ from, to }) => Number(word) >= from && Number(word) <= to)
      : own.some((other) => sameWord(word, other)),
  );
}

const isNumber = (word: string) => /^\d+$/.test(word);

function numbersIn(text: string): readonly { readonly from: number; readonly to: number }[] {
  return [...text.matchAll(/(\d+)(?:\s*[-–]\s*(\d+))?/g)].map(([, from, to]) => ({
    from: Number(from),
    to: Number(to ?? from),
  }));
}

/** Equal, begun ("corr", "corridor"), or written with letters left out ("bdrm", "bedroom"). */
function sameWord(one: string, other: string): boolean {
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  if (short === long || (short.length >= 3 && long.startsWith(short))) return true;
  const bare = long.replace(/s$/, "");
  if (short.length < 2 || short[0] !== bare[0] || short.at(-1) !== bare.at(-1)) return false;
  let at = 0;
  for (const letter of bare) if (letter === short[at]) at += 1;
  return at === short.length;
}
