import { zoneUseWords } from "../zones/zone-use.js";
import { type CutOverLoop, isExcluded, loopName } from "./cut-over-loop.js";

/** One zone as built. */
export interface AsBuiltZone {
  /** null = arming input. */
  readonly number: number | null;
  readonly name: string;
  readonly behaviour: string;
  readonly area: string | null;
  readonly medium: "wired" | "wireless";
  readonly input: string | null;
  readonly eol: { readonly ohms: number; readonly at: "device" | "panel" } | null;
  /** "n of m openings proved", or "not proved yet". */
  readonly proved: string;
  readonly from: string;
}

/** The zone list as built, by number, arming inputs last. Full of what a burglar would like: never in a shared export. */
export function asBuiltZones({ loops }: { readonly loops: readonly CutOverLoop[] }): readonly AsBuiltZone[] {
  const rows = loops
    .filter((loop) => !isExcluded(loop) && loop.treatment !== "retire")
    .flatMap((loop) =>
      loop.zones.map(({ number, name, use, area, takenOff = false }) => ({
        number,
        name,
        behaviour: use === null ? "not known: ask" : zoneUseWords(use),
        area,
        medium: takenOff || loop.treatment === "wireless" ? ("wireless" as const) : ("wired" as const),
        input: loop.input === null || takenOff ? null : `${loop.input.module} input ${loop.input.number}`,
        eol: takenOff ? null : loop.eol,
        proved: provedWords(loop),
        from: loopName(loop),
      })),
    );
  return rows.sort((a, b) => (a.number ?? Number.MAX_SAFE_INTEGER) - (b.number ?? Number.MAX_SAFE_INTEGER));
}

function provedWords({ openingsProved, openings }: CutOverLoop): string {
  return openingsProved === undefined ? "not proved yet" : `${openingsProved} of ${openings.count} openings proved`;
}
