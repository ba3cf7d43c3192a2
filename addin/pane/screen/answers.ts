import type { EstimatedLoop } from "../../loopwright-pane.js";
import { type Treatment, treatmentWords } from "../../loopwright-screen.js";
import { button, type Child, el, help, list } from "./elements.js";
import { treatmentSieve } from "./loop-sieve.js";
import { rangePicture } from "./range-picture.js";
import { type RankedReading, rankedReadings } from "./ranked-readings.js";
import { type Estimated, nameOfLoop } from "./shown.js";

/** Causes named on the first screen. */
const mostCauses = 3;

/** The first screen: what stays, what it costs, what to read, what to order, what nobody touches. */
export function answers(shown: Estimated): readonly HTMLElement[] {
  return [
    answer("What stays", ...stays(shown)),
    answer("What it costs", ...costs(shown)),
    answer("The two readings worth most", ...readings(shown)),
    answer("What to order today", ...orders(shown)),
    answer("What must not be touched", ...notToTouch(shown)),
  ];
}

const answer = (heading: string, ...content: readonly Child[]): HTMLElement =>
  el("section", { class: "answer" }, el("h3", {}, heading), ...content);

function stays({ estimate, act, state }: Estimated): readonly Child[] {
  const byTreatment = new Map<Treatment, EstimatedLoop[]>();
  for (const loop of estimate.loops) {
    byTreatment.set(loop.treatment, [...(byTreatment.get(loop.treatment) ?? []), loop]);
  }
  const groups = (Object.keys(treatmentWords) as Treatment[]).flatMap((treatment) => {
    const loops = byTreatment.get(treatment);
    return loops === undefined ? [] : [{ treatment, loops }];
  });
  const lines = state.summary?.stays ?? [];
  return [
    el("p", { class: "figure" }, lines[0] ?? ""),
    list(
      groups.map(({ treatment, loops }) =>
        button({
          words: `${loops.length} × ${treatmentWords[treatment]}`,
          keep: `stays ${treatment}`,
          kind: "quiet",
          label: `${loops.length} × ${treatmentWords[treatment]}: show these loops`,
          click: () => act.go("loops", { sieve: treatmentSieve(treatment), find: "" }),
        }),
      ),
      { class: "plain-list" },
    ),
    el("p", { class: "small" }, lines.length > 1 ? (lines[lines.length - 1] ?? "") : ""),
  ];
}

function costs(shown: Estimated): readonly Child[] {
  const { estimate, formats, act } = shown;
  const { price, holds } = estimate;
  const { p10Cents, p90Cents } = price;
  return [
    el("p", { class: "figure" }, `${formats.money(price.totalCents)} with tax`),
    p10Cents === null || p90Cents === null
      ? el("p", {}, "Its range is not worked out.")
      : el(
          "p",
          {},
          `8 jobs of 10 like this end between ${formats.roundMoney(p10Cents)} and ${formats.roundMoney(p90Cents)} (P10 to P90): ${formats.roundMoney(p90Cents - p10Cents)} wide.`,
        ),
    rangePicture(shown),
    el("p", {}, causes(shown)),
    el(
      "p",
      { class: "small" },
      `Our cost ${formats.money(price.costCents)}; margin ${formats.rate(price.marginFraction)} of the price, the same as ${formats.rate(price.markupFraction)} markup on cost.`,
      holds.length > 0 && " On hold: strip-out of the old control is not in it.",
    ),
    button({
      words: "Price line by line",
      keep: "to price",
      kind: "quiet",
      click: () => act.go("price"),
    }),
  ];
}

/** What makes the range as wide as it is. */
function causes({ estimate, formats }: Estimated): string {
  const drivers = estimate.price.drivers.slice(0, mostCauses);
  if (drivers.length === 0) return "";
  const named = drivers.map(
    (driver) => `${driverWords(estimate.loops, driver)} ± ${formats.roundMoney(driver.sdCents)}`,
  );
  return `Widest causes: ${named.join("; ")}.`;
}

/** A cause of the range in words. */
export function driverWords(
  loops: readonly EstimatedLoop[],
  { cause, key }: Estimated["estimate"]["price"]["drivers"][number],
): string {
  if (cause === "crew") return "how fast the crew is";
  if (cause === "access") return "how hard access turns out";
  if (cause === "faultRate") return "how many faults this site has";
  if (cause === "fixedWork") return "work that hangs on no loop";
  const loop = loops.find((one) => one.key === key);
  return loop === undefined ? `loop ${key ?? ""}` : nameOfLoop(loop);
}

/** A second reading of the same loop mostly tells the same. */
const oneOfEachLoop = (ranked: readonly RankedReading[]) =>
  ranked.filter(({ loop }, index) => ranked.findIndex((one) => one.loop === loop) === index);

function readings({ estimate, formats, act }: Estimated): readonly Child[] {
  const ranked = rankedReadings(estimate).filter(({ changesPlan }) => changesPlan);
  if (ranked.length === 0) return [el("p", {}, "No further reading is worth its time by the figures entered.")];
  const worth = ({ savingCents, reading, spreadCents }: RankedReading) =>
    `worth ${formats.money(savingCents)} on average, ${Math.max(1, Math.round(reading.minutes))} min${
      spreadCents === null ? "" : `; this loop widens the range by ± ${formats.roundMoney(spreadCents)}`
    }`;
  return [
    el(
      "ol",
      { class: "plain-list" },
      ...oneOfEachLoop(ranked)
        .slice(0, 2)
        .map((one) =>
          el(
            "li",
            {},
            button({
              words: nameOfLoop(one.loop),
              keep: `answer loop ${one.loop.key} ${one.reading.reading}`,
              kind: "quiet",
              label: `${nameOfLoop(one.loop)}: show this loop`,
              click: () => act.goToLoop(one.loop.key),
            }),
            el("p", {}, one.reading.words),
            el("p", { class: "small" }, worth(one)),
          ),
        ),
    ),
    help(
      "worth",
      "Worth by what measure?",
      "What the answer saves on average of this job's own expected cost: deciding now against deciding after the reading. Its minutes are taken off in the ranking.",
    ),
    ranked.length > 2 &&
      button({
        words: `All ${rankedReadings(estimate).length} readings`,
        keep: "to readings",
        kind: "quiet",
        click: () => act.go("readNext"),
      }),
  ];
}

function orders({ estimate, formats, act }: Estimated): readonly Child[] {
  const { bill } = estimate;
  const fromVan = bill.filter(({ fromStock }) => fromStock > 0).length;
  const lines = estimate.orders.map(
    ({ supplier, lines: each, totalCents, orderBy }) =>
      `${supplier}: ${each.length} lines, ${formats.money(totalCents)} with shipping${orderBy === undefined ? "" : `, by ${orderBy}`}`,
  );
  return [
    list([
      ...(lines.length === 0 ? ["Nothing to order."] : lines),
      ...(fromVan > 0 ? [`${fromVan} lines come from the van.`] : []),
    ]),
    lines.length > 0 &&
      button({ words: "Order lists", keep: "to orders", kind: "quiet", click: () => act.go("orders") }),
  ];
}

function notToTouch({ state }: Estimated): readonly Child[] {
  return [
    list(
      (state.summary?.doNotTouch ?? []).map((line) => el("span", {}, line)),
      { class: "stop-list" },
    ),
  ];
}
