import type { EstimatedLoop } from "../estimate/estimate.js";
import type { Cell, Sheet } from "../report/model.js";
import { column, paragraph, text, title, wrapped } from "./cells.js";
import { useWords, zoneName } from "./loop-words.js";
import { isExcluded, isWired, type SheetInput, surveyLoopOf } from "./sheet-input.js";

/** What the owner programs: each input or wireless group with its name and use, and which loops share one. */
export function zoneScheduleSheet(input: SheetInput): Sheet | undefined {
  const { loops } = input.estimate;
  const active = loops.filter((loop) => !isExcluded(loop) && loop.treatment !== "retire");
  const rows = active.filter((loop) => isFirstOfInput(loop, active)).map((loop) => row(input, loop, active));
  if (rows.length === 0) return undefined;
  return {
    name: "Zone schedule",
    orientation: "landscape",
    headingOf: "zones",
    blocks: [
      title("Zone schedule"),
      paragraph("Names and uses as the survey gives them; confirm each use with the owner before programming.", "note"),
      {
        kind: "table",
        name: "zones",
        whenEmpty: "",
        columns: [
          column("input", "Input", "wrapped", 24),
          column("old", "Old zone", "text", 10),
          column("name", "Zone name", "wrapped", 34),
          column("use", "Use", "wrapped", 24),
          column("area", "Area", "text", 12),
          column("loops", "Loops", "wrapped", 22),
          column("note", "Note", "wrapped", 50),
        ],
        rows,
      },
    ],
  };
}

const sameInput = (a: EstimatedLoop, b: EstimatedLoop): boolean =>
  a.input !== null && b.input !== null && a.input.module === b.input.module && a.input.number === b.input.number;

const isFirstOfInput = (loop: EstimatedLoop, all: readonly EstimatedLoop[]): boolean =>
  loop.input === null || all.find((other) => sameInput(loop, other)) === loop;

function row(input: SheetInput, loop: EstimatedLoop, all: readonly EstimatedLoop[]): readonly Cell[] {
  const members = loop.input === null ? [loop] : all.filter((other) => sameInput(loop, other));
  const survey = members.map((each) => surveyLoopOf(input, each));
  const distinct = (values: readonly (string | undefined)[]) =>
    [...new Set(values.filter((value) => value !== undefined && value !== ""))].join("; ");
  const wireless = loop.wireless.map(({ code, count }) => `${count} × ${code}`).join(", ");
  const notes = [
    ...(members.length > 1 ? ["loops joined in series: the owner agrees that they show as one zone"] : []),
    ...(isWired(loop) && wireless !== "" ? [`with wireless ${wireless}, each its own zone`] : []),
    ...(loop.treatment === "wireless" ? ["wireless, one device for each opening or detector"] : []),
    ...(loop.treatment === "repair" || loop.treatment === "rewire" || loop.treatment === "measureAgain"
      ? ["provisional until repaired or read again"]
      : []),
  ];
  return [
    text(
      isWired(loop) && loop.input !== null ? `${loop.input.module} input ${loop.input.number}` : wireless || "wireless",
    ),
    text(distinct(survey.map((each) => each?.oldZone))),
    wrapped(members.map(zoneName).join(" + ")),
    wrapped(distinct(survey.map(useWords))),
    text(distinct(survey.map((each) => each?.area))),
    wrapped(members.map(({ panel, loop: name }) => `${panel} ${name}`).join(", ")),
    wrapped(notes.join("; ")),
  ];
}
