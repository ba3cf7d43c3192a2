import type { LearnedFigure } from "../estimate/learning-of.js";
import type { Block, Sheet } from "../report/model.js";
import { column, number, paragraph, text, title, wrapped } from "./cells.js";
import type { SheetInput } from "./sheet-input.js";

/** What finished jobs changed, figure by figure, and the rows that this job hands on; left out where there is neither. */
export function learnedSheet({ estimate }: SheetInput): Sheet | undefined {
  const { learning, teaches } = estimate;
  if (learning === null && teaches.length === 0) return undefined;
  return {
    name: "Learned",
    orientation: "landscape",
    ...(learning !== null && learning.figures.length > 0 ? { headingOf: "learned" } : {}),
    blocks: [
      title("Learned from finished jobs"),
      ...(learning === null ? [] : learnedBlocks(learning)),
      ...(teaches.length === 0 ? [] : teachesBlocks(teaches)),
    ],
  };
}

function learnedBlocks(learning: NonNullable<SheetInput["estimate"]["learning"]>): readonly Block[] {
  const { inBand, outside } = learning.asLeft;
  const { prior, now } = learning.unsound;
  return [
    paragraph(`${learning.words} Jobs: ${learning.jobs.join(", ")}.`, "note"),
    paragraph(
      "This estimate was reckoned with the figures under Now. Write no under Use in the sheet Survey Finished jobs, run again, and a row is out as if it had never been there.",
      "note",
    ),
    learnedTable(learning.figures),
    paragraph(
      `The judge started from ${percent(now)} of loops not sound; its table says ${percent(prior)}. Shares of the faults among each other stay the table's.`,
    ),
    ...(inBand + outside === 0
      ? []
      : [paragraph(`As-left readings inside their band: ${inBand}; outside: ${outside}. Shown, not used.`)]),
  ];
}

const percent = (fraction: number): string => `${Math.round(fraction * 1000) / 10} %`;

function learnedTable(figures: readonly LearnedFigure[]): Block {
  return {
    kind: "table",
    name: "learned",
    whenEmpty: "No figure changed.",
    columns: [
      column("words", "Figure", "wrapped", 46),
      column("of", "Of what", "text", 22),
      column("unit", "Unit", "text", 7),
      column("prior", "Before", "decimal", 10),
      column("priorCount", "Counts for", "general", 11),
      column("count", "Data", "general", 11),
      column("succeeded", "Of them", "general", 9),
      column("jobs", "From jobs", "general", 10),
      column("now", "Now", "decimal", 10),
    ],
    rows: figures.map(({ words, of, unit, prior, priorCount, data, now }) => [
      wrapped(words),
      text(of),
      text(unit),
      number(prior),
      number(Math.round(priorCount * 1e6) / 1e6),
      number(Math.round(data.count * 1e6) / 1e6),
      number(data.succeeded),
      number(data.jobs),
      number(now),
    ]),
  };
}

function teachesBlocks(teaches: SheetInput["estimate"]["teaches"]): readonly Block[] {
  return [
    title("What this job hands on", 2),
    paragraph(
      "From the as-left readings, repair outcomes and hours beside the loops. Copy these rows into the sheet Finished jobs of the next survey, not of this one.",
      "note",
    ),
    {
      kind: "table",
      name: "teaches",
      whenEmpty: "",
      columns: [
        column("job", "Job", "wrapped", 46),
        column("finished", "Finished on", "text", 22),
        column("kind", "What was counted", "text", 17),
        column("name", "Of what", "text", 22),
        column("first", "First figure", "general", 13),
        column("second", "Second figure", "general", 14),
        column("third", "Third figure", "general", 13),
      ],
      rows: teaches.map(({ job, finished, kind, name, first, second, third }) => [
        wrapped(job),
        text(finished),
        text(kind),
        text(name),
        number(first),
        number(second),
        number(third),
      ]),
    },
  ];
}
