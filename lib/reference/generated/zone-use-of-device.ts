// Generated from reference-data/zone-use-of-device.json by tools/generate-reference.mjs. Do not edit.
/** What a kind of device is normally used for */
export interface ZoneUseOfDeviceRow {
  /** Our kind of device [text] */
  readonly kind: string;
  /** Use of its zone, by its key in zone-uses; life safety is excluded [text] */
  readonly use: string;
  /** yes: no other use is taken without a person confirming it; 24h: the same, but a 24-hour audible use is accepted; no: a proposal [text] */
  readonly binding: string;
  /** Reason for people [text] */
  readonly why: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const zoneUseOfDevice: readonly ZoneUseOfDeviceRow[] = [
  {"kind":"holdUp","use":"holdUp","binding":"24h","why":"a hold-up stands apart, 24-hour and silent; never delayed, never switched off by disarming","source":"practice"},
  {"kind":"tamper","use":"tamper","binding":"24h","why":"a tamper reports at any time, armed or not","source":"practice"},
  {"kind":"keySwitch","use":"arming","binding":"yes","why":"a key switch arms and disarms; it is never an alarm zone","source":"practice"},
  {"kind":"waterSensor","use":"environmental","binding":"24h","why":"water is reported at any time, apart from intrusion","source":"practice"},
  {"kind":"temperatureSensor","use":"environmental","binding":"24h","why":"temperature is reported at any time, apart from intrusion","source":"practice"},
  {"kind":"motion","use":"interior","binding":"no","why":"a motion detector watches a room while everybody is away","source":"practice"},
  {"kind":"glassBreak","use":"perimeter","binding":"no","why":"a glass-break detector is part of the shell","source":"practice"},
  {"kind":"shockSensor","use":"perimeter","binding":"no","why":"a shock sensor is part of the shell","source":"practice"},
  {"kind":"foil","use":"perimeter","binding":"no","why":"foil is part of the shell","source":"practice"},
  {"kind":"contactRecessed","use":"perimeter","binding":"no","why":"contacts of the shell, no daily entry door named","source":"practice"},
  {"kind":"contactSurface","use":"perimeter","binding":"no","why":"contacts of the shell, no daily entry door named","source":"practice"},
  {"kind":"contactOutdoor","use":"perimeter","binding":"no","why":"contacts of the shell, no daily entry door named","source":"practice"},
  {"kind":"contactOverheadDoor","use":"perimeter","binding":"no","why":"contacts of the shell, no daily entry door named","source":"practice"},
  {"kind":"contactRoller","use":"perimeter","binding":"no","why":"contacts of the shell, no daily entry door named","source":"practice"},
  {"kind":"contactUnspecified","use":"perimeter","binding":"no","why":"contacts of the shell, no daily entry door named","source":"practice"},
  {"kind":"flowSwitch","use":"lifeSafety","binding":"yes","why":"a flow or valve switch belongs to the sprinkler: left alone","source":"practice"},
  {"kind":"smokeOrHeat","use":"lifeSafety","binding":"yes","why":"a smoke or heat detector: left alone","source":"practice"},
  {"kind":"otherLifeSafety","use":"lifeSafety","binding":"yes","why":"life safety: left alone","source":"practice"},
];

export const zoneUseOfDeviceSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
