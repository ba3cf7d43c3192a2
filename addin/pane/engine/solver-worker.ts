/// <reference lib="webworker" />
import { loadHighs, runHighs } from "../../loopwright-solver.js";
import type { FromSolver, ToSolver } from "./solver-messages.js";

const scope = self as unknown as DedicatedWorkerGlobalScope;
const tell = (message: FromSolver) => scope.postMessage(message);

// The bundler copies the file and puts its address here.
const wasm = new URL("../../../node_modules/highs/build/highs.wasm", import.meta.url).href;
const highs = loadHighs({ locateFile: () => wasm });

scope.onmessage = async ({ data: { model, seconds, maxNodes } }: MessageEvent<ToSolver>) => {
  try {
    const onProgress = (progress: Parameters<NonNullable<Parameters<typeof runHighs>[2]["onProgress"]>>[0]) =>
      tell({ progress });
    const result = runHighs(await highs, model, { seconds, maxNodes, onProgress }, (values, objective) =>
      tell({ improved: { values, objective } }),
    );
    tell({ result });
  } catch (error) {
    tell({ failure: error instanceof Error ? error.message : String(error) });
  }
};
