import type { Query } from "../problems/query.js";
import { walkTestWords } from "../reference/generated/walk-test-words.js";
import { onlyRow } from "../reference/rows.js";
import { type CutOverLoop, doorTakenOff, installationOrder, isExcluded, loopName } from "./cut-over-loop.js";

/** One opening or detector to try. */
export interface WalkTestLine {
  readonly number: number;
  readonly key: string;
  readonly panel: string;
  readonly name: string;
  readonly zone: string;
  /** "opening 2 of 6", or the kind of detector. */
  readonly what: string;
  readonly place: string;
  readonly medium: "wired" | "wireless";
  readonly how: string;
  readonly atRest: string;
  readonly tried: string;
  /** What is filled in by hand. */
  readonly blanks: readonly string[];
}

/** Lines of a walk test, and loops that have none, with why. */
export interface WalkTest {
  readonly lines: readonly WalkTestLine[];
  readonly without: readonly { readonly key: string; readonly name: string; readonly words: string }[];
  /** Wait after power returns before the first line. [s] */
  readonly settleSeconds: number;
  readonly queries: readonly Query[];
}

/**
 * A line for every opening and detector of every loop that is taken over, in installation order. Life safety has none:
 * nobody tries it from here. Retired loops have none: their signature counts.
 */
export function walkTest({
  loops,
  settleSeconds = 60,
}: {
  readonly loops: readonly CutOverLoop[];
  readonly settleSeconds?: number;
}): WalkTest {
  const tried = installationOrder(loops.filter((loop) => !isExcluded(loop) && loop.treatment !== "retire"));
  const lines = tried.flatMap(linesOf).map((line, index) => ({ number: index + 1, ...line }));
  const without = loops
    .filter((loop) => isExcluded(loop) || loop.treatment === "retire")
    .map((loop) => ({
      key: loop.key,
      name: loopName(loop),
      words: isExcluded(loop) ? "left alone: not tried from here" : "given up, signed for",
    }));
  return { lines, without, settleSeconds, queries: tried.filter(({ openings }) => openings.assumed).map(countQuery) };
}

const blanks = ["found", "time", "initials"] as const;
const isContactKind = (kind: string): boolean => kind.startsWith("contact") || kind === "foil";

function linesOf(loop: CutOverLoop): readonly Omit<WalkTestLine, "number">[] {
  const zone = loop.zones.find(({ takenOff }) => takenOff !== true) ?? loop.zones[0];
  const use = zone?.use ?? "unknown";
  const words = onlyRow("walk-test-words", walkTestWords, (row) => row.use === use);
  const shared = {
    key: loop.key,
    panel: loop.panel,
    name: loopName(loop),
    zone: zoneNames(loop.zones.filter(({ takenOff }) => takenOff !== true)),
    place: loop.place ?? loop.protects ?? "",
    medium: loop.treatment === "wireless" ? ("wireless" as const) : ("wired" as const),
    how: words.how,
    atRest: words.atRest,
    tried: words.tried,
    blanks,
  };
  const door = doorTakenOff(loop);
  const apart = loop.zones.filter((one) => one.takenOff === true && one !== door);
  const count = Math.max(1, loop.openings.count);
  const openings = Array.from({ length: count }, (_, index) => ({
    ...shared,
    what: `opening ${index + 1} of ${count}`,
    ...(door !== undefined && index === 0 ? doorLine(door, count) : {}),
  }));
  // Detectors that share a pair with contacts are not among the openings counted.
  const mixed = loop.devices.some(({ kind }) => isContactKind(kind));
  const detectors = mixed
    ? loop.devices.filter(({ kind }) => kind === "glassBreak" || kind === "motion" || kind === "shockSensor")
    : [];
  return [
    ...openings,
    ...detectors.flatMap(({ kind, count: many }) =>
      Array.from({ length: many }, (_, index) => ({
        ...shared,
        ...(apart.length === 0 ? {} : { zone: zoneNames(apart), medium: "wireless" as const }),
        what: `${kindWords[kind] ?? "detector"} ${index + 1} of ${many}`,
        how: "try it by its maker's method",
      })),
    ),
  ];
}

/** The daily door of a split pair: wireless, a zone of its own. */
function doorLine(door: CutOverLoop["zones"][number], count: number) {
  const words = onlyRow("walk-test-words", walkTestWords, (row) => row.use === "entryExit");
  const { how, atRest, tried } = words;
  return { zone: door.name, medium: "wireless" as const, what: `daily door, 1 of ${count}`, how, atRest, tried };
}

const zoneNames = (zones: CutOverLoop["zones"]): string => zones.map(({ name }) => name).join(", ");

const kindWords: Readonly<Record<string, string>> = {
  glassBreak: "glass-break detector",
  motion: "motion detector",
  shockSensor: "shock sensor",
};

function countQuery(loop: CutOverLoop): Query {
  return {
    sheet: "Loops",
    row: null,
    column: "openings",
    typed: "",
    message: `${loopName(loop)}: how many openings is not written; the walk-test sheet has ${Math.max(1, loop.openings.count)}. Count them.`,
    key: loop.key,
  };
}
