import type { ThreePointHours } from "../labour/hours-spread.js";
import type { LabourLine } from "../labour/labour-lines.js";
import type { PlannedLoop } from "../plan/planned-loop.js";
import type { JobSettings } from "../price-book/job-settings.js";
import type { JobPrice } from "../pricing/price-job.js";
import { type PriceOutcome, type PriceRange, priceRange } from "../pricing/price-range.js";
import { commonFactors } from "../reference/generated/common-factors.js";
import type { LabourUnit, SurveyLoop } from "../survey/survey.js";
import type { Work } from "../treatments/treatment.js";
import { itemsCents, type WorkRates } from "../treatments/work-cents.js";

const nothing: ThreePointHours = { lowHours: 0, likelyHours: 0, highHours: 0 };

function hoursOf(work: Work, labour: readonly LabourUnit[]): ThreePointHours {
  return work.tasks.reduce((sum, { task, count }) => {
    const unit = labour.find((row) => row.task === task);
    return unit ? plus(sum, unit, count) : sum;
  }, nothing);
}

function plus(a: ThreePointHours, b: ThreePointHours, times = 1): ThreePointHours {
  return {
    lowHours: a.lowHours + times * b.lowHours,
    likelyHours: a.likelyHours + times * b.likelyHours,
    highHours: a.highHours + times * b.highHours,
  };
}

/**
 * The range of the price with tax, quoted at its mean: each loop's outcomes with their probabilities, its hours going
 * well or badly together, and what the whole job has in common (crew, access, fault rate) drawn once.
 * Material and labour are taken at what they sell for, with tax; freight follows the material.
 */
export function rangeOf({
  planned,
  loops,
  labour,
  price,
  job,
  rates,
}: {
  readonly planned: readonly PlannedLoop[];
  readonly loops: readonly SurveyLoop[];
  readonly labour: readonly LabourLine[];
  readonly price: JobPrice;
  readonly job: JobSettings;
  readonly rates: WorkRates;
}): PriceRange {
  const materialFactor = ((1 + job.freight) * (1 + job.taxMaterial)) / (1 - job.marginMaterial);
  const labourFactor = (1 + job.taxLabour) / (1 - job.marginLabour);
  const own = planned.map(({ work }) => hoursOf(work, rates.labour));
  const loopHours = new Map(planned.map(({ key }, index) => [key, own[index] ?? nothing]));
  const fixedHours = labour.map((line) => {
    const inLoops = planned.reduce(
      (count, { work }) => count + work.tasks.filter(({ task }) => task === line.task).reduce((n, t) => n + t.count, 0),
      0,
    );
    const share = line.count === 0 ? 0 : Math.max(0, (line.count - inLoops) / line.count);
    return plus(nothing, line, share);
  });
  const materialCents = price.lines
    .filter(({ kind }) => kind === "material" || kind === "freight" || kind === "minimumCharge")
    .reduce((sum, { sellCents, taxCents }) => sum + sellCents + taxCents, 0);
  return priceRange({
    loops: planned.map((loop) => ({
      key: loop.key,
      access: (loops.find(({ key }) => key === loop.key)?.access ?? "") !== "",
      outcomes: outcomesOf(loop, loopHours.get(loop.key) ?? nothing, rates, materialFactor),
    })),
    fixed: { materialCents, hours: fixedHours.filter(({ highHours }) => highHours > 0) },
    centsPerHour: rates.labourCentsPerHour * labourFactor,
    common: Object.fromEntries(commonFactors.map(({ factor, logSd }) => [factor, { logSd }])),
  });
}

function outcomesOf(
  loop: PlannedLoop,
  hours: ThreePointHours,
  rates: WorkRates,
  factor: number,
): readonly PriceOutcome[] {
  const { risk } = loop;
  if (!risk) return [{ probability: 1, materialCents: 0, hours, faulty: false }];
  const repaired = plus(hours, hoursOf(risk.repair, rates.labour));
  const { fallback } = risk;
  const replaced = fallback ? plus(repaired, hoursOf(fallback.work, rates.labour)) : repaired;
  const devices = fallback ? factor * itemsCents({ items: fallback.items, book: rates.book }) : 0;
  return [
    { probability: 1 - risk.probability, materialCents: 0, hours, faulty: false },
    { probability: risk.probability * risk.repairs, materialCents: 0, hours: repaired, faulty: true },
    { probability: risk.probability * (1 - risk.repairs), materialCents: devices, hours: replaced, faulty: true },
  ].filter(({ probability }) => probability > 0);
}
