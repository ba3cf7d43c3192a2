import { removedDevices as table } from "../reference/generated/removed-devices.js";
import { type CutOverLoop, type CutOverPanel, doorTakenOff, isExcluded, loopName } from "./cut-over-loop.js";

/** A device that goes out of use, and what is left in its place. */
export interface RemovedDevice {
  /** Loop, or null for keypads, sirens and the control. */
  readonly key: string | null;
  readonly panel: string;
  readonly kind: string;
  readonly count: number;
  readonly place: string;
  readonly comesOff: boolean;
  readonly finish: "blankPlate" | "note";
  /** Blank plates to buy: none where a note is enough or a new device covers the mark. [count] */
  readonly plates: number;
  readonly words: string;
  /** Kind in the disposal table; null = nothing to take away. */
  readonly disposal: string | null;
}

/**
 * Every device that goes out of use with a blank plate or a note. Devices of kept loops stay; of a split loop only the
 * detectors go. Nothing of a life-safety loop, and while the job is held neither keypads, sirens nor the control.
 */
export function removedDevices({
  loops,
  panels,
  held,
}: {
  readonly loops: readonly CutOverLoop[];
  readonly panels: readonly CutOverPanel[];
  readonly held: boolean;
}): readonly RemovedDevice[] {
  const ofLoops = loops
    .filter((loop) => !isExcluded(loop))
    .flatMap((loop) =>
      goingOf(loop).map(({ kind, count }) =>
        removed({
          kind,
          count,
          key: loop.key,
          panel: loop.panel,
          place: loop.place ?? loop.protects ?? loopName(loop),
          replaced: loop.treatment !== "retire",
        }),
      ),
    );
  const ofPanels = panels.flatMap(({ panel, place, keypads = 0, sirens = 0 }) => {
    const at = { key: null, panel, place: place ?? panel };
    // A control that stays needs its keypads to be silenced and reset.
    const counts: readonly (readonly [kind: string, count: number])[] = [
      ["keypad", keypads],
      ["siren", sirens],
      ["control", 1],
    ];
    return held ? [] : counts.map(([kind, count]) => removed({ kind, count, replaced: false, ...at }));
  });
  return [...ofLoops, ...ofPanels].filter(({ count }) => count > 0);
}

function goingOf(loop: CutOverLoop): CutOverLoop["devices"] {
  const { treatment, devices } = loop;
  if (treatment === "wireless" || treatment === "retire") return devices;
  if (treatment !== "split") return [];
  const contact = devices.find(({ kind }) => kind.startsWith("contact"));
  const door = doorTakenOff(loop) === undefined || contact === undefined ? [] : [{ kind: contact.kind, count: 1 }];
  return [...devices.filter(({ kind }) => kind === "glassBreak" || kind === "motion"), ...door];
}

function removed({
  replaced,
  ...input
}: Pick<RemovedDevice, "key" | "panel" | "kind" | "count" | "place"> & {
  /** A new device comes to the same place. */
  readonly replaced: boolean;
}): RemovedDevice {
  const row = table.find(({ kind }) => kind === input.kind) ?? table.find(({ kind }) => kind === "unknown");
  return {
    ...input,
    comesOff: row?.comesOff === "yes",
    finish: row?.finish === "blankPlate" ? "blankPlate" : "note",
    plates: row?.finish === "blankPlate" && row.comesOff === "yes" && !replaced ? input.count : 0,
    words: row?.words ?? "left as found",
    disposal: row === undefined || row.disposal === "none" ? null : row.disposal,
  };
}
