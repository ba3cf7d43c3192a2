// Generated from reference-data/class-two-limits.json by tools/generate-reference.mjs. Do not edit.
/** Limits of Class 2 power sources, NEC chapter 9 tables 11(A) and 11(B) */
export interface ClassTwoLimitsRow {
  /** inherent, or overcurrentProtection [text] */
  readonly limitedBy: string;
  /** The row holds above this; 0 is included in the first row [V] */
  readonly overVolts: number;
  /** The row holds up to this [V] */
  readonly toVolts: number;
  /** ac, dc or both, as far as read [text] */
  readonly current: string;
  /** Most current after the time named in the table's notes [A] */
  readonly maxAmps?: number;
  /** Most current is this over the voltage [VA] */
  readonly maxVoltAmps?: number;
  /** Most on the nameplate [VA] */
  readonly nameplateVoltAmps?: number;
  /** Most on the nameplate is this times the voltage [VA/V] */
  readonly nameplateVoltAmpsPerVolt?: number;
  /** Most on the nameplate [A] */
  readonly nameplateAmps?: number;
  /** Most on the nameplate is this over the voltage [A·V] */
  readonly nameplateAmpsTimesVolts?: number;
  /** Most that the overcurrent protection may be [A] */
  readonly overcurrentAmps?: number;
  /** Most that the overcurrent protection may be is this over the voltage [A·V] */
  readonly overcurrentAmpsTimesVolts?: number;
  /** How sure the row is: high, medium or low [text] */
  readonly confidence: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const classTwoLimits: readonly ClassTwoLimitsRow[] = [
  {"limitedBy":"inherent","overVolts":0,"toVolts":20,"current":"ac and dc","maxAmps":8,"nameplateVoltAmpsPerVolt":5,"nameplateAmps":5,"confidence":"high for ac, medium for dc","source":"table11a"},
  {"limitedBy":"inherent","overVolts":20,"toVolts":30,"current":"ac and dc","maxAmps":8,"nameplateVoltAmps":100,"nameplateAmpsTimesVolts":100,"confidence":"high for ac, medium for dc","source":"table11a"},
  {"limitedBy":"inherent","overVolts":30,"toVolts":60,"current":"dc","maxVoltAmps":150,"nameplateVoltAmps":100,"nameplateAmpsTimesVolts":100,"confidence":"medium","source":"table11bMemory"},
  {"limitedBy":"overcurrentProtection","overVolts":0,"toVolts":20,"current":"dc","maxVoltAmps":1000,"nameplateVoltAmpsPerVolt":5,"overcurrentAmps":5,"confidence":"medium","source":"table11bMemory"},
  {"limitedBy":"overcurrentProtection","overVolts":20,"toVolts":60,"current":"dc","maxVoltAmps":1000,"nameplateVoltAmps":100,"overcurrentAmpsTimesVolts":100,"confidence":"medium","source":"table11bMemory"},
];

export const classTwoLimitsSources: Readonly<Record<string, string>> = {
  "table11a": "NFPA 70 (NEC) chapter 9 table 11(A), quoted on a standards mailing list, read; the dc row from memory",
  "table11bMemory": "NFPA 70 (NEC) chapter 9 table 11(B), from memory, not checked",
};
