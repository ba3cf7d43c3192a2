import { lifeSafetyMatch } from "../findings/life-safety.js";
import type { LoopJudgement } from "../findings/loop-record.js";
import { zoneUseOfDevice } from "../reference/generated/zone-use-of-device.js";
import type { SurveyLoop } from "../survey/survey.js";
import { zoneUse } from "./zone-use.js";

/** Why a loop gets no zone, or null: marked, judged, used, built or worded as life safety, or so on the old list. */
export function leftAloneBecause({
  loop,
  judgement,
  listType,
}: {
  readonly loop: SurveyLoop;
  readonly judgement?: LoopJudgement | undefined;
  /** Type on the old zone list. */
  readonly listType?: string | undefined;
}): string | null {
  if (loop.markedLifeSafety) return "marked life safety";
  if (judgement?.action === "leaveAlone" || judgement?.condition === "lifeSafety")
    return "life safety by the judgement";
  if (zoneUse(loop.use) === "lifeSafety") return "its use is written as life safety";
  // A named person has seen the device: words and list no longer decide.
  if (loop.edits.seenBy !== undefined && loop.edits.seenWhat !== undefined) return null;
  if (zoneUse(listType) === "lifeSafety") return `the old list calls it "${listType ?? ""}"`;
  const { label, protects, device, notes, cable } = loop;
  const match = lifeSafetyMatch({ label, protects, device, cable: cable?.words, notes });
  if (match !== null) return `the word "${match.word}" stands in ${match.field}`;
  const kinds = new Set(zoneUseOfDevice.filter(({ use }) => use === "lifeSafety").map(({ kind }) => kind));
  return loop.devices.some(({ kind }) => kinds.has(kind)) ? "a life-safety device stands on it" : null;
}
