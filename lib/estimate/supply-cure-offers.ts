import type { Article } from "../price-book/article.js";
import { articlesOfClass } from "../price-book/look-up.js";
import { formatMoney } from "../quantities/format-money.js";
import { metersPerUnit } from "../quantities/length-unit.js";
import { type Cents, roundCents } from "../quantities/money.js";
import { FEED_GAUGES } from "../supply/supply-cures.js";
import {
  type PerState,
  pathTo,
  type SupplySegment,
  type SupplyTreeInput,
  sourceNode,
  supplyTree,
} from "../supply/supply-tree.js";
import type { SupplyCure } from "../survey/survey.js";
import { locationWork } from "../treatments/location-work.js";
import type { Work } from "../treatments/treatment.js";
import { unitCentsOf, type WorkRates, workCents } from "../treatments/work-cents.js";

/** One way to lift a kept detector to its minimum in every state of the supply, priced. */
export interface SupplyChoice {
  readonly kind: SupplyCure;
  readonly words: string;
  /** Parts at their unit price and mean hours, our cost, before whole packs, margin and tax. [cents] */
  readonly costCents: Cents;
  /** At the detector once it is done: battery at the end of its discharge, less the panel's drop. [mV] */
  readonly batteryEndMillivolts: number;
  readonly work: Work;
}

/** What would have to be added to the price book before a way can be priced. */
export interface NotPriced {
  readonly kind: SupplyCure;
  /** Class of the price book that has no fitting article. */
  readonly missing: string;
  readonly words: string;
}

interface Asked {
  /** With what the plan keeps and the cures chosen before. */
  readonly tree: SupplyTreeInput;
  readonly detector: string;
  readonly rates: WorkRates;
  /** Battery wanted by a supply for this detector alone. [Ah] */
  readonly localAmpHours: number;
  /** A supply of its own with the charger on. [V] */
  readonly localChargerVolts: number;
}

/** A way with what the supply becomes by it. */
export interface SupplyOffer {
  readonly choice: SupplyChoice;
  readonly tree: SupplyTreeInput;
  /** At the detector, also where it is no longer in the tree. [V] */
  readonly volts: PerState<number>;
}

/** Metres that one unit of {@link pullTask} stands for. */
const metersPerPull = 30;
const pullTask = "newCableAccessible";
const mendTask = "repair";
/** A joint has two conductors. */
const splicesPerJoint = 2;

/**
 * Every way that lifts one detector to its minimum, with its price: joints mended (hours for each stretch that has
 * any), the whole way in new wire or a pair of its own (length × article, hours for 30 m), a supply beside it
 * (enclosure, supply, battery, fuse, hours of a place). What works but cannot be priced is told apart.
 */
export function supplyCureOffers(asked: Asked): {
  readonly offers: readonly SupplyOffer[];
  readonly notPriced: readonly NotPriced[];
} {
  const notPriced: NotPriced[] = [];
  const mended = joints(asked);
  const offers = [
    ...(mended === null ? [] : [mended]),
    ...newWire(asked, "heavierPair", notPriced),
    ...newWire(asked, "ownPair", notPriced),
    ...localSupply(asked, notPriced),
  ];
  return { offers, notPriced };
}

function joints(asked: Asked): SupplyOffer | null {
  const { tree, rates } = asked;
  const path = pathOf(asked);
  const lossy = path.filter(({ extraOhms = 0 }) => extraOhms > 0);
  if (lossy.length === 0) return null;
  const mended = onPath(tree, path, plain);
  const splice = articlesOfClass({ book: rates.book, class: "gelSplice" })[0];
  const rule = `${splicesPerJoint} for each stretch with a joint to mend`;
  const parts = splice ? [{ code: splice.code, quantity: splicesPerJoint * lossy.length, rule }] : [];
  const work = { tasks: [{ task: mendTask, count: lossy.length }], parts };
  const stretches = lossy.length === 1 ? "the stretch that loses" : `${lossy.length} stretches that lose`;
  return offerOf(asked, "joints", mended, work, `mend the joints in ${stretches} more than plain wire`);
}

/** The whole way anew, or one pair from the panel past everything on the way. */
function newWire(asked: Asked, kind: "heavierPair" | "ownPair", notPriced: NotPriced[]): readonly SupplyOffer[] {
  const { tree, rates } = asked;
  const path = pathOf(asked);
  const meters = path.reduce((sum, segment) => sum + segment.meters, 0);
  if (meters === 0) return [];
  const rewired = (gaugeAwg: number) =>
    kind === "heavierPair" ? onPath(tree, path, inGauge(gaugeAwg)) : withOwnPair(asked, meters, gaugeAwg);
  const gauge = FEED_GAUGES.find((gaugeAwg) => enough(rewired(gaugeAwg), asked.detector));
  if (gauge === undefined) return [];
  const fits = articlesOfClass({ book: rates.book, class: "wire" }).flatMap((article) => {
    const perUnit = metersPerUnit(article.unit);
    const { gaugeAwg, conductors = 0 } = article;
    if (perUnit === undefined || gaugeAwg === undefined || conductors < 2) return [];
    if (!enough(rewired(gaugeAwg), asked.detector)) return [];
    const quantity = meters / perUnit;
    return [{ article, gaugeAwg, quantity, outlay: outlayCents(article, quantity, rates) }];
  });
  const [least] = [...fits].sort((a, b) => a.outlay - b.outlay);
  if (!least) {
    const words = `add wire of ${gauge} AWG or thicker with two conductors (class wire, gaugeAwg, conductors, unit m or ft)`;
    notPriced.push({ kind, missing: "wire", words });
    return [];
  }
  const { article, gaugeAwg, quantity, outlay } = least;
  const what = kind === "heavierPair" ? "the whole way anew" : "a pair of its own from the panel";
  const rule = `supply cure, ${what}: ${meters.toFixed(1)} m in one piece for each stretch`;
  const lengths = kind === "heavierPair" ? path.map((segment) => segment.meters) : [meters];
  const parts = lengths
    .filter((length) => length > 0)
    .map((length) => ({ code: article.code, quantity: (quantity * length) / meters, rule }));
  const work = { tasks: [{ task: pullTask, count: meters / metersPerPull }], parts };
  const whole = formatMoney({ cents: roundCents(outlay), currency: rates.book.currency });
  const words = `${what} in ${gaugeAwg} AWG, ${meters.toFixed(1)} m of ${article.code} (bought whole: ${whole})`;
  const offer = offerOf(asked, kind, rewired(gaugeAwg), work, words);
  return offer ? [offer] : [];
}

function localSupply(asked: Asked, notPriced: NotPriced[]): readonly SupplyOffer[] {
  const { tree, rates, detector } = asked;
  const { book } = rates;
  const volts = { ...supplyTree(tree).sourceVolts, charger: asked.localChargerVolts };
  const minimum = minimumOf(tree, detector);
  if (Object.values(volts).some((one) => one < minimum)) return [];
  for (const wanted of ["enclosure", "supplyCharger", "battery"]) {
    if (articlesOfClass({ book, class: wanted }).length > 0) continue;
    const words = `add an article of the class ${wanted}`;
    notPriced.push({ kind: "localSupply", missing: wanted, words });
    return [];
  }
  const { tasks, parts } = locationWork({ book, batteryAmpereHours: asked.localAmpHours });
  const ruled = parts.map((part) => ({ ...part, rule: part.rule.replace("place with modules", "local supply") }));
  const work = { tasks, parts: ruled };
  const without = { ...tree, detectors: tree.detectors.filter(({ id }) => id !== detector) };
  const words = "a local supply with its own battery beside it (a mains outlet there is not in it)";
  const choice = choiceOf("localSupply", words, work, rates, volts);
  return [{ choice, tree: without, volts }];
}

function offerOf(asked: Asked, kind: SupplyCure, tree: SupplyTreeInput, work: Work, words: string): SupplyOffer | null {
  if (!enough(tree, asked.detector)) return null;
  const volts = voltsIn(tree, asked.detector);
  return volts === undefined ? null : { choice: choiceOf(kind, words, work, asked.rates, volts), tree, volts };
}

function choiceOf(
  kind: SupplyCure,
  words: string,
  work: Work,
  rates: WorkRates,
  volts: PerState<number>,
): SupplyChoice {
  const costCents = roundCents(workCents({ work, rates }));
  const batteryEndMillivolts = Math.round(volts.batteryEndLessDrop * 1000);
  return { kind, words, costCents, batteryEndMillivolts, work };
}

const voltsIn = (tree: SupplyTreeInput, id: string) =>
  supplyTree(tree).detectors.find((detector) => detector.id === id)?.volts;

const minimumOf = (tree: SupplyTreeInput, id: string): number =>
  supplyTree(tree).detectors.find((detector) => detector.id === id)?.minimumVolts ?? 0;

function enough(tree: SupplyTreeInput, id: string): boolean {
  const detector = supplyTree(tree).detectors.find((one) => one.id === id);
  return detector !== undefined && Object.values(detector.enough).every((yes) => yes);
}

const pathOf = ({ tree, detector }: Asked): readonly SupplySegment[] =>
  pathTo(tree, tree.detectors.find(({ id }) => id === detector)?.at ?? sourceNode(tree.source));

function onPath(
  tree: SupplyTreeInput,
  path: readonly SupplySegment[],
  change: (segment: SupplySegment) => SupplySegment,
): SupplyTreeInput {
  const ids = new Set(path.map(({ id }) => id));
  return { ...tree, segments: tree.segments.map((segment) => (ids.has(segment.id) ? change(segment) : segment)) };
}

function plain({ extraOhms: _mended, ...segment }: SupplySegment): SupplySegment {
  return segment;
}

const inGauge =
  (gaugeAwg: number) =>
  ({ id, from, to, meters }: SupplySegment): SupplySegment => ({ id, from, to, meters, conductor: { gaugeAwg } });

function withOwnPair({ tree, detector }: Asked, meters: number, gaugeAwg: number): SupplyTreeInput {
  const to = `${detector}, own pair`;
  const own = { id: `own pair to ${detector}`, from: sourceNode(tree.source), to, meters, conductor: { gaugeAwg } };
  const detectors = tree.detectors.map((one) => (one.id === detector ? { ...one, at: to } : one));
  return { ...tree, segments: [...tree.segments, own], detectors };
}

/** Whole packs at the price of one. [cents] */
function outlayCents({ code, offers }: Article, quantity: number, { book }: WorkRates): number {
  const packSize = Math.min(...offers.map((offer) => offer.packSize));
  return Math.ceil(quantity / packSize - 1e-9) * packSize * unitCentsOf({ book, code });
}
