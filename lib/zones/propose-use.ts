import { type ZoneUseOfDeviceRow, zoneUseOfDevice } from "../reference/generated/zone-use-of-device.js";
import type { SurveyLoop } from "../survey/survey.js";
import { dailyDoorOf } from "./daily-door.js";
import { phraseIn } from "./phrases.js";
import type { Zone } from "./zone.js";
import { type ZoneUse, zoneUse, zoneUseWords } from "./zone-use.js";

/** The use of one loop, where it comes from, and what a person has to confirm. */
export interface ProposedUse {
  readonly use: ZoneUse | null;
  readonly source: Zone["source"];
  readonly why: string;
  /** Question to ask about it; null = none of its own. */
  readonly question: string | null;
}

/**
 * What a loop is for. A use written in the survey stands, unless the kind of device leaves no choice (hold-up, tamper,
 * key switch, environmental). Otherwise: device kind, then the words of label and place, then the type on the old list.
 */
export function proposeUse(loop: SurveyLoop, listType?: string): ProposedUse {
  const written = zoneUse(loop.use);
  const onList = zoneUse(listType);
  const binding = bindingRow(loop);
  if (binding !== undefined) return boundUse(binding, loop, written);
  if (written !== undefined) return writtenUse(loop, written);
  const unread = loop.use === undefined ? "" : `The use "${loop.use}" was not understood. `;
  const own = useFromDeviceAndWords(loop, onList);
  if (own !== null) {
    if (sameUse(own.use, onList) && unread === "") return { ...own, source: "deviceAndList", question: null };
    const list = onList === undefined ? "" : ` The old list says "${listType ?? ""}".`;
    return {
      ...own,
      source: "proposed",
      question: `${unread}Taken as ${zoneUseWords(own.use)}: ${own.why}.${list} ${confirm}`,
    };
  }
  if (onList !== undefined) {
    const why = `the old list says "${listType ?? ""}"; the device is not known`;
    return {
      use: onList,
      source: "proposed",
      why,
      question: `${unread}Taken as ${zoneUseWords(onList)}: ${why}. ${confirm}`,
    };
  }
  const why = "neither device, words nor old list say what it is for";
  return {
    use: null,
    source: "none",
    why,
    question: `${unread}No use can be proposed: ${why}. Write the use: ${usesToWrite}.`,
  };
}

const usesToWrite =
  "entryExit, perimeter, interior, interiorFollower, audible24h, holdUp, tamper, environmental or arming";
const confirm = "Confirm it in the Use column, or write another use.";

/** Interior and follower differ only in the way in; a tamper or environmental zone is a 24-hour one on most old lists. */
export function sameUse(a: ZoneUse, b: ZoneUse | undefined): boolean {
  const family = (use: ZoneUse): string => (use === "interiorFollower" ? "interior" : use);
  if (b === undefined) return false;
  const around24 = (use: ZoneUse) => use === "tamper" || use === "environmental" || use === "audible24h";
  return family(a) === family(b) || (around24(a) && around24(b) && (a === "audible24h" || b === "audible24h"));
}

function bindingRow(loop: SurveyLoop): ZoneUseOfDeviceRow | undefined {
  const rows = zoneUseOfDevice.filter(
    ({ kind, binding, use }) =>
      binding !== "no" && use !== "lifeSafety" && loop.devices.some((device) => device.kind === kind),
  );
  return rows.find(({ kind }) => kind === "holdUp") ?? rows[0];
}

function boundUse(row: ZoneUseOfDeviceRow, loop: SurveyLoop, written: ZoneUse | undefined): ProposedUse {
  const use = row.use as ZoneUse;
  if (written === "audible24h" && row.binding === "24h") {
    return { use: "audible24h", source: "written", why: "written in the survey", question: null };
  }
  if (written === use || loop.use === undefined) {
    return { use, source: written === use ? "written" : "binding", why: row.why, question: apartQuestion(loop, row) };
  }
  const question = `The use is written "${loop.use}", but ${row.why}. Taken as ${zoneUseWords(use)} until the owner has decided.`;
  return { use, source: "binding", why: row.why, question };
}

function apartQuestion(loop: SurveyLoop, row: ZoneUseOfDeviceRow): string | null {
  const others = loop.devices.filter(({ kind }) => kind !== row.kind).map(({ kind }) => kind);
  return others.length === 0
    ? null
    : `Other devices (${others.join(", ")}) share this pair, but ${row.why}. Part them, or say which device is really there.`;
}

function writtenUse(loop: SurveyLoop, use: ZoneUse): ProposedUse {
  const door = holdsContacts(loop) ? dailyDoorOf(loop) : null;
  const question =
    door !== null && use !== "entryExit"
      ? `"${door.words}" names a door of daily entry, but the use is written ${zoneUseWords(use)}: every use of that door would ` +
        "count as it does for the rest of the loop. Confirm, write entryExit, or split the loop."
      : null;
  return { use, source: "written", why: "written in the survey", question };
}

const holdsContacts = (loop: SurveyLoop): boolean =>
  loop.devices.some(({ kind }) => kind.startsWith("contact")) || loop.devices.every(({ kind }) => kind === "unknown");

function useFromDeviceAndWords(loop: SurveyLoop, onList: ZoneUse | undefined): { use: ZoneUse; why: string } | null {
  const texts = [loop.protects, loop.label, loop.place];
  const named = (means: "entryPath" | "door" | "window") =>
    texts.map((text) => phraseIn(text, means)).find((phrase) => phrase !== undefined);
  if (holdsContacts(loop)) {
    const door = dailyDoorOf(loop);
    if (door !== null)
      return { use: "entryExit", why: `"${door.words}" is a door of daily entry; the whole loop takes its delay` };
    // A door that nobody calls a daily one may still have the delay on the old list.
    if (onList === "entryExit") return { use: "entryExit", why: "the old list gives it the entry delay" };
  }
  const kinds = loop.devices.map(({ kind }) => kind);
  const row =
    zoneUseOfDevice.find(({ kind }) => kind.startsWith("contact") && kinds.some((one) => one === kind)) ??
    zoneUseOfDevice.find(({ kind, use }) => use !== "lifeSafety" && kinds.some((one) => one === kind));
  if (row?.kind === "motion") {
    const path = named("entryPath");
    return path === undefined
      ? { use: "interior", why: row.why }
      : {
          use: "interiorFollower",
          why: `"${path}" may lie on the way from the entry door; after that door it waits for the entry delay`,
        };
  }
  if (row !== undefined) return { use: row.use as ZoneUse, why: row.why };
  const opening = named("door") ?? named("window");
  return opening === undefined ? null : { use: "perimeter", why: `"${opening}" names an opening of the shell` };
}
