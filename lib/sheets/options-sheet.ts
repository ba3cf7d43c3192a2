import type { ComparedOption } from "../pricing/compare-options.js";
import { formatMoney } from "../quantities/format-money.js";
import type { Block, Cell, Sheet } from "../report/model.js";
import { column, money, number, paragraph, text, title, wrapped } from "./cells.js";
import { demoPriceWords, type SheetInput } from "./sheet-input.js";

/** The job done in other ways, side by side with the plan, and what fewer zones would save. */
export function optionsSheet(input: SheetInput): Sheet | undefined {
  const { options, zonesFrontier } = input.estimate;
  const compared = options !== null && options.length > 1;
  const traded = zonesFrontier !== null && zonesFrontier.length > 0;
  if (!compared && !traded) return undefined;
  return {
    name: "Options",
    orientation: "landscape",
    blocks: [
      title("Options side by side"),
      ...(input.demoPrices ? [paragraph(demoPriceWords, "warning")] : []),
      paragraph(
        "Each is planned and priced anew from the same survey. Figures are those of this issue: they do not follow edits, run the estimate again.",
        "note",
      ),
      ...(compared ? [optionsTable(input, options)] : []),
      ...(traded ? frontierBlocks(input, zonesFrontier) : []),
    ],
  };
}

function optionsTable(input: SheetInput, options: readonly ComparedOption[]): Block {
  return {
    kind: "table",
    name: "options",
    whenEmpty: "",
    columns: [
      column("words", "Option", "wrapped", 34),
      column("total", "Price with tax", "money", 15),
      column("more", "More than the plan", "money", 14),
      column("low", "1 of 10 ends below", "money", 15),
      column("high", "9 of 10 end below", "money", 15),
      column("zones", "Zones", "count", 8),
      column("lost", "Openings given up", "count", 10),
      column("onWire", "Loops on the wire", "count", 10),
      column("wireless", "Wireless devices", "count", 10),
      column("days", "Days", "count", 7),
      column("remark", "Beside the others", "wrapped", 40),
    ],
    rows: options.map((one, index): readonly Cell[] => {
      const role = index === 0 ? ("total" as const) : undefined;
      return [
        wrapped(one.words, role),
        money(one.totalCents, role),
        money(one.moreCents),
        one.range === undefined ? text("") : money(one.range.p10Cents),
        one.range === undefined ? text("") : money(one.range.p90Cents),
        number(one.zones),
        number(one.openingsLost.length),
        number(one.loopsOnWire),
        number(one.wirelessDevices),
        number(one.days),
        wrapped(remark(input, one, options, index)),
      ];
    }),
  };
}

const samePlan = (one: ComparedOption, other: ComparedOption): boolean =>
  one.costCents === other.costCents && one.zones === other.zones && one.loopsOnWire === other.loopsOnWire;

function remark(input: SheetInput, one: ComparedOption, options: readonly ComparedOption[], index: number): string {
  if (index === 0) return "The plan of this workbook.";
  const twin = options.slice(0, index).find((other) => samePlan(one, other));
  if (twin !== undefined) return `Comes to the same here as: ${twin.words}.`;
  const better = options.find(({ option }) => option === one.dominatedBy);
  if (better !== undefined) {
    return `Costs no less and gives no more than "${better.words}".`;
  }
  if (one.centsPerZoneGained !== null) {
    const each = formatMoney({ cents: Math.round(one.centsPerZoneGained), currency: input.estimate.currency });
    return `${one.moreZones} more zones told apart, ${each} for each.`;
  }
  return one.moreCents < 0 && one.moreZones < 0 ? `${-one.moreZones} fewer zones told apart.` : "";
}

/** Zones given up by joining loops on one input, and what the job then costs us. */
function frontierBlocks(
  input: SheetInput,
  points: NonNullable<SheetInput["estimate"]["zonesFrontier"]>,
): readonly Block[] {
  const heading = title("Cost against zones lost", 2);
  const [first] = points;
  if (points.length === 1 && first !== undefined) {
    const words =
      first.zonesLost === 0
        ? "The cheapest plan already gives every kept loop an input of its own: joining loops would save nothing."
        : `The cheapest plan joins loops and gives up ${first.zonesLost} zones; giving up fewer was not possible.`;
    return [heading, paragraph(words)];
  }
  return [
    heading,
    paragraph(
      "Loops joined in series on one input show as one zone. Cost is ours, before margin and tax; each step is the cheapest plan with so many zones lost.",
      "note",
    ),
    {
      kind: "table",
      name: "zones_frontier",
      whenEmpty: "",
      columns: [column("lost", "Zones lost", "count", 34), column("cost", "Cost", "money", 15)],
      rows: points.map(({ zonesLost, costCents }) => [number(zonesLost), money(costCents)]),
    },
    {
      kind: "chart",
      chart: "line",
      title: "Cost against zones lost",
      categories: { table: "zones_frontier", column: "lost" },
      series: [{ table: "zones_frontier", column: "cost" }],
      categoryTitle: "Zones lost",
      valueTitle: `Cost, ${input.estimate.currency}`,
      widthPixels: 560,
      heightPixels: 240,
      alt: "Line: what the job costs us against the number of zones lost by joining loops.",
    },
  ];
}
