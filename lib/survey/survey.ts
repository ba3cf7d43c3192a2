import type { Query } from "../problems/query.js";
import type { OhmsReading } from "../quantities/ohms-reading.js";

/** A quantity with the spread the surveyor left in it; `assumed` says that nobody measured or wrote it. */
export interface MeasuredRun {
  /** One-way length along the cable. [m] */
  readonly meters: number;
  readonly lowMeters: number;
  readonly highMeters: number;
  readonly assumed: boolean;
}

/** What is known of the cable in the wall. Absent = not known. */
export interface SurveyCable {
  readonly gaugeAwg?: number;
  readonly areaMm2?: number;
  readonly strands?: number;
  readonly metal?: "copper" | "tinnedCopper" | "copperCladAluminium" | "aluminium" | "copperCladSteel";
  readonly conductors?: number;
  readonly assumed: boolean;
  /** As typed. */
  readonly words: string;
}

/** Kinds of thing that stand on a loop; words are mapped by reference-data/device-words. */
export type DeviceKind =
  | "contactRecessed"
  | "contactSurface"
  | "contactOutdoor"
  | "contactOverheadDoor"
  | "contactRoller"
  | "contactUnspecified"
  | "foil"
  | "shockSensor"
  | "glassBreak"
  | "motion"
  | "holdUp"
  | "tamper"
  | "keySwitch"
  | "waterSensor"
  | "temperatureSensor"
  | "flowSwitch"
  | "smokeOrHeat"
  | "otherLifeSafety"
  | "unknown";

/** One kind of device on a loop and how many of them. */
export interface LoopDevice {
  readonly kind: DeviceKind;
  readonly count: number;
  readonly powered: boolean;
}

/** How a kept detector that falls short of supply is helped on the wire. */
export type SupplyCure = "joints" | "heavierPair" | "ownPair" | "localSupply";

/** What the estimator wrote beside a row. These are kept over every re-run. */
export interface LoopEdits {
  readonly pinTreatment?: string;
  readonly forbid?: readonly string[];
  readonly supplyCure?: SupplyCure;
  readonly estimatorNote?: string;
  readonly asLeftClosed?: OhmsReading;
  readonly asLeftOpened?: OhmsReading;
  readonly repairOutcome?: string;
  readonly hoursSpent?: number;
  /** A named person who has seen a device that words alone took for life safety, and what it really is. */
  readonly seenBy?: string;
  readonly seenWhat?: string;
}

/** One row of the loops sheet, read. Every optional field that is absent was not measured or not written. */
export interface SurveyLoop {
  /** Stable key (R001 …) given on first read; the row's name ever after. */
  readonly key: string;
  readonly sheet: string;
  readonly row: number;
  /** Every cell as typed, by our column name; kept for the report and for queries. */
  readonly typed: Readonly<Record<string, string>>;
  /** The heading each of our columns was typed under, for queries. */
  readonly panel: string;
  /** Loop name or number as typed; may repeat. */
  readonly loop: string;
  readonly oldZone?: string;
  readonly label?: string;
  readonly protects?: string;
  readonly place?: string;
  /** Moving leaves and devices that each need proving. `assumed` when the count could not be read. */
  readonly openings: { readonly count: number; readonly assumed: boolean };
  /** Kinds on the loop in wiring order where it is known. Never empty: `unknown` when nothing was read. */
  readonly devices: readonly LoopDevice[];
  readonly device?: string;
  readonly contactForm: "NC" | "NO" | "mixed" | "unknown";
  readonly cable?: SurveyCable;
  readonly run?: MeasuredRun;
  readonly fedFrom?: string;
  /** Keys of the other loops on the same return conductor, in the order of the rows; entered on one side counts for both. */
  readonly returnSharedWith?: readonly string[];
  readonly eolPlace?: "device" | "panel" | "none" | "unknown";
  readonly eolOhms?: number;
  readonly closed?: OhmsReading;
  /** Readings with one opening open; `opening` 1 is nearest the panel, null when it was not said which. */
  readonly opened?: readonly { readonly opening: number | null; readonly reading: OhmsReading }[];
  readonly openedTogether?: OhmsReading;
  readonly reversed?: OhmsReading;
  readonly earth?: { readonly aOhms?: OhmsReading; readonly bOhms?: OhmsReading };
  readonly toOtherPair?: OhmsReading;
  readonly voltsDc?: number;
  readonly voltsAc?: number;
  readonly voltsAtDetector?: number;
  readonly milliamps?: number;
  readonly lifted?: "both" | "one" | "no" | "unknown";
  /** A detector on the loop takes supply. */
  readonly poweredDetector: boolean;
  /** Whether that detector had its supply while the loop was metered. */
  readonly powered?: boolean;
  readonly markedLifeSafety: boolean;
  /** Lowest and highest reading while the loop was tapped or wiggled. */
  readonly tapped?: { readonly low: OhmsReading; readonly high: OhmsReading };
  readonly behaviour?: string;
  readonly restingState?: "normal" | "faulted" | "unknown";
  readonly resistorAtPanel?: "inSeries" | "acrossTerminals" | "seenNotTraced" | "none" | "notLooked";
  readonly use?: string;
  readonly area?: string;
  readonly access?: string;
  readonly finish?: string;
  readonly notes?: string;
  readonly floor?: string;
  readonly measuredBy?: string;
  /** Readings taken with and without the detector's supply, where both were typed. */
  readonly closedUnpowered?: OhmsReading;
  /** A second mention of where supply comes from, found in the notes; proposed, not applied. */
  readonly fedFromProposed?: string;
  /** What the notes state, by reference-data/note-words. */
  readonly noteFacts?: readonly NoteFact[];
  readonly edits: LoopEdits;
}

/** One fact that the surveyor's notes state, with the words that state it. */
export interface NoteFact {
  readonly fact: string;
  readonly value: string;
  readonly words: string;
}

/** One old panel's place: where modules will be mounted. */
export interface SurveyPanel {
  readonly panel: string;
  readonly place?: string;
  readonly mains?: string;
  readonly battery?: string;
  readonly auxMilliamps?: number;
  readonly auxVolts?: number;
  readonly auxVoltsOnBattery?: number;
  readonly temperatureCelsius?: number;
  readonly typed: Readonly<Record<string, string>>;
}

/** Job-wide facts. Absent = not written. */
export interface SurveySite {
  readonly name?: string;
  readonly surveyed?: string;
  /** Planned first day of the work, YYYY-MM-DD. */
  readonly startOn?: string;
  readonly currency: string;
  readonly yearBuilt?: number;
  readonly hazardRegister?: string;
  readonly temperatureCelsius?: number;
  readonly meter?: {
    readonly percent: number;
    readonly counts: number;
    readonly displayCounts?: number;
    readonly overRangeOhms?: number;
    readonly leadsZeroed: boolean;
    readonly leadOhms?: number;
  };
  readonly standbyHours?: number;
  readonly monitored?: string;
  readonly accountOnTest?: boolean;
  /** Written release of the life-safety circuits by the responsible contractor: name and date, both or neither. */
  readonly lifeSafetyRelease?: { readonly name: string; readonly date: string };
  readonly typed: Readonly<Record<string, string>>;
}

export interface OldZone {
  readonly zone: string;
  readonly name?: string;
  readonly type?: string;
}

export interface RadioTest {
  readonly from?: string;
  readonly location: string;
  readonly kind?: string;
  readonly meters?: number;
  readonly walls?: string;
  readonly signalDbm?: number;
  readonly noiseDbm?: number;
  readonly heard?: number;
  readonly sent?: number;
  readonly note?: string;
}

/** One price-book row: one row per quantity tier of an article. */
export interface PriceBookRow {
  readonly code: string;
  readonly class: string;
  readonly description: string;
  readonly unit: string;
  /** [cents per unit] */
  readonly unitCents: number;
  readonly packSize: number;
  readonly fromQuantity: number;
  readonly stock: number;
  readonly supplier: string;
  /** Flat shipping of one order at this supplier. [cents] */
  readonly shippingCents: number;
  readonly leadDays: number;
  readonly taxClass: string;
  readonly radioBand?: string;
  /** For end-of-line resistors. [Ω] */
  readonly eolOhms?: number;
  /** For batteries. [Ah] */
  readonly ampereHours?: number;
  /** For wire: conductor size and count. */
  readonly gaugeAwg?: number;
  readonly conductors?: number;
}

/** What a wired-input radio module accepts. */
export interface InputModuleProfile {
  readonly type: string;
  readonly inputs: number;
  /** One entry per return terminal: how many conductors it holds. */
  readonly returns: readonly { readonly holds: number }[];
  readonly eolScope: "input" | "bank" | "module";
  /** Inputs in one bank, where `eolScope` is bank. */
  readonly bankSize?: number;
  /** EOL values the module can be set to. [Ω] */
  readonly eolOhms: readonly number[];
  /** Normal band as a fraction of the set EOL value. */
  readonly bandLow: number;
  readonly bandHigh: number;
  readonly alarmOn: "open" | "short" | "either";
  readonly minPulseMs?: number;
  readonly maxConductorOhms: number;
  /** Least leakage resistance across the pair that the input bears. [Ω], or as a multiple of the EOL value. */
  readonly minLeakOhms?: number;
  readonly minLeakTimesEol?: number;
  readonly milliamps: number;
  readonly priceCode: string;
  readonly stock: number;
}

/** Labour unit: hours a task takes, low / likely / high. [h] */
export interface LabourUnit {
  readonly task: string;
  readonly lowHours: number;
  readonly likelyHours: number;
  readonly highHours: number;
}

/** One row of the sheet of finished jobs: what stands there, and what it counts. */
export interface FinishedJobRow {
  readonly sheet: string;
  readonly row: number;
  /** Every cell as typed, by our column name, so that no row is lost. */
  readonly typed: Readonly<Record<string, string | number>>;
  /** null = the row is not to be used, or cannot be read and was asked about. */
  readonly counts: {
    readonly job: string;
    readonly finished: string;
    readonly kind: "loops" | "asLeft" | "repair" | "hours";
    readonly name: string;
    readonly first: number;
    readonly second: number;
    readonly third: number;
  } | null;
}

/** Everything a survey says, read, with the questions it leaves. */
export interface Survey {
  readonly site: SurveySite;
  readonly panels: readonly SurveyPanel[];
  readonly loops: readonly SurveyLoop[];
  readonly oldZones: readonly OldZone[];
  readonly radioTests: readonly RadioTest[];
  /** Empty = none given; the estimate then uses the demo book and says so. */
  readonly priceBook: readonly PriceBookRow[];
  readonly inputModules: readonly InputModuleProfile[];
  readonly labour: readonly LabourUnit[];
  /** Money settings as typed (margin, tax, rates); keys are those of reference-data/demo/money-settings. */
  readonly settings: Readonly<Record<string, number>>;
  /** Finished jobs that the estimate learns from; absent or empty = none. */
  readonly finishedJobs?: readonly FinishedJobRow[];
  readonly queries: readonly Query[];
}

/** One sheet as read from any file, before anything is understood: rows of typed cells. */
export interface TypedSheet {
  readonly sheet: string;
  /** `cells[column]` is the text as typed (or the number as text); a date that a spreadsheet made is `{date: ISO}`. */
  readonly rows: readonly { readonly row: number; readonly cells: readonly TypedCell[] }[];
  /** What the file reader has to say: hidden rows, merged cells, formulas that were never calculated. */
  readonly remarks?: readonly Query[];
}

export type TypedCell = string | number | boolean | null | { readonly isoDate: string };
