import { judgeJob } from "./judge-job.js";
import type { JudgeOptions } from "./judge-options.js";
import type { LoopJudgement, LoopRecord } from "./loop-record.js";
import { readingPlace } from "./measure-next.js";

/** One line of a walk: a reading, at a panel or at the devices of one loop. */
export interface WalkReading {
  /** Old panel, "" where the records name none. */
  readonly panel: string;
  readonly at: "panel" | "device";
  readonly reading: string;
  /** Loops it is taken on; more than one only for volts, which come first on every pair. */
  readonly loops: readonly string[];
  readonly minutes: number;
  readonly saving: number;
  readonly net: number;
  readonly words: string;
}

/** What bounds the list. */
export interface WalkLimits {
  /** Lines per panel besides volts; absent = 12. [count] */
  readonly linesPerPanel?: number;
  /** Judgements made before, in the order of the records; absent = judged here. */
  readonly judgements?: readonly LoopJudgement[];
}

/**
 * The readings of a whole job that are worth a trip, short enough to be used, in walking order: panel by panel as the
 * records name them; at each panel volts on every pair that lacks them, then what is read at the panel, then what is
 * read at the devices, loop by loop. The most valuable lines are kept when there are too many.
 */
export function measureNextForJob(
  records: readonly LoopRecord[],
  options?: JudgeOptions,
  limits: WalkLimits = {},
): readonly WalkReading[] {
  const judgements = limits.judgements ?? judgeJob(records, options).loops;
  const panels = [...new Set(records.map((record) => record.panel ?? ""))];
  return panels.flatMap((panel) => panelWalk(panel, records, judgements, limits.linesPerPanel ?? 12));
}

function panelWalk(
  panel: string,
  records: readonly LoopRecord[],
  judgements: readonly LoopJudgement[],
  most: number,
): readonly WalkReading[] {
  const lines: { readonly line: WalkReading; readonly order: number }[] = [];
  const volts: WalkReading[] = [];
  for (const [order, record] of records.entries()) {
    if ((record.panel ?? "") !== panel) continue;
    for (const next of judgements[order]?.next ?? []) {
      const line = { panel, at: readingPlace(next.reading), loops: [record.id], ...next };
      if (next.reading === "volts") volts.push(line);
      else lines.push({ line, order });
    }
  }
  const kept = [...lines].sort((a, b) => b.line.net - a.line.net).slice(0, most);
  kept.sort((a, b) => Number(a.line.at === "device") - Number(b.line.at === "device") || a.order - b.order);
  return [...together(volts), ...kept.map(({ line }) => line)];
}

/** One line for the volts of all pairs of a panel. */
function together(lines: readonly WalkReading[]): readonly WalkReading[] {
  const [first] = lines;
  if (first === undefined) return [];
  const sum = (of: (line: WalkReading) => number): number => lines.reduce((total, line) => total + of(line), 0);
  return [
    {
      ...first,
      loops: lines.flatMap((line) => line.loops),
      minutes: sum((line) => line.minutes),
      saving: sum((line) => line.saving),
      net: sum((line) => line.net),
    },
  ];
}
