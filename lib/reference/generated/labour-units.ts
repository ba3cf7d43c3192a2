// Generated from reference-data/labour-units.json by tools/generate-reference.mjs. Do not edit.
/** Hours that tasks take; to be calibrated with finished jobs */
export interface LabourUnitsRow {
  /** Stable key [text] */
  readonly task: string;
  /** The task for people [text] */
  readonly words: string;
  /** When everything goes well [h] */
  readonly lowHours: number;
  /** Usual [h] */
  readonly likelyHours: number;
  /** When it does not [h] */
  readonly highHours: number;
  /** What one unit of the task is [text] */
  readonly per: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const labourUnits: readonly LabourUnitsRow[] = [
  {"task":"verifyLoop","words":"verify a loop","lowHours":0.05,"likelyHours":0.08,"highHours":0.15,"per":"loop","source":"practice"},
  {"task":"landLabelConfigure","words":"land, label and configure a loop","lowHours":0.15,"likelyHours":0.2,"highHours":0.3,"per":"loop","source":"practice"},
  {"task":"eolAtFarEnd","words":"fit an EOL at the far end","lowHours":0.25,"likelyHours":0.4,"highHours":0.8,"per":"EOL","source":"practice"},
  {"task":"restrapDoubleEol","words":"re-strap a double EOL","lowHours":0.2,"likelyHours":0.3,"highHours":0.5,"per":"loop","source":"practice"},
  {"task":"repair","words":"repair a loop","lowHours":0.5,"likelyHours":1,"highHours":2.5,"per":"loop","source":"practice"},
  {"task":"split","words":"split a mixed loop","lowHours":0.5,"likelyHours":0.8,"highHours":1.5,"per":"loop","source":"practice"},
  {"task":"wirelessContact","words":"fit a wireless contact","lowHours":0.3,"likelyHours":0.4,"highHours":0.7,"per":"opening","source":"practice"},
  {"task":"wirelessMotionOrGlassBreak","words":"fit a wireless motion or glass-break detector","lowHours":0.35,"likelyHours":0.5,"highHours":0.8,"per":"device","source":"practice"},
  {"task":"measureAgain","words":"measure a loop again","lowHours":0.2,"likelyHours":0.3,"highHours":0.5,"per":"loop","source":"practice"},
  {"task":"retireAndTag","words":"retire and tag a loop","lowHours":0.1,"likelyHours":0.2,"highHours":0.4,"per":"loop","source":"practice"},
  {"task":"moduleAndSupplyLocation","words":"mount modules and supply at a location","lowHours":1,"likelyHours":1.5,"highHours":2.5,"per":"location","source":"practice"},
  {"task":"repeater","words":"fit a repeater","lowHours":0.3,"likelyHours":0.5,"highHours":1,"per":"repeater","source":"practice"},
  {"task":"setUpAndCleanUp","words":"set up and clean up","lowHours":0.5,"likelyHours":0.75,"highHours":1,"per":"day","source":"practice"},
  {"task":"commissionZone","words":"commission a zone","lowHours":0.08,"likelyHours":0.1,"highHours":0.2,"per":"zone","source":"practice"},
  {"task":"trainingAndHandover","words":"training and handover","lowHours":0.5,"likelyHours":1,"highHours":2,"per":"job","source":"practice"},
  {"task":"asBuilts","words":"as-built papers","lowHours":0.2,"likelyHours":0.3,"highHours":0.5,"per":"10 loops","source":"practice"},
  {"task":"management","words":"management","lowHours":0.2,"likelyHours":0.3,"highHours":0.5,"per":"10 loops","source":"practice"},
  {"task":"walkTestOpening","words":"walk-test an opening","lowHours":0.03,"likelyHours":0.05,"highHours":0.08,"per":"opening","source":"practice"},
  {"task":"traceUntaggedPair","words":"trace an untagged pair","lowHours":0.15,"likelyHours":0.3,"highHours":0.8,"per":"pair","source":"practice"},
  {"task":"sortSharedReturn","words":"sort a shared return","lowHours":0.2,"likelyHours":0.4,"highHours":1,"per":"return","source":"practice"},
  {"task":"bridgeOutDevice","words":"bridge out a device","lowHours":0.15,"likelyHours":0.25,"highHours":0.5,"per":"device","source":"practice"},
  {"task":"extendPair","words":"extend a pair","lowHours":0.05,"likelyHours":0.08,"highHours":0.15,"per":"pair","source":"practice"},
  {"task":"seriesTrim","words":"fit a series trim","lowHours":0.08,"likelyHours":0.1,"highHours":0.2,"per":"loop","source":"practice"},
  {"task":"detectorLinks","words":"set the links of a detector","lowHours":0.1,"likelyHours":0.15,"highHours":0.3,"per":"device","source":"practice"},
  {"task":"wiredContactSurface","words":"fit a wired surface contact","lowHours":0.25,"likelyHours":0.4,"highHours":0.7,"per":"contact","source":"practice"},
  {"task":"wiredContactRecessed","words":"fit a wired recessed contact","lowHours":0.4,"likelyHours":0.7,"highHours":1.5,"per":"contact","source":"practice"},
  {"task":"wiredContactArmoured","words":"fit a wired armoured contact","lowHours":0.5,"likelyHours":0.8,"highHours":1.5,"per":"contact","source":"practice"},
  {"task":"wirelessContactRecessed","words":"fit a wireless recessed contact","lowHours":0.5,"likelyHours":0.8,"highHours":1.5,"per":"opening","source":"practice"},
  {"task":"removeKeypadAndBlank","words":"remove a keypad and fit a blank plate","lowHours":0.15,"likelyHours":0.25,"highHours":0.4,"per":"keypad","source":"practice"},
  {"task":"sirenAtHeight","words":"work on a siren at height","lowHours":0.4,"likelyHours":0.6,"highHours":1.2,"per":"siren","source":"practice"},
  {"task":"stripOut","words":"strip out the old control","lowHours":0.5,"likelyHours":1,"highHours":2,"per":"panel","source":"practice"},
  {"task":"signalTestWithCentre","words":"signal test with the centre","lowHours":0.3,"likelyHours":0.5,"highHours":1,"per":"job","source":"practice"},
  {"task":"newCableAccessible","words":"run new cable where it is accessible","lowHours":0.5,"likelyHours":1,"highHours":2.5,"per":"30 m","source":"practice"},
];

export const labourUnitsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
