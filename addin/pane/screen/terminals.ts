import { formatOhms } from "../../loopwright-screen.js";
import { dataTable } from "./data-table.js";
import { type Child, el } from "./elements.js";
import type { Estimated } from "./shown.js";

/** What lands where, module by module. */
export function terminals({ estimate }: Estimated): readonly Child[] {
  const rows = estimate.terminals;
  if (rows.length === 0) return [el("p", {}, "No loop stays on the wire: there is nothing to land.")];
  const modules = [...new Map(rows.map((row) => [`${row.panel}\n${row.module}`, row])).values()];
  const loopName = (key: string) => estimate.loops.find((loop) => loop.key === key)?.loop ?? key;
  return [
    el(
      "p",
      {},
      "In the order of installation. Photograph and tag before lifting; the workbook has the printed schedule with room to write.",
    ),
    ...modules.map(({ panel, module }) =>
      dataTable({
        caption: `${panel}, module ${module}`,
        columns: [
          { words: "Terminal" },
          { words: "Conductor" },
          { words: "Tag" },
          { words: "Loop" },
          { words: "End-of-line resistor" },
        ],
        rows: rows
          .filter((row) => row.panel === panel && row.module === module)
          .map((row) => ({
            cells: [
              row.terminal,
              row.conductor,
              row.tag,
              loopName(row.loop),
              row.eolOhms === null
                ? "none"
                : `${formatOhms(row.eolOhms)}${row.eolAt === "panel" ? ", at the panel" : row.eolAt === "device" ? ", at the far end" : ""}`,
            ],
          })),
      }),
    ),
  ];
}
