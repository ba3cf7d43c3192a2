import type { Ohms } from "../quantities/ohms-reading.js";

/** One metered loop as the judge takes it. Absent = not measured or not known. The public JSON of `loopwright judge`. */
export interface LoopRecord {
  readonly id: string;
  /** Loops of one job share installer, meter and old panel. */
  readonly job?: string;
  readonly label?: string;
  readonly device?: string;
  readonly notes?: string;
  readonly cable?: {
    readonly gaugeAwg?: number;
    readonly areaMm2?: number;
    readonly strands?: number;
    readonly metal?: string;
  };
  /** One-way run. [m] */
  readonly runMeters?: number;
  readonly openings: number;
  readonly temperatureCelsius?: number;
  readonly contactForm?: "NC" | "NO" | "mixed" | "unknown";
  readonly poweredDetector?: boolean;
  readonly powered?: boolean;
  readonly markedLifeSafety?: boolean;
  readonly foil?: boolean;
  readonly shockSensor?: boolean;
  readonly tamperPair?: boolean;
  readonly returnSharedWith?: readonly string[];
  /** The same loops by the names people know, for words; absent = their ids are printed. */
  readonly returnSharedNames?: readonly string[];
  /** Set by the judge of a job: what stands on a loop that shares this one's return, and that loop's name. */
  readonly returnBears?: { readonly what: "lifeSafety" | "hold" | "foreignVolts"; readonly loop: string };
  /** Where the end-of-line part was written to sit. */
  readonly eolPlace?: "device" | "panel" | "none" | "unknown";
  /** Old panel whose terminals the pair was on; groups readings into walks. */
  readonly panel?: string;
  readonly protects?: string;
  /** The cable as typed; looked through for life-safety words and for a red jacket. */
  readonly cableWords?: string;
  /** Use of the zone as written; hold-up, 24-hour and unknown ones are not tripped before the account is on test. */
  readonly use?: string;
  /** Name and type of the zone on the old list, as printed there; looked through for life-safety words. */
  readonly oldListWords?: string;
  /** A named person who has seen what words took for life safety, and what it really is. Never releases a marked loop. */
  readonly seen?: { readonly name: string; readonly what: string };
  readonly lifted?: "both" | "one" | "no" | "unknown";
  readonly oldPanel?: {
    readonly expectedEolOhms?: number;
    readonly restingState?: "normal" | "faulted" | "unknown";
    readonly resistorAtPanel?: "inSeries" | "acrossTerminals" | "seenNotTraced" | "none" | "notLooked";
  };
  readonly meter?: {
    readonly percent: number;
    readonly counts: number;
    readonly displayCounts: number;
    readonly overRangeOhms: number;
    readonly leadsZeroed: boolean;
  };
  readonly readings: {
    readonly closedOhms?: Ohms;
    /** Opening 1 is nearest the panel. */
    readonly opened?: readonly { readonly opening: number; readonly ohms: Ohms }[];
    readonly openedTogetherOhms?: Ohms;
    readonly voltsDc?: number;
    readonly voltsAc?: number;
    readonly voltsAtDetector?: number;
    readonly tapped?: { readonly minOhms: Ohms; readonly maxOhms: Ohms };
    readonly earth?: { readonly aOhms?: Ohms; readonly bOhms?: Ohms };
    readonly reversedOhms?: Ohms;
    readonly toOtherPairOhms?: Ohms;
    readonly behaviour?: "steady" | "climbing" | "falling" | "jumping";
  };
}

export type Condition =
  | "soundEolAtEnd"
  | "soundNoEol"
  | "eolInPanel"
  | "shorted"
  | "open"
  | "highResistance"
  | "leakage"
  | "wrongEol"
  | "normallyOpen"
  | "bypassed"
  | "foreignVoltage"
  | "earthFault"
  | "crossed"
  | "doubleEol"
  | "foil"
  | "poweredDevice"
  | "lifeSafety"
  | "unexplained"
  | "parallelContacts"
  | "sharedReturn"
  | "doubledPair"
  | "tamperLoop";

export type Action =
  | "keep"
  | "fitEol"
  | "changeEol"
  | "repair"
  | "landAsNormallyOpen"
  | "powerAndRetest"
  | "leaveAlone"
  | "measureAgain";

/** One condition the readings allow, with how sure and what to do about it. */
export interface Finding {
  readonly condition: Condition;
  readonly probability: number;
  readonly words: string;
  readonly firstChecks: readonly string[];
  readonly usualRepair: string;
}

/** Something the record settles by itself, before any probability. */
export interface Fact {
  readonly fact: string;
  readonly words: string;
}

/** A further reading and what it is worth. Money in the unit of the loss table. */
export interface NextReading {
  readonly reading: string;
  readonly minutes: number;
  readonly saving: number;
  readonly net: number;
  readonly words: string;
}

/** What the judge says of one loop. */
export interface LoopJudgement {
  readonly id: string;
  readonly condition: Condition;
  readonly probability: number;
  /** Most probable first; probabilities add to 1 over all conditions, those under 0.5 % may be left out. */
  readonly findings: readonly Finding[];
  readonly facts: readonly Fact[];
  readonly openingsProved: { readonly proved: number; readonly total: number };
  readonly eol: {
    readonly ohms: number;
    readonly nominal: number;
    readonly lowOhms: number;
    readonly highOhms: number;
  } | null;
  readonly run: {
    readonly meters: number;
    readonly lowMeters: number;
    readonly highMeters: number;
    readonly measured: boolean;
  } | null;
  readonly action: Action;
  readonly cannotTell: readonly string[];
  readonly next: readonly NextReading[];
}
