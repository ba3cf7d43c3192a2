import { findingsWords } from "../reference/generated/findings-words.js";
import { leastLoss, rightActionShares } from "./act.js";
import { cannotTellOf } from "./cannot-tell.js";
import { actions, at, conditionCount, conditions } from "./conditions.js";
import { eolEstimate, highest, runEstimate } from "./estimates.js";
import { type Evidence, evidenceOf } from "./evidence.js";
import { factsOf, type LoopFacts, ohmsText } from "./facts.js";
import { defaultJudgeModel, type JudgeModel, judgeModel } from "./judge-model.js";
import type { JudgeOptions } from "./judge-options.js";
import type { Action, Fact, Finding, LoopJudgement, LoopRecord } from "./loop-record.js";
import { anyReadingWorth, type NextTask, nextReadingsOf } from "./measure-next.js";
import { openingsProved } from "./openings-proved.js";
import { normalised, type Posterior, singlePosterior } from "./posterior.js";
import { zeros } from "./zeros.js";

const wordsOf = conditions.map((condition) => {
  const row = findingsWords.find((candidate) => candidate.condition === condition);
  return { words: row?.words ?? condition, firstChecks: row?.firstChecks ?? [], usualRepair: row?.usualRepair ?? "" };
});

/**
 * Judges one metered loop by itself: facts first, then how probable every condition is, what to do about it, and which
 * further reading is worth its minutes.
 * @example
 * judgeLoop({ id: "3", openings: 1, runMeters: 20, cable: { gaugeAwg: 22 },
 *   readings: { voltsDc: 0, closedOhms: 2230, opened: [{ opening: 1, ohms: "OL" }] } }).condition; // "soundEolAtEnd"
 */
export function judgeLoop(record: LoopRecord, options?: JudgeOptions): LoopJudgement {
  return judgeLoopWith(record, options === undefined ? defaultJudgeModel : judgeModel(options));
}

/** {@link judgeLoop} with a model made once by {@link judgeModel}: for many loops. */
export function judgeLoopWith(record: LoopRecord, model: JudgeModel): LoopJudgement {
  const evidence = evidenceOf(record, model);
  return judgementOf({ record, model, evidence, posterior: singlePosterior(evidence, model), jobFacts: [] });
}

/** One loop with its posterior, by itself or out of its job. */
export interface JudgementTask {
  readonly record: LoopRecord;
  readonly model: JudgeModel;
  readonly evidence: Evidence;
  readonly posterior: Posterior;
  readonly jobFacts: readonly Fact[];
}

/** Everything that is said of a loop, from its posterior. */
export function judgementOf({ record, model, evidence, posterior, jobFacts }: JudgementTask): LoopJudgement {
  const gate = factsOf(record, evidence.taken, evidence.base, model);
  const proved = openingsProved(record, evidence, gate.gate);
  if (gate.gate === "lifeSafety") return leftAlone(record, gate, proved);
  const said = gatedPosterior(gate, posterior);
  const facts = jobFacts.length === 0 ? gate.facts : [...gate.facts, ...jobFacts];
  const task = { record, evidence, posterior: said, model };
  const action = isSlip(facts) && gate.gate === "none" ? "measureAgain" : gatedAction(gate, task);
  const voided = gate.gate === "foreignVolts" || gate.gate === "notLifted";
  const eol = voided ? null : eolEstimate(evidence, said);
  const run = voided ? null : runEstimate(record, evidence, said);
  const top = highest(said.condition);
  return {
    id: record.id,
    condition: conditions[top] ?? "unexplained",
    probability: said.condition[top] ?? 0,
    findings: findingsOf(said.condition, voided ? undefined : evidence),
    facts,
    openingsProved: proved,
    eol,
    run,
    action,
    cannotTell: voided ? [] : cannotTellOf({ record, evidence, posterior: said, proved, eol, run }),
    next: !model.ranksNext || gate.gate === "hold" || gate.gate === "foreignVolts" ? [] : nextReadingsOf(task),
  };
}

function leftAlone(record: LoopRecord, gate: LoopFacts, proved: LoopJudgement["openingsProved"]): LoopJudgement {
  return {
    id: record.id,
    condition: "lifeSafety",
    probability: 1,
    findings: [findingOf(at.lifeSafety, 1)],
    facts: gate.facts,
    openingsProved: proved,
    eol: null,
    run: null,
    action: "leaveAlone",
    cannotTell: [],
    next: [],
  };
}

/** On a live pair no fault is named; a hold counts as life safety until somebody has seen the device. */
function gatedPosterior(gate: LoopFacts, posterior: Posterior): Posterior {
  if (gate.gate === "foreignVolts") {
    const state = zeros(conditionCount * 3);
    state[at.foreignVoltage * 3 + 1] = 0.97;
    state[at.unexplained * 3 + 1] = 0.03;
    return normalised(state, posterior.eol);
  }
  if (gate.gate === "hold") {
    const state = posterior.state.slice();
    const rest = 1 - (posterior.condition[at.lifeSafety] ?? 0);
    for (let k = 0; k < state.length; k += 1) state[k] = rest > 0 ? (0.45 * (state[k] ?? 0)) / rest : 0;
    state[at.lifeSafety * 3] = 0.55;
    state[at.lifeSafety * 3 + 1] = 0;
    state[at.lifeSafety * 3 + 2] = 0;
    return normalised(state, posterior.eol);
  }
  return posterior;
}

/** A reading that looks like a slip of the pen is read again before anybody acts on it. */
function isSlip(facts: readonly Fact[]): boolean {
  return facts.some(({ fact }) => fact === "unitSlip" || fact === "swappedColumns");
}

/** Least expected loss; measuring again only where a further reading would be worth it, or where it is right itself. */
function gatedAction(gate: LoopFacts, task: NextTask): Action {
  if (gate.gate === "hold") return "leaveAlone";
  if (gate.gate !== "none") return "measureAgain";
  const { posterior, model } = task;
  const shares = rightActionShares(posterior.condition, model);
  const best = leastLoss(shares, model).action;
  if (best !== again || model.rightAction[highest(posterior.condition)] === again) {
    return actions[best] ?? "measureAgain";
  }
  if (anyReadingWorth(task)) return "measureAgain";
  return actions[leastLoss(shares, model, again).action] ?? "measureAgain";
}

const again = actions.indexOf("measureAgain");

function findingsOf(condition: number[], evidence: Evidence | undefined): readonly Finding[] {
  const order: number[] = [];
  for (let c = 0; c < conditionCount; c += 1) if ((condition[c] ?? 0) >= 0.005) order.push(c);
  order.sort((a, b) => (condition[b] ?? 0) - (condition[a] ?? 0));
  return order.map((c, rank) => findingOf(c, condition[c] ?? 0, rank === 0 ? evidence : undefined));
}

function findingOf(condition: number, probability: number, evidence?: Evidence): Finding {
  const row = wordsOf[condition];
  const words = row?.words ?? "";
  return {
    condition: conditions[condition] ?? "unexplained",
    probability,
    words: evidence === undefined ? words : `${words} ${arithmetic(evidence)}`,
    firstChecks: row?.firstChecks ?? [],
    usualRepair: row?.usualRepair ?? "",
  };
}

/** The sum behind the verdict: what was read against what cable, contacts and leads explain. */
function arithmetic({ taken, base }: Evidence): string {
  const low = Math.max(0, base.ohms - 1.96 * base.spreadOhms);
  const band = `cable, contacts and leads explain ${ohmsText(low)} to ${ohmsText(base.ohms + 1.96 * base.spreadOhms)}`;
  if (Number.isNaN(taken.closed)) return `Not read shut; ${band}.`;
  return taken.closedOverRange ? `Read over-range shut; ${band}.` : `Read ${ohmsText(taken.closed)} shut; ${band}.`;
}
