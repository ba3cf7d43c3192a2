import { formatMoney } from "../quantities/format-money.js";
import { type Treatment, treatmentWords } from "../treatments/treatment.js";
import type { Estimate, EstimatedLoop } from "./estimate.js";

/** The first screen of workbook, pane and terminal: five answers, each a heading and its lines. */
export interface Summary {
  readonly stays: readonly string[];
  readonly costs: readonly string[];
  readonly measureNext: readonly string[];
  readonly orderToday: readonly string[];
  readonly doNotTouch: readonly string[];
}

const onTheWire: readonly Treatment[] = ["keep", "fitEol", "changeEol", "split", "repair", "rewire", "measureAgain"];

/** What stays, what it costs, which two readings to take next, what to order, what must not be touched. */
export function summaryOf(estimate: Estimate): Summary {
  return {
    stays: staysLines(estimate.loops),
    costs: costLines(estimate),
    measureNext: measureNextLines(estimate),
    orderToday: orderLines(estimate),
    doNotTouch: doNotTouchLines(estimate),
  };
}

/** Name of a loop for people: panel, loop and tag. */
export function loopName({ panel, loop, tag }: Pick<EstimatedLoop, "panel" | "loop" | "tag">): string {
  return [panel, loop, tag].filter((part) => part !== null && part !== "").join(" ");
}

function staysLines(loops: readonly EstimatedLoop[]): readonly string[] {
  const wired = loops.filter(({ treatment, input }) => onTheWire.includes(treatment) && input !== null);
  const lines = [`${wired.length} of ${loops.length} loops stay on the wire.`];
  for (const treatment of Object.keys(treatmentWords) as Treatment[]) {
    const some = loops.filter((loop) => loop.treatment === treatment);
    if (some.length === 0) continue;
    lines.push(`${some.length} × ${treatmentWords[treatment]}: ${some.map(loopName).join(", ")}`);
  }
  const proved = wired.reduce((sum, { openingsProved }) => sum + openingsProved.proved, 0);
  const total = wired.reduce((sum, { openingsProved }) => sum + openingsProved.total, 0);
  lines.push(`${proved} of ${total} openings on kept loops are proved; the rest stay provisional until opened once.`);
  return lines;
}

function costLines({ price, currency, demoPrices, holds }: Estimate): readonly string[] {
  const money = (cents: number) => formatMoney({ cents, currency });
  const range =
    price.p10Cents === null || price.p90Cents === null
      ? "Its range is not worked out."
      : `8 jobs of 10 like this end between ${money(price.p10Cents)} and ${money(price.p90Cents)}.`;
  return [
    `${money(price.totalCents)} with tax (${money(price.sellCents)} before); cost ${money(price.costCents)}. ${range}`,
    `Margin ${percent(price.marginFraction)} of the price, the same as ${percent(price.markupFraction)} markup on cost.`,
    ...(demoPrices ? ["DEMO PRICES: invented, not to be quoted."] : []),
    ...(holds.length > 0 ? ["On hold: strip-out of the old control is not priced until the hold is lifted."] : []),
  ];
}

const counted = (count: number, thing: string) => `${count} ${thing}${count === 1 ? "" : "s"}`;

const percent = (fraction: number | null) => (fraction === null ? "none" : `${(fraction * 100).toFixed(1)} %`);

function measureNextLines({ loops, currency }: Estimate): readonly string[] {
  const all = loops.flatMap((loop) => loop.next.map((next) => ({ loop, next })));
  const saving = all.filter(({ next }) => next.net > 0).sort((a, b) => b.next.net - a.next.net);
  // What saves nothing by itself may still be worth knowing before the price is given.
  const narrowing = all
    .filter(({ next }) => next.net <= 0 && next.narrowsCents > 0)
    .sort((a, b) => b.next.narrowsCents - a.next.narrowsCents);
  // One of each loop: a second reading of the same loop mostly tells the same.
  const two = [...saving, ...narrowing].filter(({ loop }, k, list) => list.findIndex((one) => one.loop === loop) === k);
  if (two.length === 0) return ["No further reading is worth its time by the figures entered."];
  const money = (cents: number) => formatMoney({ cents: Math.round(cents), currency });
  return two.slice(0, 2).map(({ loop, next }) => {
    const saves = next.saving > 0 ? [`saves about ${money(next.saving * 100)} of this job's expected cost`] : [];
    const narrows = next.narrowsCents > 0 ? [`narrows the range by about ${money(next.narrowsCents)}`] : [];
    return `${loopName(loop)}: ${next.words} (${[`${next.minutes} min`, ...saves, ...narrows].join("; ")})`;
  });
}

function orderLines({ orders, bill, currency }: Estimate): readonly string[] {
  const fromVan = bill.filter(({ fromStock }) => fromStock > 0).length;
  return [
    ...orders.map(
      ({ supplier, lines, totalCents, orderBy }) =>
        `${supplier}: ${counted(lines.length, "line")}, ${formatMoney({ cents: totalCents, currency })} with shipping${orderBy === undefined ? "" : `, by ${orderBy}`}`,
    ),
    ...(orders.length === 0 ? ["Nothing to order."] : []),
    ...(fromVan > 0 ? [`${counted(fromVan, "line")} ${fromVan === 1 ? "comes" : "come"} from the van.`] : []),
  ];
}

function doNotTouchLines({ loops, holds }: Estimate): readonly string[] {
  const excluded = loops.filter(({ treatment }) => treatment === "excluded");
  const live = loops.filter(({ condition, treatment }) => condition === "foreignVoltage" && treatment !== "excluded");
  return [
    ...holds.map(({ words }) => words),
    ...(holds.length === 0 ? excluded.map((loop) => `${loopName(loop)}: life safety; left as it is.`) : []),
    ...live.map((loop) => `${loopName(loop)}: volts from elsewhere on the pair; hands off until its source is known.`),
    ...(excluded.length + live.length === 0
      ? [
          "No loop is marked or worded as life safety. An unmarked one cannot be told from readings: red cable or the word fire means stop and ask.",
        ]
      : []),
  ];
}
