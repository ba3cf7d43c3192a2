import type { Estimate, EstimatedLoop } from "../../loopwright-pane.js";
import { isLeftAlone } from "./shown.js";

/** One reading that is worth its time. */
export interface RankedReading {
  readonly loop: EstimatedLoop;
  readonly reading: EstimatedLoop["next"][number];
  /** What it saves on average, before its time. [cents] */
  readonly savingCents: number;
  /** The same less its time. [cents] */
  readonly netCents: number;
  /** The loop gets an input, so that the reading can change the plan. */
  readonly changesPlan: boolean;
  /** What the loop brings to the width of the price range, where it is among its causes. [cents] */
  readonly spreadCents: number | null;
}

/** Readings by money: those of loops on the wire first, since only they change the plan. */
export function rankedReadings({ loops, price }: Pick<Estimate, "loops" | "price">): readonly RankedReading[] {
  const spreads = spreadsOf(price);
  return loops
    .filter((loop) => !isLeftAlone(loop))
    .flatMap((loop) =>
      loop.next
        .filter(({ net }) => net > 0)
        .map((reading) => ({
          loop,
          reading,
          savingCents: Math.round(reading.saving * 100),
          netCents: Math.round(reading.net * 100),
          changesPlan: loop.input !== null,
          spreadCents: spreads.get(loop.key) ?? null,
        })),
    )
    .sort((a, b) => Number(b.changesPlan) - Number(a.changesPlan) || b.netCents - a.netCents);
}

/** Standard deviation that each loop brings to the price, by key. [cents] */
export const spreadsOf = ({ drivers }: Pick<Estimate["price"], "drivers">): ReadonlyMap<string, number> =>
  new Map(drivers.flatMap(({ key, sdCents }) => (key === null ? [] : [[key, sdCents] as const])));
