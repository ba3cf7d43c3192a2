import { requireBetween } from "../problems/require-between.js";
import { asBuiltZones } from "./as-built-zones.js";
import { type CutOverLoop, isExcluded, loopName } from "./cut-over-loop.js";

/** One part of the hand-over sheet. */
export interface HandoverSection {
  readonly heading: string;
  readonly lines: readonly string[];
  /** What is filled in by hand. */
  readonly blanks: readonly string[];
}

/** What the owner is given and signs for. Codes never stand on it. */
export function handoverSheet({
  loops,
  held,
  times,
  reviewDays = 30,
}: {
  readonly loops: readonly CutOverLoop[];
  readonly held: boolean;
  /** Delays as set. [s] */
  readonly times: readonly { readonly words: string; readonly seconds: number }[];
  /** Days until the review. [d] */
  readonly reviewDays?: number;
}): readonly HandoverSection[] {
  requireBetween({ field: "reviewDays", value: reviewDays, unit: "d", from: 1, to: 366, whole: true });
  const zones = asBuiltZones({ loops });
  const alone = loops.filter(isExcluded);
  const given = loops.filter((loop) => !isExcluded(loop) && loop.treatment === "retire");
  const panelEnd = loops.filter((loop) => !isExcluded(loop) && loop.input !== null && loop.eol?.at === "panel");
  const areas = [...new Set(zones.map(({ area }) => area ?? "no area written"))];
  return [
    {
      heading: "What was taken over",
      lines: [
        ...areas.map(
          (area) => `${area}: ${zones.filter((zone) => (zone.area ?? "no area written") === area).length} zones`,
        ),
        ...times.map(({ words, seconds }) => `${words}: ${seconds} s`),
      ],
      blanks: ["openings proved, n of m", "signals received by the centre at"],
    },
    ...section("Left alone: life safety, not part of this work", alone.map(loopName)),
    ...section("Given up, signed for", given.map(loopName)),
    ...section(
      "Cutting or shorting the cable may not be reported: the resistor sits at the panel",
      panelEnd.map(loopName),
    ),
    {
      heading: "Old system",
      lines: held
        ? ["The old control, its account and its line stay as they are until the written release."]
        : ["Old account closed in writing after the new one was received."],
      blanks: held ? ["told the owner on"] : ["closed on", "confirmed by"],
    },
    {
      heading: "Shown and given",
      lines: [
        "Arming, disarming, hold-up, what to do on a false alarm",
        "Zone list, as-left readings, battery date, who to ring: keep them locked away",
        "The owner sets every code himself; none is written here",
        "Permits, insurer and certificate terms stay with the owner and the licensed company",
      ],
      blanks: ["owner's signature", "technician's signature", "date"],
    },
    { heading: `Review after ${reviewDays} days`, lines: ["Alarms and faults since the hand-over"], blanks: ["date"] },
  ];
}

const section = (heading: string, lines: readonly string[]): readonly HandoverSection[] =>
  lines.length === 0 ? [] : [{ heading, lines, blanks: [] }];
