import { dataTable } from "./data-table.js";
import { type Child, el } from "./elements.js";
import type { Estimated } from "./shown.js";

/** The job done in other ways, side by side, and what joined inputs would save. */
export function options(shown: Estimated): readonly Child[] {
  const { estimate, formats } = shown;
  const compared = estimate.options;
  if (compared === null) {
    const words =
      shown.state.progress?.activity === "working out"
        ? "Being compared."
        : "A quick or stopped plan comes without options: work it out to the end to compare them.";
    return [el("p", {}, words)];
  }
  return [
    el("p", {}, "Each is planned and priced anew from the same survey, with your wishes."),
    dataTable({
      caption: "Options side by side",
      columns: [
        { words: "Option" },
        { words: "Price with tax", figures: true },
        { words: "More than the plan", figures: true },
        { words: "8 of 10 end between", figures: true },
        { words: "Zones", figures: true },
        { words: "Loops on the wire", figures: true },
        { words: "Wireless devices", figures: true },
        { words: "Days", figures: true },
        { words: "Beside the others" },
      ],
      rows: compared.map((one, index) => ({
        total: index === 0,
        cells: [
          one.words,
          formats.money(one.totalCents),
          index === 0 ? "" : formats.moreMoney(one.moreCents),
          one.range === undefined
            ? "not worked out"
            : `${formats.roundMoney(one.range.p10Cents)} and ${formats.roundMoney(one.range.p90Cents)}`,
          formats.count(one.zones),
          formats.count(one.loopsOnWire),
          formats.count(one.wirelessDevices),
          formats.count(one.days),
          remark(shown, index),
        ],
      })),
    }),
    ...frontier(shown),
  ];
}

function remark({ estimate, formats }: Estimated, index: number): string {
  const all = estimate.options ?? [];
  const one = all[index];
  if (one === undefined) return "";
  if (index === 0) return "The plan shown here.";
  const twin = all
    .slice(0, index)
    .find(
      (other) =>
        other.costCents === one.costCents && other.zones === one.zones && other.loopsOnWire === one.loopsOnWire,
    );
  if (twin !== undefined) return `Comes to the same here as: ${twin.words}.`;
  const other = all.find(({ option }) => option === one.dominatedBy);
  if (other !== undefined) return `Costs no less and gives no more than: ${other.words}.`;
  const lost = one.openingsLost.length > 0 ? `Openings given up: ${one.openingsLost.join(", ")}.` : "";
  if (one.centsPerZoneGained === null) return lost;
  return `${one.moreZones} more zones told apart, ${formats.money(one.centsPerZoneGained)} for each. ${lost}`.trim();
}

function frontier({ estimate, formats }: Estimated): readonly Child[] {
  const points = estimate.zonesFrontier ?? [];
  if (points.length < 2) return [];
  return [
    dataTable({
      caption: "Our cost against zones lost by joining loops on one input",
      columns: [
        { words: "Zones lost", figures: true },
        { words: "Our cost", figures: true },
      ],
      rows: points.map(({ zonesLost, costCents }) => ({ cells: [formats.count(zonesLost), formats.money(costCents)] })),
    }),
  ];
}
