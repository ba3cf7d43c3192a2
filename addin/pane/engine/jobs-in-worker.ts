/// <reference lib="dom" />
import type { FromWorker, JobName, ToWorker } from "./job-messages.js";
import type { Jobs, OnShare } from "./jobs.js";

/** Draws an SVG in the page as a PNG file. */
export type DrawInPage = (picture: {
  readonly svg: string;
  readonly widthPixels: number;
  readonly heightPixels: number;
}) => Promise<Uint8Array>;

/** A file is read in a worker of its own that is ended after so long. [s] */
const readSeconds = 15;

/** Every job in a worker, so that the page stays free. Files from unknown hands get a worker each, ended when slow. */
export function jobsInWorker({ draw }: { readonly draw: DrawInPage }): Jobs {
  let worker: JobWorker | undefined;
  let reader: JobWorker | undefined;
  const ask = <Result>(job: JobName, asked: unknown, onShare?: OnShare): Promise<Result> => {
    worker ??= new JobWorker(draw, () => {
      worker = undefined;
    });
    return worker.ask<Result>(job, asked, onShare);
  };
  return {
    read: async (files) => {
      reader?.end(named("FileRefused", "Reading was ended."));
      const own = new JobWorker(draw, () => undefined);
      reader = own;
      const names = files.map(({ name }) => name).join(", ");
      const slow = `${names} takes longer than ${readSeconds} s to read. Copy the survey rows into a new workbook and open that.`;
      const clock = setTimeout(() => own.end(named("FileRefused", slow)), readSeconds * 1000);
      try {
        return await own.ask("read", files);
      } finally {
        clearTimeout(clock);
        own.end(named("FileRefused", "Reading was ended."));
        if (reader === own) reader = undefined;
      }
    },
    open: (asked) => ask("open", asked),
    workOut: (asked, onShare) => ask("workOut", asked, onShare),
    aside: (asked) => ask("aside", asked),
    workbook: (asked) => ask("workbook", asked),
    ordersCsv: (asked) => ask("ordersCsv", asked),
    blankSurvey: (asked) => ask("blankSurvey", asked),
    drawing: (asked) => ask("drawing", asked),
    cancel: () => {
      worker?.post({ kind: "cancel" });
      reader?.end(named("FileRefused", "Reading was ended."));
    },
  };
}

interface Asked {
  readonly resolve: (result: never) => void;
  readonly reject: (error: Error) => void;
  readonly onShare: OnShare | undefined;
}

/** One worker thread and what was asked of it. */
class JobWorker {
  readonly #worker = new Worker(new URL("./job-worker.ts", import.meta.url), {
    type: "module",
    name: "loopwright jobs",
  });
  readonly #asked = new Map<number, Asked>();
  readonly #draw: DrawInPage;
  #count = 0;

  constructor(draw: DrawInPage, onDeath: () => void) {
    this.#draw = draw;
    this.#worker.onmessage = ({ data }: MessageEvent<FromWorker>) => this.#hear(data);
    this.#worker.onerror = (event) => {
      event.preventDefault();
      onDeath();
      this.end(new Error(event.message || "the part that works things out could not be loaded"));
    };
  }

  ask<Result>(job: JobName, asked: unknown, onShare?: OnShare): Promise<Result> {
    return new Promise<Result>((resolve, reject) => {
      const id = this.#count++;
      this.#asked.set(id, { resolve, reject, onShare });
      this.post({ kind: "do", id, job, asked });
    });
  }

  post(message: ToWorker): void {
    this.#worker.postMessage(message);
  }

  /** Ends the thread; what was asked of it and not answered fails with the reason. */
  end(reason: Error): void {
    this.#worker.terminate();
    for (const { reject } of this.#asked.values()) reject(reason);
    this.#asked.clear();
  }

  #hear(message: FromWorker): void {
    if (message.kind === "draw") {
      void this.#drawFor(message);
      return;
    }
    const asked = this.#asked.get(message.id);
    if (message.kind === "share") {
      asked?.onShare?.(message.words, message.share);
      return;
    }
    this.#asked.delete(message.id);
    if (message.kind === "done") asked?.resolve(message.result as never);
    else asked?.reject(named(message.name, message.message));
  }

  async #drawFor(message: Extract<FromWorker, { kind: "draw" }>): Promise<void> {
    const png = await this.#draw(message).catch(() => null);
    this.post({ kind: "drawn", id: message.id, png });
  }
}

/** An error as it was thrown in the worker: its name says whether its words are meant for the user. */
function named(name: string, message: string): Error {
  const error = new Error(message);
  error.name = name;
  return error;
}
