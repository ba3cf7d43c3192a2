import type { EstimatedLoop, Place } from "../../loopwright-pane.js";
import type { Engine, EngineState, FileToSave, LoopDrawing } from "../engine/engine-state.js";
import type { Formats } from "./formats.js";

/** The parts of the pane, in the order in which one reads them. */
export const parts = [
  ["answers", "Answers"],
  ["queries", "Queries"],
  ["loops", "Loops"],
  ["readNext", "Read next"],
  ["plan", "Plan"],
  ["options", "Options"],
  ["price", "Price range"],
  ["orders", "Orders"],
  ["terminals", "Terminals"],
  ["zones", "Zones"],
  ["work", "Order of work"],
  ["files", "Files and settings"],
] as const;
export type Part = (typeof parts)[number][0];

/** What the reader chose to see; nothing here changes the job. */
export interface Look {
  readonly part: Part;
  readonly find: string;
  readonly sieve: string;
  readonly order: "survey" | "unsure" | "dear" | "wide";
  /** Keys of the loops that stand open. */
  readonly open: readonly string[];
  /** Most rows drawn at once. */
  readonly most: number;
  /** A cell that a query pointed at: the row of a loop and its column. */
  readonly pointed: { readonly key: string; readonly column: string | null } | null;
  /** What a jump said, beside the query that asked for it. */
  readonly jumped: { readonly query: number; readonly words: string } | null;
  /** Everything is drawn, for paper. */
  readonly printing: boolean;
}

/** What a part can do. */
export interface Acts {
  readonly engine: Engine;
  /** Changes what is seen. */
  readonly look: (change: Partial<Look>) => void;
  /** Goes to a part and puts the keyboard on its heading. */
  readonly go: (part: Part, change?: Partial<Look>) => void;
  /** Goes to a loop, opened. */
  readonly goToLoop: (key: string, change?: Partial<Look>) => void;
  readonly jump: (place: Place, query: number, key: string | undefined) => void;
  /** Says something in the live region. */
  readonly say: (words: string) => void;
  readonly pickFiles: () => void;
  readonly openDemo: () => void;
  readonly readWorkbook: () => void;
  readonly workOut: (how?: { readonly prove: boolean }) => void;
  readonly save: (file: () => Promise<FileToSave | null>) => void;
  /** The picture of a loop: undefined = on its way, drawn when it comes. */
  readonly picture: (key: string) => LoopDrawing | null | undefined;
}

/** Everything a part is drawn from. */
export interface Shown {
  readonly state: EngineState;
  readonly look: Look;
  readonly formats: Formats;
  readonly act: Acts;
}

/** With an estimate at hand. */
export type Estimated = Shown & { readonly estimate: NonNullable<EngineState["estimate"]> };

/** Panel, loop and tag in one line. */
export const nameOfLoop = ({ panel, loop, tag }: Pick<EstimatedLoop, "panel" | "loop" | "tag">): string =>
  [panel, loop, tag].filter((part) => part !== null && part !== "").join(" ");

/** Loops by key as people name them: "P1: 1, 2; P2: 3". None = the whole job. */
export function loopsInWords(loops: readonly EstimatedLoop[], keys: readonly string[]): string {
  if (keys.length === 0) return "whole job";
  const wanted = new Set(keys);
  const byPanel = new Map<string, string[]>();
  for (const { key, panel, loop } of loops) {
    if (wanted.has(key)) byPanel.set(panel, [...(byPanel.get(panel) ?? []), loop]);
  }
  return [...byPanel].map(([panel, names]) => `${panel}: ${names.join(", ")}`).join("; ");
}

/** Whether nobody may touch the loop. */
export const isLeftAlone = ({ treatment, recommended }: EstimatedLoop): boolean =>
  treatment === "excluded" || recommended === "excluded";
