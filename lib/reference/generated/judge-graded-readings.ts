// Generated from reference-data/judge-graded-readings.json by tools/generate-reference.mjs. Do not edit.
/** How likely each size of an earth, tap, other-pair, volts or reversed reading is under each condition; "other" stands for every condition not named for that outcome */
export interface JudgeGradedReadingsRow {
  /** Reading [text] */
  readonly reading: string;
  /** Name of the size class [text] */
  readonly outcome: string;
  /** Upper end of the class; absent = no upper end [Ω, V or relative change] */
  readonly upTo?: number;
  /** Condition, or other [text] */
  readonly condition: string;
  /** Chance of the class under the condition [1] */
  readonly likelihood: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const judgeGradedReadings: readonly JudgeGradedReadingsRow[] = [
  {"reading":"earth","outcome":"dead","upTo":1000,"condition":"other","likelihood":0.001,"source":"practice"},
  {"reading":"earth","outcome":"dead","upTo":1000,"condition":"earthFault","likelihood":0.3,"source":"practice"},
  {"reading":"earth","outcome":"dead","upTo":1000,"condition":"crossed","likelihood":0.003,"source":"practice"},
  {"reading":"earth","outcome":"dead","upTo":1000,"condition":"foreignVoltage","likelihood":0.02,"source":"practice"},
  {"reading":"earth","outcome":"dead","upTo":1000,"condition":"leakage","likelihood":0.005,"source":"practice"},
  {"reading":"earth","outcome":"fault","upTo":50000,"condition":"other","likelihood":0.002,"source":"practice"},
  {"reading":"earth","outcome":"fault","upTo":50000,"condition":"earthFault","likelihood":0.45,"source":"practice"},
  {"reading":"earth","outcome":"fault","upTo":50000,"condition":"crossed","likelihood":0.004,"source":"practice"},
  {"reading":"earth","outcome":"fault","upTo":50000,"condition":"foreignVoltage","likelihood":0.03,"source":"practice"},
  {"reading":"earth","outcome":"fault","upTo":50000,"condition":"leakage","likelihood":0.03,"source":"practice"},
  {"reading":"earth","outcome":"damp","upTo":1000000,"condition":"other","likelihood":0.007,"source":"practice"},
  {"reading":"earth","outcome":"damp","upTo":1000000,"condition":"earthFault","likelihood":0.2,"source":"practice"},
  {"reading":"earth","outcome":"damp","upTo":1000000,"condition":"crossed","likelihood":0.01,"source":"practice"},
  {"reading":"earth","outcome":"damp","upTo":1000000,"condition":"foreignVoltage","likelihood":0.05,"source":"practice"},
  {"reading":"earth","outcome":"damp","upTo":1000000,"condition":"leakage","likelihood":0.1,"source":"practice"},
  {"reading":"earth","outcome":"dry","upTo":8000000,"condition":"other","likelihood":0.01,"source":"practice"},
  {"reading":"earth","outcome":"dry","upTo":8000000,"condition":"earthFault","likelihood":0.02,"source":"practice"},
  {"reading":"earth","outcome":"dry","upTo":8000000,"condition":"crossed","likelihood":0.01,"source":"practice"},
  {"reading":"earth","outcome":"dry","upTo":8000000,"condition":"foreignVoltage","likelihood":0.05,"source":"practice"},
  {"reading":"earth","outcome":"dry","upTo":8000000,"condition":"leakage","likelihood":0.06,"source":"practice"},
  {"reading":"earth","outcome":"overRange","condition":"other","likelihood":0.98,"source":"practice"},
  {"reading":"earth","outcome":"overRange","condition":"earthFault","likelihood":0.03,"source":"practice"},
  {"reading":"earth","outcome":"overRange","condition":"crossed","likelihood":0.973,"source":"practice"},
  {"reading":"earth","outcome":"overRange","condition":"foreignVoltage","likelihood":0.85,"source":"practice"},
  {"reading":"earth","outcome":"overRange","condition":"leakage","likelihood":0.805,"source":"practice"},
  {"reading":"tapped","outcome":"still","upTo":0.01,"condition":"other","likelihood":0.955,"source":"practice"},
  {"reading":"tapped","outcome":"still","upTo":0.01,"condition":"soundEolAtEnd","likelihood":0.978,"source":"practice"},
  {"reading":"tapped","outcome":"still","upTo":0.01,"condition":"soundNoEol","likelihood":0.978,"source":"practice"},
  {"reading":"tapped","outcome":"still","upTo":0.01,"condition":"eolInPanel","likelihood":0.978,"source":"practice"},
  {"reading":"tapped","outcome":"still","upTo":0.01,"condition":"highResistance","likelihood":0.4,"source":"practice"},
  {"reading":"tapped","outcome":"still","upTo":0.01,"condition":"foil","likelihood":0.6,"source":"practice"},
  {"reading":"tapped","outcome":"still","upTo":0.01,"condition":"open","likelihood":0.88,"source":"practice"},
  {"reading":"tapped","outcome":"still","upTo":0.01,"condition":"unexplained","likelihood":0.6,"source":"practice"},
  {"reading":"tapped","outcome":"still","upTo":0.01,"condition":"crossed","likelihood":0.955,"source":"practice"},
  {"reading":"tapped","outcome":"stirs","upTo":0.05,"condition":"other","likelihood":0.02,"source":"practice"},
  {"reading":"tapped","outcome":"stirs","upTo":0.05,"condition":"soundEolAtEnd","likelihood":0.015,"source":"practice"},
  {"reading":"tapped","outcome":"stirs","upTo":0.05,"condition":"soundNoEol","likelihood":0.015,"source":"practice"},
  {"reading":"tapped","outcome":"stirs","upTo":0.05,"condition":"eolInPanel","likelihood":0.015,"source":"practice"},
  {"reading":"tapped","outcome":"stirs","upTo":0.05,"condition":"highResistance","likelihood":0.08,"source":"practice"},
  {"reading":"tapped","outcome":"stirs","upTo":0.05,"condition":"foil","likelihood":0.12,"source":"practice"},
  {"reading":"tapped","outcome":"stirs","upTo":0.05,"condition":"open","likelihood":0.01,"source":"practice"},
  {"reading":"tapped","outcome":"stirs","upTo":0.05,"condition":"unexplained","likelihood":0.1,"source":"practice"},
  {"reading":"tapped","outcome":"moves","upTo":0.5,"condition":"other","likelihood":0.015,"source":"practice"},
  {"reading":"tapped","outcome":"moves","upTo":0.5,"condition":"soundEolAtEnd","likelihood":0.005,"source":"practice"},
  {"reading":"tapped","outcome":"moves","upTo":0.5,"condition":"soundNoEol","likelihood":0.005,"source":"practice"},
  {"reading":"tapped","outcome":"moves","upTo":0.5,"condition":"eolInPanel","likelihood":0.005,"source":"practice"},
  {"reading":"tapped","outcome":"moves","upTo":0.5,"condition":"highResistance","likelihood":0.22,"source":"practice"},
  {"reading":"tapped","outcome":"moves","upTo":0.5,"condition":"foil","likelihood":0.16,"source":"practice"},
  {"reading":"tapped","outcome":"moves","upTo":0.5,"condition":"open","likelihood":0.02,"source":"practice"},
  {"reading":"tapped","outcome":"moves","upTo":0.5,"condition":"unexplained","likelihood":0.15,"source":"practice"},
  {"reading":"tapped","outcome":"jumps","condition":"other","likelihood":0.01,"source":"practice"},
  {"reading":"tapped","outcome":"jumps","condition":"soundEolAtEnd","likelihood":0.002,"source":"practice"},
  {"reading":"tapped","outcome":"jumps","condition":"soundNoEol","likelihood":0.002,"source":"practice"},
  {"reading":"tapped","outcome":"jumps","condition":"eolInPanel","likelihood":0.002,"source":"practice"},
  {"reading":"tapped","outcome":"jumps","condition":"highResistance","likelihood":0.3,"source":"practice"},
  {"reading":"tapped","outcome":"jumps","condition":"foil","likelihood":0.12,"source":"practice"},
  {"reading":"tapped","outcome":"jumps","condition":"open","likelihood":0.09,"source":"practice"},
  {"reading":"tapped","outcome":"jumps","condition":"unexplained","likelihood":0.15,"source":"practice"},
  {"reading":"toOtherPair","outcome":"low","upTo":1000,"condition":"other","likelihood":0.015,"source":"practice"},
  {"reading":"toOtherPair","outcome":"low","upTo":1000,"condition":"crossed","likelihood":0.62,"source":"practice"},
  {"reading":"toOtherPair","outcome":"low","upTo":1000,"condition":"sharedReturn","likelihood":0.9,"source":"practice"},
  {"reading":"toOtherPair","outcome":"low","upTo":1000,"condition":"earthFault","likelihood":0.03,"source":"practice"},
  {"reading":"toOtherPair","outcome":"low","upTo":1000,"condition":"foreignVoltage","likelihood":0.05,"source":"practice"},
  {"reading":"toOtherPair","outcome":"damp","upTo":1000000,"condition":"other","likelihood":0.007,"source":"practice"},
  {"reading":"toOtherPair","outcome":"damp","upTo":1000000,"condition":"crossed","likelihood":0.05,"source":"practice"},
  {"reading":"toOtherPair","outcome":"damp","upTo":1000000,"condition":"sharedReturn","likelihood":0.02,"source":"practice"},
  {"reading":"toOtherPair","outcome":"damp","upTo":1000000,"condition":"earthFault","likelihood":0.02,"source":"practice"},
  {"reading":"toOtherPair","outcome":"damp","upTo":1000000,"condition":"leakage","likelihood":0.02,"source":"practice"},
  {"reading":"toOtherPair","outcome":"damp","upTo":1000000,"condition":"foreignVoltage","likelihood":0.1,"source":"practice"},
  {"reading":"toOtherPair","outcome":"overRange","condition":"other","likelihood":0.978,"source":"practice"},
  {"reading":"toOtherPair","outcome":"overRange","condition":"crossed","likelihood":0.33,"source":"practice"},
  {"reading":"toOtherPair","outcome":"overRange","condition":"sharedReturn","likelihood":0.08,"source":"practice"},
  {"reading":"toOtherPair","outcome":"overRange","condition":"earthFault","likelihood":0.95,"source":"practice"},
  {"reading":"toOtherPair","outcome":"overRange","condition":"leakage","likelihood":0.975,"source":"practice"},
  {"reading":"toOtherPair","outcome":"overRange","condition":"foreignVoltage","likelihood":0.85,"source":"practice"},
  {"reading":"voltsDc","outcome":"none","upTo":0.3,"condition":"other","likelihood":0.98,"source":"practice"},
  {"reading":"voltsDc","outcome":"none","upTo":0.3,"condition":"foreignVoltage","likelihood":0.07,"source":"practice"},
  {"reading":"voltsDc","outcome":"pickup","upTo":1.5,"condition":"other","likelihood":0.0195,"source":"practice"},
  {"reading":"voltsDc","outcome":"pickup","upTo":1.5,"condition":"foreignVoltage","likelihood":0.11,"source":"practice"},
  {"reading":"voltsDc","outcome":"foreign","condition":"other","likelihood":0.0005,"source":"practice"},
  {"reading":"voltsDc","outcome":"foreign","condition":"foreignVoltage","likelihood":0.82,"source":"practice"},
  {"reading":"reversed","outcome":"same","upTo":0.05,"condition":"other","likelihood":0.995,"source":"practice"},
  {"reading":"reversed","outcome":"same","upTo":0.05,"condition":"lifeSafety","likelihood":0.75,"source":"practice"},
  {"reading":"reversed","outcome":"same","upTo":0.05,"condition":"poweredDevice","likelihood":0.95,"source":"practice"},
  {"reading":"reversed","outcome":"same","upTo":0.05,"condition":"highResistance","likelihood":0.985,"source":"practice"},
  {"reading":"reversed","outcome":"same","upTo":0.05,"condition":"unexplained","likelihood":0.8,"source":"practice"},
  {"reading":"reversed","outcome":"differs","condition":"other","likelihood":0.005,"source":"practice"},
  {"reading":"reversed","outcome":"differs","condition":"lifeSafety","likelihood":0.25,"source":"practice"},
  {"reading":"reversed","outcome":"differs","condition":"poweredDevice","likelihood":0.05,"source":"practice"},
  {"reading":"reversed","outcome":"differs","condition":"highResistance","likelihood":0.015,"source":"practice"},
  {"reading":"reversed","outcome":"differs","condition":"unexplained","likelihood":0.2,"source":"practice"},
];

export const judgeGradedReadingsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
