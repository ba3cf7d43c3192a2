import type { LoopJudgement } from "../findings/loop-record.js";
import { type LearningRow, learningRows } from "../learning/learning-rows.js";
import { type FinishedLoop, statisticsOfJob } from "../learning/statistics-of-job.js";
import type { PlannedLoop } from "../plan/planned-loop.js";
import type { Query } from "../problems/query.js";
import type { Survey } from "../survey/survey.js";
import { jobTables } from "./demo-tables.js";
import type { EstimatedLoop } from "./estimate.js";

/** Outcomes that the survey's choice allows. */
const outcomes = ["repaired", "notRepaired", "notTried"] as const;

/**
 * What this job teaches once its as-left readings, repair outcomes and hours are written beside its loops: rows to copy
 * into the finished jobs of the next survey. Empty while none is written.
 */
export function teachesOf({
  survey,
  judgements,
  loops,
  planned,
}: {
  readonly survey: Survey;
  readonly judgements: readonly LoopJudgement[];
  readonly loops: readonly EstimatedLoop[];
  readonly planned: readonly PlannedLoop[];
}): { readonly rows: readonly LearningRow[]; readonly queries: readonly Query[] } {
  const done = survey.loops.flatMap((loop, index): FinishedLoop[] => {
    const { asLeftClosed, repairOutcome, hoursSpent } = loop.edits;
    const judgement = judgements[index];
    const written = [asLeftClosed, repairOutcome, hoursSpent].some((edit) => edit !== undefined);
    if (!written || judgement === undefined) return [];
    return [
      {
        key: loop.key,
        condition: judgement.condition,
        repairOutcome: outcomes.find((one) => one === repairOutcome),
        asLeftShut: asLeftClosed?.ohms,
        expectedShut: loops.find(({ key }) => key === loop.key)?.expectedAsLeft?.shut,
        hoursSpent,
        tasks: planned.find(({ key }) => key === loop.key)?.work.tasks ?? [],
      },
    ];
  });
  if (done.length === 0) return { rows: [], queries: [] };
  const { statistics, queries } = statisticsOfJob({
    job: survey.site.name ?? "job not named",
    finished: "",
    loops: done,
    // Not the learned hours: what a job teaches must not depend on what others taught.
    labour: jobTables(survey).labour,
  });
  return { rows: learningRows([statistics]), queries };
}
