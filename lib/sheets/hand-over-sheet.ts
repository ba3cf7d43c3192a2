import type { HandoverSection } from "../cut-over/handover-sheet.js";
import { formatOhms } from "../quantities/format-ohms.js";
import type { Block, Sheet } from "../report/model.js";
import { column, handwriting, line, number, paragraph, text, title, wrapped } from "./cells.js";
import { bandOf } from "./loop-words.js";
import type { SheetInput } from "./sheet-input.js";

/** What the owner signs, the readings of commissioning, and the zones as built. */
export function handOverSheet({ estimate }: SheetInput): Sheet | undefined {
  const { handover, commissioning, asBuilt } = estimate.cutOver;
  if (asBuilt.length === 0) return undefined;
  return {
    name: "Hand-over",
    orientation: "landscape",
    blocks: [
      title("Hand-over"),
      paragraph("Sensitive: keep locked away and share as such. No code stands on it.", "note"),
      ...handover.flatMap(sectionBlocks),
      ...commissioningBlocks(commissioning),
      title("Zones as built", 2),
      {
        kind: "table",
        name: "as_built",
        whenEmpty: "",
        columns: [
          column("number", "Zone", "count", 8),
          column("name", "Zone name", "wrapped", 26),
          column("from", "Loop", "wrapped", 22),
          column("use", "Behaviour", "wrapped", 24),
          column("input", "Input", "wrapped", 16),
          column("eol", "EOL", "wrapped", 18),
          column("area", "Area", "wrapped", 22),
          column("proved", "Openings proved", "text", 16, { role: "handwriting" }),
        ],
        rows: asBuilt.map(({ number: zone, name, from, behaviour, medium, input, eol, area, proved }) => [
          number(zone),
          wrapped(name),
          wrapped(from),
          wrapped(behaviour),
          wrapped(input ?? medium),
          wrapped(eol === null ? "" : eolWords(eol.ohms, eol.at)),
          wrapped(area),
          proved === "not proved yet" ? handwriting : text(proved),
        ]),
      },
    ],
  };
}

const eolWords = (ohms: number, at: "device" | "panel" | null): string =>
  `${formatOhms(ohms)}${at === null ? "" : at === "panel" ? " at the panel" : " at the device"}`;

function sectionBlocks({ heading, lines, blanks }: HandoverSection): readonly Block[] {
  return [
    title(heading, 2),
    ...lines.map((words): Block => ({ kind: "paragraph", cell: wrapped(words), tight: true })),
    ...(blanks.length === 0
      ? []
      : [
          {
            kind: "keyValue" as const,
            labelColumns: 2,
            valueColumns: 2,
            rows: blanks.map((words) => line(words, handwriting)),
          },
        ]),
  ];
}

function commissioningBlocks({ rows, lastLine }: SheetInput["estimate"]["cutOver"]["commissioning"]): readonly Block[] {
  if (rows.length === 0) return [];
  return [
    title("Commissioning: as found, as left", 2),
    {
      kind: "table",
      name: "commissioning",
      whenEmpty: "",
      rowHeight: 24,
      columns: [
        column("input", "Input", "text", 8),
        column("zone", "Zone", "wrapped", 26),
        column("loops", "Loops on it", "wrapped", 22),
        column("use", "Behaviour", "wrapped", 24),
        column("found", "As found, shut; opened", "wrapped", 16),
        column("eol", "EOL", "wrapped", 18),
        column("expect", "Expect shut", "wrapped", 22),
        column("shut", "Left shut", "text", 16, { role: "handwriting" }),
        column("opened", "Left opened", "text", 12, { role: "handwriting" }),
        column("initials", "Time, initials", "text", 14, { role: "handwriting" }),
      ],
      rows: rows.map((row) => [
        text(`${row.module}.${row.input}`),
        wrapped(row.zones.join(", ")),
        wrapped(row.onInput.join(", ")),
        wrapped(row.behaviour ?? "not known: ask"),
        wrapped(`${row.asFoundShut ?? "not measured"}; ${row.asFoundOpened ?? "not measured"}`),
        wrapped(row.eolOhms === null ? "" : eolWords(row.eolOhms, row.eolAt)),
        wrapped(row.expectedShut === null ? "" : bandOf(row.expectedShut)),
        handwriting,
        handwriting,
        handwriting,
      ]),
    },
    paragraph(lastLine, "warning"),
  ];
}
