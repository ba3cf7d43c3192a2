/** A name on a keypad, and whether words were lost for it. */
export interface ZoneName {
  readonly name: string;
  readonly shortened: boolean;
}

const tidy = (text: string): string =>
  text
    .replace(/\s+/g, " ")
    .replace(/[\s?!.,;:/-]+$/, "")
    .trim();
const length = (text: string): number => [...text].length;
const cut = (text: string, characters: number): string => tidy([...text].slice(0, Math.max(0, characters)).join(""));

/**
 * A name no longer than the display that no other zone has (capitals do not tell names apart): the first of
 * `candidates` that fits and is free, otherwise the first of them cut back with a number behind it.
 * @example zoneName({ candidates: ["Exam corridor, east"], taken: new Set(), characters: 16 }).name; // "Exam corridor"
 */
export function zoneName({
  candidates,
  taken,
  characters,
}: {
  readonly candidates: readonly string[];
  /** Names in use, small letters. */
  readonly taken: ReadonlySet<string>;
  readonly characters: number;
}): ZoneName {
  const texts = candidates.map(tidy).filter((text) => text !== "");
  const free = (name: string) => name !== "" && !taken.has(name.toLowerCase());
  const whole = texts.find((text) => length(text) <= characters && free(text));
  if (whole !== undefined) return { name: whole, shortened: false };
  const [first = "Zone"] = texts;
  if (length(first) > characters) {
    const shorter = atWord(first, characters);
    if (free(shorter)) return { name: shorter, shortened: true };
  }
  for (let n = 2; ; n += 1) {
    const ending = ` ${n}`;
    const name = `${cut(first, characters - ending.length)}${ending}`.trim();
    if (free(name)) return { name, shortened: length(first) + ending.length > characters };
  }
}

function atWord(text: string, characters: number): string {
  const room = cut(text, characters);
  if ([...text][characters] === " ") return room;
  const space = room.lastIndexOf(" ");
  return space >= characters / 2 ? tidy(room.slice(0, space)) : room;
}
