import type { PlannedLoop } from "../plan/planned-loop.js";
import type { JobSettings } from "../price-book/job-settings.js";
import { articlesOfClass } from "../price-book/look-up.js";
import type { Query } from "../problems/query.js";
import { type ExtraJoint, extraJointOhms, withJoints } from "../supply/extra-joint-ohms.js";
import { supplyCures } from "../supply/supply-cures.js";
import { supplyDefault } from "../supply/supply-defaults.js";
import {
  eachState,
  type PerState,
  SUPPLY_STATES,
  type SupplyState,
  type SupplyTreeInput,
  supplyTree,
} from "../supply/supply-tree.js";
import type { InputModuleProfile, Survey, SurveyLoop, SurveyPanel } from "../survey/survey.js";
import type { FittedModule } from "../terminals/terminal-schedule.js";
import { holdsPoweredDetector } from "../treatments/loop-devices.js";
import type { WorkRates } from "../treatments/work-cents.js";
import { type PlaceSupply, placeSupply } from "./supply-battery.js";
import type { WirelessChoice } from "./supply-choices.js";
import type { NotPriced, SupplyChoice } from "./supply-cure-offers.js";
import { cureDetectors } from "./supply-cured.js";
import { type SupplyFeed, supplyFeeds } from "./supply-feeds.js";

/** One powered loop on the supply of a panel. */
export interface SupplyDetectorAtPanel {
  readonly key: string;
  readonly loop: string;
  readonly tag: string | null;
  /** It stays on the wire and needs the supply. */
  readonly kept: boolean;
  /** [mA] */
  readonly milliamps: number;
  /** Nobody measured or wrote the current. */
  readonly milliampsAssumed: boolean;
  /** Key of the loop that feeds it; null = the panel. */
  readonly feeder: string | null;
  /** A person wrote or confirmed the feed. */
  readonly feedWritten: boolean;
  /** Last stretch of its feed; null when run or wire size is not known. [m] */
  readonly stretchMeters: number | null;
  readonly stretchWords: string;
  /** Read at the detector with the charger on; null = not measured. [V] */
  readonly measuredVolts: number | null;
  /** With everything still connected and every joint as it is; null where a stretch on the way is not known. [V] */
  readonly asFound: PerState<number> | null;
  /** With what the plan keeps, joints as they are; null for what is not kept or not known. [V] */
  readonly asPlanned: PerState<number> | null;
  /** States in which it falls under its minimum: as planned when kept, else as found. */
  readonly fails: readonly SupplyState[];
  /** What would lift it to its minimum in the lowest state. Empty when nothing is needed. */
  readonly cures: readonly string[];
  /** The ways that work on the wire, priced; of a detector with a chosen cure as they were before it. */
  readonly choices: readonly SupplyChoice[];
  /** Ways that work but have no article or hours to price them with. */
  readonly notPriced: readonly NotPriced[];
  /** The way the estimator chose: its parts and hours are in the price and the volts as planned are with it. */
  readonly cure: SupplyChoice | null;
  /** Replacing it by a wireless one, in money; null when it holds its minimum or no wireless device is offered. */
  readonly wireless: WirelessChoice | null;
}

/** The supply of one panel's place: voltages along its tree, joints found, what the new supply has to bear. */
export interface SupplyAtPanel {
  readonly panel: string;
  readonly source: {
    readonly volts: PerState<number>;
    /** The charger's volts were not measured. */
    readonly chargerAssumed: boolean;
    readonly internalDropVolts: number;
    readonly internalDropAssumed: boolean;
    /** Read on battery alone at the auxiliary terminals; null = not read. [V] */
    readonly measuredOnBatteryVolts: number | null;
    readonly minimumVolts: number;
    readonly temperatureCelsius: number;
  };
  readonly detectors: readonly SupplyDetectorAtPanel[];
  readonly joints: readonly (ExtraJoint & { readonly key: string })[];
  /** Loops (keys) under their minimum with everything as found, kept or not. */
  readonly failsAsFound: PerState<readonly string[]>;
  /** Load, battery, fuse, Class 2 reminder; null where the plan puts no module. */
  readonly place: PlaceSupply | null;
  readonly words: readonly string[];
}

interface SupplyInputs {
  readonly survey: Survey;
  readonly planned: readonly PlannedLoop[];
  readonly fitted: readonly FittedModule[];
  readonly profiles: readonly InputModuleProfile[];
  readonly rates: WorkRates;
  readonly job: JobSettings;
}

/** Supply at every panel that feeds a powered detector or gets a module, and what has to be asked about it. */
export function supplyOf(inputs: SupplyInputs): {
  readonly supply: readonly SupplyAtPanel[];
  /** The chosen cures by loop (key). */
  readonly cures: ReadonlyMap<string, SupplyChoice>;
  readonly queries: readonly Query[];
} {
  const queries: Query[] = [];
  const supply = inputs.survey.panels.flatMap((panel) => {
    const one = supplyAt(panel, inputs, queries);
    return one.detectors.length === 0 && one.place === null ? [] : [one];
  });
  if (inputs.survey.site.standbyHours === undefined && supply.some(({ place }) => place !== null)) {
    const hours = supplyDefault("standbyHours");
    queries.push({
      sheet: "Site",
      row: null,
      column: "standbyHours",
      typed: "",
      message: `How many hours must the supply last without mains? ${hours} h are reckoned until the rule or the insurer's letter is at hand.`,
    });
  }
  const cures = new Map(
    supply.flatMap(({ detectors }) =>
      detectors.flatMap(({ key, cure }) => (cure === null ? [] : [[key, cure] as const])),
    ),
  );
  return { supply, cures, queries };
}

function supplyAt(panel: SurveyPanel, inputs: SupplyInputs, queries: Query[]): SupplyAtPanel {
  const { survey, planned, job } = inputs;
  const mayTouch = new Set(planned.filter(({ treatment }) => treatment !== "excluded").map(({ key }) => key));
  const here = survey.loops.filter((loop) => loop.panel === panel.panel && mayTouch.has(loop.key));
  const powered = here.filter(holdsPoweredDetector);
  const { feeds, queries: feedQueries } = supplyFeeds({ powered, loops: here });
  queries.push(...feedQueries);
  const kept = new Set(planned.filter(isKeptPowered).map(({ key }) => key));
  const minimumVolts = job.detectorMinimumVolts;
  const temperatureCelsius = panel.temperatureCelsius ?? survey.site.temperatureCelsius ?? 20;
  const chargerVolts = panel.auxVolts ?? supplyDefault("chargerVolts");
  const unknown = unknownWays(feeds);
  const found: SupplyTreeInput = {
    source: { chargerVolts, batteryEndVolts: job.batteryEndVolts, internalDropVolts: job.panelDropVolts },
    segments: feeds.flatMap(({ segment, loop }) => (segment && !unknown.has(loop.key) ? [segment] : [])),
    detectors: powered.map((loop) => ({
      id: loop.key,
      at: knownNode(loop.key, feeds, unknown),
      milliamps: milliampsOf(loop).milliamps,
      minimumVolts,
    })),
    temperatureCelsius,
  };
  const joints = extraJointOhms({ tree: found, measured: measuredIn(powered, unknown) });
  const asFound = withJoints(found, joints);
  const solvedFound = supplyTree(asFound);
  const cured = cureDetectors({
    tree: { ...asFound, detectors: found.detectors.filter(({ id }) => kept.has(id)) },
    loops: powered.filter(({ key }) => kept.has(key) && !unknown.has(key)),
    standbyHours: survey.site.standbyHours,
    rates: inputs.rates,
    job,
  });
  queries.push(...cured.queries, ...idleCures(powered, kept, unknown));
  const asPlanned = cured.tree;
  const solvedPlanned = supplyTree(asPlanned);
  const detectors = powered.map((loop) => {
    const feed = feeds.find((one) => one.loop.key === loop.key);
    const known = !unknown.has(loop.key);
    const before = known ? solvedFound.detectors.find(({ id }) => id === loop.key) : undefined;
    const after = known ? solvedPlanned.detectors.find(({ id }) => id === loop.key) : undefined;
    const local = cured.localVolts.get(loop.key);
    const enough = local ? undefined : (after ?? before)?.enough;
    const fails = SUPPLY_STATES.filter((state) => enough?.[state] === false);
    const needsCure = after !== undefined && fails.length > 0;
    return {
      key: loop.key,
      loop: loop.loop,
      tag: loop.label ?? null,
      kept: kept.has(loop.key),
      ...milliampsOf(loop),
      feeder: feed?.feeder ?? null,
      feedWritten: feed?.written ?? false,
      stretchMeters: feed?.meters ?? null,
      stretchWords: feed?.words ?? "",
      measuredVolts: loop.voltsAtDetector ?? null,
      asFound: before?.volts ?? null,
      asPlanned: local ?? after?.volts ?? null,
      fails,
      cures: needsCure ? supplyCures({ tree: asPlanned, detector: loop.key, state: "batteryEndLessDrop" }).words : [],
      choices: cured.offered.get(loop.key)?.choices ?? [],
      notPriced: cured.offered.get(loop.key)?.notPriced ?? [],
      cure: cured.chosen.get(loop.key) ?? null,
      wireless: null,
    };
  });
  queries.push(...currentQueries(powered, kept), ...unknownQueries(feeds, unknown, kept));
  const place = placeOf(panel, inputs, detectors, chargerVolts);
  if (place?.budget.overloaded) queries.push(overloadQuery(panel, place));
  return {
    panel: panel.panel,
    source: {
      volts: solvedFound.sourceVolts,
      chargerAssumed: panel.auxVolts === undefined,
      internalDropVolts: job.panelDropVolts,
      internalDropAssumed: survey.settings["panelDropVolts"] === undefined,
      measuredOnBatteryVolts: panel.auxVoltsOnBattery ?? null,
      minimumVolts,
      temperatureCelsius,
    },
    detectors,
    joints: joints.map((joint) => ({ ...joint, key: joint.at })),
    failsAsFound: eachState((state) =>
      solvedFound.detectors.filter(({ id, enough }) => !unknown.has(id) && !enough[state]).map(({ id }) => id),
    ),
    place,
    words: panelWords(panel, survey, powered, joints, job),
  };
}

/** A loop that stays on the wire with its detector; in a split the detector leaves the wire and its contacts stay. */
function isKeptPowered({ needsSupply, input, treatment }: PlannedLoop): boolean {
  return needsSupply && input !== null && treatment !== "split";
}

function milliampsOf(loop: SurveyLoop): { readonly milliamps: number; readonly milliampsAssumed: boolean } {
  if (loop.milliamps !== undefined) return { milliamps: loop.milliamps, milliampsAssumed: false };
  const powered = loop.devices.filter((device) => device.powered);
  const count = Math.max(
    1,
    powered.reduce((sum, device) => sum + device.count, 0),
  );
  return { milliamps: count * supplyDefault("detectorMilliamps"), milliampsAssumed: true };
}

/** Loops whose own stretch, or one on the way to them, is not known. */
function unknownWays(feeds: readonly SupplyFeed[]): ReadonlySet<string> {
  const byKey = new Map(feeds.map((feed) => [feed.loop.key, feed]));
  const unknown = (key: string | null): boolean => {
    const feed = key === null ? undefined : byKey.get(key);
    return feed !== undefined && (feed.segment === null || unknown(feed.feeder));
  };
  return new Set(feeds.filter(({ loop }) => unknown(loop.key)).map(({ loop }) => loop.key));
}

/** Nearest node towards the panel whose way is known: the load of a detector at an unknown distance is put there. */
function knownNode(key: string, feeds: readonly SupplyFeed[], unknown: ReadonlySet<string>): string {
  if (!unknown.has(key)) return key;
  const feeder = feeds.find(({ loop }) => loop.key === key)?.feeder ?? null;
  return feeder === null ? "panel" : knownNode(feeder, feeds, unknown);
}

function measuredIn(powered: readonly SurveyLoop[], unknown: ReadonlySet<string>) {
  return powered.flatMap((loop) =>
    loop.voltsAtDetector === undefined || unknown.has(loop.key) || milliampsOf(loop).milliamps === 0
      ? []
      : [{ at: loop.key, volts: loop.voltsAtDetector }],
  );
}

function placeOf(
  panel: SurveyPanel,
  { fitted, profiles, rates, survey, job }: SupplyInputs,
  detectors: readonly SupplyDetectorAtPanel[],
  chargerVolts: number,
): PlaceSupply | null {
  const modules = fitted.filter((module) => module.panel === panel.panel);
  if (modules.length === 0) return null;
  const types = [...new Set(modules.map(({ type }) => type))];
  const loads = [
    ...types.map((type) => ({
      name: `module ${type}`,
      milliamps: profiles.find((profile) => profile.type === type)?.milliamps ?? 0,
      count: modules.filter((module) => module.type === type).length,
    })),
    ...detectors
      .filter(({ kept, cure }) => kept && cure?.kind !== "localSupply")
      .map(({ loop, tag, milliamps }) => ({ name: `loop ${tag ?? loop}`, milliamps, count: 1 })),
  ];
  const sizes = articlesOfClass({ book: rates.book, class: "battery" }).flatMap(({ ampereHours }) => ampereHours ?? []);
  const { standbyHours } = survey.site;
  return placeSupply({ loads, chargerVolts, standbyHours, stockAmpHours: sizes, job });
}

/** A cure chosen for a detector that is not kept, or whose volts cannot be told. */
function idleCures(
  powered: readonly SurveyLoop[],
  kept: ReadonlySet<string>,
  unknown: ReadonlySet<string>,
): readonly Query[] {
  return powered
    .filter(({ key, edits }) => edits.supplyCure !== undefined && !(kept.has(key) && !unknown.has(key)))
    .map(({ key, sheet, row, edits }) => ({
      sheet,
      row,
      column: "supplyCure",
      typed: edits.supplyCure ?? "",
      message: kept.has(key)
        ? "The volts at this detector cannot be told without run and cable: the cure is not applied. Write them, or clear the cell."
        : "The plan does not keep this detector on the wire: the cure is not applied. Pin the loop to the wire, or clear the cell.",
      key,
    }));
}

function currentQueries(powered: readonly SurveyLoop[], kept: ReadonlySet<string>): readonly Query[] {
  return powered
    .filter((loop) => kept.has(loop.key) && loop.milliamps === undefined)
    .map((loop) => ({
      sheet: loop.sheet,
      row: loop.row,
      column: "milliamps",
      typed: loop.typed["milliamps"] ?? "",
      message: `What does this kept detector draw? ${milliampsOf(loop).milliamps} mA are reckoned until it is metered or read off its data sheet.`,
      key: loop.key,
    }));
}

function unknownQueries(
  feeds: readonly SupplyFeed[],
  unknown: ReadonlySet<string>,
  kept: ReadonlySet<string>,
): readonly Query[] {
  return feeds
    .filter(({ loop }) => kept.has(loop.key) && unknown.has(loop.key))
    .map(({ loop, words }) => ({
      sheet: loop.sheet,
      row: loop.row,
      column: "run",
      typed: loop.typed["run"] ?? "",
      message: `The volts at this kept detector cannot be told: ${words}, or a detector on the way has no length. Write run and cable, or read the volts at the detector on battery.`,
      key: loop.key,
    }));
}

const overloadQuery = ({ panel }: SurveyPanel, { budget }: PlaceSupply): Query => ({
  sheet: "Settings",
  row: null,
  column: "supplyRatedMilliamps",
  typed: String(budget.ratedMilliamps),
  message: `${panel}: ${budget.words}. Name a larger supply or take detectors off it.`,
});

function panelWords(
  panel: SurveyPanel,
  survey: Survey,
  powered: readonly SurveyLoop[],
  joints: readonly ExtraJoint[],
  job: JobSettings,
): readonly string[] {
  const words: string[] = [];
  if (powered.length === 0) return words;
  if (panel.auxVolts === undefined) {
    words.push(`Auxiliary volts not read: ${supplyDefault("chargerVolts")} V are reckoned with the charger on.`);
  }
  if (panel.auxVoltsOnBattery !== undefined && survey.settings["panelDropVolts"] === undefined) {
    words.push(
      `${panel.auxVoltsOnBattery} V read at the auxiliary terminals on battery alone. The battery's own volts were not read with it, so the drop inside the panel stays assumed at ${job.panelDropVolts} V: read both at once and write the difference as the setting panelDropVolts.`,
    );
  }
  const unwritten = powered.filter(({ fedFrom }) => fedFrom === undefined);
  if (unwritten.length > 0) {
    const names = unwritten.map(({ loop, label }) => label ?? loop).join(", ");
    words.push(`Feed not written, reckoned as fed from the panel: ${names}.`);
  }
  const listed = powered.reduce((sum, loop) => sum + milliampsOf(loop).milliamps, 0);
  if (panel.auxMilliamps !== undefined && Math.abs(panel.auxMilliamps - listed) > 0.1 * panel.auxMilliamps) {
    words.push(
      `${panel.auxMilliamps} mA metered at the auxiliary output, ${listed} mA listed for its loops: something else draws, or a current is written wrong.`,
    );
  }
  const first = joints.filter(({ from }) => from === "panel");
  if (first.length > 1 && first.every(({ beyondBound }) => beyondBound)) {
    const least = Math.min(...first.map(({ extraVolts }) => extraVolts));
    words.push(
      `Every way out of the panel loses at least ${least.toFixed(2)} V more than plain wire: the output may sag under load, or one joint at the panel carries them all. Read the auxiliary volts with the load on.`,
    );
  }
  return words;
}
