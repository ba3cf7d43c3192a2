import type { DeviceKind, LoopDevice, SurveyLoop } from "../survey/survey.js";
import { dailyDoorOf } from "../zones/daily-door.js";

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

/**
 * The contact of a daily entry door that the owner wants apart from the other openings on its pair: the treatment
 * "split" is pinned. It becomes wireless, the others stay. Empty = nothing is split off.
 */
export function doorSplitOff(loop: SurveyLoop): readonly LoopDevice[] {
  if (loop.edits.pinTreatment !== "split" || dailyDoorOf(loop)?.sharesLoop !== true) return [];
  const contact = loop.devices.find(isContact);
  return contact === undefined ? [] : [{ ...contact, count: 1 }];
}
