import { meanHours } from "../labour/mean-hours.js";
import { type Clause, clausesFor, notInPrice } from "../pricing/clauses.js";
import { paymentStages, usualPaymentShares } from "../pricing/payment-stages.js";
import { formatMoney } from "../quantities/format-money.js";
import { type Cents, roundCents } from "../quantities/money.js";
import type { EstimatedLoop } from "./estimate.js";
import type { PreparedJob } from "./prepare-job.js";

/** What the owner reads besides the price. */
export interface QuoteTerms {
  readonly clauses: readonly Clause[];
  readonly stages: readonly { readonly stage: string; readonly cents: Cents }[];
  /** What is left to others, one sentence each. */
  readonly exclusions: readonly string[];
  readonly validDays: number;
  /** Price with tax of one wireless sensor fitted, for the repair cap; null where the book sells none. */
  readonly wirelessOpeningCents: Cents | null;
}

/** From this probability on a verdict counts as certain enough to carry no clause of its own. */
const certainFrom = 0.8;

/** Clauses from the loops' states, payment stages of the total, validity. */
export function quoteOf({
  prepared,
  loops,
  eolAtPanel,
  totalCents,
}: {
  readonly prepared: PreparedJob;
  readonly loops: readonly EstimatedLoop[];
  /** Keys of the loops whose resistor sits at the panel. */
  readonly eolAtPanel: ReadonlySet<string>;
  readonly totalCents: Cents;
}): QuoteTerms {
  const { job, survey, demoPrices } = prepared;
  const opening = wirelessOpeningCents(prepared);
  const clauses = clausesFor({
    loops: loops.map((loop) => ({
      key: loop.key,
      name: [loop.panel, loop.loop, loop.tag].filter((part) => part !== null && part !== "").join(" "),
      treatment: loop.treatment,
      openingsProved: loop.openingsProved,
      eolAt: loop.input === null ? null : eolAtPanel.has(loop.key) ? "panel" : "device",
      sharedWith: loop.input?.sharedWith ?? [],
      uncertain: loop.probability < certainFrom,
      ownerSignedRetire: false,
    })),
    ...(survey.site.surveyed === undefined ? {} : { surveyedOn: survey.site.surveyed }),
    validDays: job.quoteValidDays,
    repairCapHours: job.repairCapHours,
    wirelessPrice:
      opening === null ? "a price agreed first" : formatMoney({ cents: opening, currency: survey.site.currency }),
    demoPrices,
  });
  const stages = totalCents === 0 ? [] : paymentStages({ totalCents, shares: usualPaymentShares });
  return { clauses, stages, exclusions: notInPrice, validDays: job.quoteValidDays, wirelessOpeningCents: opening };
}

/** Price with tax of one wireless contact fitted: the dearest of the common kinds, so that the clause holds. [cents] */
function wirelessOpeningCents({ rates, job }: PreparedJob): Cents | null {
  const kinds = new Set(["wirelessContactRecessed", "wirelessContactSurface"]);
  const prices = rates.book.articles
    .filter((article) => kinds.has(article.class))
    .flatMap(({ offers }) => offers.map(({ tiers }) => tiers[0]?.unitCents ?? 0));
  const unit = rates.labour.find(({ task }) => task === "wirelessContactRecessed");
  if (prices.length === 0 || !unit) return null;
  const material = roundCents((Math.max(...prices) * (1 + job.freight)) / (1 - job.marginMaterial));
  const work = roundCents((meanHours(unit) * rates.labourCentsPerHour) / (1 - job.marginLabour));
  return material + work + roundCents(material * job.taxMaterial) + roundCents(work * job.taxLabour);
}
