// Generated from reference-data/wireless-for-device.json by tools/generate-reference.mjs. Do not edit.
/** Which wireless device replaces which wired one, and what fitting it is called in the labour table */
export interface WirelessForDeviceRow {
  /** Kind of device on the old loop [text] */
  readonly device: string;
  /** Class of article in the price book [text] */
  readonly class: string;
  /** Labour task [text] */
  readonly task: string;
  /** One device for each opening, or one for each device [text] */
  readonly per: string;
  /** What the fitter must know [text] */
  readonly note: string;
  /** Key into the table's sources. */
  readonly source: string;
}

export const wirelessForDevice: readonly WirelessForDeviceRow[] = [
  {"device":"contactRecessed","class":"wirelessContactRecessed","task":"wirelessContactRecessed","per":"opening","note":"","source":"practice"},
  {"device":"contactSurface","class":"wirelessContactSurface","task":"wirelessContact","per":"opening","note":"","source":"practice"},
  {"device":"contactOutdoor","class":"wirelessContactOutdoor","task":"wirelessContact","per":"opening","note":"outdoor rating","source":"practice"},
  {"device":"contactOverheadDoor","class":"wirelessContactTilt","task":"wirelessContact","per":"opening","note":"tilt sensor on a sectional or up-and-over door","source":"practice"},
  {"device":"contactRoller","class":"wirelessContactRoller","task":"wirelessContact","per":"opening","note":"rolling shutter: wide-gap floor or guide contact with armoured lead into a transmitter","source":"practice"},
  {"device":"contactUnspecified","class":"wirelessContactSurface","task":"wirelessContact","per":"opening","note":"kind of contact not written: surface assumed","source":"practice"},
  {"device":"foil","class":"wirelessGlassBreak","task":"wirelessMotionOrGlassBreak","per":"device","note":"glass-break detector in place of foil","source":"practice"},
  {"device":"shockSensor","class":"wirelessGlassBreak","task":"wirelessMotionOrGlassBreak","per":"device","note":"glass-break detector in place of a shock sensor","source":"practice"},
  {"device":"glassBreak","class":"wirelessGlassBreak","task":"wirelessMotionOrGlassBreak","per":"device","note":"","source":"practice"},
  {"device":"motion","class":"wirelessMotion","task":"wirelessMotionOrGlassBreak","per":"device","note":"","source":"practice"},
  {"device":"holdUp","class":"wirelessHoldUp","task":"wirelessContact","per":"device","note":"hold-up: owner present, centre told","source":"practice"},
  {"device":"waterSensor","class":"wirelessWater","task":"wirelessContact","per":"device","note":"","source":"practice"},
  {"device":"temperatureSensor","class":"wirelessContactSurface","task":"wirelessContact","per":"device","note":"transmitter on the dry contact of the old sensor","source":"practice"},
  {"device":"keySwitch","class":"wirelessContactSurface","task":"wirelessContact","per":"device","note":"transmitter on the dry contact of the key switch","source":"practice"},
  {"device":"tamper","class":"wirelessContactSurface","task":"wirelessContact","per":"device","note":"transmitter on the tamper contact","source":"practice"},
  {"device":"unknown","class":"wirelessContactSurface","task":"wirelessContact","per":"opening","note":"kind of device not known: surface contact assumed","source":"practice"},
];

export const wirelessForDeviceSources: Readonly<Record<string, string>> = {
  "practice": "common practice, no source",
};
