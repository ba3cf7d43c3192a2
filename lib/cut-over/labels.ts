import { type CutOverLoop, installationOrder, isExcluded, staysOnWire } from "./cut-over-loop.js";

/** One label to print. */
export interface CableLabel {
  readonly key: string;
  readonly end: "panel" | "field";
  readonly lines: readonly string[];
}

/**
 * A label for either end of every pair that is taken over or given up. The field end names no zone and no use: whoever
 * opens a cover reads nothing about the system. Life safety gets no label from here.
 */
export function labels({ loops }: { readonly loops: readonly CutOverLoop[] }): readonly CableLabel[] {
  return installationOrder(loops.filter((loop) => !isExcluded(loop))).flatMap((loop) => {
    const { key, tag, panel, loop: name, input } = loop;
    const wired = staysOnWire(loop);
    const at = input === null ? "input not fixed" : `${input.module} input ${input.number}`;
    return [
      {
        key,
        end: "panel" as const,
        lines: wired ? [tag, at, `was ${panel} ${name}`] : [tag, "not connected", `was ${panel} ${name}`],
      },
      { key, end: "field" as const, lines: wired ? [tag, `to ${panel}`] : [tag, `to ${panel}, not connected`] },
    ];
  });
}
