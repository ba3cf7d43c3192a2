import type { Query } from "../problems/query.js";
import type { SupplySegment } from "../supply/supply-tree.js";
import { loopsNamed, meansPanel } from "../survey/loops-named.js";
import type { SurveyCable, SurveyLoop } from "../survey/survey.js";
import type { Conductor } from "../wiring/conductor.js";

/** How supply reaches one loop of a panel. */
export interface SupplyFeed {
  readonly loop: SurveyLoop;
  /** Key of the loop that feeds it; null = the panel. */
  readonly feeder: string | null;
  /** A person wrote or confirmed the feed; false = the panel is taken because nothing is written. */
  readonly written: boolean;
  /** Length of its last stretch; null when run or wire size is not known. [m] */
  readonly meters: number | null;
  /** How the stretch was read from the written runs. */
  readonly words: string;
  readonly segment: SupplySegment | null;
}

/**
 * The feeds of a panel's powered loops, with every loop they are fed through: who feeds whom by the column Fed from,
 * stretches by the runs. Runs count from the panel, so a fed loop's stretch is its run less its feeder's, or its own
 * run where that is not the longer one.
 */
export function supplyFeeds({
  powered,
  loops,
}: {
  readonly powered: readonly SurveyLoop[];
  /** Every loop of the same panel that may be touched. */
  readonly loops: readonly SurveyLoop[];
}): { readonly feeds: readonly SupplyFeed[]; readonly queries: readonly Query[] } {
  const queries: Query[] = [];
  const feederOf = new Map<string, SurveyLoop | null>();
  const open = [...powered];
  for (const loop of open) {
    if (feederOf.has(loop.key)) continue;
    const feeder = feederIn(loop, loops, queries);
    feederOf.set(loop.key, feeder);
    if (feeder !== null) open.push(feeder);
  }
  for (const key of feederOf.keys()) breakCycle(key, feederOf, queries);
  const byKey = new Map(open.map((loop) => [loop.key, loop]));
  const feeds = [...feederOf].flatMap(([key, feeder]) => {
    const loop = byKey.get(key);
    return loop === undefined ? [] : [feedOf(loop, feeder)];
  });
  return { feeds, queries };
}

function feederIn(loop: SurveyLoop, loops: readonly SurveyLoop[], queries: Query[]): SurveyLoop | null {
  const { fedFrom, panel } = loop;
  if (fedFrom === undefined || meansPanel(fedFrom, panel)) return null;
  const found = loopsNamed({ loops, name: fedFrom, panel }).filter(({ key }) => key !== loop.key);
  const [only] = found;
  if (only !== undefined && found.length === 1) return only;
  const which =
    found.length === 0
      ? "no other loop of this panel that may be touched goes by that name"
      : `it may be ${found.map((one) => `${one.loop} (${one.key})`).join(" or ")}`;
  queries.push(
    askFeed(loop, `Fed from ${fedFrom}: ${which}. Until it is mended it is reckoned as fed from the panel.`),
  );
  return null;
}

function breakCycle(start: string, feederOf: Map<string, SurveyLoop | null>, queries: Query[]): void {
  const seen = new Set<string>();
  for (let key: string | undefined = start; key !== undefined; key = feederOf.get(key)?.key) {
    const feeder = feederOf.get(key);
    seen.add(key);
    if (!feeder || !seen.has(feeder.key)) continue;
    queries.push(
      askFeed(
        feeder,
        `The column Fed from leads in a circle through ${[...seen].join(", ")}; ${feeder.key} is reckoned as fed from the panel. Write which of them the panel feeds.`,
      ),
    );
    feederOf.set(feeder.key, null);
    return;
  }
}

const askFeed = (loop: SurveyLoop, message: string): Query => ({
  sheet: loop.sheet,
  row: loop.row,
  column: "fedFrom",
  typed: loop.fedFrom ?? "",
  message,
  key: loop.key,
});

function feedOf(loop: SurveyLoop, feeder: SurveyLoop | null): SupplyFeed {
  const conductor = conductorOf(loop.cable);
  const { meters, words } = stretchOf(loop, feeder);
  const size = conductor === undefined ? `${words}; wire size not written` : words;
  const known = meters !== null && conductor !== undefined;
  return {
    loop,
    feeder: feeder?.key ?? null,
    written: loop.fedFrom !== undefined,
    meters,
    words: size,
    segment: known ? { id: `to ${loop.key}`, from: feeder?.key ?? "panel", to: loop.key, meters, conductor } : null,
  };
}

function stretchOf(
  loop: SurveyLoop,
  feeder: SurveyLoop | null,
): { readonly meters: number | null; readonly words: string } {
  const own = loop.run?.meters;
  if (own === undefined) return { meters: null, words: "run not written" };
  if (feeder === null) return { meters: own, words: `${own.toFixed(1)} m from the panel` };
  const before = feeder.run?.meters;
  const name = feeder.label ?? feeder.loop;
  if (before === undefined || own <= before) {
    return { meters: own, words: `${own.toFixed(1)} m, read as counted from ${name}` };
  }
  const meters = own - before;
  return {
    meters,
    words: `${own.toFixed(1)} − ${before.toFixed(1)} = ${meters.toFixed(1)} m from ${name}, runs counted from the panel`,
  };
}

function conductorOf(cable: SurveyCable | undefined): Conductor | undefined {
  if (cable === undefined) return undefined;
  const { areaMm2, gaugeAwg, metal } = cable;
  const rest = metal === undefined ? {} : { metal };
  if (areaMm2 !== undefined) return { areaMm2, ...rest };
  return gaugeAwg === undefined ? undefined : { gaugeAwg, ...rest };
}
