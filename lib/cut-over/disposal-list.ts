import { disposalKinds } from "../reference/generated/disposal-kinds.js";
import type { CutOverPanel } from "./cut-over-loop.js";
import type { RemovedDevice } from "./removed-devices.js";

/** What leaves the building, by kind. */
export interface DisposalLine {
  readonly kind: string;
  readonly words: string;
  readonly route: string;
  /** Pieces; batteries and transformers are counted one per panel unless the sheet says otherwise. */
  readonly count: number;
  readonly places: readonly string[];
}

/** What is taken away and where it goes; battery and transformer of the old controls only while no hold stands. */
export function disposalList({
  removed,
  panels,
  held,
}: {
  readonly removed: readonly RemovedDevice[];
  readonly panels: readonly CutOverPanel[];
  readonly held: boolean;
}): readonly DisposalLine[] {
  const pieces = [
    ...removed.flatMap(({ disposal, comesOff, count, place }) =>
      disposal === null || !comesOff ? [] : [{ kind: disposal, count, place }],
    ),
    ...(held
      ? []
      : panels.flatMap(({ panel, place, battery, mains }) => [
          ...(battery === undefined
            ? []
            : [{ kind: "leadAcidBattery", count: batteries(battery), place: place ?? panel }]),
          ...(mains === undefined ? [] : [{ kind: "transformer", count: 1, place: place ?? panel }]),
        ])),
  ];
  return disposalKinds.flatMap(({ kind, words, route }) => {
    const mine = pieces.filter((piece) => piece.kind === kind);
    const count = mine.reduce((sum, piece) => sum + piece.count, 0);
    return count === 0 ? [] : [{ kind, words, route, count, places: [...new Set(mine.map(({ place }) => place))] }];
  });
}

/** "2 x 7Ah 2016" are two batteries. */
const batteries = (words: string): number => Number(/^\s*(\d{1,2})\s*[x×*]/i.exec(words)?.[1] ?? 1);
