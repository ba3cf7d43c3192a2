import { type Evidence, evidenceOf } from "./evidence.js";
import { factOf, ohmsText, slipFactor } from "./facts.js";
import { type JobHabit, jobPosteriors } from "./job-posterior.js";
import { judgementOf } from "./judge-loop.js";
import { defaultJudgeModel, type JudgeModel, judgeModel } from "./judge-model.js";
import type { JudgeOptions } from "./judge-options.js";
import type { Fact, LoopJudgement, LoopRecord } from "./loop-record.js";
import { withSharedReturns } from "./shared-returns.js";

/** Judgements of many loops, and what each job showed of its installer. */
export interface JobJudgement {
  /** In the order of the records. */
  readonly loops: readonly LoopJudgement[];
  /** By job name; loops without one are a job each and are not listed. */
  readonly jobs: ReadonlyMap<string, JobHabit>;
}

/**
 * Judges loops with what their job tells: loops of one `job` share the installer's habit (where the end-of-line part
 * sits, which value) and the rate of faults. Loops without a job are judged one by one.
 */
export function judgeJob(records: readonly LoopRecord[], options?: JudgeOptions): JobJudgement {
  const model = options === undefined ? defaultJudgeModel : judgeModel(options);
  const loops: LoopJudgement[] = new Array<LoopJudgement>(records.length);
  const jobs = new Map<string, JobHabit>();
  const groups = [...byJob(records)].map(([job, members]) => [job, withReturns(members, model)] as const);
  const evidence = groups.map(([, members]) =>
    evidenceOfJob(
      members.map(({ record }) => record),
      model,
    ),
  );
  const results = jobPosteriors(evidence, model);
  for (const [j, [job, members]] of groups.entries()) {
    const result = results[j];
    if (result === undefined) throw new RangeError("one result per job");
    const { posteriors, habit } = result;
    for (const [k, { record, index }] of members.entries()) {
      const one = evidence[j]?.[k];
      const posterior = posteriors[k];
      if (one === undefined || posterior === undefined) throw new RangeError("one posterior per record");
      const facts = jobFacts(record, one.taken.closed, habit);
      loops[index] = judgementOf({ record, model, evidence: one, posterior, jobFacts: facts });
    }
    if (job.named) jobs.set(job.name, habit);
  }
  return { loops, jobs };
}

interface Member {
  readonly record: LoopRecord;
  readonly index: number;
}

function withReturns(members: readonly Member[], model: JudgeModel): readonly Member[] {
  const records = withSharedReturns(
    members.map(({ record }) => record),
    model,
  );
  return members.map(({ record, index }, k) => ({ record: records[k] ?? record, index }));
}

function byJob(
  records: readonly LoopRecord[],
): ReadonlyMap<{ readonly name: string; readonly named: boolean }, readonly Member[]> {
  const keys = new Map<string, { readonly name: string; readonly named: boolean }>();
  const groups = new Map<{ readonly name: string; readonly named: boolean }, Member[]>();
  for (const [index, record] of records.entries()) {
    let key = record.job === undefined ? undefined : keys.get(record.job);
    if (key === undefined) {
      key = { name: record.job ?? "", named: record.job !== undefined };
      if (record.job !== undefined) keys.set(record.job, key);
      groups.set(key, []);
    }
    groups.get(key)?.push({ record, index });
  }
  return groups;
}

function evidenceOfJob(records: readonly LoopRecord[], model: JudgeModel): readonly Evidence[] {
  const expectedEolOhms = usualExpectation(records);
  const hints = expectedEolOhms === undefined ? {} : { expectedEolOhms };
  return records.map((record) => evidenceOf(record, model, hints));
}

/** The value that most of the records of a job say their panel expects. [Ω] */
function usualExpectation(records: readonly LoopRecord[]): number | undefined {
  const counts = new Map<number, number>();
  for (const record of records) {
    const ohms = record.oldPanel?.expectedEolOhms;
    if (ohms !== undefined) counts.set(ohms, (counts.get(ohms) ?? 0) + 1);
  }
  let best: number | undefined;
  for (const [ohms, count] of counts) if (best === undefined || count > (counts.get(best) ?? 0)) best = ohms;
  return best;
}

/** A reading that is the job's own value in another unit is a question, whatever else it may be. */
function jobFacts(record: LoopRecord, closed: number, habit: JobHabit): readonly Fact[] {
  if (record.oldPanel?.expectedEolOhms !== undefined || record.markedLifeSafety === true) return [];
  if (!Number.isFinite(closed) || habit.habit[0] < 0.7 || habit.eolProbability < 0.8) return [];
  if (slipFactor(closed, habit.eolOhms) === undefined) return [];
  return [factOf("unitSlip", { ohms: ohmsText(closed), expected: ohmsText(habit.eolOhms) })];
}
