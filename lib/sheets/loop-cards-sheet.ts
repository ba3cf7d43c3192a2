import type { BillLine, EstimatedLoop } from "../estimate/estimate.js";
import { formatOhms } from "../quantities/format-ohms.js";
import { heightOf } from "../report/layout.js";
import type { Block, Cell, PictureBlock, Sheet } from "../report/model.js";
import type { SurveyLoop } from "../survey/survey.js";
import { blank, column, handwriting, line, paragraph, text, title, wrapped } from "./cells.js";
import {
  bandOf,
  bandWords,
  cardName,
  fitsNewEol,
  meterRange,
  openedRange,
  openedWords,
  treatmentOf,
  useWords,
  zoneName,
} from "./loop-words.js";
import { cardPicture } from "./pictures.js";
import { isExcluded, isHandsOff, isWired, type SheetInput, surveyLoopOf } from "./sheet-input.js";

const lastLine = "Not in the band? Write it down and stop. Do not change a resistor to make it fit.";

/** Six equal columns. [characters] */
const widths = [17, 17, 17, 17, 17, 17] as const;
/** Height of a page at the scale at which these columns fill its width, less a little for rounding. [points] */
const pagePoints: Readonly<Record<"A4" | "Letter", number>> = { A4: 780, Letter: 690 };

/** Front page, then one card for each loop in walking order; nothing is asked of a loop that is left alone. */
export function loopCardsSheet(input: SheetInput, paper: "A4" | "Letter"): Sheet | undefined {
  const { loops } = input.estimate;
  const wired = loops.filter((loop) => isWired(loop) && !isExcluded(loop));
  const others = loops.filter((loop) => !isWired(loop) && !isExcluded(loop) && !isHandsOff(loop));
  if (loops.length === 0) return undefined;
  const order = input.estimate.site.panels;
  const walking = [...wired].sort((a, b) => order.indexOf(a.panel) - order.indexOf(b.panel));
  return {
    name: "Loop cards",
    columnWidths: widths,
    blocks: [...frontPage(input, others), { kind: "pageBreak" }, ...paged(input, walking, pagePoints[paper])],
  };
}

function paged(input: SheetInput, loops: readonly EstimatedLoop[], points: number): readonly Block[] {
  const blocks: Block[] = [];
  let used = 0;
  for (const loop of loops) {
    const own = card(input, loop, cardPicture(input, loop));
    const height = heightOf(own, widths);
    if (used > 0 && used + height > points) {
      blocks.push({ kind: "pageBreak" });
      used = 0;
    }
    blocks.push(...own);
    used += height;
  }
  return blocks;
}

function frontPage(input: SheetInput, others: readonly EstimatedLoop[]): readonly Block[] {
  const { estimate, survey } = input;
  const left = estimate.loops.filter(isExcluded);
  const live = estimate.loops.filter((loop) => loop.condition === "foreignVoltage" && !isExcluded(loop));
  const unread = estimate.loops.filter((loop) => isHandsOff(loop) && !live.includes(loop));
  const place = (loop: EstimatedLoop): string => {
    const row = surveyLoopOf(input, loop);
    return [cardName(loop), row?.protects, row?.place, row?.cable?.words]
      .filter((part) => part !== undefined)
      .join(", ");
  };
  const access = estimate.loops.flatMap((loop) => {
    const row = surveyLoopOf(input, loop);
    return row?.access === undefined || isExcluded(loop) ? [] : [`${loop.panel} ${loop.loop}: ${row.access}`];
  });
  return [
    title("Before anything is touched"),
    title("DO NOT TOUCH", 2),
    ...left.map((loop) => paragraph(`${place(loop)}: life safety. Left as it is.`, "stop")),
    ...live.map((loop) =>
      paragraph(`${place(loop)}: volts from elsewhere. Hands off until the source is known.`, "stop"),
    ),
    ...unread.map((loop) => paragraph(`${place(loop)}: not worked on before it has been read again.`, "warning")),
    ...(left.length + live.length === 0
      ? [paragraph("None is marked. An unmarked one cannot be told from readings.", "note")]
      : []),
    ...estimate.holds.map(({ words }) => paragraph(words, "stop")),
    title("Stop and ask at", 2),
    paragraph(
      "volts on a pair · red cable or the word fire · sparks or heat · a swollen or leaking battery · a lock or door release nobody can name",
      "warning",
    ),
    {
      kind: "keyValue",
      labelColumns: 2,
      valueColumns: 4,
      rows: [
        line("Account on test until", handwriting),
        line("Monitoring centre, phone", handwriting),
        line("Who to ring first", handwriting),
        line("Responsible for life safety, phone", handwriting),
        line("Owner on site, phone", handwriting),
        line("Access", wrapped(access.length === 0 ? "nothing written" : access.join("; "))),
        line("Hazard register", wrapped(survey.site.hazardRegister ?? "not seen; ask before drilling")),
        line("Pets", wrapped(siteItem(survey.site.typed, "pets") ?? "not written")),
      ],
    },
    ...otherLoops(input, others),
  ];
}

function siteItem(typed: Readonly<Record<string, string>>, word: string): string | undefined {
  return Object.entries(typed).find(([item]) => item.toLowerCase().includes(word))?.[1];
}

/** Loops that get no wired input: wireless ones with their devices, retired ones. */
function otherLoops(input: SheetInput, loops: readonly EstimatedLoop[]): readonly Block[] {
  if (loops.length === 0) return [];
  return [
    title("Loops without a wired input", 2),
    {
      kind: "table",
      name: "other_loops",
      plain: true,
      whenEmpty: "",
      rowHeight: 24,
      columns: [
        column("loop", "Loop", "wrapped", 17),
        column("what", "What it protects", "wrapped", 17),
        column("treatment", "Treatment", "wrapped", 17),
        column("devices", "Devices", "wrapped", 17),
        column("bridge", "Bridge first", "wrapped", 17),
        column("done", "Done, initials", "text", 17, { role: "handwriting" }),
      ],
      rows: loops.map((loop) => [
        wrapped(cardName(loop)),
        wrapped(loop.protects),
        wrapped(treatmentOf(loop)),
        wrapped(loop.wireless.map(({ code, count }) => `${count} × ${code}`).join(", ")),
        wrapped(bridgeWords(input, loop)),
        blank,
      ]),
    },
  ];
}

/** Which supply goes on through this loop's devices. */
function bridgeWords(input: SheetInput, loop: EstimatedLoop): string {
  const fed = input.survey.loops.filter(
    ({ fedFrom, key }) => key !== loop.key && fedFrom !== undefined && (fedFrom === loop.loop || fedFrom === loop.tag),
  );
  return fed.length === 0 ? "" : `supply of ${fed.map(({ panel, loop: name }) => `${panel} ${name}`).join(", ")}`;
}

function card(input: SheetInput, loop: EstimatedLoop, picture: PictureBlock | undefined): readonly Block[] {
  const survey = surveyLoopOf(input, loop);
  const rows = input.estimate.terminals.filter(({ loop: key }) => key === loop.key);
  const expected = loop.expectedAsLeft;
  const eol = rows.find(({ eolOhms }) => eolOhms !== null);
  return [
    title(`${cardName(loop)}${loop.protects === null ? "" : `: ${loop.protects}`}`, 2),
    {
      kind: "beside",
      parts: [
        {
          column: 1,
          blocks: [
            {
              kind: "keyValue",
              valueColumns: 2,
              rows: [
                line("Treatment", wrapped(treatmentOf(loop))),
                line("Place", wrapped(survey?.place ?? "not written")),
                line("Sheath", wrapped(sheathWords(survey))),
                line("Conductors A / B", text("______ / ______")),
                line(
                  "Meter on",
                  text(expected === null ? "" : `${meterRange(expected.shut.highOhms)}; ${openedRange(loop)}`),
                ),
              ],
            },
          ],
        },
        {
          column: 4,
          blocks: [
            {
              kind: "keyValue",
              valueColumns: 2,
              rows: [
                line("Terminals", wrapped(terminalWords(rows))),
                line(
                  "Resistor",
                  wrapped(resistorWords(loop, input.estimate.bill, eol?.eolOhms ?? null, eol?.eolAt ?? null)),
                ),
                line("Splice", wrapped(spliceWords(survey))),
                line("Bridge first", wrapped(bridgeWords(input, loop) || "nothing known")),
                line("Zone", wrapped(`${zoneName(loop)}; ${useWords(survey)}`)),
              ],
            },
          ],
        },
      ],
    },
    ...(picture === undefined ? [] : [picture]),
    openingsTable(loop),
    {
      kind: "paragraph",
      cell: text(lastLine, "warning", "text"),
    },
  ];
}

function sheathWords(survey: SurveyLoop | undefined): string {
  const cable = survey?.cable?.words ?? "size not written";
  const others = (survey?.cable?.conductors ?? 2) > 2 ? "; other conductors: ________" : "";
  return `${cable}, colour ________${others}`;
}

function terminalWords(rows: SheetInput["estimate"]["terminals"]): string {
  const first = rows[0];
  if (first === undefined) return "not landed";
  return `${first.module}: ${rows.map(({ conductor, terminal }) => `${conductor} to ${terminal}`).join(", ")}`;
}

function resistorWords(
  loop: EstimatedLoop,
  bill: readonly BillLine[],
  ohms: number | null,
  at: "device" | "panel" | null,
): string {
  if (ohms === null) {
    return loop.input !== null && loop.input.sharedWith.length > 0
      ? "none on this loop: the joined loop carries it"
      : "none";
  }
  const where = at === "panel" ? "at the panel" : "past the last opening";
  return fitsNewEol(loop, bill)
    ? `fit ${formatOhms(ohms)}, ${bandWords(ohms)}, ${where}`
    : `${formatOhms(ohms)} stays, ${where}`;
}

function spliceWords(survey: SurveyLoop | undefined): string {
  const where = `${survey?.place ?? ""} ${survey?.protects ?? ""} ${survey?.notes ?? ""}`.toLowerCase();
  return /\b(garage|attic|loft|outside|outdoor|damp|wet|crawl|basement|bay|porch|slip\w*)\b/.test(where)
    ? "gel-filled"
    : "dry, indoors; gel-filled where damp";
}

function openingsTable(loop: EstimatedLoop): Block {
  const expected = loop.expectedAsLeft;
  const openings = Math.max(1, loop.openingsProved.total);
  const pressed = expected !== null && expected.opened !== "OL";
  const row = (name: string, expect: string): readonly Cell[] => [text(name), text(expect), blank, blank, blank, blank];
  return {
    kind: "table",
    name: `card_${loop.key.replace(/[^A-Za-z0-9]/g, "_")}`,
    plain: true,
    whenEmpty: "",
    rowHeight: 22,
    columns: [
      column("opening", "State", "text", 17),
      column("expect", "Expect", "text", 17),
      column("found", "Found", "text", 17, { role: "handwriting" }),
      column("left", "Left", "text", 17, { role: "handwriting" }),
      column("when", "Time, weather", "text", 17, { role: "handwriting" }),
      column("initials", "Initials", "text", 17, { role: "handwriting" }),
    ],
    rows: [
      row(pressed ? "at rest" : "all shut", expected === null ? "not known" : bandOf(expected.shut)),
      ...Array.from({ length: openings }, (_, index) =>
        row(pressed ? `device ${index + 1} pressed` : `opening ${index + 1} open`, openedWords(loop) || "not known"),
      ),
    ],
  };
}
