/// <reference lib="dom" />
import type { Solve, SolverProgress, SolverResult } from "../../loopwright-solver.js";
import type { FromSolver, ToSolver } from "./solver-messages.js";

/** How often a signal without events is looked at. [ms] */
const signalPollMillis = 50;

/**
 * The exact solver in a worker of its own, which can be ended at once: then the best plan so far comes back with its
 * bound. The worker is kept for the next model.
 */
export function solveInWorker(): Solve {
  let idle: Worker | undefined;
  return (model, { seconds, maxNodes, signal, onProgress }) => {
    if (signal?.aborted || seconds <= 0) return Promise.resolve(cutShort(undefined, undefined));
    return new Promise((resolve, reject) => {
      const worker =
        idle ??
        new Worker(new URL("./solver-worker.ts", import.meta.url), { type: "module", name: "loopwright solver" });
      idle = undefined;
      let progress: SolverProgress | undefined;
      let improved: { readonly values: readonly number[]; readonly objective: number } | undefined;
      const finish = (keep: boolean, settle: () => void) => {
        clearInterval(watch);
        worker.onmessage = null;
        worker.onerror = null;
        if (keep && idle === undefined) idle = worker;
        else worker.terminate();
        settle();
      };
      const watch = setInterval(() => {
        if (signal?.aborted) finish(false, () => resolve(cutShort(improved, progress)));
      }, signalPollMillis);
      worker.onmessage = ({ data }: MessageEvent<FromSolver>) => {
        if ("progress" in data) {
          progress = data.progress;
          onProgress?.(progress);
        } else if ("improved" in data) improved = data.improved;
        else if ("result" in data) finish(true, () => resolve(data.result));
        else finish(false, () => reject(new Error(data.failure)));
      };
      worker.onerror = (event) => {
        event.preventDefault();
        finish(false, () => reject(new Error(event.message || "the solver could not be loaded")));
      };
      const task: ToSolver = { model, seconds, maxNodes };
      worker.postMessage(task);
    });
  };
}

function cutShort(
  improved: { readonly values: readonly number[]; readonly objective: number } | undefined,
  progress: SolverProgress | undefined,
): SolverResult {
  return {
    status: "cut short",
    objective: improved?.objective ?? null,
    values: improved?.values ?? null,
    bound: progress?.bound ?? null,
    seconds: progress?.seconds ?? 0,
  };
}
