import { parentPort, workerData } from "node:worker_threads";
import { FileRefused } from "./file-refused.js";
import { readFileSheets } from "./read-file.js";

const { name, bytes } = workerData as { readonly name: string; readonly bytes: Uint8Array };
try {
  parentPort?.postMessage({ sheets: readFileSheets({ name, bytes }) });
} catch (error) {
  if (error instanceof FileRefused) parentPort?.postMessage({ refused: { code: error.code, message: error.message } });
  else throw error;
}
