// Generated from reference-data/judge-conditions.json by tools/generate-reference.mjs. Do not edit.
/** How often each condition is met on loops of an old panel, the action that is right for it, and the chance that the old panel showed it normal at rest. Priors are weights; they are normalised on use. */
export interface JudgeConditionsRow {
  /** Name of the condition in code [text] */
  readonly condition: string;
  /** Weight before any reading [1] */
  readonly prior: number;
  /** Action that is right when the condition is true [text] */
  readonly rightAction: string;
  /** Chance that the old panel showed the zone normal at rest when the EOL is at the far end [1] */
  readonly normalIfEolAtEnd: number;
  /** The same where there is no EOL [1] */
  readonly normalIfNoEol: number;
  /** The same where the EOL is at the panel [1] */
  readonly normalIfEolAtPanel: number;
  /** Key into the table's sources. */
  readonly source: string;
}

export const judgeConditions: readonly JudgeConditionsRow[] = [
  {"condition":"soundEolAtEnd","prior":0.23,"rightAction":"keep","normalIfEolAtEnd":0.95,"normalIfNoEol":0,"normalIfEolAtPanel":0,"source":"practice"},
  {"condition":"soundNoEol","prior":0.15,"rightAction":"fitEol","normalIfEolAtEnd":0,"normalIfNoEol":0.85,"normalIfEolAtPanel":0,"source":"practice"},
  {"condition":"eolInPanel","prior":0.19,"rightAction":"fitEol","normalIfEolAtEnd":0,"normalIfNoEol":0,"normalIfEolAtPanel":0.95,"source":"practice"},
  {"condition":"shorted","prior":0.03,"rightAction":"repair","normalIfEolAtEnd":0.04,"normalIfNoEol":0.92,"normalIfEolAtPanel":0.92,"source":"practice"},
  {"condition":"open","prior":0.085,"rightAction":"repair","normalIfEolAtEnd":0.03,"normalIfNoEol":0.03,"normalIfEolAtPanel":0.03,"source":"practice"},
  {"condition":"highResistance","prior":0.06,"rightAction":"repair","normalIfEolAtEnd":0.38,"normalIfNoEol":0.62,"normalIfEolAtPanel":0.48,"source":"practice"},
  {"condition":"leakage","prior":0.035,"rightAction":"repair","normalIfEolAtEnd":0.55,"normalIfNoEol":0.94,"normalIfEolAtPanel":0.94,"source":"practice"},
  {"condition":"wrongEol","prior":0.04,"rightAction":"changeEol","normalIfEolAtEnd":0.15,"normalIfNoEol":0.3,"normalIfEolAtPanel":0.3,"source":"practice"},
  {"condition":"normallyOpen","prior":0.025,"rightAction":"landAsNormallyOpen","normalIfEolAtEnd":0.94,"normalIfNoEol":0.92,"normalIfEolAtPanel":0.85,"source":"practice"},
  {"condition":"bypassed","prior":0.04,"rightAction":"repair","normalIfEolAtEnd":0.95,"normalIfNoEol":0.92,"normalIfEolAtPanel":0.95,"source":"practice"},
  {"condition":"foreignVoltage","prior":0.015,"rightAction":"measureAgain","normalIfEolAtEnd":0.78,"normalIfNoEol":0.78,"normalIfEolAtPanel":0.78,"source":"practice"},
  {"condition":"earthFault","prior":0.02,"rightAction":"repair","normalIfEolAtEnd":0.94,"normalIfNoEol":0.9,"normalIfEolAtPanel":0.94,"source":"practice"},
  {"condition":"crossed","prior":0.02,"rightAction":"repair","normalIfEolAtEnd":0.78,"normalIfNoEol":0.75,"normalIfEolAtPanel":0.78,"source":"practice"},
  {"condition":"doubleEol","prior":0.03,"rightAction":"changeEol","normalIfEolAtEnd":0.92,"normalIfNoEol":0,"normalIfEolAtPanel":0,"source":"practice"},
  {"condition":"foil","prior":0.012,"rightAction":"repair","normalIfEolAtEnd":0.88,"normalIfNoEol":0.85,"normalIfEolAtPanel":0.88,"source":"practice"},
  {"condition":"poweredDevice","prior":0.03,"rightAction":"powerAndRetest","normalIfEolAtEnd":0.93,"normalIfNoEol":0.9,"normalIfEolAtPanel":0.93,"source":"practice"},
  {"condition":"lifeSafety","prior":0.015,"rightAction":"leaveAlone","normalIfEolAtEnd":0.82,"normalIfNoEol":0.82,"normalIfEolAtPanel":0.82,"source":"practice"},
  {"condition":"unexplained","prior":0.006,"rightAction":"measureAgain","normalIfEolAtEnd":0.5,"normalIfNoEol":0.5,"normalIfEolAtPanel":0.5,"source":"practice"},
  {"condition":"parallelContacts","prior":0.004,"rightAction":"repair","normalIfEolAtEnd":0.95,"normalIfNoEol":0.92,"normalIfEolAtPanel":0.95,"source":"practice"},
  {"condition":"sharedReturn","prior":0.004,"rightAction":"repair","normalIfEolAtEnd":0.9,"normalIfNoEol":0.88,"normalIfEolAtPanel":0.9,"source":"practice"},
  {"condition":"doubledPair","prior":0.003,"rightAction":"repair","normalIfEolAtEnd":0.8,"normalIfNoEol":0.8,"normalIfEolAtPanel":0.8,"source":"practice"},
  {"condition":"tamperLoop","prior":0.004,"rightAction":"fitEol","normalIfEolAtEnd":0.9,"normalIfNoEol":0.9,"normalIfEolAtPanel":0.9,"source":"practice"},
];

export const judgeConditionsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
