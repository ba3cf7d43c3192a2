import type { EstimatedLoop } from "../estimate/estimate.js";
import { loopName } from "../estimate/summary.js";
import { meanHours } from "../labour/mean-hours.js";
import { formatHours } from "../quantities/format-hours.js";
import { formatMoney } from "../quantities/format-money.js";
import { roundCents } from "../quantities/money.js";
import { named } from "../report/formula.js";
import type { Block, Sheet } from "../report/model.js";
import { type Treatment, treatmentWords } from "../treatments/treatment.js";
import { column, formulaCell, line, number, paragraph, title, wrapped } from "./cells.js";
import { demoPriceWords, isExcluded, type SheetInput } from "./sheet-input.js";

/** What the owner signs: scope by treatment, price, clauses from the loops' state, what is left out. */
export function quoteSheet(input: SheetInput): Sheet {
  const { estimate, job } = input;
  return {
    name: "Quote",
    columnWidths: [40, 62, 14],
    blocks: [
      title(`Quote: ${estimate.site.name ?? "taking over the wired alarm loops"}`),
      ...(input.demoPrices ? [paragraph(demoPriceWords, "warning")] : []),
      paragraph(
        `Day ${input.date}; valid for ${job.quoteValidDays} days. For ${estimate.loops.length} loops of the old alarm as read on the survey.`,
      ),
      title("What is done", 2),
      scopeTable(estimate.loops),
      title("Price", 2),
      {
        kind: "keyValue",
        rows: [
          line("Before tax", formulaCell(named("JobSell"), "money")),
          line("Tax", formulaCell(named("JobTax"), "money")),
          line("Price with tax", formulaCell(named("JobTotal"), "money", "total")),
        ],
      },
      title("Terms", 2),
      ...clauses(input).map((words, index) => paragraph(`${index + 1}. ${words}`)),
      title("Not in this price", 2),
      ...exclusions.map((words) => paragraph(`– ${words}`)),
      title("Accepted", 2),
      {
        kind: "table",
        name: "accepted",
        plain: true,
        whenEmpty: "",
        rowHeight: 30,
        columns: [
          column("name", "Name", "text", 40, { role: "handwriting" }),
          column("signature", "Signature", "text", 62, { role: "handwriting" }),
          column("day", "Day", "text", 14, { role: "handwriting" }),
        ],
        rows: [[{ kind: "blank" }, { kind: "blank" }, { kind: "blank" }]],
      },
    ],
  };
}

function scopeTable(loops: readonly EstimatedLoop[]): Block {
  const kinds = (Object.keys(treatmentWords) as Treatment[]).filter((kind) =>
    loops.some(({ treatment }) => treatment === kind),
  );
  return {
    kind: "table",
    name: "quote_scope",
    plain: true,
    whenEmpty: "Nothing.",
    columns: [
      column("what", "Treatment", "wrapped", 36),
      column("which", "Which", "wrapped", 62),
      column("count", "Loops", "count", 14),
    ],
    rows: kinds.map((kind) => {
      const own = loops.filter(({ treatment }) => treatment === kind);
      return [wrapped(treatmentWords[kind]), wrapped(own.map(loopName).join(", ")), number(own.length)];
    }),
  };
}

/** Sell price of one wireless contact fitted: dearest of the common kinds, so that the clause holds. [cents] */
export function wirelessOpeningCents({ priceBook, labour, job }: SheetInput): number | undefined {
  const kinds = new Set(["wirelessContactRecessed", "wirelessContactSurface"]);
  const prices = priceBook.filter((row) => kinds.has(row.class)).map(({ unitCents }) => unitCents);
  const hours = labour.filter(({ task }) => task === "wirelessContact").map(meanHours)[0];
  if (prices.length === 0 || hours === undefined) return undefined;
  const material = roundCents((Math.max(...prices) * (1 + job.freight)) / (1 - job.marginMaterial));
  const work = roundCents((hours * job.labourCostPerHour * 100) / (1 - job.marginLabour));
  return material + work + roundCents(material * job.taxMaterial) + roundCents(work * job.taxLabour);
}

function clauses(input: SheetInput): readonly string[] {
  const { estimate, job, survey } = input;
  const { loops, currency } = estimate;
  const opening = wirelessOpeningCents(input);
  const eolAtPanel = new Set(estimate.terminals.filter(({ eolAt }) => eolAt === "panel").map(({ loop }) => loop));
  const unproved = loops.filter(
    (loop) => loop.input !== null && loop.openingsProved.proved < loop.openingsProved.total,
  );
  const list = (some: readonly EstimatedLoop[]) => some.map(loopName).join(", ");
  return [
    `The price rests on the readings taken at the survey${survey.site.surveyed === undefined ? "" : ` (${survey.site.surveyed})`}. Cable hidden in walls is not warranted.`,
    ...(unproved.length === 0
      ? []
      : [`Kept loops stay provisional until every opening was opened once and seen on the meter: ${list(unproved)}.`]),
    `Fault finding is limited to ${formatHours(job.repairCapHours)} for each loop. After that a wireless sensor${opening === undefined ? "" : ` at ${formatMoney({ cents: opening, currency })} with tax for each opening`} takes its place, once the owner has agreed.`,
    ...(eolAtPanel.size === 0
      ? []
      : [
          `Where the end-of-line resistor sits at the panel, cutting or shorting the cable may not be reported. Accepted for: ${list(loops.filter(({ key }) => eolAtPanel.has(key)))}.`,
        ]),
    ...(loops.some(isExcluded)
      ? [
          `Life-safety circuits are excluded and stay as they are: ${list(loops.filter(isExcluded))}. Nothing on the old control that feeds them changes before the responsible contractor's written release.`,
        ]
      : ["Life-safety circuits, where any are found, are excluded and stay as they are."]),
    "Loops joined on one input show as one zone; openings that have their own delay are named in the zone schedule.",
    "Holes left by removed parts are patched to paint-ready. Access, keys and ladders' standing places are provided.",
  ];
}

const exclusions = [
  "Work on hazardous material; it stops until the owner has it cleared.",
  "Fire, gas, medical and egress circuits, and the contractor responsible for them.",
  "Control, keypads, sirens, communicator, permits and subscriptions, unless listed on the bill.",
  "Work of a licensed electrician, lift hire, painting.",
] as const;
