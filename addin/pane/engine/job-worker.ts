/// <reference lib="webworker" />
import { doJobs } from "./do-jobs.js";
import type { FromWorker, ToWorker } from "./job-messages.js";
import type { Jobs, OnShare } from "./jobs.js";
import { solveInWorker } from "./solve-in-worker.js";

const scope = self as unknown as DedicatedWorkerGlobalScope;
const tell = (message: FromWorker) => scope.postMessage(message);

/** Pictures that the page is drawing. */
const drawing = new Map<number, { resolve(png: Uint8Array): void; reject(error: Error): void }>();
let drawings = 0;

const jobs = doJobs({
  solve: solveInWorker(),
  renderPicture: ({ svg, widthPixels, heightPixels }) =>
    new Promise((resolve, reject) => {
      const id = drawings++;
      drawing.set(id, { resolve, reject });
      tell({ kind: "draw", id, svg, widthPixels, heightPixels });
    }),
});

/** The job by its name; the page's side of the wire has checked names and arguments by their types. */
type AnyJob = (asked: unknown, onShare: OnShare) => Promise<unknown>;
const jobNamed = (name: Exclude<keyof Jobs, "cancel">) => jobs[name] as AnyJob;

scope.onmessage = async ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === "cancel") jobs.cancel();
  else if (data.kind === "drawn") {
    const waiting = drawing.get(data.id);
    drawing.delete(data.id);
    if (data.png === null) waiting?.reject(new Error("this browser could not draw a picture"));
    else waiting?.resolve(data.png);
  } else {
    const { id, job, asked } = data;
    try {
      const result = await jobNamed(job)(asked, (words, share) => tell({ kind: "share", id, words, share }));
      tell({ kind: "done", id, result });
    } catch (error) {
      const { name, message } = error instanceof Error ? error : { name: "Error", message: String(error) };
      tell({ kind: "failed", id, name, message });
    }
  }
};
