import type { Estimate, HeadingMatch, Summary, Survey, SurveySheetName } from "../../loopwright-pane.js";
import type { FileToOpen, LoopDrawing, OpenedSheet, PinKind } from "./engine-state.js";

/** Rows of typed cells, as any file or Excel gives them. */
type TypedSheet = import("../../loopwright-job.js").TypedSheet;
type HeadingMapping = import("../../loopwright-job.js").HeadingMapping;

/** A survey as it lies on the table: sheets, and what the user says of them. */
export interface OpenSheets {
  readonly sheets: readonly TypedSheet[];
  /** Which table a sheet is, by the sheet's name; null = leave it out; absent = find out. */
  readonly takenAs: Readonly<Record<string, SurveySheetName | null>>;
  readonly mapping: HeadingMapping;
  /** Sheets of a former estimate that a new one takes something from, such as its plan. */
  readonly former: readonly TypedSheet[];
  /** A survey as JSON, which stands alone; there are no sheets then. */
  readonly json?: unknown;
}

/** What stood in files. */
export type FilesRead = Pick<OpenSheets, "sheets" | "json">;

export interface SurveyOpened {
  readonly survey: Survey;
  readonly headings: readonly HeadingMatch[];
  readonly sheets: readonly OpenedSheet[];
}

/** What is to be worked out. */
export interface WorkAsked {
  readonly survey: Survey;
  readonly former: readonly TypedSheet[];
  /** false: the quick plan, unproved. */
  readonly prove: boolean;
  /** false: without options and reasons in money, which take longest. */
  readonly compare: boolean;
  /** Most time for the plan. [s] */
  readonly seconds: number;
}

export interface WorkedOut {
  readonly estimate: Estimate;
  readonly summary: Summary;
  readonly choices: Readonly<Record<string, readonly PinKind[]>>;
}

/** What files are written from. */
export interface FilesAsked {
  readonly estimate: Estimate;
  readonly survey: Survey;
  readonly headings: readonly HeadingMatch[];
  readonly former: readonly TypedSheet[];
  readonly paper: "A4" | "Letter";
  /** Day of issue, YYYY-MM-DD. */
  readonly date: string;
}

export type OnShare = (words: string, share: number | null) => void;

/** Everything heavy that the engine has done for it, in a worker or in the same thread. */
export interface Jobs {
  /** Reads files from unknown hands, bounded in time and size. */
  read(files: readonly FileToOpen[]): Promise<FilesRead>;
  open(asked: OpenSheets): Promise<SurveyOpened>;
  workOut(asked: WorkAsked, onShare: OnShare): Promise<WorkedOut>;
  /** What is shown beside an estimate that was worked out elsewhere. */
  aside(asked: { readonly survey: Survey; readonly estimate: Estimate }): Promise<Omit<WorkedOut, "estimate">>;
  workbook(asked: FilesAsked): Promise<Uint8Array>;
  ordersCsv(asked: FilesAsked): Promise<string>;
  blankSurvey(asked: Pick<FilesAsked, "paper" | "date">): Promise<Uint8Array>;
  drawing(asked: {
    readonly estimate: Estimate;
    readonly survey: Survey;
    readonly key: string;
    readonly unit: "m" | "ft";
  }): Promise<LoopDrawing | null>;
  /** A plan being proved ends with the best so far; reading is dropped. */
  cancel(): void;
}
