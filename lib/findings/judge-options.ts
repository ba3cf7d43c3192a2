import { judgeFigures } from "../reference/generated/judge-figures.js";
import type { Action, Condition } from "./loop-record.js";

/** Names of the judge's figures (reference-data/judge-figures.json). */
export type FigureName =
  | "lengthVariation"
  | "unknownRunMeters"
  | "unknownRunVariation"
  | "unknownGaugeAwg"
  | "unknownGaugeVariation"
  | "contactOhms"
  | "contactSpreadOhms"
  | "spliceOhms"
  | "spliceSpreadOhms"
  | "leadOhms"
  | "leadSpreadOhms"
  | "leadZeroedSpreadOhms"
  | "overRangeOhms"
  | "eolSpread"
  | "agedShare"
  | "agedSpread"
  | "knownEolWeight"
  | "jobEolWeight"
  | "habitStrength"
  | "mixedHabitShare"
  | "faultRateConcentration"
  | "jointLowOhms"
  | "jointHighOhms"
  | "foilLowOhms"
  | "foilHighOhms"
  | "leakLowOhms"
  | "leakHighOhms"
  | "misreadShare"
  | "repeatShare"
  | "repeatOhms"
  | "furtherBypassed"
  | "everyContactDoubled"
  | "sameResistorDoubled"
  | "crossedReadsOpen"
  | "unpoweredReadsOpen"
  | "outputLowOhms"
  | "outputHighOhms"
  | "outputShare"
  | "offLeakShare"
  | "wrongHalf"
  | "wrongDouble"
  | "normallyOpenVariation"
  | "poweredNoted"
  | "poweredNotedElse"
  | "foilNoted"
  | "foilNotedElse"
  | "shortResistanceShare"
  | "lifeSafetyUnmarked"
  | "lifeSafetyNamedElse"
  | "tamperNoted"
  | "tamperNotedElse"
  | "normallyOpenNoted"
  | "normallyOpenNotedElse"
  | "unexplainedOverRange"
  | "unitSlipShare"
  | "swappedShare"
  | "seenResistorAtEnd"
  | "seenResistorNone"
  | "seenResistorAtPanel"
  | "placeNotedRight"
  | "voltsPickupLow"
  | "voltsForeign"
  | "voltsForeignAc"
  | "supplyLowVolts"
  | "supplyHighVolts"
  | "earthFaultOhms"
  | "earthDampOhms"
  | "otherPairLowOhms"
  | "moneyPerMinute";

/** The judge's figures by name. */
export type Figures = Readonly<Record<FigureName, number>>;

/** What a caller may change of the judge. Everything absent is taken from reference-data. */
export interface JudgeOptions {
  /** Weights of the conditions before any reading; given ones replace the table's. [1] */
  readonly priors?: Partial<Readonly<Record<Condition, number>>>;
  /** Share of loops that are not sound, 0 to 1 exclusive; absent = what the priors say. [1] */
  readonly faultRate?: number;
  /** Weights of end-of-line values; given = they replace the whole table. [Ω, 1] */
  readonly eolWeights?: readonly { readonly eolOhms: number; readonly weight: number }[];
  /** Losses that replace the table's for one action done when another was right. [money] */
  readonly losses?: readonly { readonly done: Action; readonly right: Action; readonly loss: number }[];
  /** Minutes of further readings that replace the table's. [min] */
  readonly minutes?: Readonly<Record<string, number>>;
  readonly figures?: Partial<Figures>;
  /** The monitoring account is recorded as on test, so devices may be tripped. */
  readonly accountOnTest?: boolean;
  /** false: further readings are not ranked, `next` stays empty; for verdicts of many loops. Default true. */
  readonly rankNext?: boolean;
}

/** The figures of the reference table with the caller's own over them. */
export function figuresOf(given: Partial<Figures> | undefined): Figures {
  const table: Record<string, number> = {};
  for (const row of judgeFigures) table[row.name] = row.value;
  return { ...table, ...given } as Figures;
}
