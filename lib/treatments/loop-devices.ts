import type { DeviceKind, LoopDevice, SurveyLoop } from "../survey/survey.js";

const contactKinds: readonly DeviceKind[] = [
  "contactRecessed",
  "contactSurface",
  "contactOutdoor",
  "contactOverheadDoor",
  "contactRoller",
  "contactUnspecified",
  "foil",
];

/** Contacts and foil open with a leaf; everything else is a detector or a button. */
export function isContact(device: LoopDevice): boolean {
  return contactKinds.includes(device.kind);
}

/** Powered detectors wired in one loop with contacts: a lost supply then looks like an opened window. */
export function poweredAmongContacts(loop: SurveyLoop): readonly LoopDevice[] {
  return loop.devices.some(isContact) ? loop.devices.filter((device) => device.powered && !isContact(device)) : [];
}

/** Whether the loop holds a detector that must keep its supply when the loop stays on the wire. */
export function holdsPoweredDetector(loop: SurveyLoop): boolean {
  return loop.poweredDetector || loop.devices.some((device) => device.powered);
}
