import { nextReadings } from "../reference/generated/next-readings.js";
import { leastLoss, rightActionShares } from "./act.js";
import { actions, at, conditionCount } from "./conditions.js";
import type { Evidence } from "./evidence.js";
import { evidenceOf } from "./evidence.js";
import { factsOf } from "./facts.js";
import { defaultJudgeModel, type JudgeModel, judgeModel } from "./judge-model.js";
import type { JudgeOptions } from "./judge-options.js";
import type { LoopRecord, NextReading } from "./loop-record.js";
import { openedOutcomes } from "./opened-outcomes.js";
import { type Posterior, singlePosterior } from "./posterior.js";

const rowOf: ReadonlyMap<string, { readonly words: string; readonly at: string }> = new Map(
  nextReadings.map((row) => [row.reading, row]),
);

/** Where a further reading is taken: at the panel or at the devices. */
export function readingPlace(reading: string): "panel" | "device" {
  return rowOf.get(reading)?.at === "panel" ? "panel" : "device";
}

/** Readings that trip or move a device. */
const moving: ReadonlySet<string> = new Set(["openOneOpening", "openTogether", "tapped", "powerAndReread"]);

/**
 * Which further readings of one loop are worth their minutes: volts first, whatever their worth, then by money. Exact
 * one-step expected saving over the outcomes of each reading, less minutes × rate; nothing at or under 0 is listed.
 * Nothing on life safety, on a hold or on a live pair.
 */
export function measureNext(record: LoopRecord, options?: JudgeOptions): readonly NextReading[] {
  const model = options === undefined ? defaultJudgeModel : judgeModel(options);
  const evidence = evidenceOf(record, model);
  const { gate } = factsOf(record, evidence.taken, evidence.base, model);
  if (gate === "lifeSafety" || gate === "hold" || gate === "foreignVolts") return [];
  return nextReadingsOf({ record, evidence, posterior: singlePosterior(evidence, model), model });
}

/** What the worth of further readings is reckoned from. */
export interface NextTask {
  readonly record: LoopRecord;
  readonly evidence: Evidence;
  readonly posterior: Posterior;
  readonly model: JudgeModel;
}

/** Ranked further readings from a posterior. */
export function nextReadingsOf(task: NextTask): readonly NextReading[] {
  const { record, posterior, model, evidence } = task;
  const readings = record.readings;
  const now = leastLoss(rightActionShares(posterior.condition, model), 0, model).loss;
  const found: NextReading[] = [];
  const offer = (reading: string, chances: OutcomeChances, opening = 0): void => {
    if (moving.has(reading) && !mayMove(record, model)) return;
    const minutes = model.minutes[reading] ?? 1;
    const saving = Math.max(0, now - expectedLoss(posterior, chances, model));
    const net = saving - minutes * model.figures.moneyPerMinute;
    if (net <= 0 && reading !== "volts") return;
    const words = (rowOf.get(reading)?.words ?? reading).replace("{opening}", String(opening));
    found.push({ reading, minutes, saving, net, words });
  };
  if (record.oldPanel?.restingState === undefined || record.oldPanel.restingState === "unknown") {
    offer("oldPanelRestingState", { count: 2, of: (o, c, form) => flip(o, model.restNormal[c * 3 + form] ?? 0.5) });
  }
  const looked = record.oldPanel?.resistorAtPanel;
  if (looked === undefined || looked === "notLooked")
    offer("lookAtOldPanel", { count: 2, of: (o, _, form) => flip(o, seen(form, model)) });
  if (Number.isNaN(evidence.taken.closed)) offer("closed", { count: 4, of: closedOutcome });
  else {
    const unread = farthestUnread(record, evidence);
    if (unread > 0) offer("openOneOpening", openedOutcomes(record, evidence, unread), unread);
    if (readings.openedTogetherOhms === undefined && record.openings > 1)
      offer("openTogether", { count: 2, of: (o, c) => flip(o, togetherOpens(c)) });
    if (readings.reversedOhms === undefined) offer("reversed", graded("reversed", model));
  }
  if (readings.tapped === undefined && record.shockSensor !== true) offer("tapped", graded("tapped", model));
  if (readings.earth === undefined) offer("earth", graded("earth", model));
  if (readings.toOtherPairOhms === undefined) offer("toOtherPair", graded("toOtherPair", model));
  if (record.poweredDetector === true && record.powered !== true)
    offer("powerAndReread", { count: 2, of: (o, c) => flip(o, c === at.poweredDevice ? 0.95 : 0.03) });
  found.sort((a, b) => b.net - a.net);
  if (readings.voltsDc === undefined && readings.voltsAc === undefined) {
    offer("volts", graded("voltsDc", model));
    const volts = found.pop();
    if (volts !== undefined) found.unshift(volts);
  }
  return found;
}

/** Chance of each outcome of a reading under each condition and form. */
export interface OutcomeChances {
  readonly count: number;
  readonly of: (outcome: number, condition: number, form: number) => number;
}

function flip(outcome: number, chance: number): number {
  return outcome === 0 ? chance : 1 - chance;
}

function graded(reading: string, model: JudgeModel): OutcomeChances {
  const classes = model.graded[reading] ?? [];
  return { count: classes.length, of: (o, c) => classes[o]?.likelihood[c] ?? 0 };
}

function seen(form: number, model: JudgeModel): number {
  const f = model.figures;
  return form === 0 ? f.seenResistorAtEnd : form === 1 ? f.seenResistorNone : f.seenResistorAtPanel;
}

function togetherOpens(condition: number): number {
  if (condition === at.parallelContacts) return 0.99;
  if (condition === at.shorted) return 0.5;
  return condition === at.bypassed ? 0.85 : 0.97;
}

const actionCount = actions.length;

/** Expected loss after the reading, acting best on each outcome. */
function expectedLoss(posterior: Posterior, chances: OutcomeChances, model: JudgeModel): number {
  const shares = new Float64Array(actionCount * chances.count);
  for (let c = 0; c < conditionCount; c += 1) {
    const right = model.rightAction[c] ?? 0;
    if ((posterior.condition[c] ?? 0) < 1e-6) continue;
    for (let form = 0; form < 3; form += 1) {
      const p = posterior.state[c * 3 + form] ?? 0;
      if (p < 1e-7) continue;
      for (let o = 0; o < chances.count; o += 1) {
        const k = o * actionCount + right;
        shares[k] = (shares[k] ?? 0) + p * chances.of(o, c, form);
      }
    }
  }
  let loss = 0;
  for (let o = 0; o < chances.count; o += 1) loss += leastLoss(shares, o * actionCount, model).loss;
  return loss;
}

/** Opening not yet read that is farthest from the panel; 0 when all are read. */
function farthestUnread(record: LoopRecord, evidence: Evidence): number {
  for (let opening = record.openings; opening >= 1; opening -= 1) {
    if (!evidence.taken.openings.includes(opening)) return opening;
  }
  return 0;
}

/** Shut reading not taken yet: over-range, near the cable, near an end-of-line value, or odd. */
function closedOutcome(outcome: number, condition: number, form: number): number {
  const eol = form === 0;
  const table: Partial<Record<number, readonly [number, number, number, number]>> = {
    [at.open]: [0.98, 0.005, 0.005, 0.01],
    [at.poweredDevice]: [0.93, 0.02, 0.02, 0.03],
    [at.shorted]: [0, 0.9, 0, 0.1],
    [at.highResistance]: eol ? [0.01, 0, 0.35, 0.64] : [0.01, 0.04, 0.25, 0.7],
    [at.foil]: eol ? [0.01, 0, 0.6, 0.39] : [0.01, 0.2, 0.05, 0.74],
    [at.leakage]: eol ? [0, 0, 0.55, 0.45] : [0, 0.97, 0, 0.03],
    [at.wrongEol]: [0, 0, 0.5, 0.5],
    [at.normallyOpen]: eol ? [0.02, 0, 0.95, 0.03] : [0.97, 0.01, 0.01, 0.01],
    [at.crossed]: eol ? [0.33, 0, 0.64, 0.03] : [0.33, 0.64, 0, 0.03],
    [at.lifeSafety]: [0.01, 0, 0.8, 0.19],
    [at.unexplained]: [0.15, 0.25, 0.25, 0.35],
    [at.foreignVoltage]: [0.4, 0.15, 0.15, 0.3],
  };
  const row = table[condition] ?? (eol ? [0, 0, 0.95, 0.05] : [0, 0.95, 0, 0.05]);
  return row[outcome] ?? 0;
}

const keptStill = /hold.?up|panic|duress|robbery|24.?h|24 hour|twenty.?four/i;

/** Whether devices of this loop may be tripped now: not on hold-up, 24-hour or unknown uses before the account is on test. */
export function mayMove(record: LoopRecord, model: JudgeModel): boolean {
  if (model.accountOnTest) return true;
  const use = record.use?.trim();
  if (use !== undefined && (use === "" || use === "?" || /unknown/i.test(use) || keptStill.test(use))) return false;
  return ![record.label, record.protects, record.device, record.notes].some(
    (text) => text !== undefined && (keptStill.test(text) || text.trim() === "?" || /^no label$/i.test(text.trim())),
  );
}
