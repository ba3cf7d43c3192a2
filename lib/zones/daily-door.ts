import type { SurveyLoop } from "../survey/survey.js";
import { phraseIn } from "./phrases.js";

/** A door people come in by, on a loop. */
export interface DailyDoor {
  /** The words that say so, as the table has them. */
  readonly words: string;
  /** Other openings hang on the same pair and take its delay with it. */
  readonly sharesLoop: boolean;
}

/**
 * The daily entry door on a loop of contacts, by reference-data/entry-door-words, or null. Notes count only where they
 * speak of daily use; leaves of one double door share nothing.
 * @example dailyDoorOf({ protects: "5 windows + slider", openings: { count: 6, assumed: false } }); // shares its loop
 */
export function dailyDoorOf(
  loop: Pick<SurveyLoop, "label" | "protects" | "place" | "device" | "notes" | "openings">,
): DailyDoor | null {
  const named = [loop.protects, loop.label, loop.place, loop.device];
  const words =
    named.map((text) => phraseIn(text, "entryDoor")).find((phrase) => phrase !== undefined) ??
    [...named, loop.notes].map((text) => phraseIn(text, "dailyUse")).find((phrase) => phrase !== undefined);
  if (words === undefined) return null;
  const windows = [loop.protects, loop.label].some((text) => phraseIn(text, "window") !== undefined);
  const oneDoor = named.some((text) => phraseIn(text, "oneDoor") !== undefined);
  return { words, sharesLoop: windows || (loop.openings.count > 1 && !(oneDoor && loop.openings.count <= 2)) };
}
