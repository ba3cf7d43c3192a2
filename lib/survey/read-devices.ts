import { deviceWords } from "../reference/generated/device-words.js";
import type { CellReaders } from "./cell-readers.js";
import type { DeviceKind, LoopDevice } from "./survey.js";
import { phraseAt, wordsOf } from "./words.js";

/** One kind of device named in a text. */
export interface Named {
  readonly kind: DeviceKind;
  readonly usuallyPowered: boolean;
  readonly at: number;
}

const phrases = deviceWords
  .flatMap(({ kind, usuallyPowered, words }) =>
    words.map((text) => ({ kind: kind as DeviceKind, usuallyPowered, phrase: wordsOf(text) })),
  )
  .sort((a, b) => b.phrase.length - a.phrase.length);

/** Kinds named in a text in the order in which they stand there; a word counts for the longest phrase it is part of. */
export function namedDevices(text: string): readonly Named[] {
  const words = [...wordsOf(text)];
  if (words.length === 0) return [];
  const found: Named[] = [];
  for (const { kind, usuallyPowered, phrase } of phrases) {
    for (let at = phraseAt(words, phrase); at >= 0; at = phraseAt(words, phrase)) {
      found.push({ kind, usuallyPowered, at });
      words.splice(at, phrase.length, ...phrase.map(() => ""));
    }
  }
  found.sort((a, b) => a.at - b.at);
  const specific = found.filter(({ kind }) => kind !== "contactUnspecified");
  // "recessed, contact" and "surface reed" are one kind, said twice.
  const list = specific.some(({ kind }) => kind.startsWith("contact")) ? specific : found;
  return list.filter(({ kind }, index) => list.findIndex((other) => other.kind === kind) === index);
}

/** What stands on a loop, from the words of the device cell and the number of openings. */
export interface DevicesRead {
  readonly devices: readonly LoopDevice[];
  /** How many of each kind was shared out rather than written. */
  readonly shared: boolean;
}

/**
 * Devices of one loop. Several kinds share the openings: one each for the later kinds, the rest for the first.
 * `powered` in the cell, a supply current or a kind that always takes supply makes a device a powered one.
 */
export function readDevices(input: {
  readonly text: string;
  /** Devices that the openings cell names beside its numbers ("3 + gb"); they are not among the openings. */
  readonly others: string;
  readonly openings: number;
  /** A supply current was measured for this loop. */
  readonly hasSupply: boolean;
  /** "5+1" as [5, 1], where the openings cell counted kinds apart. */
  readonly parts: readonly number[];
  readonly readers: Pick<CellReaders, "devices" | "words">;
}): DevicesRead {
  const { text, openings, hasSupply, parts, readers } = input;
  const apart = readers.devices(input.others);
  const all = readers.devices(text);
  const named = all.filter(({ kind }) => !apart.some((other) => other.kind === kind));
  const saysPowered = readers.words(text).includes("powered");
  const supplied = [...named, ...apart].some(({ usuallyPowered }) => usuallyPowered);
  // Supply belongs to the detectors that take it; a contact on the same loop takes none.
  const powered = (usually: boolean) => usually || ((saysPowered || hasSupply) && !supplied);
  const given = parts.length === named.length ? parts : undefined;
  const rest = Math.max(1, openings - (named.length - 1));
  const devices = [
    ...named.map(
      ({ kind, usuallyPowered }, index): LoopDevice => ({
        kind,
        count: given?.[index] ?? (index === 0 ? rest : 1),
        powered: powered(usuallyPowered),
      }),
    ),
    ...apart.map(({ kind, usuallyPowered }): LoopDevice => ({ kind, count: 1, powered: powered(usuallyPowered) })),
  ];
  if (devices.length === 0) devices.push({ kind: "unknown", count: openings, powered: powered(false) });
  return { devices, shared: given === undefined && named.length > 1 };
}
