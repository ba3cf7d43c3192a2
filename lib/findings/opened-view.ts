import { logUniformDensity, normalDensity } from "./distributions.js";
import type { Figures } from "./judge-options.js";
import type { LoopRecord } from "./loop-record.js";
import type { TakenReadings } from "./taken-readings.js";
import { zeros } from "./zeros.js";

/** The opened readings of a loop, each seen as over-range, as the shut reading over again, or as a slip. */
export interface OpenedView {
  readonly openings: number;
  /** Chance of every opened reading as read if the loop simply opens. */
  readonly allOpen: number;
  /** Density of each reading if it is a slip, and if it equals the shut one. */
  readonly slip: number[];
  readonly unchanged: number[];
  /** All opened together: chance if that opens the loop, and if it changes nothing. 1 when not read. */
  readonly togetherOpen: number;
  readonly togetherUnchanged: number;
}

const noReadings = zeros(0);

export function openedView(record: LoopRecord, taken: TakenReadings, figures: Figures): OpenedView {
  const count = taken.opened.length;
  const last = taken.openings[count - 1] ?? 1;
  const openings = Math.max(1, record.openings, last);
  const repeat = repeatSpreadOhms(taken.closed, figures);
  const together = togetherView(taken, figures, repeat);
  if (count === 0) return { openings, allOpen: 1, slip: noReadings, unchanged: noReadings, ...together };
  const slip = zeros(count);
  const unchanged = zeros(count);
  const miss = figures.misreadShare;
  const leaky = record.poweredDetector === true && record.powered !== false;
  let allOpen = 1;
  let slips = 0;
  for (let i = 0; i < count; i += 1) {
    const ohms = taken.opened[i] ?? Number.POSITIVE_INFINITY;
    if (!Number.isFinite(ohms)) {
      slip[i] = miss;
      unchanged[i] = taken.closedOverRange ? 1 : 0;
      allOpen *= (1 - miss) * (leaky ? 1 - figures.offLeakShare : 1);
      continue;
    }
    // A second slip on one loop is likelier than the first: same hand, same meter.
    const density = (slips === 0 ? miss : 0.3) * broadDensity(ohms);
    slip[i] = density;
    unchanged[i] = Number.isFinite(taken.closed) ? normalDensity(ohms, taken.closed, repeat) : 0;
    allOpen *= density + (leaky ? figures.offLeakShare * logUniformDensity(ohms, 5e5, 8e6) : 0);
    slips += 1;
  }
  return { openings, allOpen, slip, unchanged, ...together };
}

function togetherView(taken: TakenReadings, figures: Figures, repeat: number) {
  const miss = figures.misreadShare;
  if (Number.isNaN(taken.together)) return { togetherOpen: 1, togetherUnchanged: 1 };
  if (!Number.isFinite(taken.together)) return { togetherOpen: 1 - miss, togetherUnchanged: miss };
  const same = Number.isFinite(taken.closed) ? normalDensity(taken.together, taken.closed, repeat) : 0;
  return { togetherOpen: miss * broadDensity(taken.together), togetherUnchanged: same };
}

/** Any reading at all, evenly over the decades. [1/Ω] */
export function broadDensity(ohms: number): number {
  return logUniformDensity(Math.max(ohms, 0.05), 0.05, 8e6);
}

/** Spread of the difference of two readings of an unchanged loop. [Ω] */
export function repeatSpreadOhms(ohms: number, figures: Figures): number {
  return Number.isFinite(ohms) ? figures.repeatOhms + figures.repeatShare * ohms : figures.repeatOhms;
}
