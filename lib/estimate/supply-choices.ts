import type { PlannedLoop } from "../plan/planned-loop.js";
import type { Query } from "../problems/query.js";
import { formatMoney } from "../quantities/format-money.js";
import { type Cents, roundCents } from "../quantities/money.js";
import { itemsCents, workCents } from "../treatments/work-cents.js";
import type { WhyTreatment } from "./explanations.js";
import type { PreparedJob } from "./prepare-job.js";
import type { NotPriced, SupplyChoice } from "./supply-cure-offers.js";
import type { SupplyAtPanel, SupplyDetectorAtPanel } from "./supply-of.js";

/** A kept detector that falls short, made wireless instead. Our cost, before margin and tax. */
export interface WirelessChoice {
  /** Work and parts of this loop alone, wireless less as planned; its share of modules and places is not in it. */
  readonly ownMoreCents: Cents;
  /** The whole job planned anew with this loop wireless, less the plan; null where that was not planned. */
  readonly wholeJobMoreCents: Cents | null;
  readonly words: string;
}

/** Supply records with the wireless way out priced, and a query for each kept detector that falls short. */
export function withSupplyChoices({
  supply,
  prepared,
  planned,
  whys,
}: {
  readonly supply: readonly SupplyAtPanel[];
  readonly prepared: PreparedJob;
  readonly planned: readonly PlannedLoop[];
  readonly whys: readonly WhyTreatment[] | null;
}): { readonly supply: readonly SupplyAtPanel[]; readonly queries: readonly Query[] } {
  const queries: Query[] = [];
  const priced = supply.map((place) => ({
    ...place,
    detectors: place.detectors.map((detector) => {
      if (!detector.kept || detector.fails.length === 0) return detector;
      const wireless = wirelessChoice(detector.key, prepared, planned, whys);
      queries.push(shortQuery({ ...detector, wireless }, place, prepared));
      for (const one of detector.notPriced) {
        if (!queries.some(({ typed, sheet }) => typed === one.missing && sheet === "Price book"))
          queries.push(unpricedQuery(one));
      }
      return { ...detector, wireless };
    }),
  }));
  return { supply: priced, queries };
}

function wirelessChoice(
  key: string,
  { treatments, rates, survey }: PreparedJob,
  planned: readonly PlannedLoop[],
  whys: readonly WhyTreatment[] | null,
): WirelessChoice | null {
  const offer = treatments.find((loop) => loop.key === key)?.withoutInput.find(({ kind }) => kind === "wireless");
  const now = planned.find((loop) => loop.key === key);
  if (!offer || !now) return null;
  const costOf = ({ work, items }: Pick<PlannedLoop, "work" | "items">) =>
    workCents({ work, rates }) + itemsCents({ items, book: rates.book });
  const ownMoreCents = roundCents(costOf(offer) - costOf(now));
  const why = whys?.find((one) => one.key === key);
  const whole = [why?.replanned, why?.heldFixed].find((one) => one?.kind === "wireless");
  const wholeJobMoreCents = whole?.moreCents ?? null;
  const { currency } = survey.site;
  const words = [
    `${moreWords(ownMoreCents, currency)} for this loop by itself, before its share of modules`,
    ...(wholeJobMoreCents === null ? [] : [`${moreWords(wholeJobMoreCents, currency)} over the whole job`]),
  ].join("; ");
  return { ownMoreCents, wholeJobMoreCents, words };
}

const moreWords = (cents: Cents, currency: string) =>
  `${formatMoney({ cents: Math.abs(cents), currency })} ${cents < 0 ? "less" : "more"}`;

function shortQuery(detector: SupplyDetectorAtPanel, { source }: SupplyAtPanel, { survey }: PreparedJob): Query {
  const loop = survey.loops.find(({ key }) => key === detector.key);
  const volts = detector.asPlanned;
  const read =
    volts === null
      ? ""
      : `${volts.charger.toFixed(1)} V with the charger on, ${volts.batteryEnd.toFixed(1)} V at the end of the battery, ${volts.batteryEndLessDrop.toFixed(1)} V less the panel's drop of ${source.internalDropVolts} V${source.internalDropAssumed ? " (assumed)" : ""}`;
  const wireless = detector.wireless === null ? "" : ` Wireless instead: ${detector.wireless.words}.`;
  return {
    sheet: loop?.sheet ?? "Loops",
    row: loop?.row ?? null,
    column: null,
    typed: detector.tag ?? detector.loop,
    message: `This kept detector falls under its ${source.minimumVolts} V: ${read}. What would do: ${detector.cures.join("; ")}.${priced(detector, survey)}${wireless} Write one of these words under Supply cure, pin the loop to wireless, or write the data sheet's minimum if it is lower.`,
    key: detector.key,
  };
}

function priced({ choices }: SupplyDetectorAtPanel, { site }: PreparedJob["survey"]): string {
  if (choices.length === 0) return "";
  return ` Our cost on the wire: ${choices.map((choice) => supplyChoiceWords(choice, site.currency)).join("; ")}.`;
}

/** A way out on the wire with its money and volts. */
export function supplyChoiceWords({ kind, words, costCents, batteryEndMillivolts }: SupplyChoice, currency: string) {
  const money = formatMoney({ cents: costCents, currency });
  return `${kind}: ${money}, ${words}, ${(batteryEndMillivolts / 1000).toFixed(2)} V at battery end less the panel's drop`;
}

function unpricedQuery({ missing, words }: NotPriced): Query {
  return {
    sheet: "Price book",
    row: null,
    column: "class",
    typed: missing,
    message: `A supply cure that would do cannot be priced: ${words}.`,
  };
}
