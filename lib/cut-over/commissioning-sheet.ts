import { zoneUseWords } from "../zones/zone-use.js";
import { type CutOverLoop, installationOrder, isExcluded, loopName } from "./cut-over-loop.js";

/** One loop on one input, with room for what is found and left. */
export interface CommissioningRow {
  readonly key: string;
  readonly panel: string;
  readonly module: string;
  readonly input: number;
  /** Loops on the same input, this one among them. */
  readonly onInput: readonly string[];
  readonly zones: readonly string[];
  /** null = nobody wrote it; there is a query. */
  readonly behaviour: string | null;
  readonly eolOhms: number | null;
  readonly eolAt: "device" | "panel" | null;
  readonly asFoundShut: string | null;
  readonly asFoundOpened: string | null;
  readonly expectedShut: { readonly lowOhms: number; readonly highOhms: number } | null;
  readonly blanks: readonly string[];
}

/** Last line of the sheet. */
export const notInTheBand = "Not in the band? Write it down and stop. Do not change a resistor to make it fit.";

const blanks = ["left shut", "left opened", "volts", "time", "weather", "initials"] as const;

/** One row per loop that lands on an input, in installation order. */
export function commissioningSheet({ loops }: { readonly loops: readonly CutOverLoop[] }): {
  readonly rows: readonly CommissioningRow[];
  readonly lastLine: string;
} {
  const landed = installationOrder(loops.filter((loop) => !isExcluded(loop)));
  const rows = landed.flatMap((loop): CommissioningRow[] => {
    const { input } = loop;
    if (input === null) return [];
    const { module, number } = input;
    const together = landed.filter(
      (other) => other.panel === loop.panel && other.input?.module === module && other.input.number === number,
    );
    const onWire = loop.zones.filter(({ takenOff }) => takenOff !== true);
    const uses = onWire.flatMap(({ use }) => (use === null ? [] : [zoneUseWords(use)]));
    return [
      {
        key: loop.key,
        panel: loop.panel,
        module,
        input: number,
        onInput: together.map(loopName),
        zones: onWire.map(({ name }) => name),
        behaviour: uses.length === 0 ? null : [...new Set(uses)].join("; "),
        eolOhms: loop.eol?.ohms ?? null,
        eolAt: loop.eol?.at ?? null,
        asFoundShut: loop.asFound?.shut ?? null,
        asFoundOpened: loop.asFound?.opened ?? null,
        expectedShut: loop.expectedShut ?? null,
        blanks,
      },
    ];
  });
  return { rows, lastLine: notInTheBand };
}
