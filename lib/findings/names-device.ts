import { deviceWords } from "../reference/generated/device-words.js";

/** Kinds that say nothing against life safety. */
const silent: ReadonlySet<string> = new Set([
  "flowSwitch",
  "smokeOrHeat",
  "otherLifeSafety",
  "unknown",
  "temperatureSensor",
]);

const phrases = deviceWords.filter(({ kind }) => !silent.has(kind)).flatMap(({ words }) => words);
const named = new RegExp(
  `(^|[^a-z])(${phrases.map((words) => words.replace(/[^a-z]+/g, "[^a-z]+")).join("|")})($|[^a-z])`,
);

/**
 * Whether the device column names an intrusion device: somebody stood before a contact or a detector and wrote so.
 * That speaks against an unmarked life-safety circuit; it never overrides a mark, a word or a reading.
 * @example namesIntrusionDevice("recessed contact"); // true
 */
export function namesIntrusionDevice(device: string | undefined): boolean {
  return device !== undefined && named.test(device.toLowerCase());
}
