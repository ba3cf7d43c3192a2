import { parentPort } from "node:worker_threads";
import type { Highs } from "highs";
import loadHighs from "highs";
import type { MilpModel } from "../plan/milp-model.js";
import { runHighs } from "./highs.js";

/** One model to solve; the answers go back to the thread that asked. */
interface WorkerTask {
  readonly model: MilpModel;
  readonly seconds: number;
  readonly maxNodes: number | undefined;
}

const load = loadHighs as unknown as () => Promise<Highs>;
const highs = load();

parentPort?.on("message", async ({ model, seconds, maxNodes }: WorkerTask) => {
  try {
    const result = runHighs(
      await highs,
      model,
      { seconds, maxNodes, onProgress: (progress) => parentPort?.postMessage({ progress }) },
      (values, objective) => parentPort?.postMessage({ improved: { values, objective } }),
    );
    parentPort?.postMessage({ result });
  } catch (error) {
    parentPort?.postMessage({ failure: error instanceof Error ? error.message : String(error) });
  }
});
