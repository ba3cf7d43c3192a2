import type { Cents } from "../quantities/money.js";
import { allocateCents } from "./allocate-cents.js";

/** One stage of payment; shares need not add to 1, they are weights. */
export interface PaymentShare {
  readonly stage: string;
  readonly share: number;
}

/** Usual stages: on order, when the loops are landed, after the walk test; common practice, no source. */
export const usualPaymentShares: readonly PaymentShare[] = [
  { stage: "with the order", share: 0.4 },
  { stage: "when modules and devices are fitted", share: 0.4 },
  { stage: "after walk test and handover", share: 0.2 },
];

/**
 * The total parted into stages that add up to it exactly.
 * @throws {@link InputError} when no share is above 0.
 * @example paymentStages({ totalCents: 100001, shares: usualPaymentShares }).map(({ cents }) => cents)
 */
export function paymentStages({
  totalCents,
  shares,
}: {
  readonly totalCents: Cents;
  readonly shares: readonly PaymentShare[];
}): readonly { readonly stage: string; readonly cents: Cents }[] {
  const cents = allocateCents({ totalCents, weights: shares.map(({ share }) => share) });
  return shares.map(({ stage }, index) => ({ stage, cents: cents[index] ?? 0 }));
}
