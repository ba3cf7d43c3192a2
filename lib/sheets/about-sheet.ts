import type { Cell, Format, Role, Sheet } from "../report/model.js";
import { column, line, paragraph, text, title, wrapped } from "./cells.js";
import { demoPriceWords, type SheetInput } from "./sheet-input.js";

/** Who reads which sheet, and for what. Sheets that are left out are left out here too. */
const readers: readonly (readonly [sheet: string, reader: string, what: string])[] = [
  ["Summary", "everybody", "What must not be touched, what stays, what it costs, what to read next, what to order."],
  ["Queries", "estimator, surveyor", "What the survey leaves open, and what to write instead."],
  ["Loops", "estimator", "Each loop's reading, verdict, treatment and reason."],
  ["Measure next", "technician", "Further readings that are worth their time."],
  ["Terminals", "technician", "Which conductor goes where, in the order of installation."],
  ["Loop cards", "technician", "Front page with what is left alone; one card for each loop, to be written on."],
  ["Labels", "technician", "To cut out: one for each end of every pair that is taken over or given up."],
  ["Walk test", "technician", "One line for each opening."],
  ["Zone schedule", "technician, owner", "Inputs, names and uses of the new zones."],
  [
    "Cut-over",
    "technician, estimator",
    "Order of work with what comes before; devices out of use, what is taken away.",
  ],
  ["Hand-over", "technician, owner", "What is signed for, readings as left, zones as built."],
  ["Supply", "technician, estimator", "Volts at kept detectors, joints to open, battery and fuse of each place."],
  ["Radio", "technician, estimator", "What the radio tests carry, repeaters, places still to be tested."],
  ["Bill", "purchaser", "What is needed, what the van gives, what is bought, for which loops."],
  ["Orders", "purchaser", "One order for each supplier."],
  ["Carry", "purchaser, technician", "Spares to take along for one trip."],
  ["Labour", "estimator", "Hours of the job and what they cost."],
  ["Price", "estimator", "Cost, margin and markup, tax, total; follows every edit."],
  ["Options", "estimator, owner", "The job done in other ways, side by side; what fewer zones would save."],
  ["Quote", "owner", "Scope, price, clauses, what is left out."],
  ["Changes", "estimator, owner", "Change order: what became different since the issue before."],
  ["Learned", "estimator", "What finished jobs changed, and what this job hands on to the next."],
  ["Cautions", "technician", "What to mind, in the order of the job."],
  ["Checks", "estimator", "Whether totals and cross-checks agree, and whether the plan is older than edits."],
  ["Price lines", "estimator", "The price line by line, with margin and tax."],
  ["Plan values", "estimator", "What the plan was made with, beside what stands there now."],
  ["Basis", "everybody", "Sources, assumptions, how far the plan is proved."],
];

const surveySheetWords =
  "As typed, with the edits: change it here, then run the estimate again. For the screen: not printed with the rest.";

const key: readonly (readonly [Role, string, string])[] = [
  ["input", "Input", "Dashed frame, yellow, and ✎ before its heading: may be changed."],
  ["body", "Figure or words", "Plain: worked out or taken over; locked."],
  ["total", "Total", "Bold over a double rule."],
  ["note", "Remark", "Slanted."],
  ["warning", "Look here", "Bold with a thick bar at its left."],
  ["stop", "Do not touch", "Bold in a thick frame."],
  ["handwriting", "To write on", "Empty box: filled in by hand on paper."],
];

/** First sheet: purpose, day and revision, who reads what, and the key of colours and rules. */
export function aboutSheet(input: SheetInput, sheetNames: readonly string[]): Sheet {
  const present = readers.filter(([sheet]) => sheetNames.includes(sheet));
  const surveyed = sheetNames.filter((name) => name.startsWith("Survey "));
  const link = (sheet: string): Cell => ({ kind: "link", text: sheet, sheet });
  return {
    name: "About",
    blocks: [
      title(`Estimate: ${input.estimate.site.name ?? "site not named"}`),
      ...(input.demoPrices ? [paragraph(demoPriceWords, "warning")] : []),
      paragraph(
        "Takes over the wired loops of an old alarm: what each loop is by its readings, what is done with it, what it takes and what it costs. Estimates from the readings given; a competent person decides.",
      ),
      {
        kind: "keyValue",
        valueColumns: 2,
        rows: [
          line("Issued", text(input.date)),
          line("Version", text(input.revision)),
          line("Surveyed", wrapped(input.survey.site.surveyed ?? "not written")),
          line("Money", text(input.estimate.currency)),
        ],
      },
      title("Who reads what", 2),
      {
        kind: "table",
        name: "readers",
        plain: true,
        whenEmpty: "",
        columns: [
          column("sheet", "Sheet", "text", 22),
          column("reader", "For", "text", 22),
          column("what", "What stands there", "wrapped", 78),
        ],
        rows: [
          ...present.map(([sheet, reader, what]) => [link(sheet), text(reader), wrapped(what)]),
          ...surveyed.map((sheet, index) => [
            link(sheet),
            text("estimator, surveyor"),
            wrapped(index === 0 ? surveySheetWords : "The same."),
          ]),
        ],
      },
      title("Key", 2),
      {
        kind: "table",
        name: "cell_key",
        plain: true,
        whenEmpty: "",
        columns: [
          column("look", "Looks like", "text", 24),
          column("means", "Means", "text", 24),
          column("how", "To be told without colour by", "wrapped", 64),
        ],
        rows: key.map(([role, words, how]) => [sample(role), text(words), wrapped(how)]),
      },
    ],
  };
}

function sample(role: Role): Cell {
  const format: Format = "text";
  return role === "handwriting" ? { kind: "blank", role } : { kind: "text", text: "Sample", role, format };
}
