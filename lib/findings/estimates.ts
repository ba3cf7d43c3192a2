import { at, conditionCount } from "./conditions.js";
import type { Evidence } from "./evidence.js";
import type { LoopJudgement, LoopRecord } from "./loop-record.js";
import type { Posterior } from "./posterior.js";

/** Conditions that leave the end-of-line part readable as shut reading less cable. */
const readable: ReadonlySet<number> = new Set([
  at.soundEolAtEnd,
  at.earthFault,
  at.crossed,
  at.sharedReturn,
  at.bypassed,
  at.doubleEol,
  at.normallyOpen,
  at.parallelContacts,
  at.wrongEol,
]);

/**
 * The end-of-line part: shut reading less cable and contacts, with a 95 % interval from meter, cable and contacts;
 * where a joint or leak hides it, the likeliest nominal value ± 10 %. `null` when there is probably none on the pair.
 */
export function eolEstimate(evidence: Evidence, posterior: Posterior): LoopJudgement["eol"] {
  const { closed, closedSpread } = evidence.taken;
  if (!Number.isFinite(closed)) return null;
  let atEnd = 0;
  for (let c = 0; c < conditionCount; c += 1)
    if (c !== at.shorted && c !== at.open) atEnd += posterior.state[c * 3] ?? 0;
  if (atEnd < 0.5) return null;
  const nominal = evidence.eolOhms[highest(posterior.eol)] ?? 0;
  if (nominal <= 0) return null;
  const top = highest(posterior.condition);
  if (!readable.has(top)) return { ohms: nominal, nominal, lowOhms: 0.9 * nominal, highOhms: 1.1 * nominal };
  const ohms = closed - evidence.base.ohms;
  const half = 1.96 * Math.hypot(closedSpread, evidence.base.spreadOhms);
  if (ohms <= 0) return null;
  return {
    ohms,
    nominal: top === at.wrongEol ? nearestValue(ohms, evidence.eolOhms) : nominal,
    lowOhms: Math.max(0, ohms - half),
    highOhms: ohms + half,
  };
}

function nearestValue(ohms: number, values: number[]): number {
  let best = values[0] ?? ohms;
  for (const value of values) if (Math.abs(Math.log(value / ohms)) < Math.abs(Math.log(best / ohms))) best = value;
  return best;
}

/** Index of the largest entry, the first of equals. */
export function highest(values: number[]): number {
  let best = 0;
  for (let i = 1; i < values.length; i += 1) if ((values[i] ?? 0) > (values[best] ?? 0)) best = i;
  return best;
}

/**
 * The run: without an end-of-line part the shut reading updates the estimate (normal prior, linear in the run), with
 * one it says nothing and the written run stands with its own spread. 95 % interval. [m]
 */
export function runEstimate(record: LoopRecord, evidence: Evidence, posterior: Posterior): LoopJudgement["run"] {
  const { base, taken } = evidence;
  const soundWithout =
    (posterior.condition[at.soundNoEol] ?? 0) +
    (posterior.condition[at.eolInPanel] ?? 0) +
    (posterior.condition[at.tamperLoop] ?? 0);
  const pair = base.pairOhmsPerMeter;
  if (Number.isFinite(taken.closed) && soundWithout >= 0.5 && pair > 0) {
    const rest = base.ohms - pair * base.runMeters;
    const noise2 = base.restSpreadOhms ** 2 + taken.closedSpread ** 2;
    const gain = (base.runSpreadMeters ** 2 * pair) / (pair ** 2 * base.runSpreadMeters ** 2 + noise2);
    const meters = Math.max(0, base.runMeters + gain * (taken.closed - rest - pair * base.runMeters));
    const spread = Math.sqrt(Math.max(0, 1 - gain * pair)) * base.runSpreadMeters;
    return {
      meters,
      lowMeters: Math.max(0, meters - 1.96 * spread),
      highMeters: meters + 1.96 * spread,
      measured: true,
    };
  }
  if (record.runMeters === undefined || !(record.runMeters > 0)) return null;
  const half = 1.96 * base.runSpreadMeters;
  return {
    meters: record.runMeters,
    lowMeters: Math.max(0, record.runMeters - half),
    highMeters: record.runMeters + half,
    measured: false,
  };
}
