import type { EstimatedLoop } from "../estimate/estimate.js";
import type { Block, Cell, Sheet } from "../report/model.js";
import type { SplitOffer, Zone } from "../zones/zone.js";
import { blank, column, number, paragraph, text, title, wrapped } from "./cells.js";
import { isHandsOff, isWired, type SheetInput } from "./sheet-input.js";

/** What the owner programs: every zone with its use, area and input; arming inputs apart; offers to split. */
export function zoneScheduleSheet(input: SheetInput): Sheet | undefined {
  const { zones, armingInputs, offers } = input.estimate.zones;
  if (zones.length + armingInputs.length === 0) return undefined;
  const first = zones.filter((zone) => zones.find((other) => other.number === zone.number) === zone);
  return {
    name: "Zone schedule",
    orientation: "landscape",
    ...(first.length === 0 ? {} : { headingOf: "zones" }),
    blocks: [
      title("Zone schedule"),
      paragraph(
        "One zone for each input or wireless group. Confirm every use with the owner before programming. Keep and share this list as sensitive.",
        "note",
      ),
      ...(first.length === 0 ? [] : [zoneTable(input, first, zones)]),
      ...armingBlocks(input, armingInputs),
      ...offerBlocks(input, offers),
    ],
  };
}

function zoneTable(input: SheetInput, first: readonly Zone[], zones: readonly Zone[]): Block {
  return {
    kind: "table",
    name: "zones",
    whenEmpty: "",
    columns: [
      column("number", "Zone", "count", 6),
      column("name", "Zone name", "wrapped", 26),
      column("use", "Behaviour", "wrapped", 24),
      column("area", "Area", "text", 12),
      column("input", "Input or wireless", "wrapped", 24),
      column("loops", "Old loops", "wrapped", 20),
      column("old", "Old zone", "text", 10),
      column("openings", "Openings", "count", 9),
      column("note", "Note", "wrapped", 48),
    ],
    rows: first.map((zone) =>
      zoneRow(
        input,
        zones.filter((other) => other.number === zone.number),
      ),
    ),
  };
}

/** One zone: the loops joined on its input, or a single one. */
function zoneRow(input: SheetInput, members: readonly Zone[]): readonly Cell[] {
  const distinct = (values: readonly (string | null)[], between = "; ") =>
    [...new Set(values.filter((value) => value !== null && value !== ""))].join(between);
  const loops = members.map((zone) => loopOf(input, zone));
  return [
    number(members[0]?.number),
    wrapped(members.map(({ name }) => name).join(" + ")),
    wrapped(distinct(members.map(behaviour))),
    text(distinct(members.map(({ area }) => area))),
    wrapped(distinct(members.map((zone, index) => inputWords(zone, loops[index])))),
    wrapped(
      distinct(
        members.map(({ panel, loop }) => `${panel} ${loop}`.trim()),
        ", ",
      ),
    ),
    text(distinct(members.map(({ oldZone }) => oldZone))),
    number(
      members.reduce((sum, { openings }) => sum + openings, 0),
      "count",
    ),
    wrapped([...new Set(notesOf(members, loops))].join("; ")),
  ];
}

const loopOf = ({ estimate }: SheetInput, { key }: Zone): EstimatedLoop | undefined =>
  estimate.loops.find((loop) => loop.key === key);

/** How the zone behaves, and whether somebody wrote so. */
function behaviour({ useWords, use, source, silent, always }: Zone): string {
  const marks = [
    ...(silent ? ["no sounder"] : []),
    ...(always ? ["armed or not"] : []),
    ...(use !== null && source === "proposed" ? ["proposed: confirm"] : []),
  ];
  return marks.length === 0 ? useWords : `${useWords}; ${marks.join("; ")}`;
}

function inputWords({ part }: Zone, loop: EstimatedLoop | undefined): string {
  if (loop === undefined) return "";
  const wireless = loop.wireless.map(({ code, count }) => `${count} × ${code}`).join(", ") || "wireless";
  if (part === "detector" && loop.wireless.length > 0) return wireless;
  if (isHandsOff(loop)) return "none before it was read again";
  return isWired(loop) && loop.input !== null ? `${loop.input.module} input ${loop.input.number}` : wireless;
}

const provisional = new Set(["repair", "rewire", "measureAgain"]);

function notesOf(members: readonly Zone[], loops: readonly (EstimatedLoop | undefined)[]): readonly string[] {
  const wirelessDevices = loops.flatMap((loop) => (loop?.treatment === "wireless" ? loop.wireless : []));
  const devices = wirelessDevices.reduce((sum, { count }) => sum + count, 0);
  return [
    ...(members.length > 1 ? ["loops joined in series: the owner agrees that they show as one zone"] : []),
    ...(devices > 1 ? [`${devices} wireless devices, each may be a zone of its own`] : []),
    ...(loops.some((loop) => loop !== undefined && provisional.has(loop.treatment))
      ? ["provisional until repaired or read again"]
      : []),
    ...members.filter(({ part }) => part !== null).map(({ why }) => why),
    ...members.filter(({ use, source }) => use === null || source === "proposed").map(({ why }) => why),
  ];
}

function armingBlocks(input: SheetInput, arming: readonly Zone[]): readonly Block[] {
  if (arming.length === 0) return [];
  return [
    title("Arming inputs: no alarm zones", 2),
    {
      kind: "table",
      name: "arming_inputs",
      whenEmpty: "",
      columns: armingColumns,
      rows: arming.map((zone) => [
        blank,
        wrapped(zone.name),
        wrapped(behaviour(zone)),
        text(zone.area),
        wrapped(inputWords(zone, loopOf(input, zone))),
        wrapped(`${zone.panel} ${zone.loop}`.trim()),
      ]),
    },
  ];
}

/** Under the columns of the zones, so that both tables stand in line. */
const armingColumns = [
  column("none", "Zone", "text", 6),
  column("name", "Name", "wrapped", 26),
  column("use", "What it does", "wrapped", 24),
  column("area", "Area", "text", 12),
  column("input", "Input or wireless", "wrapped", 24),
  column("loops", "Old loop", "wrapped", 20),
];

const choiceWords: Readonly<Record<SplitOffer["ownerChoice"], string>> = {
  split: "the owner wants the split",
  keepTogether: "the owner keeps it as it is",
  notRecorded: "owner's choice: ____________",
};

function offerBlocks({ estimate }: SheetInput, offers: readonly SplitOffer[]): readonly Block[] {
  if (offers.length === 0) return [];
  const nameOf = (key: string) => {
    const loop = estimate.loops.find((one) => one.key === key);
    return [loop?.panel, loop?.loop, loop?.tag].filter((part) => part).join(" ");
  };
  return [
    title("Offers to split a loop", 2),
    ...offers.map(({ key, words, ownerChoice }) => paragraph(`${nameOf(key)}: ${words} – ${choiceWords[ownerChoice]}`)),
  ];
}
