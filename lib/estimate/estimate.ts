import type { Finding, LoopJudgement, NextReading } from "../findings/loop-record.js";
import type { LabourLine } from "../labour/labour-lines.js";
import type { LearningRow } from "../learning/learning-rows.js";
import type { Plan } from "../plan/plan.js";
import type { ComparedOption } from "../pricing/compare-options.js";
import type { JobPrice, PricedLine } from "../pricing/price-job.js";
import type { RangeDriver } from "../pricing/price-range.js";
import type { Query } from "../problems/query.js";
import type { WireSpool } from "../purchasing/cut-wire.js";
import type { Order } from "../purchasing/order-records.js";
import type { Cents } from "../quantities/money.js";
import type { Ohms } from "../quantities/ohms-reading.js";
import type { TerminalRow } from "../terminals/terminal-schedule.js";
import type { Treatment } from "../treatments/treatment.js";
import type { ZoneSchedule } from "../zones/zone.js";
import type { EstimatedCarry } from "./carry-of.js";
import type { EstimatedCutOver } from "./cut-over-of.js";
import type { WhyTreatment } from "./explanations.js";
import type { EstimateChange } from "./held-plan.js";
import type { EstimatedLearning } from "./learning-of.js";
import type { QuoteTerms } from "./quote-of.js";
import type { RadioRecord } from "./radio-of.js";
import type { SupplyAtPanel } from "./supply-of.js";

/** A reason why nothing may be powered down yet; it stands until a person lifts it in the survey. */
export interface Hold {
  readonly hold: "lifeSafetyOnOldControl";
  readonly words: string;
  /** Loops (keys) that cause it. */
  readonly loops: readonly string[];
}

/** A further reading valued by the job's own costs: `saving` and `net` in the estimate's currency. */
export interface EstimatedReading extends NextReading {
  /** By how much it narrows the range from P10 to P90, about. [cents] */
  readonly narrowsCents: Cents;
}

/** What the estimate says of one loop. */
export interface EstimatedLoop {
  readonly row: number;
  readonly key: string;
  readonly loop: string;
  readonly panel: string;
  readonly tag: string | null;
  readonly protects: string | null;
  readonly condition: LoopJudgement["condition"];
  readonly probability: number;
  readonly findings: readonly Finding[];
  readonly facts: LoopJudgement["facts"];
  readonly cannotTell: readonly string[];
  readonly next: readonly EstimatedReading[];
  readonly openingsProved: LoopJudgement["openingsProved"];
  /** What the plan chose. */
  readonly treatment: Treatment;
  /** What the loop by itself deserves. */
  readonly recommended: Treatment;
  readonly needsSupply: boolean;
  readonly input: { readonly module: string; readonly number: number; readonly sharedWith: readonly string[] } | null;
  readonly wireless: readonly { readonly code: string; readonly count: number }[];
  /** Why, with its arithmetic; where plan and recommendation differ, by how much. */
  readonly reason: string;
  readonly cost: LoopCost;
  /** What the technician should read when done; null for loops that are off the wire. [Ω] */
  readonly expectedAsLeft: {
    readonly shut: { readonly lowOhms: number; readonly highOhms: number };
    /** With one opening open; with a normally-open device pressed, the pair alone. */
    readonly opened: { readonly lowOhms: number; readonly highOhms: number } | Extract<Ohms, "OL">;
  } | null;
}

/** What one loop causes by itself, at our cost: its share of places, modules and common work is not in it. */
export interface LoopCost {
  readonly hours: number;
  readonly labourCents: Cents;
  readonly partsCents: Cents;
  readonly devicesCents: Cents;
  /** Chance that it proves other than it is planned. */
  readonly riskProbability: number;
  /** Expected cost of what may still go wrong with it. */
  readonly riskCents: Cents;
  readonly costCents: Cents;
}

/** One line of the bill: need, what the van gives, what is bought, what it costs. */
export interface BillLine {
  /** The code, or code with supplier and pack size for what is bought of it elsewhere too: unique in the bill. */
  readonly id: string;
  readonly code: string;
  readonly description: string;
  readonly class: string;
  readonly unit: string;
  readonly need: number;
  readonly packs: number;
  readonly packSize: number;
  readonly fromStock: number;
  readonly unitCents: number;
  readonly lineCents: Cents;
  readonly taxClass: string;
  readonly supplier: string | null;
  readonly rule: string;
  readonly loops: readonly string[];
}

/** What the job costs us and the customer. The range is of the total with tax. */
export interface EstimatePrice {
  readonly lines: readonly PricedLine[];
  readonly byClass: JobPrice["byClass"];
  readonly costCents: Cents;
  readonly sellCents: Cents;
  readonly taxCents: Cents;
  readonly totalCents: Cents;
  /** Mean of the range: what the job is quoted at, the same as the total but for rounding and minimum charges. */
  readonly meanCents: Cents;
  readonly p10Cents: Cents | null;
  readonly p50Cents: Cents | null;
  readonly p90Cents: Cents | null;
  /** What most probable outcomes and likely hours would add up to; shown, never quoted. */
  readonly likelySumCents: Cents;
  readonly drivers: readonly RangeDriver[];
  readonly marginFraction: number | null;
  readonly markupFraction: number | null;
}

/** A caution to print, and for whom. */
export interface PrintedCaution {
  readonly words: string;
  readonly when: string;
  readonly who: string;
}

/** Everything one survey leads to. The public JSON of `loopwright estimate --json`. */
export interface Estimate {
  readonly schema: "loopwright.estimate.1";
  readonly currency: string;
  readonly site: { readonly name: string | null; readonly panels: readonly string[] };
  readonly demoPrices: boolean;
  readonly holds: readonly Hold[];
  readonly queries: readonly Query[];
  readonly loops: readonly EstimatedLoop[];
  readonly modules: readonly {
    readonly panel: string;
    readonly type: string;
    readonly count: number;
    readonly eolOhms: number;
  }[];
  readonly terminals: readonly TerminalRow[];
  readonly bill: readonly BillLine[];
  readonly orders: readonly Order[];
  /** Which spool gives which loop's length of wire, and what stays on it. */
  readonly cuts: readonly WireSpool[];
  readonly labour: readonly LabourLine[];
  readonly price: EstimatePrice;
  /** The job done in other ways, priced from the same survey; null where no solver was there to plan them. */
  readonly options: readonly ComparedOption[] | null;
  /** Why each loop got its treatment, in money; null where no solver was there to plan the alternatives. */
  readonly whys: readonly WhyTreatment[] | null;
  /** Cost against zones without a name of their own, from the cheapest plan on; null without a solver. */
  readonly zonesFrontier: readonly { readonly zonesLost: number; readonly costCents: Cents }[] | null;
  readonly quote: QuoteTerms;
  /** Supply at each panel that feeds a powered detector or gets a module. */
  readonly supply: readonly SupplyAtPanel[];
  /** Every radio test judged, the repeaters in the bill, and what was not tested. */
  readonly radio: readonly RadioRecord[];
  readonly carry: EstimatedCarry | null;
  /** Zones of the new system, arming inputs, what is left alone and offers to split. */
  readonly zones: ZoneSchedule;
  /** Order of work and papers. */
  readonly cutOver: EstimatedCutOver;
  /** What finished jobs changed; null without any. */
  readonly learning: EstimatedLearning | null;
  /** Rows that this job hands on to the finished jobs of later surveys, once its outcomes are written. */
  readonly teaches: readonly LearningRow[];
  readonly cautions: readonly PrintedCaution[];
  /** Sources, assumptions and versions, one sentence each. */
  readonly basis: readonly string[];
  /** The chosen plan, so that a later run can hold it. */
  readonly plan: Plan;
  /** What changed since the former estimate, where one was given. */
  readonly changes: readonly EstimateChange[];
}
