import type { Query } from "../problems/query.js";
import { cautions } from "../reference/generated/cautions.js";
import { type HazardWordsRow, hazardWords } from "../reference/generated/hazard-words.js";
import { hazardYears } from "../reference/generated/hazard-years.js";
import type { SurveyLoop, SurveyPanel, SurveySite } from "../survey/survey.js";
import { wordsOf } from "../survey/words.js";

/** A hazard that the survey names or does not rule out. */
export interface HazardFlag {
  readonly hazard: string;
  readonly words: string;
  /** What the survey says, as typed. */
  readonly typed: string;
  /** Where it stands: Site item, panel or loop. */
  readonly where: string;
  readonly key?: string;
  readonly caution: string;
}

interface Text {
  readonly kind: string;
  readonly where: string;
  readonly text: string;
  readonly key?: string;
}

/**
 * Hazards by whole words of reference-data/hazard-words and by the year of building, with the caution each calls for;
 * questions where year or register are not written. A word that is denied ("no asbestos") raises nothing.
 */
export function hazardFlags({
  site,
  panels = [],
  loops,
}: {
  readonly site: SurveySite;
  readonly panels?: readonly SurveyPanel[];
  readonly loops: readonly SurveyLoop[];
}): { readonly flags: readonly HazardFlag[]; readonly queries: readonly Query[] } {
  const texts = textsOf(site, panels, loops);
  const worded = hazardWords.flatMap((row) =>
    distinct(texts.filter(({ kind, text }) => row.looksIn.some((place) => place === kind) && names(row, text))).map(
      ({ text, where, key }) => flag(row.hazard, row.flag, text, where, row.caution, key),
    ),
  );
  const aged = hazardYears
    .filter(({ builtBefore }) => site.yearBuilt !== undefined && site.yearBuilt < builtBefore)
    .map((row) => flag(row.hazard, row.flag, `${site.yearBuilt}`, "Site", row.caution));
  return { flags: [...aged, ...worded], queries: openQueries(site) };
}

function flag(hazard: string, words: string, typed: string, where: string, caution: string, key?: string): HazardFlag {
  const printed = cautions.find((row) => row.caution === caution)?.words ?? caution;
  return { hazard, words, typed, where, caution: printed, ...(key === undefined ? {} : { key }) };
}

function textsOf(site: SurveySite, panels: readonly SurveyPanel[], loops: readonly SurveyLoop[]): readonly Text[] {
  const given = (kind: string, where: string, text: string | undefined, key?: string): readonly Text[] =>
    text === undefined || text === "" ? [] : [{ kind, where, text, ...(key === undefined ? {} : { key }) }];
  return [
    ...given("register", "Hazard register", site.hazardRegister),
    ...Object.entries(site.typed).flatMap(([item, text]) => given("siteItem", item, `${item}: ${text}`)),
    ...panels.flatMap(({ panel, mains, battery, place }) =>
      [mains, battery, place].flatMap((text) => given("panel", panel, text)),
    ),
    ...loops.flatMap((loop) =>
      (["access", "finish", "notes", "place", "device", "protects"] as const).flatMap((field) =>
        given(field, `${loop.panel} ${loop.loop}`.trim(), loop[field], loop.key),
      ),
    ),
  ];
}

/** One text per place: a register that also stands among the site's items counts once. */
function distinct(texts: readonly Text[]): readonly Text[] {
  const seen = new Set<string>();
  return texts.filter(({ kind, where, text }) => {
    const bare = kind === "siteItem" ? text.slice(text.indexOf(": ") + 2) : text;
    const name = kind === "siteItem" || kind === "register" || kind === "panel" ? bare : where;
    if (seen.has(name)) return false;
    seen.add(name);
    return true;
  });
}

function names(row: HazardWordsRow, text: string): boolean {
  const words = wordsOf(text);
  return row.words.some((phrase) => {
    const parts = wordsOf(phrase);
    return words.some((_, at) => {
      if (!parts.every((part, offset) => words[at + offset] === part)) return false;
      const denied = row.unlessAfter.some((word) => word === words[at - 1]);
      const other = row.unlessBefore.some((word) => word === words[at + parts.length]);
      return !denied && !other;
    });
  });
}

function openQueries({ yearBuilt, hazardRegister }: SurveySite): readonly Query[] {
  const ask = (column: string, message: string): Query => ({ sheet: "Site", row: null, column, typed: "", message });
  return [
    ...(yearBuilt === undefined
      ? [
          ask(
            "yearBuilt",
            "Year of building not written: lead paint and asbestos cannot be ruled out. Ask before drilling.",
          ),
        ]
      : []),
    ...(hazardRegister === undefined
      ? [
          ask(
            "hazardRegister",
            "No hazard register written. Ask the owner for it before drilling, or write that there is none.",
          ),
        ]
      : []),
  ];
}
