import { type CutOverHold, type CutOverLoop, isExcluded } from "./cut-over-loop.js";

/** Written release of the life-safety circuits by the responsible contractor. */
export interface WrittenRelease {
  readonly name: string;
  readonly date: string;
}

/**
 * Whether the old control must stay as it is: a hold stands, or a loop is left alone and no release with name and date
 * is written. The loops decide by themselves: a forgotten hold changes nothing.
 */
export function isHeld({
  loops,
  holds,
  release,
}: {
  readonly loops: readonly CutOverLoop[];
  readonly holds: readonly CutOverHold[];
  readonly release?: WrittenRelease | undefined;
}): boolean {
  if (holds.some(({ hold }) => hold === "lifeSafetyOnOldControl")) return true;
  const released = release !== undefined && release.name.trim() !== "" && release.date.trim() !== "";
  return loops.some(isExcluded) && !released;
}
