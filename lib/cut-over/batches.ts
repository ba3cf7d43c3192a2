import type { CutOverLoop } from "./cut-over-loop.js";

/** Loops that leave the old control together and are proved before the next ones follow. */
export interface Batch {
  readonly loops: readonly CutOverLoop[];
  /** Time its openings watch nothing. [min] */
  readonly minutes: number;
}

/**
 * Loops in their order, cut into batches of at most `mostMinutes`. Loops that share an input stay together; a unit that
 * takes longer by itself is a batch of its own.
 */
export function batchesOf({
  loops,
  minutesOf,
  mostMinutes,
}: {
  readonly loops: readonly CutOverLoop[];
  readonly minutesOf: (loop: CutOverLoop) => number;
  /** [min]; absent = no limit. */
  readonly mostMinutes?: number | undefined;
}): readonly Batch[] {
  const units = new Map<string, CutOverLoop[]>();
  for (const loop of loops) {
    const name = loop.input === null ? loop.key : `${loop.panel} ${loop.input.module} ${loop.input.number}`;
    units.set(name, [...(units.get(name) ?? []), loop]);
  }
  const batches: Batch[] = [];
  for (const unit of units.values()) {
    const minutes = unit.reduce((sum, loop) => sum + minutesOf(loop), 0);
    const last = batches.at(-1);
    if (last !== undefined && last.minutes + minutes <= (mostMinutes ?? Number.POSITIVE_INFINITY)) {
      batches[batches.length - 1] = { loops: [...last.loops, ...unit], minutes: last.minutes + minutes };
    } else batches.push({ loops: unit, minutes });
  }
  return batches;
}
