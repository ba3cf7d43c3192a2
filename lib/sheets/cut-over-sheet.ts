import type { CutOverStep } from "../cut-over/cut-over-order.js";
import type { Block, Cell, Sheet } from "../report/model.js";
import { column, number, paragraph, text, title, wrapped } from "./cells.js";
import type { SheetInput } from "./sheet-input.js";

/** Order of work with what has to come before, what is left behind, what is taken away. Holds stand first. */
export function cutOverSheet({ estimate }: SheetInput): Sheet | undefined {
  const { holds, cutOver } = estimate;
  const { steps, doNotTouch, readAgainFirst } = cutOver;
  if (steps.length === 0) return undefined;
  const heldWords = holds.map(({ words }) => words);
  return {
    name: "Cut-over",
    orientation: "landscape",
    headingOf: "cut_over",
    blocks: [
      title("Order of work"),
      ...heldWords.map((words) => paragraph(words, "stop")),
      ...(heldWords.length > 0 || doNotTouch.length === 0
        ? []
        : [paragraph(`Do not touch ${doNotTouch.join(", ")}.`, "stop")]),
      ...(readAgainFirst.length === 0
        ? []
        : [paragraph(`Not part of any step before they were read again: ${readAgainFirst.join(", ")}.`, "warning")]),
      paragraph(
        "From top to bottom; a step waits for the steps named beside it. Licences, permits, local codes and the terms of a release come first.",
        "note",
      ),
      {
        kind: "table",
        name: "cut_over",
        whenEmpty: "",
        rowHeight: 30,
        columns: [
          column("number", "Step", "count", 6),
          column("words", "What is done", "wrapped", 66),
          column("who", "Who", "wrapped", 20),
          column("after", "After step", "text", 11),
          column("minutes", "Watches nothing for", "minutes", 12, { unit: "min" }),
          column("blanks", "To fill in", "wrapped", 44, { role: "handwriting" }),
        ],
        rows: steps.map(stepRow),
      },
      ...removedBlocks(estimate.cutOver.removed),
      ...disposalBlocks(estimate.cutOver.disposal),
    ],
  };
}

function stepRow({ number: step, words, who, after, darkMinutes, blanks }: CutOverStep): readonly Cell[] {
  return [
    number(step),
    wrapped(words),
    wrapped(who),
    text(after.join(", ")),
    number(darkMinutes),
    wrapped(blanks.map((blank) => `${blank} ________`).join("   ")),
  ];
}

function removedBlocks(removed: SheetInput["estimate"]["cutOver"]["removed"]): readonly Block[] {
  if (removed.length === 0) return [];
  return [
    title("Devices out of use", 2),
    {
      kind: "table",
      name: "removed_devices",
      whenEmpty: "",
      columns: [
        column("count", "Count", "count", 6),
        column("what", "Device and what is left in its place", "wrapped", 66),
        column("place", "Place", "wrapped", 20),
        column("plate", "Plate", "text", 11),
      ],
      rows: removed.map(({ count, kind, place, finish, words }) => [
        number(count),
        wrapped(`${kindWords(kind)}: ${words}`),
        wrapped(place),
        text(finish === "blankPlate" ? "blank plate" : "note"),
      ]),
    },
  ];
}

const kindNames: Readonly<Record<string, string>> = {
  contactUnspecified: "contact",
  holdUp: "hold-up button",
  unknown: "device not known",
};

/** "contactOverheadDoor" is "contact, overhead door" for people. */
function kindWords(kind: string): string {
  const spaced = kind.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return kindNames[kind] ?? spaced.replace(/^contact /, "contact, ");
}

function disposalBlocks(disposal: SheetInput["estimate"]["cutOver"]["disposal"]): readonly Block[] {
  if (disposal.length === 0) return [];
  return [
    title("Taken away", 2),
    {
      kind: "table",
      name: "disposal",
      whenEmpty: "",
      columns: [
        column("count", "Count", "count", 6),
        column("what", "What and where it goes", "wrapped", 66),
        column("places", "From", "wrapped", 20),
      ],
      rows: disposal.map(({ count, words, route, places }) => [
        number(count),
        wrapped(`${words}: ${route}`),
        wrapped(places.join(", ")),
      ]),
    },
  ];
}
