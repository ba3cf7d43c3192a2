// Generated from reference-data/repair-odds.json by tools/generate-reference.mjs. Do not edit.
/** How likely a repair keeps a loop on the wire, by what the readings say, and whether to try one at all */
export interface RepairOddsRow {
  /** Condition of the loop [text] */
  readonly condition: string;
  /** The loop reads as expected after the usual repair within the capped hours [probability] */
  readonly succeeds: number;
  /** repair or rewire [text] */
  readonly treatment: string;
  /** What the usual repair is, for the reason line [text] */
  readonly work: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const repairOdds: readonly RepairOddsRow[] = [
  {"condition":"highResistance","succeeds":0.8,"treatment":"repair","work":"remake the splice first, then the contact","source":"practice"},
  {"condition":"open","succeeds":0.7,"treatment":"repair","work":"shut and latch all, then halve the loop: magnet, contact, splice, cut wire","source":"practice"},
  {"condition":"leakage","succeeds":0.4,"treatment":"repair","work":"re-terminate at the damp place; a cable wet inside the wall is not mended","source":"practice"},
  {"condition":"shorted","succeeds":0.35,"treatment":"repair","work":"unwire the contact and re-read; a staple or nail in a finished wall is not found with a meter","source":"practice"},
  {"condition":"bypassed","succeeds":0.35,"treatment":"repair","work":"look for a jumper behind the first contact, and open all openings together","source":"practice"},
  {"condition":"earthFault","succeeds":0.6,"treatment":"repair","work":"part the halves; metal frame or conduit edge","source":"practice"},
  {"condition":"crossed","succeeds":0.6,"treatment":"repair","work":"trace, relabel, part the splice","source":"practice"},
  {"condition":"foil","succeeds":0.2,"treatment":"repair","work":"cracked foil seldom holds a repair","source":"practice"},
  {"condition":"parallelContacts","succeeds":0.85,"treatment":"rewire","work":"rewire the contacts in series","source":"practice"},
  {"condition":"doubledPair","succeeds":0.8,"treatment":"rewire","work":"give each zone its own pair or its own device","source":"practice"},
  {"condition":"sharedReturn","succeeds":0.8,"treatment":"repair","work":"sort the shared return","source":"practice"},
  {"condition":"unexplained","succeeds":0.3,"treatment":"repair","work":"re-read with units and fresh leads before anything is touched","source":"practice"},
];

export const repairOddsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
