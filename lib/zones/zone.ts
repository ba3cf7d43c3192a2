import type { Query } from "../problems/query.js";
import type { ZoneUse } from "./zone-use.js";

/** Which share of a split loop a zone stands for; null = the whole loop. */
export type ZonePart = "dailyDoor" | "rest" | "detector";

/** One zone of the new system: one loop, or one share of a loop the owner had split. */
export interface Zone {
  /** Number on the new system; null for arming inputs, which are not alarm zones. */
  readonly number: number | null;
  /** Unique within the schedule and no longer than the display. */
  readonly name: string;
  /** The name is shorter than the words it comes from. */
  readonly nameShortened: boolean;
  readonly key: string;
  readonly panel: string;
  readonly loop: string;
  readonly part: ZonePart | null;
  /** null = nothing on the sheet says what it is for; there is a query. */
  readonly use: ZoneUse | null;
  readonly useWords: string;
  /** Where the use comes from. `binding`: the kind of device leaves no choice. */
  readonly source: "written" | "binding" | "deviceAndList" | "proposed" | "none";
  readonly why: string;
  /** Reports with no sounder on site. */
  readonly silent: boolean;
  /** Reports armed or disarmed. */
  readonly always: boolean;
  /** Reports alarms; arming inputs do not. */
  readonly alarms: boolean;
  readonly area: string | null;
  readonly openings: number;
  readonly oldZone: string | null;
}

/** A loop that would be better as several zones, and what the owner chose. */
export interface SplitOffer {
  readonly key: string;
  readonly reason: "dailyDoor" | "mixedDetector" | "severalMotions" | "manyWindows";
  readonly words: string;
  /** From the pinned or forbidden treatment "split" beside the row. */
  readonly ownerChoice: "split" | "keepTogether" | "notRecorded";
}

/** A loop that gets no zone at all. */
export interface ExcludedLoop {
  readonly key: string;
  readonly panel: string;
  readonly loop: string;
  readonly words: string;
}

/** Every loop once: as zone, arming input or excluded. */
export interface ZoneSchedule {
  readonly zones: readonly Zone[];
  readonly armingInputs: readonly Zone[];
  readonly excluded: readonly ExcludedLoop[];
  readonly offers: readonly SplitOffer[];
  readonly queries: readonly Query[];
}
