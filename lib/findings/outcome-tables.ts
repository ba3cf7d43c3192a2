import { at, conditionCount } from "./conditions.js";
import type { GradedReadings } from "./graded-readings.js";
import type { Figures } from "./judge-options.js";
import type { OutcomeTable } from "./outcome-loss.js";

/** Outcome tables of the readings whose chances do not depend on the loop. Made once per model. */
export interface FixedOutcomes {
  readonly byReading: Readonly<Record<string, OutcomeTable>>;
  /** `[condition * 3 + form]`: chance that a resistor is seen at the old panel. */
  readonly resistorSeen: readonly number[];
}

/** Tables of the graded readings, of opening all together, of giving a detector supply, and of looking inside. */
export function fixedOutcomes(graded: GradedReadings, figures: Figures): FixedOutcomes {
  const byReading: Record<string, OutcomeTable> = {};
  for (const [reading, classes] of Object.entries(graded)) {
    byReading[reading] = { count: classes.length, chance: classes.flatMap((one) => [...one.likelihood]) };
  }
  byReading["openTogether"] = twoWay((c) => togetherOpens(c));
  byReading["powerAndReread"] = twoWay((c) => (c === at.poweredDevice ? 0.95 : 0.03));
  const { seenResistorAtEnd, seenResistorNone, seenResistorAtPanel } = figures;
  const forms = [seenResistorAtEnd, seenResistorNone, seenResistorAtPanel];
  return { byReading, resistorSeen: Array.from({ length: conditionCount * 3 }, (_, k) => forms[k % 3] ?? 0) };
}

function twoWay(first: (condition: number) => number): OutcomeTable {
  const chance = Array.from({ length: conditionCount }, (_, c) => first(c));
  return { count: 2, chance: [...chance, ...chance.map((one) => 1 - one)] };
}

function togetherOpens(condition: number): number {
  if (condition === at.parallelContacts) return 0.99;
  if (condition === at.shorted) return 0.5;
  return condition === at.bypassed ? 0.85 : 0.97;
}
