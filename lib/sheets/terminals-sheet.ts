import { formatOhms } from "../quantities/format-ohms.js";
import type { Sheet } from "../report/model.js";
import { column, paragraph, text, title, wrapped } from "./cells.js";
import { bandWords, fitsNewEol } from "./loop-words.js";
import { modulePicture } from "./pictures.js";
import type { SheetInput } from "./sheet-input.js";

/** Rows of the schedule that fit one page. */
const onePage = 36;

/** Every conductor in installation order: module, terminal, tag, and the resistor of its loop. */
export function terminalsSheet(input: SheetInput): Sheet | undefined {
  const { terminals, loops, modules } = input.estimate;
  if (terminals.length === 0) return undefined;
  const counted = modules.map(
    ({ panel, type, count, eolOhms }) => `${panel}: ${count} × ${type} set to ${formatOhms(eolOhms)}`,
  );
  const moduleNames = [...new Set(terminals.map(({ module }) => module))];
  return {
    name: "Terminals",
    orientation: "landscape",
    // Repeated on every page, it would stand above the pictures too.
    ...(terminals.length > onePage ? { headingOf: "terminals" } : {}),
    blocks: [
      title("Terminal schedule, in the order of installation"),
      paragraph(`Modules: ${counted.join("; ")}.`),
      {
        kind: "table",
        name: "terminals",
        filter: true,
        whenEmpty: "",
        columns: [
          column("panel", "Panel", "text", 8),
          column("module", "Module", "text", 9),
          column("terminal", "Terminal", "wrapped", 24),
          column("conductor", "Conductor", "text", 11),
          column("tag", "Tag", "wrapped", 18),
          column("loop", "Loop", "text", 8),
          column("eol", "EOL value", "text", 11),
          column("bands", "Bands of a new one", "wrapped", 36),
          column("where", "EOL sits", "text", 16),
          column("done", "Landed, initials", "text", 14, { role: "handwriting" }),
        ],
        rows: terminals.map((row) => {
          const loop = loops.find(({ key }) => key === row.loop);
          const isNew = loop !== undefined && fitsNewEol(loop, input.estimate.bill) && row.eolOhms !== null;
          return [
            text(row.panel),
            text(row.module),
            wrapped(row.terminal),
            text(row.conductor),
            wrapped(row.tag),
            text(loop?.loop ?? row.loop),
            text(row.eolOhms === null ? "none" : formatOhms(row.eolOhms)),
            wrapped(
              isNew && row.eolOhms !== null ? bandWords(row.eolOhms) : row.eolOhms === null ? "" : "stays as it is",
            ),
            text(row.eolAt === "device" ? "at the far end" : row.eolAt === "panel" ? "at the panel" : ""),
            { kind: "blank" },
          ];
        }),
      },
      ...moduleNames.flatMap((name) => modulePicture(input, name)),
    ],
  };
}
