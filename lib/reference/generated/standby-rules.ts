// Generated from reference-data/standby-rules.json by tools/generate-reference.mjs. Do not edit.
/** How long a supply has to last without mains, by rule set */
export interface StandbyRulesRow {
  /** Key [text] */
  readonly rule: string;
  /** The rule for people [text] */
  readonly words: string;
  /** Standby without mains [h] */
  readonly standbyHours: number;
  /** Alarm after the standby; absent = the rule as read names none, so it has to be entered [min] */
  readonly alarmMinutes?: number;
  /** How sure the row is: high, medium or low [text] */
  readonly confidence: string;
  /** What disagrees or limits the row [text] */
  readonly remark?: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const standbyRules: readonly StandbyRulesRow[] = [
  {"rule":"usHousehold","words":"US household burglar alarm","standbyHours":4,"alarmMinutes":4,"confidence":"medium","source":"ul1023Memory"},
  {"rule":"usHouseholdCombined","words":"US household fire or combined fire and burglar alarm","standbyHours":24,"alarmMinutes":4,"confidence":"medium","remark":"some texts print 5 min of alarm","source":"ul985Memory"},
  {"rule":"usCentralStation","words":"US central-station burglar alarm with bell","standbyHours":4,"alarmMinutes":15,"confidence":"low","remark":"one worksheet read uses 15 min of alarm","source":"ul1610Memory"},
  {"rule":"enGrade2","words":"EN 50131 grade 2, fault signalled to an alarm receiving centre","standbyHours":12,"confidence":"high","source":"en50131Read"},
  {"rule":"enGrade1TypeA","words":"EN 50131 grade 1, type A supply","standbyHours":12,"confidence":"medium","remark":"one web guide prints 8 h","source":"en50131Memory"},
  {"rule":"enGrade3TypeA","words":"EN 50131 grade 3, type A supply","standbyHours":60,"confidence":"medium","remark":"one web guide prints 24 h; half where mains faults are notified to a receiving centre","source":"en50131Memory"},
  {"rule":"enGrade4TypeA","words":"EN 50131 grade 4, type A supply","standbyHours":60,"confidence":"medium","remark":"half where mains faults are notified to a receiving centre","source":"en50131Memory"},
  {"rule":"insurer24","words":"24 h asked for by an insurer's letter","standbyHours":24,"alarmMinutes":15,"confidence":"low","remark":"the letter's own words come first","source":"practice"},
];

export const standbyRulesSources: Readonly<Record<string, string>> = {
  "ul1023Memory": "UL 1023, from memory, not checked",
  "ul985Memory": "UL 985, from memory, not checked",
  "ul1610Memory": "UL 1610, UL 365, UL 609, from memory, not checked",
  "en50131Read": "EN 50131-1, as given in two texts, read",
  "en50131Memory": "EN 50131-1 and EN 50131-6, type A supplies, from memory, not checked",
  "practice": "common practice, no source",
};
