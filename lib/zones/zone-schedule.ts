import type { LoopJudgement } from "../findings/loop-record.js";
import type { Query } from "../problems/query.js";
import { requireBetween } from "../problems/require-between.js";
import { zoneLimits } from "../reference/generated/zone-limits.js";
import { zoneUses } from "../reference/generated/zone-uses.js";
import { onlyRow } from "../reference/rows.js";
import type { OldZone, SurveyLoop } from "../survey/survey.js";
import { leftAloneBecause } from "./left-alone.js";
import { oldZoneOf } from "./old-zone-of.js";
import { phraseIn, saysUnused } from "./phrases.js";
import { type ProposedUse, proposeUse } from "./propose-use.js";
import { splitOffers } from "./split-offers.js";
import type { ExcludedLoop, SplitOffer, Zone, ZonePart, ZoneSchedule } from "./zone.js";
import { zoneName } from "./zone-name.js";
import { type ZoneUse, zoneUseWords } from "./zone-use.js";

const limit = (name: string): number => onlyRow("zone-limits", zoneLimits, (row) => row.limit === name).value;

/**
 * The zones of the new system: one per loop in the order of the survey, two or more where the owner had a loop split.
 * Life safety gets none, arming inputs get no number. What is not written is proposed with a question.
 * @throws {@link InputError} when the display length is not 6 to 64 characters.
 */
export function zoneSchedule({
  loops,
  oldZones,
  judgements = [],
  displayCharacters = limit("displayCharacters"),
  areaWords,
  detectorsTakenOff = [],
}: {
  readonly loops: readonly SurveyLoop[];
  readonly oldZones: readonly OldZone[];
  readonly judgements?: readonly LoopJudgement[];
  /** Longest zone name a keypad shows. [characters] */
  readonly displayCharacters?: number;
  /** What the site sheet says of areas, as typed. */
  readonly areaWords?: string;
  /** Keys of loops whose detectors the plan takes off the pair: these get a zone beside the contacts. */
  readonly detectorsTakenOff?: readonly string[];
}): ZoneSchedule {
  requireBetween({
    field: "displayCharacters",
    value: displayCharacters,
    unit: "characters",
    from: 6,
    to: 64,
    whole: true,
  });
  const zones: Zone[] = [];
  const armingInputs: Zone[] = [];
  const excluded: ExcludedLoop[] = [];
  const offers: SplitOffer[] = [];
  const queries: Query[] = [];
  const agreed: SurveyLoop[] = [];
  const taken = new Set<string>();
  for (const loop of loops) {
    const old = oldZoneOf(loop, oldZones);
    const judgement = judgements.find(({ id }) => id === loop.key);
    const alone = leftAloneBecause({ loop, judgement, listType: old?.type });
    if (alone !== null) {
      const words = `Left alone: ${alone}. No zone, no input, no label.`;
      excluded.push({ key: loop.key, panel: loop.panel, loop: loop.loop, words });
      continue;
    }
    const proposed = proposeUse(loop, old?.type);
    if (proposed.question !== null) queries.push(ask(loop, "use", loop.use ?? "", proposed.question));
    if (proposed.source === "deviceAndList") agreed.push(loop);
    const mine = splitOffers(loop, { windows: limit("windowsPerZone"), motions: limit("motionsPerZone") });
    offers.push(...mine);
    queries.push(
      ...mine
        .filter(({ ownerChoice }) => ownerChoice === "notRecorded")
        .map(({ words }) => ask(loop, "pinTreatment", "", words)),
    );
    const takenOff = detectorsTakenOff.includes(loop.key);
    const parts = partsOf(mine, takenOff);
    for (const part of parts) {
      const number = zones.length + 1;
      const zone = zoneOf({ loop, part, parts, proposed, old, number, taken, displayCharacters, takenOff });
      taken.add(zone.name.toLowerCase());
      (zone.alarms ? zones : armingInputs).push(zone);
    }
  }
  const withZone = loops.filter(({ key }) => !excluded.some((alone) => alone.key === key));
  const further = [...agreedQuery(agreed), ...areaQueries(withZone, areaWords)];
  return { zones, armingInputs, excluded, offers, queries: [...queries, ...further] };
}

const ask = (loop: SurveyLoop, column: string, typed: string, message: string): Query => ({
  sheet: loop.sheet,
  row: loop.row,
  column,
  typed,
  message,
  key: loop.key,
});

/** What a loop becomes: itself, or its shares where the owner chose the split or the plan takes the detector off. */
function partsOf(offers: readonly SplitOffer[], takenOff: boolean): readonly (ZonePart | null)[] {
  const chosen = offers.filter(({ ownerChoice }) => ownerChoice === "split").map(({ reason }) => reason);
  const door: readonly ZonePart[] = chosen.includes("dailyDoor") ? ["dailyDoor"] : [];
  const detector: readonly ZonePart[] = takenOff || chosen.includes("mixedDetector") ? ["detector"] : [];
  return door.length + detector.length === 0 ? [null] : [...door, "rest", ...detector];
}

function zoneOf({
  loop,
  part,
  parts,
  proposed,
  old,
  number,
  taken,
  displayCharacters,
  takenOff,
}: {
  readonly loop: SurveyLoop;
  readonly part: ZonePart | null;
  readonly parts: readonly (ZonePart | null)[];
  readonly proposed: ProposedUse;
  readonly old: OldZone | undefined;
  readonly number: number;
  readonly taken: ReadonlySet<string>;
  readonly displayCharacters: number;
  readonly takenOff: boolean;
}): Zone {
  const use = part === null ? proposed.use : useOfPart(loop, part, proposed.use);
  const alarms = use === null || zoneUses.find((row) => row.use === use)?.alarm !== "no";
  const ending = part === "dailyDoor" ? " door" : part === "detector" ? " det" : "";
  const printed = saysUnused(old?.name) ? undefined : old?.name;
  const texts = [printed, loop.label, loop.protects, `${loop.panel} ${loop.loop}`];
  const candidates = texts.flatMap((text) => (text === undefined ? [] : [`${text}${ending}`]));
  const { name, shortened } = zoneName({ candidates, taken, characters: displayCharacters });
  return {
    number: alarms ? number : null,
    name,
    nameShortened: shortened,
    key: loop.key,
    panel: loop.panel,
    loop: loop.loop,
    part,
    use,
    useWords: use === null ? "not known: ask" : zoneUseWords(use),
    source: proposed.source,
    why:
      part === null
        ? proposed.why
        : takenOff
          ? "the plan takes the detector off the pair"
          : "the owner chose to split the loop",
    silent: use === "holdUp",
    always: use === "holdUp" || use === "tamper" || use === "environmental" || use === "audible24h",
    alarms,
    area: loop.area?.trim() || null,
    openings: openingsOf(loop, part, parts.includes("dailyDoor")),
    oldZone: loop.oldZone ?? null,
  };
}

/** Split shares: the door keeps the delay, the rest of the shell is instant, a detector is what its kind says. */
function useOfPart(loop: SurveyLoop, part: ZonePart, whole: ZoneUse | null): ZoneUse | null {
  if (part === "dailyDoor") return "entryExit";
  if (part === "detector") return loop.devices.some(({ kind }) => kind === "motion") ? "interior" : "perimeter";
  return whole === "entryExit" ? "perimeter" : whole;
}

function openingsOf(loop: SurveyLoop, part: ZonePart | null, doorApart: boolean): number {
  if (part === null) return loop.openings.count;
  const detectors = loop.devices.filter(({ kind }) => kind === "motion" || kind === "glassBreak");
  if (part === "detector")
    return Math.max(
      1,
      detectors.reduce((sum, { count }) => sum + count, 0),
    );
  return part === "dailyDoor" ? 1 : Math.max(1, loop.openings.count - (doorApart ? 1 : 0));
}

function agreedQuery(loops: readonly SurveyLoop[]): readonly Query[] {
  const [first] = loops;
  if (first === undefined) return [];
  const names = loops.map(({ panel, loop }) => `${panel} ${loop}`.trim()).join(", ");
  const message =
    `Device and old list say the same use for ${names}: taken so, as the zone schedule shows. Confirm the list with the ` +
    "owner, or write another use in the Use column.";
  return [{ sheet: first.sheet, row: null, column: "use", typed: "", message }];
}

function areaQueries(loops: readonly SurveyLoop[], areaWords: string | undefined): readonly Query[] {
  const without = loops.filter(({ area }) => (area ?? "").trim() === "");
  const some = without.length < loops.length;
  const own = without.filter(({ notes }) => phraseIn(notes, "ownArea") !== undefined);
  const [first] = without;
  const whole: readonly Query[] =
    first !== undefined && !some && areaWords !== undefined && /\d.*\D+.*\d|,|;/.test(areaWords)
      ? [
          {
            sheet: first.sheet,
            row: null,
            column: "area",
            typed: areaWords,
            message:
              "The site has several areas, but no loop says which one it belongs to. Write the area beside each loop.",
          },
        ]
      : [];
  return [
    ...whole,
    ...own.map((loop) =>
      ask(
        loop,
        "area",
        loop.notes ?? "",
        "The note speaks of an area of its own. Write which area in the Area column.",
      ),
    ),
    ...(some ? without : [])
      .filter((loop) => !own.includes(loop))
      .map((loop) =>
        ask(loop, "area", "", "Other loops have an area, this one has none. Write the area it is armed with."),
      ),
  ];
}
