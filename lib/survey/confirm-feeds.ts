import { loopsNamed, meansPanel } from "./loops-named.js";
import type { Survey, SurveyLoop } from "./survey.js";
import { SurveyRefused } from "./survey-refused.js";

/** {loop: the loop or panel whose supply reaches it}; names as in {@link loopsNamed}. */
export type ConfirmedFeeds = Readonly<Record<string, string>>;

/**
 * The survey with feeds that a person confirmed, and without the questions that are answered by it. What the column
 * Fed from says already is replaced: the confirmation came later.
 * @throws {@link SurveyRefused} when a name means no loop, or several.
 */
export function confirmFeeds({ survey, fedFrom }: { readonly survey: Survey; readonly fedFrom: unknown }): Survey {
  const feeds = new Map<string, string>();
  const settled = new Set<string>();
  for (const [name, feeder] of entriesOf(fedFrom)) {
    const loop = theLoop(survey.loops, name, `fedFrom, "${name}"`);
    if (meansPanel(feeder, loop.panel)) feeds.set(loop.key, "panel");
    else {
      const from = theLoop(survey.loops, feeder, `fedFrom, "${name}": "${feeder}"`, loop.panel);
      feeds.set(loop.key, shortestName(survey.loops, from));
      settled.add(from.key);
    }
    settled.add(loop.key);
  }
  const loops = survey.loops.map((loop): SurveyLoop => {
    const feeder = feeds.get(loop.key);
    if (feeder === undefined) return loop;
    const { fedFromProposed: _answered, ...rest } = loop;
    return { ...rest, fedFrom: feeder, typed: { ...loop.typed, fedFrom: feeder } };
  });
  const queries = survey.queries.filter(
    ({ key, message }) => !(key !== undefined && settled.has(key) && asksForFeed(message)),
  );
  return { ...survey, loops, queries };
}

/** The loop's own name where it is the only one of its panel, else its key. */
function shortestName(loops: readonly SurveyLoop[], { key, loop, panel }: SurveyLoop): string {
  return loopsNamed({ loops: loops.filter((one) => one.panel === panel), name: loop, panel }).length === 1 ? loop : key;
}

const asksForFeed = (message: string) => message.includes("column Fed from") || message.includes("under Fed from");

function entriesOf(fedFrom: unknown): readonly (readonly [string, string])[] {
  const expected = 'expected {"loop": "loop or panel that feeds it"}, all text';
  if (typeof fedFrom !== "object" || fedFrom === null || Array.isArray(fedFrom)) {
    throw new SurveyRefused("badMapping", `Mapping file, fedFrom: ${expected}.`);
  }
  return Object.entries(fedFrom).map(([name, feeder]: [string, unknown]) => {
    if (typeof feeder === "string") return [name, feeder] as const;
    throw new SurveyRefused(
      "badMapping",
      `Mapping file, fedFrom, "${name}": got ${JSON.stringify(feeder)}, ${expected}.`,
    );
  });
}

function theLoop(loops: readonly SurveyLoop[], name: string, where: string, panel?: string): SurveyLoop {
  const found = loopsNamed({ loops, name, ...(panel === undefined ? {} : { panel }) });
  const [only] = found;
  if (only !== undefined && found.length === 1) return only;
  const which = found.map((loop) => `${loop.panel} ${loop.loop} (${loop.key})`).join(", ");
  const wrong = only === undefined ? `no loop goes by "${name}"` : `"${name}" may be ${which}`;
  throw new SurveyRefused("badMapping", `Mapping file, ${where}: ${wrong}. Write its key, or panel and loop.`);
}
