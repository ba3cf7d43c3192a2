import { existsSync } from "node:fs";
import { Worker } from "node:worker_threads";
import type { CancelSignal, Solve, SolverProgress, SolverResult } from "../plan/milp-model.js";

/** Messages of the worker thread. */
export type WorkerMessage =
  | { readonly progress: SolverProgress }
  | { readonly improved: { readonly values: readonly number[]; readonly objective: number } }
  | { readonly result: SolverResult }
  | { readonly failure: string };

/** How often a signal without events is looked at. [ms] */
const signalPollMillis = 50;

/** A thread that is loaded and waits for work; it does not keep the process alive. */
let idle: Worker | undefined;

/** The compiled worker beside this file, or the built one when this runs from its source. */
function workerFile(): URL {
  const beside = new URL("./highs-worker.js", import.meta.url);
  if (existsSync(beside)) return beside;
  return new URL("../../dist/solver/highs-worker.js", import.meta.url);
}

/**
 * The exact solver in a thread of its own (Node): the caller's thread stays free, progress arrives while it works, and
 * a raised signal ends it at once with the best plan so far and its bound.
 */
export const solveWithHighsInWorker: Solve = (model, options) => {
  const { seconds, maxNodes, signal, onProgress } = options;
  if (signal?.aborted || seconds <= 0) return Promise.resolve(cutShort(undefined, undefined));
  return new Promise((resolve, reject) => {
    const worker = idle ?? new Worker(workerFile());
    idle = undefined;
    let progress: SolverProgress | undefined;
    let improved: { values: readonly number[]; objective: number } | undefined;
    const finish = (keep: boolean, settle: () => void) => {
      clearInterval(watch);
      worker.off("message", onMessage).off("error", onError).off("exit", onExit);
      if (keep && !idle) {
        idle = worker;
        worker.unref();
      } else void worker.terminate();
      settle();
    };
    const watch = setInterval(() => {
      if (aborted(signal)) finish(false, () => resolve(cutShort(improved, progress)));
    }, signalPollMillis);
    const onMessage = (message: WorkerMessage) => {
      if ("progress" in message) {
        progress = message.progress;
        onProgress?.(progress);
      } else if ("improved" in message) improved = message.improved;
      else if ("result" in message) finish(true, () => resolve(message.result));
      else finish(false, () => reject(new Error(message.failure)));
    };
    const onError = (error: Error) => finish(false, () => reject(error));
    const onExit = (code: number) =>
      finish(false, () => reject(new Error(`The solver's thread ended with code ${code}.`)));
    worker.on("message", onMessage).on("error", onError).on("exit", onExit);
    worker.ref();
    worker.postMessage({ model, seconds, maxNodes });
  });
};

const aborted = (signal: CancelSignal | undefined) => signal?.aborted ?? false;

function cutShort(
  improved: { values: readonly number[]; objective: number } | undefined,
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
