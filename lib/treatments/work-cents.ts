import { meanHours } from "../labour/mean-hours.js";
import type { PriceBook } from "../price-book/article.js";
import { articleByCode, unitCentsAt } from "../price-book/look-up.js";
import type { LabourUnit } from "../survey/survey.js";
import type { LoopRisk, Work } from "./treatment.js";

/** What prices a piece of work: the book, the labour table, what one hour costs us. */
export interface WorkRates {
  readonly book: PriceBook;
  readonly labour: readonly LabourUnit[];
  /** [cents/h] */
  readonly labourCentsPerHour: number;
}

/** Mean hours of the tasks of some work. [h] */
export function workHours({ work, labour }: { readonly work: Work; readonly labour: readonly LabourUnit[] }): number {
  let hours = 0;
  for (const { task, count } of work.tasks) {
    const unit = labour.find((row) => row.task === task);
    if (unit) hours += count * meanHours(unit);
  }
  return hours;
}

/** Cheapest unit price of an article bought by the pack, without tiers that need more than one pack. [cents per unit] */
export function unitCentsOf({ book, code }: { readonly book: PriceBook; readonly code: string }): number {
  const article = articleByCode({ book, code });
  if (!article) return 0;
  return Math.min(...article.offers.map(({ tiers, packSize }) => unitCentsAt({ tiers, quantity: packSize })));
}

/** Expected cost of some work: mean hours at the labour cost plus parts at their unit price. Not rounded. [cents] */
export function workCents({ work, rates }: { readonly work: Work; readonly rates: WorkRates }): number {
  let cents = workHours({ work, labour: rates.labour }) * rates.labourCentsPerHour;
  for (const { code, quantity } of work.parts) cents += quantity * unitCentsOf({ book: rates.book, code });
  return cents;
}

/** Cost of wireless articles at their unit price. Not rounded. [cents] */
export function itemsCents({
  items,
  book,
}: {
  readonly items: Readonly<Record<string, number>>;
  readonly book: PriceBook;
}): number {
  return Object.entries(items).reduce((sum, [code, count]) => sum + count * unitCentsOf({ book, code }), 0);
}

/** Expected cost of what may go wrong with a loop: the repair, and the fall-back where the repair does not cure. [cents] */
export function riskCents({ risk, rates }: { readonly risk: LoopRisk; readonly rates: WorkRates }): number {
  const { probability, repairs, repair, fallback } = risk;
  const replace = fallback
    ? workCents({ work: fallback.work, rates }) + itemsCents({ items: fallback.items, book: rates.book })
    : 0;
  return probability * (workCents({ work: repair, rates }) + (1 - repairs) * replace);
}
