import type { Query } from "../problems/query.js";
import type { Block, Sheet } from "../report/model.js";
import { column, paragraph, text, title, wrapped } from "./cells.js";
import type { SheetInput } from "./sheet-input.js";

/** Questions that the survey leaves open, those for somebody on site first; how loose headings were understood. */
export function queriesSheet(input: SheetInput): Sheet | undefined {
  const { queries } = input.estimate;
  const onSite = queries.filter(({ asksOnSite }) => asksOnSite === true);
  const atDesk = queries.filter(({ asksOnSite }) => asksOnSite !== true);
  const unsure = input.headings.filter(({ how }) => how === "words inside" || how === "not understood");
  if (queries.length === 0 && unsure.length === 0) return undefined;
  return {
    name: "Queries",
    orientation: "landscape",
    columnWidths: [18, 7, 20, 26, 78],
    blocks: [
      title("Queries"),
      paragraph("Nothing was corrected in silence: this is what the survey does not settle.", "note"),
      ...queryBlocks(onSite, "To ask or read before leaving the site", "queries_on_site"),
      ...queryBlocks(atDesk, "To settle at the desk", "queries_at_desk"),
      ...headingBlocks(unsure),
    ],
  };
}

function queryBlocks(queries: readonly Query[], words: string, name: string): readonly Block[] {
  if (queries.length === 0) return [];
  return [
    title(`${words} (${queries.length})`, 2),
    {
      kind: "table",
      name,
      whenEmpty: "",
      columns: [
        column("sheet", "Sheet", "text", 18),
        column("row", "Row", "text", 7),
        column("column", "Column", "wrapped", 20),
        column("typed", "Typed", "wrapped", 26),
        column("message", "What is open, and what to write", "wrapped", 78),
      ],
      rows: queries.map((query) => [
        text(query.sheet),
        text(query.row === null ? "" : String(query.row)),
        wrapped(query.column),
        wrapped(query.typed),
        wrapped(query.message),
      ]),
    },
  ];
}

function headingBlocks(headings: SheetInput["headings"]): readonly Block[] {
  if (headings.length === 0) return [];
  return [
    title("Headings understood by some of their words, or not at all", 2),
    {
      kind: "table",
      name: "heading_matches",
      whenEmpty: "",
      columns: [
        column("sheet", "Sheet", "text", 18),
        column("at", "At", "text", 7),
        column("heading", "Heading", "wrapped", 20),
        column("column", "Taken as", "wrapped", 26),
        column("how", "How", "wrapped", 78),
      ],
      rows: headings.map(({ sheet, position, heading, column: ours, how }) => [
        text(sheet),
        text(String(position + 1)),
        wrapped(heading),
        wrapped(ours ?? "notes"),
        wrapped(how),
      ]),
    },
  ];
}
