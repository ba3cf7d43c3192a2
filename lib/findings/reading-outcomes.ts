import { conditionCount, conditions } from "./conditions.js";
import { evidenceOf } from "./evidence.js";
import { factsOf } from "./facts.js";
import { defaultJudgeModel, judgeModel } from "./judge-model.js";
import type { JudgeOptions } from "./judge-options.js";
import type { Condition, LoopJudgement, LoopRecord } from "./loop-record.js";
import {
  formTable,
  mayMove,
  minutesOf,
  missingReadings,
  movesDevice,
  type NextTask,
  readingWords,
  tableOf,
} from "./measure-next.js";
import { normalised, type Posterior, singlePosterior } from "./posterior.js";
import { zeros } from "./zeros.js";

/** How probable each condition is; those that are impossible are left out, the others add to 1. */
export type ConditionShares = Readonly<Partial<Record<Condition, number>>>;

/** One thing a further reading may show. */
export interface ReadingOutcome {
  readonly outcome: string;
  /** Chance that it shows this. [1] */
  readonly probability: number;
  /** What would then be believed. */
  readonly posterior: ConditionShares;
}

/** A further reading with everything it may show. */
export interface CandidateReading {
  readonly reading: string;
  readonly minutes: number;
  readonly words: string;
  /** Averages, weighed by their probabilities, to what is believed now. */
  readonly outcomes: readonly ReadingOutcome[];
}

/** What is believed of a loop now, and what each further reading may make of it. */
export interface ReadingOutcomes {
  readonly before: ConditionShares;
  readonly readings: readonly CandidateReading[];
}

const outcomeNames: Readonly<Record<string, readonly string[]>> = {
  oldPanelRestingState: ["normal", "faulted"],
  lookAtOldPanel: ["resistor seen", "none seen"],
  closed: ["over-range", "near the cable alone", "near an end-of-line value", "neither"],
  openOneOpening: ["over-range", "unchanged", "higher", "low"],
  openEvery: ["all over-range", "some unchanged", "all unchanged", "higher", "low"],
  openTogether: ["over-range", "unchanged"],
  powerAndReread: ["settles", "stays"],
};

/**
 * Every further reading that may be taken on a loop, what it may show, how probable that is, and what would then be
 * believed: the figures from which the worth of a reading is reckoned, one step ahead. With `judgement` (of the loop in
 * its job) its probabilities are what is believed now. No reading on life safety, on a hold, on a live pair; none that
 * trips a hold-up, 24-hour or unknown use before the account is on test.
 * @example
 * readingOutcomes({ record: { id: "3", openings: 1, readings: { voltsDc: 0, closedOhms: 2.4 } } })
 *   .readings.map(({ reading }) => reading); // [… "openOneOpening", …]
 */
export function readingOutcomes({
  record,
  judgement,
  options,
}: {
  readonly record: LoopRecord;
  readonly judgement?: Pick<LoopJudgement, "findings">;
  readonly options?: JudgeOptions;
}): ReadingOutcomes {
  const model = options === undefined ? defaultJudgeModel : judgeModel(options);
  const evidence = evidenceOf(record, model);
  const single = singlePosterior(evidence, model);
  const posterior = judgement === undefined ? single : believed(single, judgement);
  const before = sharesOf(posterior.condition);
  const { gate } = factsOf(record, evidence.taken, evidence.base, model);
  if (gate === "lifeSafety" || gate === "hold" || gate === "foreignVolts") return { before, readings: [] };
  const task: NextTask = { record, evidence, posterior, model };
  const volts = record.readings.voltsDc === undefined && record.readings.voltsAc === undefined ? ["volts"] : [];
  const allowed = [...volts, ...missingReadings(task)].filter((one) => !movesDevice(one) || mayMove(record, model));
  const readings = allowed.flatMap((reading) => {
    const outcomes = outcomesOf(reading, task);
    if (outcomes.length === 0) return [];
    return [{ reading, minutes: minutesOf(reading, task), words: readingWords(reading, task), outcomes }];
  });
  return { before, readings };
}

/** The judgement's probabilities, spread over the forms as the loop by itself has them. */
function believed(single: Posterior, { findings }: Pick<LoopJudgement, "findings">): Posterior {
  const state = zeros(conditionCount * 3);
  for (const { condition, probability } of findings) {
    const c = conditions.indexOf(condition);
    const own = single.condition[c] ?? 0;
    for (let form = 0; form < 3; form += 1) {
      const share = own > 0 ? (single.state[c * 3 + form] ?? 0) / own : form === 1 ? 1 : 0;
      state[c * 3 + form] = probability * share;
    }
  }
  return normalised(state, single.eol);
}

function sharesOf(condition: readonly number[]): ConditionShares {
  return Object.fromEntries(conditions.flatMap((name, c) => ((condition[c] ?? 0) > 0 ? [[name, condition[c]]] : [])));
}

function outcomesOf(reading: string, task: NextTask): readonly ReadingOutcome[] {
  const { posterior, model } = task;
  const chances = chancesByCondition(reading, task);
  const graded = model.graded[reading === "volts" ? "voltsDc" : reading];
  const names = outcomeNames[reading] ?? graded?.map(({ outcome }) => outcome) ?? [];
  return chances.flatMap((chance, o) => {
    const joint = posterior.condition.map((share, c) => share * (chance[c] ?? 0));
    const probability = joint.reduce((sum, share) => sum + share, 0);
    if (probability <= 0) return [];
    const after = sharesOf(joint.map((share) => share / probability));
    return [{ outcome: names[o] ?? String(o + 1), probability, posterior: after }];
  });
}

/** `[outcome][condition]`: chance of each outcome, adding to 1 over the outcomes. */
function chancesByCondition(reading: string, task: NextTask): readonly (readonly number[])[] {
  const { posterior, model } = task;
  const byForm = formTable(reading, model);
  if (byForm !== undefined) {
    const first = posterior.condition.map((all, c) => {
      const parts = [0, 1, 2].map((form) => (posterior.state[c * 3 + form] ?? 0) * (byForm[c * 3 + form] ?? 0));
      return all > 0 ? parts.reduce((sum, part) => sum + part, 0) / all : 0;
    });
    return [first, first.map((chance) => 1 - chance)];
  }
  const table = tableOf(reading, task);
  if (table === undefined) return [];
  const rows = Array.from({ length: table.count }, (_, o) =>
    table.chance.slice(o * conditionCount, (o + 1) * conditionCount),
  );
  const totals = posterior.condition.map((_, c) => rows.reduce((sum, row) => sum + (row[c] ?? 0), 0));
  return rows.map((row) => row.map((chance, c) => ((totals[c] ?? 0) > 0 ? chance / (totals[c] ?? 1) : 0)));
}
