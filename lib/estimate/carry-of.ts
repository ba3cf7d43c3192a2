import type { PlannedLoop } from "../plan/planned-loop.js";
import type { PriceBook } from "../price-book/article.js";
import type { JobSettings } from "../price-book/job-settings.js";
import { articleByCode, unitCentsAt } from "../price-book/look-up.js";
import { type CarryLine, type CarryList, carryList } from "../purchasing/carry-list.js";
import { type Cents, roundCents } from "../quantities/money.js";
import { unitCentsOf } from "../treatments/work-cents.js";
import type { BillLine } from "./estimate.js";

/** A spare to carry and where it comes from. */
export interface CarriedSpare extends CarryLine {
  /** On the van beside what the bill takes from it. */
  readonly fromVan: number;
  /** What must be ordered besides the bill, in whole packs, on sale or return; null = nothing. */
  readonly order: {
    readonly supplier: string;
    readonly packs: number;
    readonly packSize: number;
    readonly unitCents: number;
    /** Not in the price of the job: what is not used goes back. */
    readonly lineCents: Cents;
  } | null;
}

/** {@link CarryList} with the source of every spare. */
export interface EstimatedCarry extends Omit<CarryList, "lines"> {
  readonly lines: readonly CarriedSpare[];
}

/**
 * How many spare wireless devices to carry beside the bill, so that a repair that fails or a loop that proves other
 * than it read needs no second trip, weighed against what comes back unused. null when nothing is uncertain.
 */
export function carryOf({
  planned,
  job,
  book,
  bill,
}: {
  readonly planned: readonly PlannedLoop[];
  readonly job: JobSettings;
  readonly book: PriceBook;
  readonly bill: readonly BillLine[];
}): EstimatedCarry | null {
  const loops = planned.flatMap(({ key, risk }) => {
    const items = Object.entries(risk?.fallback?.items ?? {}).map(([code, quantity]) => ({ code, quantity }));
    if (!risk || items.length === 0) return [];
    const needed = risk.probability * (1 - risk.repairs);
    return [
      {
        key,
        outcomes: [
          { probability: 1 - needed, items: [] },
          { probability: needed, items },
        ],
      },
    ];
  });
  if (loops.length === 0) return null;
  const tripCents = roundCents((job.returnTripHours * job.labourCostPerHour + job.returnTripCost) * 100);
  const codes = new Set(
    loops.flatMap(({ outcomes }) => outcomes.flatMap(({ items }) => items.map(({ code }) => code))),
  );
  const returnCents = Object.fromEntries(
    [...codes].map((code) => [code, job.returnFraction * unitCentsOf({ book, code })]),
  );
  const list = carryList({ loops, confidence: job.confidenceOneTrip, returnCents, tripCents });
  return { ...list, lines: list.lines.map((line) => withSource(line, book, bill)) };
}

/** The van's rest first, then the supplier the bill already orders the article from, else the cheapest. */
function withSource(line: CarryLine, book: PriceBook, bill: readonly BillLine[]): CarriedSpare {
  const article = articleByCode({ book, code: line.code });
  const taken = bill.filter(({ code }) => code === line.code);
  const used = taken.reduce((sum, { fromStock }) => sum + fromStock, 0);
  const fromVan = Math.min(line.carry, Math.max(0, (article?.stock ?? 0) - used));
  const missing = line.carry - fromVan;
  const orderedFrom = taken.find(({ supplier }) => supplier !== null)?.supplier;
  const offers = [...(article?.offers ?? [])].sort(
    (a, b) => (a.tiers[0]?.unitCents ?? 0) - (b.tiers[0]?.unitCents ?? 0),
  );
  const offer = offers.find(({ supplier }) => supplier === orderedFrom) ?? offers[0];
  if (missing <= 0 || !offer) return { ...line, fromVan, order: null };
  const packs = Math.ceil(missing / offer.packSize - 1e-9);
  const quantity = packs * offer.packSize;
  const unitCents = unitCentsAt({ tiers: offer.tiers, quantity });
  const { supplier, packSize } = offer;
  return {
    ...line,
    fromVan,
    order: { supplier, packs, packSize, unitCents, lineCents: roundCents(quantity * unitCents) },
  };
}
