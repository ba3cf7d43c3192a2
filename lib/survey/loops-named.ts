import type { SurveyLoop } from "./survey.js";
import { wordsOf } from "./words.js";

/**
 * Loops that a written name means: by key, else by panel and loop ("P1 6"), else by loop or label within `panel` (all
 * panels when absent). Letter case, punctuation and leading zeros do not count; several = the name does not settle it.
 */
export function loopsNamed({
  loops,
  name,
  panel,
}: {
  readonly loops: readonly SurveyLoop[];
  readonly name: string;
  readonly panel?: string;
}): readonly SurveyLoop[] {
  const wanted = plain(name);
  if (wanted === "") return [];
  const byKey = loops.filter(({ key }) => plain(key) === wanted);
  if (byKey.length > 0) return byKey;
  const byBoth = loops.filter((loop) => names(loop).some((own) => plain(`${loop.panel} ${own}`) === wanted));
  if (byBoth.length > 0) return byBoth;
  const near = panel === undefined ? loops : loops.filter((loop) => loop.panel === panel);
  const byLoop = near.filter(({ loop }) => plain(loop) === wanted);
  return byLoop.length > 0 ? byLoop : near.filter(({ label }) => label !== undefined && plain(label) === wanted);
}

/** Whether a written feeder means the panel itself, not another loop. */
export function meansPanel(name: string, panel: string): boolean {
  const wanted = plain(name);
  return ["panel", "control panel", "the panel", plain(panel)].includes(wanted);
}

const names = ({ loop, label }: SurveyLoop) => (label === undefined ? [loop] : [loop, label]);

const plain = (text: string) =>
  wordsOf(text)
    .map((word) => word.replace(/^0+(?=\d)/, ""))
    .join(" ");
