import { cannotTell as cannotTellRows } from "../reference/generated/cannot-tell.js";
import { at } from "./conditions.js";
import { highest } from "./estimates.js";
import type { Evidence } from "./evidence.js";
import type { LoopJudgement, LoopRecord } from "./loop-record.js";
import type { Posterior } from "./posterior.js";

const words: Readonly<Record<string, string>> = Object.fromEntries(cannotTellRows.map((row) => [row.id, row.words]));

/** What is known of a loop when it is asked what its readings cannot tell. */
export interface CannotTellTask {
  readonly record: LoopRecord;
  readonly evidence: Evidence;
  readonly posterior: Posterior;
  readonly proved: LoopJudgement["openingsProved"];
  readonly eol: LoopJudgement["eol"];
  readonly run: LoopJudgement["run"];
}

/** What no reading of the kinds taken can tell, in words (common practice, no source). */
export function cannotTellOf({ record, evidence, posterior, proved, eol, run }: CannotTellTask): readonly string[] {
  const p = posterior.condition;
  const top = highest(p);
  const { taken } = evidence;
  const readings = record.readings;
  const unproved = proved.proved < proved.total;
  const sound = (p[0] ?? 0) + (p[1] ?? 0) + (p[2] ?? 0);
  const list: string[] = [];
  const say = (id: string): void => {
    const text = words[id];
    if (text !== undefined) list.push(text);
  };
  if ((p[at.soundNoEol] ?? 0) > 0.05 && (p[at.eolInPanel] ?? 0) > 0.05) say("eolAtPanel");
  if (unproved) {
    const text = words["oneOpening"];
    if (text !== undefined)
      list.push(text.replace("{proved}", String(proved.proved)).replace("{total}", String(proved.total)));
    if (sound > 0.3) say("bypassHidden");
    if ((p[at.soundEolAtEnd] ?? 0) > 0.3) say("doubleHidden");
    if (taken.opened.length > 0 && sound > 0.3) say("leakBeyond");
  }
  if (sound > 0.3 && (readings.earth === undefined || readings.toOtherPairOhms === undefined)) say("earthHidden");
  if (taken.closedOverRange) say("openKinds");
  if (eol !== null && top === at.soundEolAtEnd) {
    const text = words["jointInTolerance"];
    if (text !== undefined) list.push(text.replace("{ohms}", String(Math.round(0.05 * eol.nominal))));
  }
  if (run?.measured === true) say("cladCopper");
  if (readings.voltsDc !== undefined || readings.voltsAc !== undefined) say("zeroVolts");
  if (sound > 0.3) say("insulation");
  if (record.foil === true || top === at.highResistance) say("foilJoint");
  if (top === at.soundNoEol || top === at.eolInPanel) say("shortAtEnd");
  if (eol !== null && readings.reversedOhms === undefined) say("lifeSafetyHidden");
  if (record.poweredDetector === true && record.powered !== true) say("unpowered");
  if ((p[at.normallyOpen] ?? 0) > 0.1) say("normallyOpenDevice");
  return list;
}
