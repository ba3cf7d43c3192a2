import { existsSync } from "node:fs";
import { Worker } from "node:worker_threads";
import type { TypedSheet } from "../../survey/survey.js";
import { FileRefused, type FileRefusedCode } from "./file-refused.js";

type Answer =
  | { readonly sheets: readonly TypedSheet[] }
  | { readonly refused: { readonly code: FileRefusedCode; readonly message: string } };

/** The compiled worker beside this file, or the built one when this runs from its source. */
function workerFile(): URL {
  const beside = new URL("./worker-entry.js", import.meta.url);
  if (existsSync(beside)) return beside;
  return new URL("../../../dist/workbook/read/worker-entry.js", import.meta.url);
}

/**
 * Reads a file as `readFileSheets` does, in a thread of its own that is ended after `seconds` or when it wants more
 * than `megabytes`, so that no file can hold up or bring down the program.
 * @throws {@link FileRefused} with what to do about it.
 */
export function readFileInWorker(input: {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly seconds?: number;
  readonly megabytes?: number;
}): Promise<readonly TypedSheet[]> {
  const { name, bytes, seconds = 5, megabytes = 512 } = input;
  return new Promise((resolve, reject) => {
    const worker = new Worker(workerFile(), {
      workerData: { name, bytes },
      resourceLimits: { maxOldGenerationSizeMb: megabytes, maxYoungGenerationSizeMb: 64 },
    });
    const clock = setTimeout(() => {
      reject(
        new FileRefused(
          "tooSlow",
          `${name} takes longer than ${seconds} s to read. Copy the survey rows into a new workbook and hand in that.`,
        ),
      );
      void worker.terminate();
    }, seconds * 1000);
    worker.once("message", (answer: Answer) => {
      clearTimeout(clock);
      if ("sheets" in answer) resolve(answer.sheets);
      else reject(new FileRefused(answer.refused.code, answer.refused.message));
      void worker.terminate();
    });
    worker.once("error", (error: Error & { readonly code?: string }) => {
      clearTimeout(clock);
      reject(
        error.code === "ERR_WORKER_OUT_OF_MEMORY"
          ? new FileRefused(
              "tooMuchMemory",
              `${name} needs more than ${megabytes} MB to read. Copy the survey rows into a new workbook and hand in that.`,
            )
          : error,
      );
    });
  });
}
