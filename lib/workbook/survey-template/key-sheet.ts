import type { Block, Cell, Sheet } from "../../report/model.js";
import { columnsOf, shownUnit, surveySheets } from "../../survey/columns.js";

const text = (words: string): Cell => (words === "" ? { kind: "blank" } : { kind: "text", text: words });
const paragraph = (words: string): Block => ({
  kind: "paragraph",
  cell: { kind: "text", text: words, format: "wrapped" },
});

/** What can be typed where: the reader takes all of these, and asks about what it cannot settle. */
const spellings: readonly (readonly [string, string])[] = [
  [
    "Ohms",
    "2.2k · 2k2 · 5.57 K · 5,710 · <1 · 1.2M · 47 jumps to 80 · 5.9-6.4k drifting · OL, O.L, open (over-range) · same · OL (pwr off) / 12.2 with pwr",
  ],
  ["Cable", "22/4 · 22-2 · #22 2c · 24 AWG 4c · 7/0.2 · 4 x 0.22 mm²; a ? behind it says that it is a guess"],
  ["Run", "55' · 70 ft · 21 m · 35-55 ft · ~120 ft; a bare number is metres in this workbook"],
  ["Openings", "1 · 5+1 · 3 + gb; count moving leaves: double doors are 2"],
  ["Volts and current", "0 · 13.4 · 2.1 AC · AC volts! · 18 · 45 (3x15)"],
  ["Temperature", "21 · 17 °C · 63 F"],
  ["Not measured", "leave the cell empty, or write - or ?; 0 means that 0 was read"],
];

const rules: readonly string[] = [
  "Write one row per pair that comes back to an old panel. Columns marked ✎ are yours; the key is given when the sheet is first read and stays with the row, also when rows are sorted.",
  "Volts before ohms, both conductors lifted, leads held together and read first. Anything to do with fire, gas, medical help or escape: do not lift, meter or press; write yes under Life safety and leave the rest empty.",
  "Nothing is corrected in silence: whatever is not settled comes back as a list of questions with sheet, row and column.",
  "The last columns of Loops, from Pin treatment on, are the estimator's own; they are kept whenever the estimate is worked out again.",
  "The sheets are locked without a password, only so that keys and headings stay as they are. Remove the lock to add rows beyond those prepared.",
];

/** First sheet of the survey: what it is for, how to fill it in, and what every column means. */
export function keySheet(name: string): Sheet {
  const columns = surveySheets.flatMap((sheet) => columnsOf(sheet));
  const blocks: Block[] = [
    { kind: "title", text: "Survey of an old wired alarm: how to fill it in", level: 1 },
    ...rules.map(paragraph),
    { kind: "title", text: "What can be typed", level: 2 },
    {
      kind: "table",
      name: "survey_spellings",
      columns: [
        { key: "what", heading: "For", format: "text", width: 16 },
        { key: "typed", heading: "Write for instance", format: "wrapped", width: 30 },
      ],
      rows: spellings.map(([what, typed]) => [text(what), text(typed)]),
      whenEmpty: "",
      plain: true,
    },
    { kind: "title", text: "Every column", level: 2 },
    {
      kind: "table",
      name: "survey_key",
      columns: [
        { key: "sheet", heading: "Sheet", format: "text", width: 16 },
        { key: "heading", heading: "Heading", format: "text", width: 30 },
        { key: "unit", heading: "Unit", format: "text", width: 9 },
        { key: "meaning", heading: "What belongs there", format: "wrapped", width: 60 },
        { key: "example", heading: "Such as", format: "wrapped", width: 28 },
        { key: "allowed", heading: "Only these", format: "wrapped", width: 34 },
        { key: "needed", heading: "Needed", format: "text", width: 9 },
      ],
      rows: columns.map((column) => [
        text(column.sheet),
        text(column.heading),
        text(shownUnit(column) ?? ""),
        text(column.meaning),
        text(column.example),
        text((column.allowed ?? []).join(", ")),
        text(column.needed ? "yes" : ""),
      ]),
      whenEmpty: "",
      filter: true,
    },
  ];
  return { name, blocks, orientation: "landscape", protection: "locked", part: "working" };
}
