import { type LifeSafetyWordsRow, lifeSafetyWords } from "../reference/generated/life-safety-words.js";

/** Texts of one loop as they were typed. */
export interface LoopTexts {
  readonly label?: string | undefined;
  readonly protects?: string | undefined;
  readonly device?: string | undefined;
  readonly cable?: string | undefined;
  readonly notes?: string | undefined;
  /** Use of the zone as written. */
  readonly use?: string | undefined;
  /** Name and type on the old zone list. */
  readonly oldList?: string | undefined;
}

/** The word that names a life-safety or egress function, and the text in which it stands. */
export interface LifeSafetyMatch {
  readonly word: string;
  readonly field: keyof LoopTexts;
}

const fields = ["label", "protects", "device", "cable", "notes", "use", "oldList"] as const;

/** Texts that read like a label are searched by the label's words. */
const wordsFor = (field: keyof LoopTexts) => (field === "use" || field === "oldList" ? "label" : field);

/** Rows by their first word, longest first, so that "lift phone" is found before "lift". */
const byFirstWord: ReadonlyMap<string, readonly LifeSafetyWordsRow[]> = indexRows();

function indexRows(): Map<string, LifeSafetyWordsRow[]> {
  const index = new Map<string, LifeSafetyWordsRow[]>();
  for (const row of [...lifeSafetyWords].sort((a, b) => b.words.length - a.words.length)) {
    const first = row.words.split(" ")[0] ?? row.words;
    index.set(first, [...(index.get(first) ?? []), row]);
  }
  return index;
}

/**
 * Whether the texts of a loop name a life-safety or egress function, by whole words of
 * reference-data/life-safety-words.json. Hyphens, slashes and dots count as spaces; case does not matter.
 * A match means: excluded, and a question for a named person who sees the device.
 * @example lifeSafetyMatch({ label: "FIRE EXIT", device: "door contact" }); // { word: "fire", field: "label" }
 * @example lifeSafetyMatch({ label: "Hart & Co office", notes: "red red red at door" }); // null
 */
export function lifeSafetyMatch(texts: LoopTexts): LifeSafetyMatch | null {
  for (const field of fields) {
    const text = texts[field];
    if (text === undefined || text === "") continue;
    const match = matchIn(text, field);
    if (match !== null) return { word: match, field };
  }
  return null;
}

function matchIn(text: string, field: keyof LoopTexts): string | null {
  const spelled = wordsOf(text);
  const words = spelled.map((word) => word.toLowerCase());
  for (let i = 0; i < words.length; i += 1) {
    for (const row of byFirstWord.get(words[i] ?? "") ?? []) {
      if (row.fields.includes(wordsFor(field)) && rowMatches(row, words, spelled, i)) return row.words;
    }
  }
  return null;
}

function rowMatches(
  row: LifeSafetyWordsRow,
  words: readonly string[],
  spelled: readonly string[],
  start: number,
): boolean {
  const parts = row.words.split(" ");
  for (const [k, part] of parts.entries()) if (words[start + k] !== part) return false;
  const before = words[start - 1];
  const after = words[start + parts.length];
  if (before !== undefined && row.unlessPrecededBy?.includes(before) === true) return false;
  if (after !== undefined && row.unlessFollowedBy?.includes(after) === true) return false;
  return row.notSpelled?.includes(spelled.slice(start, start + parts.length).join(" ")) !== true;
}

/** Words of a text; an ampersand is a word, an apostrophe belongs to its word. */
function wordsOf(text: string): string[] {
  return text.normalize("NFKC").match(/[\p{L}\p{N}']+|&/gu) ?? [];
}

const colours = new Set([
  "black",
  "brown",
  "red",
  "orange",
  "yellow",
  "green",
  "blue",
  "violet",
  "purple",
  "grey",
  "gray",
  "white",
  "gold",
  "silver",
  "pink",
]);

/**
 * Whether the texts speak of a red cable or jacket: a caution, not a verdict. Red beside another colour word, or
 * repeated, is a colour code or a pair of conductors and says nothing. That no jacket is red proves nothing.
 * @example redCable({ cable: "18/2 red" }); // true
 * @example redCable({ cable: "22/4 red/black", notes: "red red red" }); // false
 */
export function redCable(texts: LoopTexts): boolean {
  return redAlone(texts.cable, false) || redAlone(texts.notes, true);
}

function redAlone(text: string | undefined, needsJacket: boolean): boolean {
  if (text === undefined || text === "") return false;
  const words = wordsOf(text.toLowerCase());
  return words.some((word, i) => {
    if (word !== "red") return false;
    const after = words[i + 1] ?? "";
    if (colours.has(after) || colours.has(words[i - 1] ?? "")) return false;
    return !needsJacket || ["jacket", "cable", "sheath", "sheathed", "jacketed"].includes(after);
  });
}
