import type { Estimate, Place, Survey } from "../../loopwright-pane.js";
import type { LoopWish } from "./engine-state.js";
import type { OnShare, OpenSheets } from "./jobs.js";

/** The workbook beside the pane, as the engine needs it. Every method rejects with words for the user. */
export interface WorkbookLink {
  /** Reads the survey; sheets whose table is known say so. */
  read(): Promise<Omit<OpenSheets, "mapping">>;
  /** Adds the survey tables that are missing. */
  setUp(input: { readonly paper: "A4" | "Letter"; readonly onShare: OnShare }): Promise<void>;
  /** Writes the wishes beside their loops, reads the survey again, works it out and writes the report sheets. */
  write(input: {
    /** The survey as it was last read from the workbook. */
    readonly survey: Survey;
    readonly wishes: Readonly<Record<string, LoopWish>>;
    readonly paper: "A4" | "Letter";
    readonly onShare: OnShare;
  }): Promise<Estimate>;
  /** Selects a cell; false when there is no such place. */
  show(place: Place): Promise<boolean>;
}
