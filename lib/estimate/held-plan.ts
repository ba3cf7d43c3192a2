import type { Plan } from "../plan/plan.js";
import type { PriceBook } from "../price-book/article.js";
import { articleByCode } from "../price-book/look-up.js";
import { type Cents, roundCents } from "../quantities/money.js";
import { type Treatment, treatmentWords } from "../treatments/treatment.js";
import { unitCentsOf } from "../treatments/work-cents.js";
import type { BillLine, Estimate } from "./estimate.js";

/**
 * What an estimate fixed: its plan, what is bought and taken for it, its contingency. With it, a later run keeps
 * treatments, modules and orders and only works out the money again, as the workbook's own formulas do; and a new plan
 * can be set beside it.
 */
export interface HeldPlan {
  /** Number of the issue, from 1. */
  readonly revision: number;
  /** Day of the issue, YYYY-MM-DD. */
  readonly date: string;
  readonly plan: Plan;
  readonly bill: readonly BillLine[];
  readonly contingencyCents: Cents;
  readonly totalCents: Cents;
  readonly loops: readonly { readonly key: string; readonly name: string; readonly treatment: Treatment }[];
}

/** Packs the estimator or purchaser wrote on the Bill instead of the planned ones, by the line's id. */
export type PacksWanted = Readonly<Record<string, number>>;

/** The part of an estimate that a later run may hold or be compared with. */
export function heldPlan({
  estimate,
  revision,
  date,
}: {
  readonly estimate: Estimate;
  readonly revision: number;
  readonly date: string;
}): HeldPlan {
  const { plan, bill, price, loops } = estimate;
  return {
    revision,
    date,
    plan,
    bill,
    contingencyCents: price.lines.find(({ id }) => id === "contingency")?.costCents ?? 0,
    totalCents: price.totalCents,
    loops: loops.map(({ key, panel, loop, tag, treatment }) => ({
      key,
      name: [panel, loop, tag].filter((part) => part !== null && part !== "").join(" "),
      treatment,
    })),
  };
}

/**
 * The held bill at today's prices: quantities, suppliers and price steps as they were planned, packs as wanted, unit
 * prices from the book. A code that left the book keeps its old price.
 */
export function heldBill({
  held,
  book,
  packsWanted,
}: {
  readonly held: HeldPlan;
  readonly book: PriceBook;
  readonly packsWanted: PacksWanted;
}): readonly BillLine[] {
  return held.bill.map((line) => {
    const unitCents = priceNow(line, book);
    return withPacks({ ...line, unitCents }, packsWanted);
  });
}

/** The line with the packs that were asked for, if any. */
export function withPacks(line: BillLine, packsWanted: PacksWanted): BillLine {
  const packs = Object.hasOwn(packsWanted, line.id) ? (packsWanted[line.id] ?? line.packs) : line.packs;
  const quantity = packs * line.packSize + line.fromStock;
  return { ...line, packs, lineCents: roundCents(quantity * line.unitCents) };
}

function priceNow(line: BillLine, book: PriceBook): number {
  const article = articleByCode({ book, code: line.code });
  if (!article) return line.unitCents;
  const offer = article.offers.find(({ supplier }) => supplier === line.supplier);
  if (!offer) return unitCentsOf({ book, code: line.code });
  const reached = offer.tiers.filter(({ fromQuantity }) => fromQuantity <= line.packs * line.packSize);
  return (reached.at(-1) ?? offer.tiers[0])?.unitCents ?? line.unitCents;
}

/** One difference between two issues of an estimate: the stuff of a change order. */
export interface EstimateChange {
  readonly what: "treatment" | "material" | "price";
  readonly words: string;
  /** Change of the total or of the line; null where money is not the point. [cents] */
  readonly cents: Cents | null;
}

/** What changed since the last issue: treatments, bill lines, the total. Empty when nothing did. */
export function changesSince({
  before,
  estimate,
}: {
  readonly before: HeldPlan;
  readonly estimate: Estimate;
}): readonly EstimateChange[] {
  const now = heldPlan({ estimate, revision: before.revision + 1, date: before.date });
  const changes: EstimateChange[] = [];
  const earlier = new Map(before.loops.map((loop) => [loop.key, loop]));
  for (const { key, name, treatment } of now.loops) {
    const was = earlier.get(key);
    earlier.delete(key);
    if (!was) changes.push({ what: "treatment", words: `${name}: new row, ${treatmentWords[treatment]}`, cents: null });
    else if (was.treatment !== treatment) {
      const words = `${name}: was ${treatmentWords[was.treatment]}, now ${treatmentWords[treatment]}`;
      changes.push({ what: "treatment", words, cents: null });
    }
  }
  for (const { name } of earlier.values()) {
    changes.push({ what: "treatment", words: `${name}: row is gone`, cents: null });
  }
  const lines = new Map(before.bill.map((line) => [line.id, line]));
  for (const line of now.bill) {
    const was = lines.get(line.id);
    lines.delete(line.id);
    const cents = line.lineCents - (was?.lineCents ?? 0);
    const had = (was?.packs ?? 0) * (was?.packSize ?? 1) + (was?.fromStock ?? 0);
    const has = line.packs * line.packSize + line.fromStock;
    if (had !== has || cents !== 0) {
      changes.push({ what: "material", words: `${line.id}: ${had} ${line.unit} before, ${has} now`, cents });
    }
  }
  for (const line of lines.values()) {
    changes.push({ what: "material", words: `${line.id}: not needed any more`, cents: -line.lineCents });
  }
  const difference = now.totalCents - before.totalCents;
  if (difference !== 0) changes.push({ what: "price", words: "Total with tax", cents: difference });
  return changes;
}
