// Generated from reference-data/judge-figures.json by tools/generate-reference.mjs. Do not edit.
/** Figures of the loop judge: spreads, shares and thresholds, all defaults that a caller may change */
export interface JudgeFiguresRow {
  /** Name in code [text] */
  readonly name: string;
  /** Value in the unit of the row [1] */
  readonly value: number;
  /** Unit of the value [text] */
  readonly of: string;
  /** What it says [text] */
  readonly meaning: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const judgeFigures: readonly JudgeFiguresRow[] = [
  {"name":"lengthVariation","value":0.32,"of":"1","meaning":"Coefficient of variation of an estimated run","source":"practice"},
  {"name":"unknownRunMeters","value":22,"of":"m","meaning":"Run assumed where none is written","source":"practice"},
  {"name":"unknownRunVariation","value":0.65,"of":"1","meaning":"Coefficient of variation of the assumed run","source":"practice"},
  {"name":"unknownGaugeAwg","value":22,"of":"AWG","meaning":"Conductor assumed where none is written","source":"practice"},
  {"name":"unknownGaugeVariation","value":0.2,"of":"1","meaning":"Extra coefficient of variation of the conductor resistance where the size is not known","source":"practice"},
  {"name":"contactOhms","value":0.16,"of":"Ω","meaning":"Mean resistance of one closed contact in service","source":"practice"},
  {"name":"contactSpreadOhms","value":0.11,"of":"Ω","meaning":"Standard deviation of one contact","source":"practice"},
  {"name":"spliceOhms","value":0.035,"of":"Ω","meaning":"Mean resistance of one splice","source":"practice"},
  {"name":"spliceSpreadOhms","value":0.03,"of":"Ω","meaning":"Standard deviation of one splice","source":"practice"},
  {"name":"leadOhms","value":0.27,"of":"Ω","meaning":"Mean lead resistance left in a reading where the leads were not zeroed","source":"practice"},
  {"name":"leadSpreadOhms","value":0.13,"of":"Ω","meaning":"Standard deviation of it","source":"practice"},
  {"name":"leadZeroedSpreadOhms","value":0.03,"of":"Ω","meaning":"Standard deviation of what is left after zeroing","source":"practice"},
  {"name":"overRangeOhms","value":8000000,"of":"Ω","meaning":"Readings from here up count as over-range when judging","source":"practice"},
  {"name":"eolSpread","value":0.028,"of":"1","meaning":"Standard deviation of an end-of-line part about its nominal value","source":"practice"},
  {"name":"agedShare","value":0.1,"of":"1","meaning":"Share of parts that have drifted with age","source":"practice"},
  {"name":"agedSpread","value":0.08,"of":"1","meaning":"Standard deviation of a drifted part","source":"practice"},
  {"name":"knownEolWeight","value":0.93,"of":"1","meaning":"Weight on the value that the old panel expects, where it is known","source":"practice"},
  {"name":"jobEolWeight","value":0.97,"of":"1","meaning":"Chance that a loop carries the value which its job uses","source":"practice"},
  {"name":"habitStrength","value":0.85,"of":"1","meaning":"How strongly an installer keeps to one place for the end-of-line part","source":"practice"},
  {"name":"mixedHabitShare","value":0.1,"of":"1","meaning":"Share of jobs without such a habit","source":"practice"},
  {"name":"faultRateConcentration","value":4,"of":"1","meaning":"Weight of the expected fault rate against what a job shows, in loops","source":"practice"},
  {"name":"jointLowOhms","value":12,"of":"Ω","meaning":"Lowest added resistance called a bad joint","source":"practice"},
  {"name":"jointHighOhms","value":20000,"of":"Ω","meaning":"Highest","source":"practice"},
  {"name":"foilLowOhms","value":3,"of":"Ω","meaning":"Lowest resistance that window foil adds","source":"practice"},
  {"name":"foilHighOhms","value":600,"of":"Ω","meaning":"Highest","source":"practice"},
  {"name":"leakLowOhms","value":600,"of":"Ω","meaning":"Lowest leak across a pair","source":"practice"},
  {"name":"leakHighOhms","value":4000000,"of":"Ω","meaning":"Highest","source":"practice"},
  {"name":"misreadShare","value":0.004,"of":"1","meaning":"Chance that an opened reading is a slip of the pen or of the meter","source":"practice"},
  {"name":"repeatShare","value":0.002,"of":"1","meaning":"Two readings of an unchanged loop differ by this share (standard deviation)","source":"practice"},
  {"name":"repeatOhms","value":0.3,"of":"Ω","meaning":"and by this many ohms","source":"practice"},
  {"name":"furtherBypassed","value":0.12,"of":"1","meaning":"Chance that a further contact is bypassed where one is","source":"practice"},
  {"name":"everyContactDoubled","value":0.35,"of":"1","meaning":"Share of double end-of-line loops with a resistor across every contact rather than one","source":"practice"},
  {"name":"sameResistorDoubled","value":0.5,"of":"1","meaning":"Chance that the resistor across the contact equals the end-of-line part","source":"practice"},
  {"name":"crossedReadsOpen","value":0.33,"of":"1","meaning":"Share of crossed pairs that read over-range","source":"practice"},
  {"name":"unpoweredReadsOpen","value":0.93,"of":"1","meaning":"Share of supplied detectors that read open without supply","source":"practice"},
  {"name":"outputLowOhms","value":2,"of":"Ω","meaning":"Lowest output resistance of a supplied detector","source":"practice"},
  {"name":"outputHighOhms","value":50,"of":"Ω","meaning":"Highest","source":"practice"},
  {"name":"outputShare","value":0.4,"of":"1","meaning":"Share of supplied detectors with an output resistance of that kind","source":"practice"},
  {"name":"offLeakShare","value":0.04,"of":"1","meaning":"Share of supplied detectors whose open output still leaks in the MΩ","source":"practice"},
  {"name":"wrongHalf","value":0.3,"of":"1","meaning":"Share of wrong end-of-line loops with two parts in parallel","source":"practice"},
  {"name":"wrongDouble","value":0.2,"of":"1","meaning":"Share with two in series","source":"practice"},
  {"name":"normallyOpenVariation","value":0.55,"of":"1","meaning":"Coefficient of variation of the cable seen through an operated normally-open device","source":"practice"},
  {"name":"poweredNoted","value":0.65,"of":"1","meaning":"Chance that a supplied detector is noted where an unsupplied one is the trouble","source":"practice"},
  {"name":"poweredNotedElse","value":0.08,"of":"1","meaning":"Chance that one is noted on another loop","source":"practice"},
  {"name":"foilNoted","value":0.75,"of":"1","meaning":"Chance that window foil is noted where it is the trouble","source":"practice"},
  {"name":"foilNotedElse","value":0.003,"of":"1","meaning":"Chance that it is noted on another loop","source":"practice"},
  {"name":"shortResistanceShare","value":0.1,"of":"1","meaning":"Share of shorts with resistance of their own","source":"practice"},
  {"name":"lifeSafetyUnmarked","value":0.3,"of":"1","meaning":"Chance that a life-safety loop carries no mark","source":"practice"},
  {"name":"lifeSafetyNamedElse","value":0.1,"of":"1","meaning":"Chance that an unmarked life-safety loop is written up with the name of an intrusion device","source":"practice"},
  {"name":"tamperNoted","value":0.95,"of":"1","meaning":"Chance that a tamper pair is noted as one","source":"practice"},
  {"name":"tamperNotedElse","value":0.003,"of":"1","meaning":"Chance that another loop is noted as one","source":"practice"},
  {"name":"normallyOpenNoted","value":0.85,"of":"1","meaning":"Chance that normally open is noted where it is so","source":"practice"},
  {"name":"normallyOpenNotedElse","value":0.02,"of":"1","meaning":"Chance that it is noted on another loop","source":"practice"},
  {"name":"unexplainedOverRange","value":0.15,"of":"1","meaning":"Share of over-range closed readings among unexplained ones","source":"practice"},
  {"name":"unitSlipShare","value":0.4,"of":"1","meaning":"Share of unexplained readings that are slips of a factor of ten or a thousand","source":"practice"},
  {"name":"swappedShare","value":0.15,"of":"1","meaning":"Share of unexplained records with the shut and the opened reading swapped","source":"practice"},
  {"name":"seenResistorAtEnd","value":0.04,"of":"1","meaning":"Chance that a resistor is seen at the old panel when the EOL is at the far end","source":"practice"},
  {"name":"seenResistorNone","value":0.03,"of":"1","meaning":"The same where there is none","source":"practice"},
  {"name":"seenResistorAtPanel","value":0.94,"of":"1","meaning":"The same where it is at the panel","source":"practice"},
  {"name":"placeNotedRight","value":0.93,"of":"1","meaning":"Chance that a written end-of-line place is the true one","source":"practice"},
  {"name":"voltsPickupLow","value":0.3,"of":"V","meaning":"dc volts on a lifted pair from here up may be pickup","source":"practice"},
  {"name":"voltsForeign","value":1.5,"of":"V","meaning":"dc volts over this are foreign","source":"practice"},
  {"name":"voltsForeignAc","value":0.1,"of":"V","meaning":"ac volts over this are foreign","source":"practice"},
  {"name":"supplyLowVolts","value":9,"of":"V","meaning":"Lowest dc that may be the supply of a detector","source":"practice"},
  {"name":"supplyHighVolts","value":15,"of":"V","meaning":"Highest","source":"practice"},
  {"name":"earthFaultOhms","value":50000,"of":"Ω","meaning":"Under this to earth is a fault","source":"practice"},
  {"name":"earthDampOhms","value":1000000,"of":"Ω","meaning":"Under this to earth is damp","source":"practice"},
  {"name":"otherPairLowOhms","value":1000,"of":"Ω","meaning":"Under this to another pair is a connection","source":"practice"},
  {"name":"moneyPerMinute","value":0.87,"of":"money/min","meaning":"What a minute on site costs, in the unit of the loss table","source":"invented"},
];

export const judgeFiguresSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
  "invented": "invented money, no source: replace by your own",
};
