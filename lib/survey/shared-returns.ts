import type { Query } from "../problems/query.js";
import { loopsNamed } from "./loops-named.js";
import type { SurveyLoop } from "./survey.js";

/** Loops with the others on their return, and what the column leaves open. */
export interface SharedReturnsRead {
  readonly loops: readonly SurveyLoop[];
  readonly queries: readonly Query[];
}

/**
 * Reads the column Return shared with: names of loops of the same panel, by key, number or label, commas between. One
 * conductor has one name: what is written on one side counts for both, and pair by pair for all of them; both is said.
 */
export function sharedReturns({
  loops,
  heading,
}: {
  readonly loops: readonly SurveyLoop[];
  readonly heading: string;
}): SharedReturnsRead {
  const queries: Query[] = [];
  const ask = (loop: SurveyLoop, message: string) =>
    queries.push({
      sheet: loop.sheet,
      row: loop.row,
      column: heading,
      typed: loop.typed["returnSharedWith"] ?? "",
      message,
      key: loop.key,
    });
  const named = new Map(loops.map((loop) => [loop.key, namedBy(loop, loops, ask)]));
  const groups = groupsOf(loops, named);
  for (const group of groups) {
    const oneSided = group.find((loop) =>
      group.some(({ key }) => key !== loop.key && named.get(key)?.includes(loop.key) !== true),
    );
    const first = group.find(({ key }) => (named.get(key) ?? []).length > 0);
    if (oneSided !== undefined && first !== undefined) {
      ask(
        first,
        `${namesOf(group)} are taken to come back on one return: not every row names all the others. Write them beside each, or take out what is wrong.`,
      );
    }
    for (const loop of group) askAboutDevice(loop, group, ask);
  }
  const groupOf = new Map(groups.flatMap((group) => group.map((loop) => [loop.key, group] as const)));
  return {
    loops: loops.map((loop) => {
      const others = groupOf.get(loop.key)?.filter(({ key }) => key !== loop.key) ?? [];
      return others.length === 0 ? loop : { ...loop, returnSharedWith: others.map(({ key }) => key) };
    }),
    queries,
  };
}

type Ask = (loop: SurveyLoop, message: string) => void;

const nothing = new Set(["", "-", "?", "none", "no", "n/a", "own"]);

/** Keys of the loops that one row names, as far as they can be told. */
function namedBy(loop: SurveyLoop, loops: readonly SurveyLoop[], ask: Ask): readonly string[] {
  const typed = loop.typed["returnSharedWith"] ?? "";
  const names = typed
    .split(/[,;&/+]|\band\b/i)
    .map((name) => name.trim())
    .filter((name) => !nothing.has(name.toLowerCase()));
  return names.flatMap((name) => {
    const found = loopsNamed({ loops, name, panel: loop.panel });
    const [only] = found;
    if (only === undefined || found.length > 1) {
      const elsewhere = loopsNamed({ loops, name })[0];
      ask(loop, unsettledWords(name, loop, found, elsewhere));
      return [];
    }
    if (only.key === loop.key) {
      ask(loop, `"${name}" is this loop itself. Write the other loops on its return.`);
      return [];
    }
    if (only.panel !== loop.panel) {
      ask(loop, unsettledWords(name, loop, [], only));
      return [];
    }
    return [only.key];
  });
}

function unsettledWords(
  name: string,
  { panel }: SurveyLoop,
  found: readonly SurveyLoop[],
  elsewhere: SurveyLoop | undefined,
): string {
  if (found.length > 1) {
    const which = found.map(({ loop, key }) => `${loop} (${key})`).join(" or ");
    return `"${name}" may be ${which}. Write its key. Until then it is not taken to share a return.`;
  }
  return elsewhere === undefined
    ? `No loop of panel ${panel} goes by "${name}". Write loop numbers of this panel, commas between. It is not taken to share a return.`
    : `"${name}" comes back to panel ${elsewhere.panel}, this loop to ${panel}. A return ends at one panel: it is not taken to share one. Trace the conductor and write which panel it is.`;
}

/** Loops on one return, in the order of the rows. */
function groupsOf(
  loops: readonly SurveyLoop[],
  named: ReadonlyMap<string, readonly string[]>,
): readonly (readonly SurveyLoop[])[] {
  const neighbours = new Map<string, Set<string>>();
  const link = (a: string, b: string) => neighbours.set(a, (neighbours.get(a) ?? new Set()).add(b));
  for (const [key, others] of named) {
    for (const other of others) {
      link(key, other);
      link(other, key);
    }
  }
  const done = new Set<string>();
  return loops.flatMap(({ key }) => {
    if (done.has(key) || !neighbours.has(key)) return [];
    const reached = new Set([key]);
    for (const at of reached) for (const next of neighbours.get(at) ?? []) reached.add(next);
    for (const one of reached) done.add(one);
    return [loops.filter((loop) => reached.has(loop.key))];
  });
}

const nameOf = ({ loop, label }: SurveyLoop) => (label === undefined ? loop : `${loop} ${label}`);
const namesOf = (loops: readonly SurveyLoop[]) => loops.map(nameOf).join(", ");

/** A return that a detector's supply may come back on is looked at before it is lifted. */
function askAboutDevice(loop: SurveyLoop, group: readonly SurveyLoop[], ask: Ask): void {
  if (!loop.poweredDetector) return;
  const others = namesOf(group.filter(({ key }) => key !== loop.key));
  ask(
    loop,
    `A detector with supply shares its return with ${others}: look whether its supply comes back on that conductor too. If so it is no loop return; take it out of this column and write the detector's supply in Fed from.`,
  );
}
