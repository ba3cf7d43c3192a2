import { at, conditionCount } from "./conditions.js";
import type { OutcomeTable } from "./outcome-loss.js";
import type { Posterior } from "./posterior.js";
import { zeros } from "./zeros.js";

type Row = readonly [number, number, number, number];

/** Over-range, near the cable, near an end-of-line value, odd; with the part at the far end, and without one there. */
const special: Partial<Record<number, { readonly atEnd: Row; readonly without: Row }>> = {
  [at.open]: both([0.98, 0.005, 0.005, 0.01]),
  [at.poweredDevice]: both([0.93, 0.02, 0.02, 0.03]),
  [at.shorted]: both([0, 0.9, 0, 0.1]),
  [at.highResistance]: { atEnd: [0.01, 0, 0.35, 0.64], without: [0.01, 0.04, 0.25, 0.7] },
  [at.foil]: { atEnd: [0.01, 0, 0.6, 0.39], without: [0.01, 0.2, 0.05, 0.74] },
  [at.leakage]: { atEnd: [0, 0, 0.55, 0.45], without: [0, 0.97, 0, 0.03] },
  [at.wrongEol]: both([0, 0, 0.5, 0.5]),
  [at.normallyOpen]: { atEnd: [0.02, 0, 0.95, 0.03], without: [0.97, 0.01, 0.01, 0.01] },
  [at.crossed]: { atEnd: [0.33, 0, 0.64, 0.03], without: [0.33, 0.64, 0, 0.03] },
  [at.lifeSafety]: both([0.01, 0, 0.8, 0.19]),
  [at.unexplained]: both([0.15, 0.25, 0.25, 0.35]),
  [at.foreignVoltage]: both([0.4, 0.15, 0.15, 0.3]),
};

function both(row: Row): { readonly atEnd: Row; readonly without: Row } {
  return { atEnd: row, without: row };
}

const usual = { atEnd: [0, 0, 0.95, 0.05], without: [0, 0.95, 0, 0.05] } as const;

/** What a shut reading not yet taken may show. Shares are guesses (common practice, no source). */
export function closedOutcomes(posterior: Posterior): OutcomeTable {
  const chance = zeros(4 * conditionCount);
  for (let c = 0; c < conditionCount; c += 1) {
    const all = posterior.condition[c] ?? 0;
    const end = all > 0 ? (posterior.state[c * 3] ?? 0) / all : 0;
    const { atEnd, without } = special[c] ?? usual;
    for (let o = 0; o < 4; o += 1)
      chance[o * conditionCount + c] = end * (atEnd[o] ?? 0) + (1 - end) * (without[o] ?? 0);
  }
  return { count: 4, chance };
}
