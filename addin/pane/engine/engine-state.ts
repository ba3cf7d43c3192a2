import type { Estimate, HeadingMatch, Place, Query, Summary, Survey, SurveySheetName } from "../../loopwright-pane.js";

/** Where the pane runs: by itself in a browser, or beside a workbook in Excel. */
export type PaneHost = "browser" | "excel";

/**
 * What a loop can be pinned to; the estimator's short list of treatments. `split` is a keep for which the owner wants the
 * detector as a zone of its own.
 */
export type PinKind = "keep" | "split" | "repair" | "wireless" | "retire";

/** What the estimator wants for one loop, whether typed in the survey or chosen in the pane. */
export interface LoopWish {
  /** The plan must do this. */
  readonly pin: PinKind | null;
  /** The plan must not do these. */
  readonly forbid: readonly PinKind[];
}

/** How one sheet of the opened files was taken. */
export interface OpenedSheet {
  /** Name of the sheet, or of the text file without its ending. */
  readonly name: string;
  readonly rows: number;
  /** The survey table it was taken for; null = not used. */
  readonly as: SurveySheetName | null;
}

/** What the engine is doing. At most one thing at a time. */
export type Activity = "opening" | "working out" | "exporting" | "writing";

export interface Progress {
  readonly activity: Activity;
  /** For the reader: "Comparing options". */
  readonly words: string;
  /** 0 to 1, never falling within one activity; null = it cannot be told how far. */
  readonly share: number | null;
}

/** Why something did not happen, in words with the mend; never a stack trace. */
export interface Problem {
  readonly activity: Activity | "jumping";
  readonly words: string;
}

/** Everything the screen shows. A new record at each change; parts that did not change keep their identity. */
export interface EngineState {
  readonly host: PaneHost;
  /** What is open: file names, "the demo site" or "this workbook"; null before anything is. */
  readonly source: string | null;
  /** The open survey is the bundled invented one. */
  readonly demo: boolean;
  readonly sheets: readonly OpenedSheet[];
  /** How typed headings were understood, by sheet. */
  readonly headings: readonly HeadingMatch[];
  /** The survey as read, with the wishes in it; null before a survey is open. */
  readonly survey: Survey | null;
  /** Questions to the surveyor: those of the estimate when there is one, else of the survey. */
  readonly queries: readonly Query[];
  /** The last estimate; it stays while it is stale, so that the screen can show it greyed. */
  readonly estimate: Estimate | null;
  /** The five answers of the first screen; null without an estimate. */
  readonly summary: Summary | null;
  /** Something changed since the estimate was worked out: `workOut()` again. */
  readonly stale: boolean;
  /** Wishes by loop key; loops without a wish are absent. */
  readonly wishes: Readonly<Record<string, LoopWish>>;
  /** What each loop can be pinned to, by key; empty for loops that are left alone. Known with an estimate. */
  readonly choices: Readonly<Record<string, readonly PinKind[]>>;
  /** The estimate before the present one, for "was, now"; null when there is none. */
  readonly before: { readonly totalCents: number; readonly costCents: number } | null;
  readonly units: "metric" | "imperial";
  readonly paper: "A4" | "Letter";
  readonly progress: Progress | null;
  readonly problem: Problem | null;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
}

/** A file to be saved by the screen. */
export interface FileToSave {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** A file that was dropped or picked. */
export interface FileToOpen {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A picture as SVG text, black on white, with words for those who do not see it. */
export interface LoopDrawing {
  readonly svg: string;
  readonly alt: string;
  readonly widthPixels: number;
  readonly heightPixels: number;
}

/** What a jump did: Excel showed the cell, or the screen says where it stands. */
export interface Jump {
  readonly shown: boolean;
  /** "Loops, row 7, closed". */
  readonly words: string;
}

/**
 * The pane without its picture. No method throws or rejects for what a user can cause: that stands in
 * `state.problem`, and methods that hand something back hand back null.
 */
export interface Engine {
  readonly state: EngineState;
  /** Calls back after each change; the returned function ends it. */
  subscribe(listener: (state: EngineState) => void): () => void;

  /** Opens workbooks and text files as one survey, in place of what is open. */
  openFiles(files: readonly FileToOpen[]): Promise<void>;
  /** Opens the bundled invented site. */
  demo(): Promise<void>;
  /** In Excel: reads the survey of the open workbook again. In a browser: nothing. */
  readFromWorkbook(): Promise<void>;
  /** Says which survey table an opened sheet is; null = do not use it. Reads again, can be undone. */
  takeSheetAs(sheet: string, as: SurveySheetName | null): Promise<void>;
  /** Says which column a typed heading is; null = leave it out. Reads again, can be undone. */
  takeHeadingAs(sheet: string, heading: string, column: string | null): Promise<void>;

  /** Judges, plans and prices. With `prove: false` the quick plan only, without options and reasons in money. */
  workOut(how?: { readonly prove?: boolean; readonly seconds?: number }): Promise<void>;
  /** Ends what is going on: a plan being proved ends with the best so far, anything else is dropped. */
  cancel(): void;

  /** The plan must do this with the loop. */
  pin(loopKey: string, kind: PinKind): void;
  /** The plan must not do this with the loop. */
  forbid(loopKey: string, kind: PinKind): void;
  /** No wish for this loop any more. */
  clearWish(loopKey: string): void;
  /** Wishes, sheets and headings back by one step; a former estimate of that step comes back with it. */
  undo(): void;
  redo(): void;

  setUnits(units: EngineState["units"]): void;
  setPaper(paper: EngineState["paper"]): void;
  dismissProblem(): void;

  /** The workbook of the estimate (worked out first when stale); null when it could not be made. */
  exportWorkbook(): Promise<FileToSave | null>;
  /** The order list as CSV. */
  exportOrdersCsv(): Promise<FileToSave | null>;
  /** A blank survey workbook to fill in. */
  blankSurvey(): Promise<FileToSave | null>;
  /** In Excel: adds the survey tables. In a browser: nothing. */
  setUpSurvey(): Promise<void>;
  /** In Excel: writes wishes into the survey table and the report sheets beside it. In a browser: nothing. */
  writeToWorkbook(): Promise<void>;

  /** Shows what goes on outside the engine, such as a command of Excel's ribbon. */
  tell(change: Partial<Pick<EngineState, "progress" | "problem">>): void;

  /** Shows where something stands. */
  jumpTo(place: Place): Promise<Jump>;
  /** The loop as wired with what is suspected; null without an estimate or for a loop that is left alone. */
  loopPicture(loopKey: string): Promise<LoopDrawing | null>;
}
