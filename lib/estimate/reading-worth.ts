import { conditions } from "../findings/conditions.js";
import { loopRecord } from "../findings/from-survey.js";
import type { LoopJudgement } from "../findings/loop-record.js";
import { readingOutcomes } from "../findings/reading-outcomes.js";
import { articleByCode, unitCentsAt } from "../price-book/look-up.js";
import type { PriceRange } from "../pricing/price-range.js";
import { type ReadingValueInput, valueOfReading } from "../pricing/value-of-reading.js";
import { roundCents } from "../quantities/money.js";
import type { SurveyLoop } from "../survey/survey.js";
import { loopTreatments } from "../treatments/loop-treatments.js";
import { isLeftAlone, keepableConditions, oddsOfRepair } from "../treatments/recommend.js";
import type { Work } from "../treatments/treatment.js";
import { itemsCents, workCents } from "../treatments/work-cents.js";
import { oldZoneOf } from "../zones/old-zone-of.js";
import type { EstimatedLoop, EstimatedReading } from "./estimate.js";
import type { PreparedJob } from "./prepare-job.js";

/** What the worth of readings is reckoned against: the price with tax, our cost, and the range. */
export interface PriceAround {
  readonly totalCents: number;
  readonly costCents: number;
  readonly range: Pick<PriceRange, "p10Cents" | "p90Cents" | "drivers">;
}

/**
 * Each loop's further readings valued by the job's own costs instead of the judge's loss table: what the loop costs on
 * the wire, repaired, or wireless under each condition it may have, decided now or after the reading; less the
 * reading's minutes at the labour cost. Volts stay first whatever their worth; a loop that is left alone or whose
 * treatment is pinned gains nothing by a reading.
 */
export function withReadingWorth({
  loops,
  prepared,
  price,
}: {
  readonly loops: readonly EstimatedLoop[];
  readonly prepared: PreparedJob;
  readonly price: PriceAround;
}): readonly EstimatedLoop[] {
  return loops.map((estimated) => {
    const index = prepared.survey.loops.findIndex(({ key }) => key === estimated.key);
    const loop = prepared.survey.loops[index];
    const judgement = prepared.judgements[index];
    if (!loop || !judgement || handsOff(judgement)) return estimated;
    const worth = readingsOf({ loop, judgement, prepared, price });
    const volts = estimated.next.filter(({ reading }) => reading === "volts");
    const first = volts.map(
      (next) => worth.find(({ reading }) => reading === "volts") ?? { ...next, saving: 0, net: 0 },
    );
    const rest = worth
      .filter(
        ({ reading, saving, net, narrowsCents }) =>
          reading !== "volts" && (net > 0 || narrowsCents > 100 * (saving - net)),
      )
      .sort((a, b) => b.net - a.net || b.narrowsCents - a.narrowsCents);
    return { ...estimated, next: [...first, ...rest] };
  });
}

/** Left alone, held or live, by the loop itself or by the return it shares: no reading is offered at all. */
function handsOff(judgement: LoopJudgement): boolean {
  return isLeftAlone(judgement) || judgement.condition === "foreignVoltage";
}

interface Asked {
  readonly loop: SurveyLoop;
  readonly judgement: LoopJudgement;
  readonly prepared: PreparedJob;
  readonly price: PriceAround;
}

function readingsOf({ loop, judgement, prepared, price }: Asked): readonly EstimatedReading[] {
  const treatments = loop.edits.pinTreatment === undefined ? waysOf({ loop, judgement, prepared }) : [];
  if (treatments.length < 2) return [];
  const { survey, rates } = prepared;
  const options = prepared.judgeOptions === undefined ? {} : { options: prepared.judgeOptions };
  const record = loopRecord({ loop, site: survey.site, oldZone: oldZoneOf(loop, survey.oldZones) });
  const { before, readings } = readingOutcomes({ record, judgement, ...options });
  return readings.map(({ reading, minutes, words, outcomes }) => {
    const readingCents = roundCents((minutes / 60) * rates.labourCentsPerHour);
    const value = valueOfReading({ treatments, before, after: outcomes, readingCents });
    return {
      reading,
      minutes,
      words,
      saving: value.savingCents / 100,
      net: value.netCents / 100,
      narrowsCents: narrowing(value.sdBeforeCents, value.sdAfterCents, loop.key, price),
    };
  });
}

/** By how much the distance from P10 to P90 shrinks when the loop brings so much less variance. [cents] */
function narrowing(before: number, after: number, key: string, { range, totalCents, costCents }: PriceAround): number {
  const variance = range.drivers.reduce((sum, { sdCents }) => sum + sdCents ** 2, 0);
  const own = range.drivers.find((driver) => driver.key === key)?.sdCents ?? 0;
  if (!(variance > 0) || !(costCents > 0)) return 0;
  const less = Math.min(own ** 2, (before ** 2 - after ** 2) * (totalCents / costCents) ** 2);
  return Math.max(0, roundCents((range.p90Cents - range.p10Cents) * (1 - Math.sqrt(1 - less / variance))));
}

/** What the ways to treat the loop cost under each condition, at our cost. [cents] */
function waysOf({ loop, judgement, prepared }: Omit<Asked, "price">): ReadingValueInput["treatments"] {
  const { profiles, moduleSettings: settings, job, rates } = prepared;
  const cents = (work: Work): number => workCents({ work, rates });
  // What it would take on the wire, also where the readings so far do not allow it yet.
  const action = judgement.eol ? "keep" : "fitEol";
  const offers = loopTreatments({
    loop,
    judgement: { ...judgement, action },
    context: { profiles, settings, job, rates, repairOdds: prepared.repairOdds },
  });
  const wireless = offers.withoutInput.find(({ treatment }) => treatment === "wireless");
  if (!wireless || offers.keep.length === 0) return [];
  const onWire = Math.min(
    ...offers.keep.map(
      ({ base, setEol, items }) => cents(base) + cents(setEol) + itemsCents({ items, book: rates.book }),
    ),
  );
  const kept = onWire + cheapestInput(prepared);
  const replaced = cents(wireless.work) + itemsCents({ items: wireless.items, book: rates.book });
  const repair = cents({ tasks: [{ task: "repair", count: 1 }], parts: [] });
  const trip = 100 * (job.returnTripHours * job.labourCostPerHour + job.returnTripCost);
  const ways = conditions.map((condition) => {
    // Money does not decide about these two: no treatment is dearer than another.
    if (condition === "lifeSafety" || condition === "foreignVoltage")
      return { condition, keep: 0, repair: 0, wireless: 0 };
    const fails = 1 - (oddsOfRepair(condition, prepared.repairOdds)?.succeeds ?? job.repairSucceeds);
    const faulty = !keepableConditions.includes(condition);
    return {
      condition,
      // A fault that nobody planned for is met on the day, and its wireless devices are then not in the van.
      keep: kept + (faulty ? repair + fails * (replaced + trip) : 0),
      repair: kept + repair + (faulty ? fails * replaced : 0),
      wireless: replaced,
    };
  });
  return (["keep", "repair", "wireless"] as const).map((treatment) => ({
    treatment,
    centsByCondition: Object.fromEntries(ways.map((way) => [way.condition, way[treatment]])),
  }));
}

/** One input of the module that is cheapest by the input. [cents] */
function cheapestInput({ profiles, rates }: PreparedJob): number {
  const each = profiles.flatMap(({ priceCode, inputs }) => {
    const tiers = articleByCode({ book: rates.book, code: priceCode })?.offers[0]?.tiers;
    return tiers && inputs > 0 ? [unitCentsAt({ tiers, quantity: 1 }) / inputs] : [];
  });
  return each.length === 0 ? 0 : Math.min(...each);
}
