import type { PlannedLoop } from "../plan/planned-loop.js";
import type { JobSettings } from "../price-book/job-settings.js";
import { type CarryList, carryList } from "../purchasing/carry-list.js";
import { roundCents } from "../quantities/money.js";

/**
 * How many spare wireless devices to carry beside the bill, so that a repair that fails or a loop that proves other
 * than it read needs no second trip. null when nothing is uncertain.
 */
export function carryOf({
  planned,
  job,
}: {
  readonly planned: readonly PlannedLoop[];
  readonly job: JobSettings;
}): CarryList | null {
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
  return carryList({ loops, confidence: job.confidenceOneTrip, tripCents });
}
