import { nextReadings } from "../reference/generated/next-readings.js";
import { leastLoss, rightActionShares } from "./act.js";
import { closedOutcomes } from "./closed-outcomes.js";
import { type Evidence, evidenceOf } from "./evidence.js";
import { factsOf } from "./facts.js";
import { defaultJudgeModel, type JudgeModel, judgeModel } from "./judge-model.js";
import type { JudgeOptions } from "./judge-options.js";
import type { LoopRecord, NextReading } from "./loop-record.js";
import { openedOutcomes } from "./opened-outcomes.js";
import { type LikelyConditions, likelyConditions, lossAfter, lossAfterByForm } from "./outcome-loss.js";
import { type Posterior, singlePosterior } from "./posterior.js";

const rowOf: Readonly<Record<string, { readonly words: string; readonly at: string }>> = Object.fromEntries(
  nextReadings.map((row) => [row.reading, row]),
);

/** Where a further reading is taken: at the panel or at the devices. */
export function readingPlace(reading: string): "panel" | "device" {
  return rowOf[reading]?.at === "panel" ? "panel" : "device";
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
  const { record, posterior, model } = task;
  const likely = likelyConditions(posterior, model);
  const now = leastLoss(rightActionShares(posterior.condition, model), model).loss;
  const found: NextReading[] = [];
  for (const reading of missingReadings(task)) {
    const minutes = model.minutes[reading] ?? 1;
    const cost = minutes * model.figures.moneyPerMinute;
    if (now <= cost || (moving.has(reading) && !mayMove(record, model))) continue;
    const opening = reading === "openOneOpening" ? farthestUnread(record, task.evidence) : 0;
    const saving = now - lossAfterReading(reading, opening, task, likely);
    if (saving > cost) found.push(nextReading(reading, minutes, saving, cost, opening));
  }
  found.sort((a, b) => b.net - a.net);
  if (record.readings.voltsDc === undefined && record.readings.voltsAc === undefined) {
    const saving = Math.max(0, now - lossAfterReading("volts", 0, task, likely));
    const minutes = model.minutes["volts"] ?? 1;
    found.unshift(nextReading("volts", minutes, saving, minutes * model.figures.moneyPerMinute, 0));
  }
  return found;
}

/** Whether any further reading besides volts is worth its minutes, on test or not. */
export function anyReadingWorth(task: NextTask): boolean {
  const { posterior, model } = task;
  const likely = likelyConditions(posterior, model);
  const now = leastLoss(rightActionShares(posterior.condition, model), model).loss;
  return missingReadings(task).some((reading) => {
    const cost = (model.minutes[reading] ?? 1) * model.figures.moneyPerMinute;
    const opening = reading === "openOneOpening" ? farthestUnread(task.record, task.evidence) : 0;
    return now > cost && now - lossAfterReading(reading, opening, task, likely) > cost;
  });
}

function nextReading(reading: string, minutes: number, saving: number, cost: number, opening: number): NextReading {
  const words = rowOf[reading]?.words ?? reading;
  const said = opening > 0 ? words.replace("{opening}", String(opening)) : words;
  return { reading, minutes, saving, net: saving - cost, words: said };
}

/** Readings that were not taken and would tell something, besides volts. */
function missingReadings({ record, evidence }: NextTask): readonly string[] {
  const { readings, oldPanel } = record;
  const list: string[] = [];
  if (oldPanel?.restingState === undefined || oldPanel.restingState === "unknown") list.push("oldPanelRestingState");
  if (oldPanel?.resistorAtPanel === undefined || oldPanel.resistorAtPanel === "notLooked") list.push("lookAtOldPanel");
  if (Number.isNaN(evidence.taken.closed)) list.push("closed");
  else {
    if (farthestUnread(record, evidence) > 0) list.push("openOneOpening");
    if (readings.openedTogetherOhms === undefined && record.openings > 1) list.push("openTogether");
    if (readings.reversedOhms === undefined) list.push("reversed");
  }
  if (readings.tapped === undefined && record.shockSensor !== true) list.push("tapped");
  if (readings.earth === undefined) list.push("earth");
  if (readings.toOtherPairOhms === undefined) list.push("toOtherPair");
  if (record.poweredDetector === true && record.powered !== true) list.push("powerAndReread");
  return list;
}

function lossAfterReading(reading: string, opening: number, task: NextTask, likely: LikelyConditions): number {
  const { posterior, model, evidence, record } = task;
  if (reading === "oldPanelRestingState") return lossAfterByForm(posterior, likely, model.restNormal, model);
  if (reading === "lookAtOldPanel") return lossAfterByForm(posterior, likely, model.outcomes.resistorSeen, model);
  if (reading === "closed") return lossAfter(posterior, likely, closedOutcomes(posterior), model);
  if (reading === "openOneOpening") {
    return lossAfter(posterior, likely, openedOutcomes(record.openings, evidence.taken, opening), model);
  }
  const table = model.outcomes.byReading[reading === "volts" ? "voltsDc" : reading];
  return table === undefined ? Number.POSITIVE_INFINITY : lossAfter(posterior, likely, table, model);
}

/** Opening not yet read that is farthest from the panel; 0 when all are read. */
function farthestUnread(record: LoopRecord, evidence: Evidence): number {
  for (let opening = record.openings; opening >= 1; opening -= 1) {
    if (!evidence.taken.openings.includes(opening)) return opening;
  }
  return 0;
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
