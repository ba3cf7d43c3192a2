import type { LoopJudgement } from "../findings/loop-record.js";
import type { Query } from "../problems/query.js";
import type { OhmsReading } from "../quantities/ohms-reading.js";
import type { OldZone, SurveyLoop } from "../survey/survey.js";
import { leftAloneBecause } from "./left-alone.js";
import { namesAgree } from "./names-agree.js";
import { oldZoneOf, zoneNumberOf } from "./old-zone-of.js";
import { saysUnused } from "./phrases.js";
import { proposeUse, sameUse } from "./propose-use.js";
import { zoneUse, zoneUseWords } from "./zone-use.js";

/** Name of the sheet the old zone list stands on. */
const listSheet = "Old zones";
/** Volts from which a pair counts as live; common practice, no source. [V] */
const liveVolts = 0.5;

/**
 * Where the tag on the wire, the old printed list and what happened when an opening was tried do not agree. One record
 * per disagreement; which side is right is for somebody who looks. No reading is asked for on life-safety loops.
 */
export function zoneConflicts({
  loops,
  oldZones,
  judgements = [],
}: {
  readonly loops: readonly SurveyLoop[];
  readonly oldZones: readonly OldZone[];
  readonly judgements?: readonly LoopJudgement[];
}): readonly Query[] {
  return [
    ...loops.flatMap((loop) => {
      const judgement = judgements.find(({ id }) => id === loop.key);
      const old = oldZoneOf(loop, oldZones);
      const alone = leftAloneBecause({ loop, judgement, listType: old?.type }) !== null;
      return [...listConflicts(loop, old, oldZones, alone), ...(alone ? [] : tripConflicts(loop))];
    }),
    ...duplicateRows(oldZones),
    ...duplicateNumbers(loops),
    ...duplicateTags(loops),
    ...rowsWithoutLoop(loops, oldZones),
  ];
}

const about = (loop: SurveyLoop, column: string, typed: string, message: string): Query => ({
  sheet: loop.sheet,
  row: loop.row,
  column,
  typed,
  message,
  key: loop.key,
});

function listConflicts(
  loop: SurveyLoop,
  old: OldZone | undefined,
  list: readonly OldZone[],
  alone: boolean,
): readonly Query[] {
  const number = loop.oldZone;
  if (number === undefined || number.trim() === "" || list.length === 0) return [];
  if (old === undefined) {
    return [
      about(
        loop,
        "oldZone",
        number,
        `Zone ${number} is not on the old list, but a pair is there. Find out what it serves and whether the list is older than the pair.`,
      ),
    ];
  }
  const unused = [old.name, old.type].find(saysUnused);
  const called = `${loop.label ?? loop.protects ?? "no label"}`;
  if (unused !== undefined) {
    const end = alone ? "Ask who is responsible for it." : "Trace the pair before it is given up or landed.";
    return [
      about(
        loop,
        "oldZone",
        number,
        `The old list calls zone ${number} "${unused}", but a pair is there, tagged "${called}". ${end}`,
      ),
    ];
  }
  const found: Query[] = [];
  if (
    old.name !== undefined &&
    !namesAgree(old.name, loop.label ?? "", [loop.protects, loop.place, loop.device].join(" "))
  ) {
    found.push(
      about(
        loop,
        "label",
        loop.label ?? "",
        `The old list calls zone ${number} "${old.name}", the tag and place say "${[loop.label, loop.protects].filter((text) => text !== undefined).join(", ")}". Say which is right.`,
      ),
    );
  }
  return alone ? found : [...found, ...typeConflicts(loop, old, number)];
}

function typeConflicts(loop: SurveyLoop, old: OldZone, number: string): readonly Query[] {
  if (old.type === undefined || old.type.trim() === "") return [];
  const onList = zoneUse(old.type);
  if (onList === undefined) {
    return [
      about(
        loop,
        "oldZone",
        number,
        `The type "${old.type}" of zone ${number} on the old list was not understood. Write the use beside the loop.`,
      ),
    ];
  }
  const { use } = proposeUse(loop, old.type);
  if (use === null || sameUse(use, onList)) return [];
  return [
    about(
      loop,
      "use",
      loop.use ?? "",
      `The old list has zone ${number} as "${old.type}" (${zoneUseWords(onList)}), the loop looks like ${zoneUseWords(use)}. Confirm the use with the owner.`,
    ),
  ];
}

/** Readings with an opening open, the one of all together last. */
const openedReadings = (loop: SurveyLoop): readonly OhmsReading[] => [
  ...(loop.opened ?? []).map(({ reading }) => reading),
  ...(loop.openedTogether === undefined ? [] : [loop.openedTogether]),
];

function tripConflicts(loop: SurveyLoop): readonly Query[] {
  const shut = loop.closed?.ohms;
  const said = (loop.noteFacts ?? []).find(({ fact }) => fact === "noTrip" || fact === "sameWhenOpened");
  const named = loop.label ?? loop.protects ?? "";
  if (said !== undefined) {
    return [
      about(
        loop,
        "notes",
        loop.notes ?? "",
        `Tagged "${named}", but trying it did not open the loop ("${said.words}"). Either something bridges it or the pair serves another opening: find out which.`,
      ),
    ];
  }
  // Readings on a pair that is live or still landed are no readings of the loop.
  const live = Math.abs(loop.voltsDc ?? 0) > liveVolts || Math.abs(loop.voltsAc ?? 0) > liveVolts;
  if (shut === undefined || live || loop.lifted === "no" || loop.lifted === "one") return [];
  return openedReadings(loop)
    .slice(0, 1)
    .flatMap(({ ohms }) => {
      const typed = loop.typed["opened"] ?? `${ohms}`;
      const rose = ohms === "OL" ? shut !== "OL" : shut !== "OL" && ohms > shut;
      const fell = ohms !== "OL" && (shut === "OL" || ohms < shut);
      if (!rose && !fell && shut !== "OL") {
        return [
          about(
            loop,
            "opened",
            typed,
            `Tagged "${named}", but opening it changed nothing. Either something bridges it or the pair serves another opening: find out which.`,
          ),
        ];
      }
      if (loop.contactForm === "NC" && fell) {
        return [
          about(
            loop,
            "contactForm",
            "NC",
            "Written as normally closed, but the reading fell when it was tripped, as a normally open contact does. Look at the contact.",
          ),
        ];
      }
      if (loop.contactForm === "NO" && rose) {
        return [
          about(
            loop,
            "contactForm",
            "NO",
            "Written as normally open, but the reading rose when it was tripped, as a normally closed contact does. Look at the contact.",
          ),
        ];
      }
      return [];
    });
}

function grouped<T>(items: readonly T[], nameOf: (item: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const name = nameOf(item);
    if (name !== "") groups.set(name, [...(groups.get(name) ?? []), item]);
  }
  return [...groups.values()].filter((group) => group.length > 1);
}

function duplicateRows(oldZones: readonly OldZone[]): readonly Query[] {
  return grouped(oldZones, ({ zone }) => zoneNumberOf(zone)).map((rows) => ({
    sheet: listSheet,
    row: null,
    column: "zone",
    typed: rows[0]?.zone ?? "",
    message: `The old list has this zone ${rows.length} times: ${rows.map(({ name }) => `"${name ?? ""}"`).join(", ")}. Say which row is right.`,
  }));
}

function duplicateNumbers(loops: readonly SurveyLoop[]): readonly Query[] {
  return grouped(loops, ({ oldZone }) => zoneNumberOf(oldZone ?? "")).flatMap((same) =>
    same
      .slice(1)
      .map((loop) =>
        about(
          loop,
          "oldZone",
          loop.oldZone ?? "",
          `Zone ${loop.oldZone} stands beside ${same.length} loops: ${same.map(({ panel, loop: name }) => `${panel} ${name}`.trim()).join(", ")}. Two pairs on one zone, or a wrong number: say which.`,
        ),
      ),
  );
}

function duplicateTags(loops: readonly SurveyLoop[]): readonly Query[] {
  return grouped(loops, ({ panel, label }) =>
    label === undefined || label.trim() === "" ? "" : `${panel} ${label.trim().toLowerCase()}`,
  ).flatMap((same) =>
    same
      .slice(1)
      .map((loop) =>
        about(
          loop,
          "label",
          loop.label ?? "",
          `${same.length} pairs at this panel carry the tag "${loop.label}". Tell them apart before anything is lifted.`,
        ),
      ),
  );
}

function rowsWithoutLoop(loops: readonly SurveyLoop[], oldZones: readonly OldZone[]): readonly Query[] {
  const there = new Set(loops.map(({ oldZone }) => zoneNumberOf(oldZone ?? "")));
  if (!loops.some(({ oldZone }) => oldZone !== undefined)) return [];
  return oldZones
    .filter(({ zone, name }) => !there.has(zoneNumberOf(zone)) && !saysUnused(name))
    .map(({ zone, name }) => ({
      sheet: listSheet,
      row: null,
      column: "zone",
      typed: zone,
      message: `The old list has zone ${zone} "${name ?? ""}", but no surveyed loop has that number. Find its pair or strike it out.`,
    }));
}
