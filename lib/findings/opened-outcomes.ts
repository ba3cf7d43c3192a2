import { at } from "./conditions.js";
import type { Evidence } from "./evidence.js";
import type { LoopRecord } from "./loop-record.js";
import type { OutcomeChances } from "./measure-next.js";

const usual = [0.985, 0.005, 0.006, 0.004] as const;

/**
 * What opening one more opening may show: over-range, no change, a higher finite reading, a low one; under each
 * condition, given which openings were read before.
 */
export function openedOutcomes(record: LoopRecord, evidence: Evidence, opening: number): OutcomeChances {
  const { taken } = evidence;
  const unread = Math.max(1, record.openings - taken.openings.length);
  let lastOpen = 0;
  let changedNothing = 0;
  for (const [i, ohms] of taken.opened.entries()) {
    if (!Number.isFinite(ohms)) lastOpen = Math.max(lastOpen, taken.openings[i] ?? 0);
    else changedNothing += 1;
  }
  // Chance that the trouble lies before the opening asked for, given that those up to the last open one showed none.
  const beyond = Math.min(0.97, Math.max(0.02, (opening - lastOpen) / (record.openings - lastOpen + 1)));
  const bypassed = changedNothing > 0 ? 0.15 : Math.min(0.98, 1 / unread + 0.1);
  const doubled = Math.min(0.98, 0.35 + 0.65 / unread);
  const rows: Partial<Record<number, readonly [number, number, number, number]>> = {
    [at.bypassed]: [1 - bypassed, bypassed, 0, 0],
    [at.parallelContacts]: [0.01, 0.99, 0, 0],
    [at.shorted]: [1 - beyond, beyond, 0, 0],
    [at.leakage]: [1 - beyond, 0, beyond, 0],
    [at.doubleEol]: [1 - doubled, 0, doubled, 0],
    [at.doubledPair]: [0.02, 0, 0.98, 0],
    [at.normallyOpen]: [0.01, 0.01, 0, 0.98],
    [at.lifeSafety]: [0.9, 0.1, 0, 0],
    [at.unexplained]: [0.35, 0.3, 0.25, 0.1],
    [at.foreignVoltage]: [0.4, 0.1, 0.35, 0.15],
  };
  return { count: 4, of: (outcome, condition) => (rows[condition] ?? usual)[outcome] ?? 0 };
}
