// Generated from reference-data/next-readings.json by tools/generate-reference.mjs. Do not edit.
/** Further readings of a loop: minutes each takes, where it is taken, and how it is asked for */
export interface NextReadingsRow {
  /** Name of the reading [text] */
  readonly reading: string;
  /** Time it takes once on site; openEvery: for each opening not yet read [min] */
  readonly minutes: number;
  /** panel or device: where the person stands [text] */
  readonly at: string;
  /** What to do, as printed [text] */
  readonly words: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const nextReadings: readonly NextReadingsRow[] = [
  {"reading":"openOneOpening","minutes":2,"at":"device","words":"Open opening {opening} alone and read the pair again.","source":"guess"},
  {"reading":"openEvery","minutes":2,"at":"device","words":"Open every opening one by one and read the pair each time, {unread} not yet read; {proved} of {total} proved so far.","source":"guess"},
  {"reading":"lookAtOldPanel","minutes":0.4,"at":"panel","words":"Look inside the old panel: is there a resistor on this zone, in series with one conductor or across the terminals?","source":"guess"},
  {"reading":"oldPanelRestingState","minutes":0.3,"at":"panel","words":"Before lifting the pair: does the old panel show this zone normal or faulted with everything shut?","source":"guess"},
  {"reading":"volts","minutes":0.4,"at":"panel","words":"Volts on the lifted pair first, dc and ac, before any ohms.","source":"guess"},
  {"reading":"tapped","minutes":3,"at":"device","words":"Tap and wiggle each contact and splice while watching the ohms; write down the lowest and the highest.","source":"guess"},
  {"reading":"earth","minutes":1,"at":"panel","words":"Ohms from each conductor to earth, at the panel, pair lifted.","source":"guess"},
  {"reading":"toOtherPair","minutes":1,"at":"panel","words":"Lowest ohms from this pair to any other pair in the panel, each conductor by itself.","source":"guess"},
  {"reading":"reversed","minutes":0.4,"at":"panel","words":"Swap the leads and read the closed loop again.","source":"guess"},
  {"reading":"closed","minutes":0.5,"at":"panel","words":"Ohms with every opening shut and latched, both conductors lifted.","source":"guess"},
  {"reading":"openTogether","minutes":4,"at":"device","words":"Open every opening at once and read the pair.","source":"guess"},
  {"reading":"powerAndReread","minutes":10,"at":"device","words":"Give the detector its supply, wait for its warm-up, then read the pair again.","source":"guess"},
];

export const nextReadingsSources: Readonly<Record<string, string>> = {
  "guess": "common practice, no source: a guess",
};
