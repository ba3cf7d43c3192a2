import { nextReadings } from "../reference/generated/next-readings.js";
import { leastLoss, rightActionShares } from "./act.js";
import { closedOutcomes } from "./closed-outcomes.js";
import { type Evidence, evidenceOf } from "./evidence.js";
import { factsOf } from "./facts.js";
import { defaultJudgeModel, type JudgeModel, judgeModel } from "./judge-model.js";
import type { JudgeOptions } from "./judge-options.js";
import type { LoopRecord, NextReading } from "./loop-record.js";
import { everyOpenedOutcomes, openedOutcomes } from "./opened-outcomes.js";
import { openingsProved } from "./openings-proved.js";
import {
  type LikelyConditions,
  likelyConditions,
  lossAfter,
  lossAfterByForm,
  type OutcomeTable,
} from "./outcome-loss.js";
import { type Posterior, singlePosterior } from "./posterior.js";

const rowOf: Readonly<Record<string, { readonly words: string; readonly at: string }>> = Object.fromEntries(
  nextReadings.map((row) => [row.reading, row]),
);

/** Where a further reading is taken: at the panel or at the devices. */
export function readingPlace(reading: string): "panel" | "device" {
  return rowOf[reading]?.at === "panel" ? "panel" : "device";
}

/** Readings that trip or move a device. */
const moving: ReadonlySet<string> = new Set([
  "openOneOpening",
  "openEvery",
  "openTogether",
  "tapped",
  "powerAndReread",
]);

/** Whether a reading trips or moves a device. */
export function movesDevice(reading: string): boolean {
  return moving.has(reading);
}

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
    const minutes = minutesOf(reading, task);
    const cost = minutes * model.figures.moneyPerMinute;
    if (now <= cost || (moving.has(reading) && !mayMove(record, model))) continue;
    const saving = now - lossAfterReading(reading, task, likely);
    if (saving > cost) found.push(nextReading(reading, minutes, saving, cost, task));
  }
  found.sort((a, b) => b.net - a.net);
  if (record.readings.voltsDc === undefined && record.readings.voltsAc === undefined) {
    const saving = Math.max(0, now - lossAfterReading("volts", task, likely));
    const minutes = model.minutes["volts"] ?? 1;
    found.unshift(nextReading("volts", minutes, saving, minutes * model.figures.moneyPerMinute, task));
  }
  return found;
}

/** Whether any further reading besides volts is worth its minutes, on test or not. */
export function anyReadingWorth(task: NextTask): boolean {
  const { posterior, model } = task;
  const likely = likelyConditions(posterior, model);
  const now = leastLoss(rightActionShares(posterior.condition, model), model).loss;
  return missingReadings(task).some((reading) => {
    const cost = minutesOf(reading, task) * model.figures.moneyPerMinute;
    return now > cost && now - lossAfterReading(reading, task, likely) > cost;
  });
}

/** Time a reading takes on this loop. [min] */
export function minutesOf(reading: string, { record, evidence, model }: NextTask): number {
  const minutes = model.minutes[reading] ?? 1;
  return reading === "openEvery" ? minutes * unreadOpenings(record, evidence) : minutes;
}

function nextReading(reading: string, minutes: number, saving: number, cost: number, task: NextTask): NextReading {
  return { reading, minutes, saving, net: saving - cost, words: readingWords(reading, task) };
}

/** How a reading is asked for on this loop. */
export function readingWords(reading: string, { record, evidence }: NextTask): string {
  const words = rowOf[reading]?.words ?? reading;
  if (reading === "openOneOpening") return words.replace("{opening}", String(farthestUnread(record, evidence)));
  if (reading !== "openEvery") return words;
  const { proved, total } = openingsProved(record, evidence);
  return words
    .replace("{unread}", String(unreadOpenings(record, evidence)))
    .replace("{proved}", String(proved))
    .replace("{total}", String(total));
}

/** Readings that were not taken and would tell something, besides volts. */
export function missingReadings({ record, evidence }: NextTask): readonly string[] {
  const { readings, oldPanel } = record;
  const list: string[] = [];
  if (oldPanel?.restingState === undefined || oldPanel.restingState === "unknown") list.push("oldPanelRestingState");
  if (oldPanel?.resistorAtPanel === undefined || oldPanel.resistorAtPanel === "notLooked") list.push("lookAtOldPanel");
  if (Number.isNaN(evidence.taken.closed)) list.push("closed");
  else {
    if (farthestUnread(record, evidence) > 0) list.push("openOneOpening");
    if (unreadOpenings(record, evidence) > 1) list.push("openEvery");
    if (readings.openedTogetherOhms === undefined && record.openings > 1) list.push("openTogether");
    if (readings.reversedOhms === undefined) list.push("reversed");
  }
  if (readings.tapped === undefined && record.shockSensor !== true) list.push("tapped");
  if (readings.earth === undefined) list.push("earth");
  if (readings.toOtherPairOhms === undefined) list.push("toOtherPair");
  if (record.poweredDetector === true && record.powered !== true) list.push("powerAndReread");
  return list;
}

function lossAfterReading(reading: string, task: NextTask, likely: LikelyConditions): number {
  const { posterior, model } = task;
  const byForm = formTable(reading, model);
  if (byForm !== undefined) return lossAfterByForm(posterior, likely, byForm, model);
  const table = tableOf(reading, task);
  return table === undefined ? Number.POSITIVE_INFINITY : lossAfter(posterior, likely, table, model);
}

/** `[condition * 3 + form]`: chance of the first of two outcomes, of readings that depend on the form. */
export function formTable(reading: string, model: JudgeModel): readonly number[] | undefined {
  if (reading === "oldPanelRestingState") return model.restNormal;
  return reading === "lookAtOldPanel" ? model.outcomes.resistorSeen : undefined;
}

/** Chances of the outcomes of any other reading, by condition. */
export function tableOf(reading: string, { posterior, model, evidence, record }: NextTask): OutcomeTable | undefined {
  if (reading === "closed") return closedOutcomes(posterior);
  if (reading === "openOneOpening") {
    return openedOutcomes(record.openings, evidence.taken, farthestUnread(record, evidence));
  }
  if (reading === "openEvery") return everyOpenedOutcomes(record.openings, evidence.taken);
  return model.outcomes.byReading[reading === "volts" ? "voltsDc" : reading];
}

function unreadOpenings(record: LoopRecord, evidence: Evidence): number {
  let unread = 0;
  for (let opening = 1; opening <= record.openings; opening += 1) {
    if (!evidence.taken.openings.includes(opening)) unread += 1;
  }
  return unread;
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
