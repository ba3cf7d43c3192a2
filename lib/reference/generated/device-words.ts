// Generated from reference-data/device-words.json by tools/generate-reference.mjs. Do not edit.
/** Words for what stands on a loop, matched as whole words, longest first */
export interface DeviceWordsRow {
  /** Our kind of device [text] */
  readonly kind: string;
  /** Whether a wired one needs supply to close its contact [text] */
  readonly usuallyPowered: boolean;
  /** What surveyors type, small letters [list of text] */
  readonly words: readonly (string)[];
  /** Key into the table's sources. */
  readonly source: string;
}

export const deviceWords: readonly DeviceWordsRow[] = [
  {"kind":"contactRecessed","usuallyPowered":false,"words":["recessed","recessed contact","recessed contacts","flush contact","flush contacts","recess"],"source":"practice"},
  {"kind":"contactSurface","usuallyPowered":false,"words":["surface","surf","surface contact","surface contacts","surface armored","surface armoured","slider","surface mount"],"source":"practice"},
  {"kind":"contactOutdoor","usuallyPowered":false,"words":["outdoor contact","surface outdoor","outdoor","gate contact"],"source":"practice"},
  {"kind":"contactOverheadDoor","usuallyPowered":false,"words":["ovhd track contact","ovhd track","ovhd","overhead","overhead door contact","overhead contact","track contact","floor contact","up and over"],"source":"practice"},
  {"kind":"contactRoller","usuallyPowered":false,"words":["roller","roller contact","roller shutter","rolling shutter","shutter contact","guide contact"],"source":"practice"},
  {"kind":"contactUnspecified","usuallyPowered":false,"words":["contact","contacts","reed","reeds","magnet","door contact","window contact"],"source":"practice"},
  {"kind":"foil","usuallyPowered":false,"words":["foil","window foil","tape foil"],"source":"practice"},
  {"kind":"shockSensor","usuallyPowered":false,"words":["shock","shock sensor","shock sensors","vibration","vibration sensor","seismic"],"source":"practice"},
  {"kind":"glassBreak","usuallyPowered":true,"words":["glassbreak","glassbreaks","glass break","glass breaks","gb","glass break detector","acoustic"],"source":"practice"},
  {"kind":"motion","usuallyPowered":true,"words":["motion","motions","pir","pirs","motion detector","motion sensor","dual tech","dual technology","microwave","pir wired"],"source":"practice"},
  {"kind":"holdUp","usuallyPowered":false,"words":["panic button","panic buttons","panic","holdup","hold up","holdup button","panic button latching","duress","money clip"],"source":"practice"},
  {"kind":"tamper","usuallyPowered":false,"words":["tamper","tampers","tamper switch","tamper switches","cover tamper","cover tampers"],"source":"practice"},
  {"kind":"keySwitch","usuallyPowered":false,"words":["keyswitch","key switch","keyswitch momentary","keyswitch maintained","arming switch"],"source":"practice"},
  {"kind":"waterSensor","usuallyPowered":false,"words":["water sensor","leak sensor","water detector","flood","flood sensor","leak detector"],"source":"practice"},
  {"kind":"temperatureSensor","usuallyPowered":false,"words":["temp relay","temperature","temp sensor","thermostat","temp relay dry contact","freeze","temperature sensor"],"source":"practice"},
  {"kind":"flowSwitch","usuallyPowered":false,"words":["flow switch","flow","waterflow","sprinkler","valve","valve switch","valve supervisory"],"source":"practice"},
  {"kind":"smokeOrHeat","usuallyPowered":true,"words":["smoke","smokes","smoke detector","smoke detectors","2 wire smoke","2 wire smokes","two wire smoke","heat","heat detector","heat detectors","beam detector"],"source":"practice"},
  {"kind":"otherLifeSafety","usuallyPowered":false,"words":["pull station","gas detector","co detector","carbon monoxide","nurse call","medical pendant","door release","mag lock"],"source":"practice"},
];

export const deviceWordsSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
