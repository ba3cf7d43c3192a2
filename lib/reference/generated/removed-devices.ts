// Generated from reference-data/removed-devices.json by tools/generate-reference.mjs. Do not edit.
/** What is left where a device comes off, by kind */
export interface RemovedDevicesRow {
  /** Our kind of device, or keypad, siren, control [text] */
  readonly kind: string;
  /** blankPlate: a plate covers the place; note: words say what happens [text] */
  readonly finish: string;
  /** yes: the device is taken down when its loop is given up; no: it stays in its frame [text] */
  readonly comesOff: string;
  /** What is done, and what to write down [text] */
  readonly words: string;
  /** Kind in the disposal table; none = nothing to take away [text] */
  readonly disposal: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const removedDevices: readonly RemovedDevicesRow[] = [
  {"kind":"keypad","finish":"blankPlate","comesOff":"yes","words":"blank plate over the box","disposal":"electronics","source":"practice"},
  {"kind":"motion","finish":"blankPlate","comesOff":"yes","words":"blank plate, or the new detector covers the mark","disposal":"electronics","source":"practice"},
  {"kind":"glassBreak","finish":"blankPlate","comesOff":"yes","words":"blank plate, or the new detector covers the mark","disposal":"electronics","source":"practice"},
  {"kind":"holdUp","finish":"blankPlate","comesOff":"yes","words":"blank plate, and nobody takes the old button for a working one","disposal":"electronics","source":"practice"},
  {"kind":"keySwitch","finish":"blankPlate","comesOff":"yes","words":"blank plate over the key","disposal":"electronics","source":"practice"},
  {"kind":"contactSurface","finish":"note","comesOff":"yes","words":"taken off, holes plugged and touched up","disposal":"smallParts","source":"practice"},
  {"kind":"contactOutdoor","finish":"note","comesOff":"yes","words":"taken off, holes sealed against water","disposal":"smallParts","source":"practice"},
  {"kind":"contactOverheadDoor","finish":"note","comesOff":"yes","words":"taken off with its lead; floor and track holes filled","disposal":"smallParts","source":"practice"},
  {"kind":"contactRoller","finish":"note","comesOff":"yes","words":"taken off with its lead; floor and guide holes filled","disposal":"smallParts","source":"practice"},
  {"kind":"contactRecessed","finish":"note","comesOff":"no","words":"stays in the frame, pair tagged at both ends","disposal":"none","source":"practice"},
  {"kind":"contactUnspecified","finish":"note","comesOff":"no","words":"left as found, pair tagged at both ends; say what it was","disposal":"none","source":"practice"},
  {"kind":"foil","finish":"note","comesOff":"no","words":"left on the glass or scraped off, as the owner likes","disposal":"none","source":"practice"},
  {"kind":"shockSensor","finish":"note","comesOff":"yes","words":"taken off, holes plugged and touched up","disposal":"electronics","source":"practice"},
  {"kind":"tamper","finish":"note","comesOff":"no","words":"stays with its box, pair tagged","disposal":"none","source":"practice"},
  {"kind":"waterSensor","finish":"note","comesOff":"yes","words":"taken off, holes plugged","disposal":"electronics","source":"practice"},
  {"kind":"temperatureSensor","finish":"note","comesOff":"yes","words":"taken off, holes plugged; the fridge or room keeps its own alarm","disposal":"electronics","source":"practice"},
  {"kind":"unknown","finish":"note","comesOff":"no","words":"not known what it is: left as found, pair tagged","disposal":"none","source":"practice"},
  {"kind":"siren","finish":"blankPlate","comesOff":"yes","words":"plate or patch over the box; outside holes sealed","disposal":"electronics","source":"practice"},
  {"kind":"control","finish":"note","comesOff":"yes","words":"backing stays or wall is patched; pairs tagged behind the new enclosure","disposal":"electronics","source":"practice"},
];

export const removedDevicesSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
