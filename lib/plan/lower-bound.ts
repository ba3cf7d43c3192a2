import type { Cents } from "../quantities/money.js";
import { permittedOffers } from "./permitted-offers.js";
import type { DeviceCounts, PlanningProblem } from "./problem.js";

/**
 * A limit that no plan can be cheaper than, without any solving: each loop at its cheapest, devices at the lowest
 * price there is, modules and conductors for nothing. Weak, but it holds. [cents]
 */
export function quickLowerBound(problem: PlanningProblem): Cents {
  const lowest = new Map(
    problem.items.map(({ code, supply }) => [
      code,
      Math.min(...supply.tiers.map((tier) => tier.unitCents), ...(supply.stock > 0 ? [supply.stockUnitCents] : [])),
    ]),
  );
  const devices = (items: DeviceCounts | undefined) =>
    Object.entries(items ?? {}).reduce(
      (sum, [code, count]) => sum + (count === 0 ? 0 : count * (lowest.get(code) ?? 0)),
      0,
    );
  return permittedOffers(problem).reduce((sum, { withoutInput, keep, repair }) => {
    const ways = [
      ...withoutInput.map(({ offer }) => offer.cents + devices(offer.items)),
      ...keep.map((offer) => offer.baseCents + Math.min(offer.setCents, offer.removeCents) + devices(offer.items)),
      ...repair.map((offer) => offer.cents),
    ].filter((cents) => Number.isFinite(cents));
    return sum + (ways.length === 0 ? 0 : Math.min(...ways));
  }, 0);
}
