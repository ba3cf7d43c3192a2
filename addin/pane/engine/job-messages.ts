import type { Jobs } from "./jobs.js";

/** Jobs that the page asks for by name; each has at most one argument that can be copied between threads. */
export type JobName = Exclude<keyof Jobs, "cancel">;

/** From the page to the worker. */
export type ToWorker =
  | { readonly kind: "do"; readonly id: number; readonly job: JobName; readonly asked: unknown }
  | { readonly kind: "cancel" }
  | { readonly kind: "drawn"; readonly id: number; readonly png: Uint8Array | null };

/** From the worker to the page. */
export type FromWorker =
  | { readonly kind: "share"; readonly id: number; readonly words: string; readonly share: number | null }
  | { readonly kind: "done"; readonly id: number; readonly result: unknown }
  | { readonly kind: "failed"; readonly id: number; readonly name: string; readonly message: string }
  /** The worker has no way to draw an SVG: the page does it. */
  | {
      readonly kind: "draw";
      readonly id: number;
      readonly svg: string;
      readonly widthPixels: number;
      readonly heightPixels: number;
    };
