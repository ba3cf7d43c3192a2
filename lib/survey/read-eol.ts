import { parseOhms } from "../quantities/parse-ohms.js";
import { ohmsFromBands } from "../quantities/resistor-code.js";
import { cellText, isNothing } from "../quantities/typed-cell.js";
import { colourCode } from "../reference/generated/colour-code.js";
import { eolPlaceWords } from "../reference/generated/eol-place-words.js";
import { field } from "./read-tables.js";
import type { RowReader } from "./row-reader.js";
import type { NoteFact, SurveyLoop } from "./survey.js";
import { phraseAt, wordsOf } from "./words.js";

export type EolPlace = "device" | "panel" | "none" | "unknown";

const phrases = eolPlaceWords
  .flatMap(({ place, words }) => words.map((text) => ({ place: place as EolPlace, phrase: wordsOf(text) })))
  .sort((a, b) => b.phrase.length - a.phrase.length);

/** Where the resistor is by the words typed; undefined when none of them is known. */
export function eolPlaceOf(text: string): EolPlace | undefined {
  if (isNothing(text)) return "unknown";
  const words = wordsOf(text);
  return phrases.find(({ phrase }) => phraseAt(words, phrase) >= 0)?.place;
}

const colours = new Set(colourCode.map(({ colour }) => colour).filter((colour) => colour !== "none"));
const spelling: Readonly<Record<string, string>> = { gray: "grey", purple: "violet" };

/** Value of the resistor when three to five colours of bands stand in a row ("red red red"). [Ω] */
export function ohmsFromColourWords(text: string): number | undefined {
  if (!/[a-z]{3}/i.test(text)) return undefined;
  const words = wordsOf(text).map((word) => spelling[word] ?? word);
  for (let from = 0; from < words.length; from++) {
    const bands: string[] = [];
    while (bands.length < 5 && colours.has(words[from + bands.length] ?? ""))
      bands.push(words[from + bands.length] ?? "");
    if (bands.length < 3) continue;
    try {
      return ohmsFromBands(bands).ohms;
    } catch {
      return undefined;
    }
  }
  return undefined;
}

/** The cell without question marks, and whether it had one. */
export function doubted(cell: Parameters<typeof cellText>[0]): { readonly text: string; readonly doubt: boolean } {
  const text = cellText(cell);
  return { text: text.replaceAll("?", " ").trim(), doubt: text.includes("?") && !isNothing(text) };
}

/** What a row says of its end-of-line resistor. */
export interface Eol {
  readonly place?: NonNullable<SurveyLoop["eolPlace"]>;
  readonly ohms?: number;
  readonly resistorAtPanel?: NonNullable<SurveyLoop["resistorAtPanel"]>;
}

/** Place, value and way of the resistor, from its two cells and the notes. */
export function readEol(row: RowReader, facts: readonly NoteFact[], notes: string): Eol {
  const placeCell = doubted(row.cell("eolPlace"));
  const valueCell = doubted(row.cell("eolValue"));
  const typedPlace =
    placeCell.text === "" ? (row.text("eolPlace") === undefined ? undefined : "unknown") : eolPlaceOf(placeCell.text);
  if (placeCell.text !== "" && typedPlace === undefined)
    row.ask("eolPlace", "Expected device, panel, none or unknown, or words such as at door, in can, no.");
  if (placeCell.doubt)
    row.ask(
      "eolPlace",
      `The place of the end-of-line resistor carries a question mark; it was read as ${typedPlace ?? "unknown"}. Open the ${typedPlace === "panel" ? "panel" : "far device"} and look.`,
    );
  if (typedPlace === "unknown" && /\bfound\b/i.test(placeCell.text))
    row.ask(
      "eolPlace",
      "More than one resistor was found. Say where each is and whether they are in series or one on each leg.",
    );
  const has = (fact: string) => facts.some((one) => one.fact === fact);
  const valueSaysPanel = /\bon terminals?\b|\bin can\b|\bat panel\b/i.test(valueCell.text);
  const ohms =
    eolOhms(row, valueCell.text, placeCell.text) ??
    (has("resistorInCan") || has("resistorInSeries") ? ohmsInNotes(row, notes) : undefined);
  const seen = typedPlace === "panel" || has("resistorInCan") || valueSaysPanel;
  const way = row.choice("resistorAtPanel", ["inSeries", "acrossTerminals", "seenNotTraced", "none", "notLooked"], {
    series: "inSeries",
    across: "acrossTerminals",
    parallel: "acrossTerminals",
    seen: "seenNotTraced",
    yes: "seenNotTraced",
    no: "none",
    inoneleg: "inSeries",
  });
  const fromNotes = has("resistorInSeries")
    ? "inSeries"
    : has("resistorAcross")
      ? "acrossTerminals"
      : seen
        ? "seenNotTraced"
        : undefined;
  const resistorAtPanel = way ?? fromNotes;
  if (resistorAtPanel === "seenNotTraced")
    row.ask(
      "eolPlace",
      "A resistor was seen at the panel. Is it in one leg of the pair (series) or across the two terminals? That decides what the reading means.",
    );
  const place = typedPlace ?? (seen ? "panel" : undefined);
  if (typedPlace === "device" && seen)
    row.ask("eolPlace", "The resistor is said to be at the device and at the panel. Look again at both.");
  return { ...field("place", place), ...field("ohms", ohms), ...field("resistorAtPanel", resistorAtPanel) };
}

/** The value cell; else colours of bands in either cell. */
function eolOhms(row: RowReader, valueText: string, placeText: string): number | undefined {
  const bands = ohmsFromColourWords(valueText) ?? ohmsFromColourWords(placeText);
  if (bands !== undefined) {
    row.ask(
      ohmsFromColourWords(valueText) === undefined ? "eolPlace" : "eolValue",
      `The colours of the bands were read as ${bands} Ω. Write the value in ohms.`,
    );
    return bands;
  }
  if (valueText === "") return undefined;
  // Words of place beside the value ("5.6k on terminal") are read with the place.
  const value = row.parsed("eolValue", (_, mark) =>
    row.readers.ohms(
      valueText.replace(/\b(on|at|in)\s+(the\s+)?(terminals?|can|panel|device|door)\b/gi, "").trim(),
      mark,
    ),
  );
  const ohms = value?.reading?.ohms;
  if (ohms === "OL")
    row.ask("eolValue", "A resistor that reads over-range is no end-of-line resistor. Write its value.");
  return ohms === "OL" ? undefined : ohms;
}

/** "2.2k in one leg": the value that the notes give the resistor at the panel. */
function ohmsInNotes(row: RowReader, notes: string): number | undefined {
  const typed = /(?<![\d.,])(\d+(?:\.\d+)?\s?k\d?)(?![\w.])/i.exec(notes)?.[1];
  const answer = typed === undefined ? undefined : parseOhms(typed);
  const ohms = answer?.ok === true ? answer.value?.reading?.ohms : undefined;
  if (typeof ohms !== "number") return undefined;
  row.ask(
    "notes",
    `"${typed}" in the notes was taken as the value of the resistor at the panel. Write it in the column EOL value.`,
  );
  return ohms;
}
