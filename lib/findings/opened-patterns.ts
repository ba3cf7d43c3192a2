import type { BaseLoop } from "./base-loop.js";
import type { ClosedDensities } from "./closed-densities.js";
import { at } from "./conditions.js";
import { logNormalDensity, logUniformDensity, normalDensity } from "./distributions.js";
import type { Figures } from "./judge-options.js";
import type { LoopRecord } from "./loop-record.js";
import type { TakenReadings } from "./taken-readings.js";

/** What the opened readings are judged with; fills the likelihoods without notes. */
export interface PatternTask {
  readonly record: LoopRecord;
  readonly taken: TakenReadings;
  readonly base: BaseLoop;
  readonly figures: Figures;
  readonly closed: ClosedDensities;
  readonly eolOhms: Float64Array;
  readonly eolWeight: Float64Array;
  /** Filled: `[condition * eols + eol]`. */
  readonly atEnd: Float64Array;
  /** Filled: `[condition]`, the same circuit for no part and for one at the panel. */
  readonly none: Float64Array;
}

/** Fills the likelihood of shut and opened readings together for every condition. */
export function openedPatterns(task: PatternTask): void {
  const openings = Math.max(1, task.record.openings, ...task.taken.openings);
  const view = viewOf(task, openings);
  fillSeries(task, view);
  fillLeak(task, view);
  fillDoubles(task, view);
  fillNormallyOpen(task, view);
  fillWithoutForm(task, view);
}

interface OpenedView {
  readonly openings: number;
  /** Chance of every opened reading as read if the loop simply opens. */
  readonly allOpen: number;
  /** Density of each reading if it is a slip, and if it equals the shut one. */
  readonly slip: Float64Array;
  readonly unchanged: Float64Array;
  readonly together: { readonly open: number; readonly unchanged: number };
}

function viewOf({ taken, figures, record }: PatternTask, openings: number): OpenedView {
  const count = taken.opened.length;
  const slip = new Float64Array(count);
  const unchanged = new Float64Array(count);
  const miss = figures.misreadShare;
  const leaky = record.poweredDetector === true && record.powered !== false;
  let allOpen = 1;
  let slips = 0;
  const repeat = repeatSpread(taken.closed, figures);
  for (let i = 0; i < count; i += 1) {
    const ohms = taken.opened[i] ?? Number.POSITIVE_INFINITY;
    const finite = Number.isFinite(ohms);
    // A second slip on one loop is likelier than the first: same hand, same meter.
    slip[i] = finite ? (slips === 0 ? miss : 0.3) * logUniformDensity(Math.max(ohms, 0.05), 0.05, 8e6) : miss;
    if (finite && Number.isFinite(taken.closed)) unchanged[i] = normalDensity(ohms, taken.closed, repeat);
    else unchanged[i] = !finite && taken.closedOverRange ? 1 : 0;
    const offLeak = leaky && finite ? figures.offLeakShare * logUniformDensity(ohms, 5e5, 8e6) : 0;
    allOpen *= finite ? (slip[i] ?? 0) + offLeak : (1 - miss) * (leaky ? 1 - figures.offLeakShare : 1);
    if (finite) slips += 1;
  }
  return { openings, allOpen, slip, unchanged, together: togetherView(taken, figures, repeat) };
}

function togetherView(taken: TakenReadings, figures: Figures, repeat: number) {
  if (Number.isNaN(taken.together)) return { open: 1, unchanged: 1 };
  if (!Number.isFinite(taken.together)) return { open: 1 - figures.misreadShare, unchanged: figures.misreadShare };
  const same = Number.isFinite(taken.closed) ? normalDensity(taken.together, taken.closed, repeat) : 0;
  return { open: figures.misreadShare * logUniformDensity(Math.max(taken.together, 0.05), 0.05, 8e6), unchanged: same };
}

/** Spread of the difference of two readings of an unchanged loop. [Ω] */
function repeatSpread(ohms: number, figures: Figures): number {
  return Number.isFinite(ohms) ? figures.repeatOhms + figures.repeatShare * ohms : figures.repeatOhms;
}

/** Conditions that open like a sound loop, and those where some or all openings change nothing. */
function fillSeries(task: PatternTask, view: OpenedView): void {
  const { closed, eolOhms, atEnd, none, figures } = task;
  const count = eolOhms.length;
  const open = view.allOpen * view.together.open;
  const bypassed = bypassPattern(task, view);
  const parallel = parallelPattern(task, view);
  const read = 1 - figures.crossedReadsOpen;
  const crossedOpen = figures.crossedReadsOpen * closed.overRange * view.allOpen * view.together.open;
  const legs = legsInParallel(task, view);
  const lifeSafety =
    0.9 * open + 0.1 * view.unchanged.reduce((product, u, i) => product * (u + (view.slip[i] ?? 0)), 1);
  let lifeSafetyEol = 0;
  for (let e = 0; e < count; e += 1) lifeSafetyEol += (task.eolWeight[e] ?? 0) * (closed.eol[e] ?? 0);
  for (let e = 0; e < count; e += 1) {
    const eol = closed.eol[e] ?? 0;
    atEnd[at.soundEolAtEnd * count + e] = eol * open;
    atEnd[at.earthFault * count + e] = eol * open;
    atEnd[at.sharedReturn * count + e] = eol * open;
    atEnd[at.crossed * count + e] = read * eol * open + crossedOpen;
    atEnd[at.bypassed * count + e] = eol * bypassed;
    atEnd[at.parallelContacts * count + e] = eol * parallel;
    atEnd[at.highResistance * count + e] = (closed.eolAndJoint[e] ?? 0) * open;
    atEnd[at.foil * count + e] = (closed.eolAndFoil[e] ?? 0) * open;
    atEnd[at.wrongEol * count + e] =
      (closed.otherEol[e] ?? 0) * open + figures.wrongHalf * (closed.half[e] ?? 0) * (legs[e] ?? 0);
    // Fire loops carry their own values, whatever the job uses.
    atEnd[at.lifeSafety * count + e] = lifeSafetyEol * lifeSafety;
  }
  // A part in the loop of a job that uses none there is a wrong one too.
  let wrong = 0;
  for (let e = 0; e < count; e += 1)
    wrong += (task.eolWeight[e] ?? 0) * ((closed.otherEol[e] ?? 0) + 0.1 * (closed.eol[e] ?? 0));
  none[at.wrongEol] = (wrong / 1.1) * open;
  none[at.soundNoEol] = closed.base * open;
  none[at.eolInPanel] = closed.base * open;
  none[at.tamperLoop] = closed.base * open;
  none[at.earthFault] = closed.base * open;
  none[at.sharedReturn] = closed.base * open;
  none[at.crossed] = read * closed.base * open + crossedOpen;
  none[at.bypassed] = closed.base * bypassed;
  none[at.parallelContacts] = closed.base * parallel;
  none[at.highResistance] = closed.baseAndJoint * open;
  none[at.foil] = closed.baseAndFoil * open;
}

/** Two legs in parallel: an opened contact takes one leg off, so half the value becomes the whole. */
function legsInParallel({ taken, eolOhms, figures }: PatternTask, view: OpenedView): Float64Array {
  const result = new Float64Array(eolOhms.length);
  if (!taken.opened.some((ohms) => Number.isFinite(ohms) && ohms > taken.closed)) return result;
  for (let e = 0; e < eolOhms.length; e += 1) {
    const ohms = eolOhms[e] ?? 1;
    let product = 1;
    for (const [i, opened] of taken.opened.entries()) {
      product *= Number.isFinite(opened)
        ? normalDensity(opened, ohms, 2 * figures.eolSpread * ohms + 3)
        : (view.slip[i] ?? 0);
    }
    result[e] = product;
  }
  return result;
}

/** One contact at random bypassed, each further one with its own chance; the others open. */
function bypassPattern({ figures, taken }: PatternTask, view: OpenedView): number {
  const measured = taken.opened.length;
  const q = figures.furtherBypassed;
  let unchanged = 0;
  let density = 1;
  for (let i = 0; i < measured; i += 1) {
    const same = view.unchanged[i] ?? 0;
    if (Number.isFinite(taken.opened[i])) {
      const slip = view.slip[i] ?? 0;
      if (same > slip) unchanged += 1;
      density *= Math.max(same, slip);
    } else density *= 1 - figures.misreadShare;
  }
  const open = measured - unchanged;
  const unread = Math.max(0, view.openings - measured);
  const pattern =
    (unchanged * q ** Math.max(0, unchanged - 1) * (1 - q) ** open + unread * q ** unchanged * (1 - q) ** open) /
    view.openings;
  const all = unchanged === view.openings;
  return (
    density * pattern * (all ? view.together.unchanged : 0.95 * view.together.open + 0.05 * view.together.unchanged)
  );
}

/** Nothing changes until all are open. */
function parallelPattern({ record, taken }: PatternTask, view: OpenedView): number {
  if (record.openings < 2) return 0;
  let density = 1;
  for (let i = 0; i < taken.opened.length; i += 1) density *= (view.unchanged[i] ?? 0) + (view.slip[i] ?? 0);
  return density * view.together.open;
}

/** A leak somewhere along the pair: openings beyond it show it, those before it read over-range. */
function fillLeak(task: PatternTask, view: OpenedView): void {
  const { taken, figures, closed, eolOhms, atEnd, none, base } = task;
  const count = eolOhms.length;
  let lastOpen = 0;
  let firstLeaky = view.openings + 1;
  let leakOhms = 0;
  let density = 1;
  let read = 0;
  for (let i = 0; i < taken.opened.length; i += 1) {
    const ohms = taken.opened[i] ?? Number.POSITIVE_INFINITY;
    const opening = taken.openings[i] ?? 1;
    if (!Number.isFinite(ohms)) {
      lastOpen = Math.max(lastOpen, opening);
      density *= 1 - figures.misreadShare;
      continue;
    }
    firstLeaky = Math.min(firstLeaky, opening);
    density *=
      read === 0
        ? logUniformDensity(ohms, figures.leakLowOhms, figures.leakHighOhms)
        : normalDensity(ohms, leakOhms, figures.repeatOhms + 0.01 * leakOhms);
    leakOhms = ohms;
    read += 1;
  }
  const places = Math.max(0, Math.min(view.openings, firstLeaky - 1) - lastOpen + 1);
  const fits = (places > 0 ? places / (view.openings + 1) : 0.002) * density * (read > 0 ? 1 : view.together.open);
  none[at.leakage] = closed.base * fits;
  for (let e = 0; e < count; e += 1) {
    const ohms = eolOhms[e] ?? 1;
    if (read === 0 || !Number.isFinite(taken.closed)) {
      atEnd[at.leakage * count + e] = (closed.eolAndLeak[e] ?? 0) * fits;
      continue;
    }
    const both = (ohms * leakOhms) / (ohms + leakOhms);
    const sd = Math.sqrt(base.spreadOhms ** 2 + taken.closedSpread ** 2 + (1.2 * figures.eolSpread * both) ** 2);
    atEnd[at.leakage * count + e] = normalDensity(taken.closed, base.ohms + both, sd) * fits;
  }
}

/** A resistor across one contact or across each; and two zones on a pair, each contact with its own. */
function fillDoubles(task: PatternTask, view: OpenedView): void {
  const { taken, figures, closed, eolOhms, eolWeight, atEnd, none } = task;
  const count = eolOhms.length;
  const measured = taken.opened.length;
  const rises: number[] = [];
  let opens = 1;
  for (const ohms of taken.opened) {
    if (Number.isFinite(ohms)) rises.push(ohms - taken.closed);
    else opens *= 1 - figures.misreadShare;
  }
  const share = figures.everyContactDoubled;
  const one =
    rises.length === 0
      ? Math.max(0, view.openings - measured) / view.openings
      : rises.length === 1
        ? 1 / view.openings
        : 0;
  const all = rises.length === measured ? 1 : 0;
  if (rises.length === 0) {
    const pattern = ((1 - share) * one + share * all) * opens * view.together.open;
    for (let e = 0; e < count; e += 1) atEnd[at.doubleEol * count + e] = (closed.eol[e] ?? 0) * pattern;
  } else {
    const rise = new Float64Array(rises.length);
    for (const [i, ohms] of rises.entries())
      rise[i] = preferredDensity(ohms, taken.closed, eolOhms, eolWeight, figures);
    for (let e = 0; e < count; e += 1) {
      const eol = closed.eol[e] ?? 0;
      if (eol === 0) continue;
      let density = opens;
      for (const [i, ohms] of rises.entries()) {
        const sd = figures.eolSpread * (eolOhms[e] ?? 1) + repeatSpread(taken.closed, figures);
        density *=
          figures.sameResistorDoubled * normalDensity(ohms, eolOhms[e] ?? 1, sd) +
          (1 - figures.sameResistorDoubled) * (rise[i] ?? 0);
      }
      atEnd[at.doubleEol * count + e] = eol * density * ((1 - share) * one + share * all);
    }
  }
  none[at.doubledPair] = closed.base * doubledPairPattern(task, view, rises, opens);
}

function doubledPairPattern(task: PatternTask, view: OpenedView, rises: readonly number[], opens: number): number {
  const { taken, figures, eolOhms, eolWeight } = task;
  if (view.openings < 2) return 0;
  if (rises.length === 0) return taken.opened.length === 0 ? view.together.open : 0;
  let density = opens;
  for (const [i, ohms] of rises.entries()) {
    const same = rises.slice(0, i).some((other) => Math.abs(other - ohms) < 0.1 * ohms);
    density *= preferredDensity(ohms, taken.closed, eolOhms, eolWeight, figures) * (same ? 0.1 : 1);
  }
  if (!Number.isFinite(taken.together)) return density * (Number.isNaN(taken.together) ? 1 : figures.misreadShare);
  const sum = rises.reduce((total, ohms) => total + ohms, 0);
  return density * normalDensity(taken.together - taken.closed, sum, 0.02 * sum + 3);
}

function preferredDensity(
  ohms: number,
  shut: number,
  eolOhms: Float64Array,
  eolWeight: Float64Array,
  figures: Figures,
): number {
  if (!(ohms > 0)) return 0;
  let density = 0;
  for (let e = 0; e < eolOhms.length; e += 1) {
    const value = eolOhms[e] ?? 1;
    const sd = figures.eolSpread * value + repeatSpread(shut, figures);
    density += (eolWeight[e] ?? 0) * normalDensity(ohms, value, sd);
  }
  return density;
}

/** A device that closes when operated: the opened reading is the cable. */
function fillNormallyOpen({ taken, figures, closed, eolOhms, atEnd, none, base }: PatternTask, view: OpenedView): void {
  const count = eolOhms.length;
  let density = view.together.open === 1 ? 1 : 0.5;
  let first = 0;
  for (let i = 0; i < taken.opened.length; i += 1) {
    const ohms = taken.opened[i] ?? Number.POSITIVE_INFINITY;
    if (!Number.isFinite(ohms)) density *= figures.misreadShare;
    else {
      const share = (taken.openings[i] ?? 1) / view.openings;
      const mean =
        first === 0 ? base.leadOhms + (base.ohms - base.leadOhms) * (0.15 + 0.85 * share) : Math.max(first, 0.3);
      const read = Math.max(ohms, 0.1);
      density *= logNormalDensity(read, mean, mean * figures.normallyOpenVariation + 0.2);
      first = read;
    }
  }
  none[at.normallyOpen] = closed.overRange * density;
  for (let e = 0; e < count; e += 1) atEnd[at.normallyOpen * count + e] = (closed.eol[e] ?? 0) * density;
}

/** Conditions in which the end-of-line part plays no role; equal in every form. */
function fillWithoutForm(task: PatternTask, view: OpenedView): void {
  const { taken, figures, closed, atEnd, none, eolOhms } = task;
  const openTogether = view.together.open;
  set(
    task,
    at.open,
    (0.985 * closed.overRange + (Number.isNaN(taken.closed) ? 0 : 0.015 * closed.broad)) * view.allOpen * openTogether,
  );
  const without = figures.unpoweredReadsOpen;
  const supplied = task.record.powered === true ? 0.5 : 1;
  set(
    task,
    at.poweredDevice,
    (without * supplied * closed.overRange + (1 - without) * closed.baseAndOutput) * view.allOpen * openTogether,
  );
  for (let e = 0; e < eolOhms.length; e += 1) {
    const index = at.poweredDevice * eolOhms.length + e;
    const eol = closed.eol[e] ?? 0;
    if (!taken.closedOverRange && eol > 0) atEnd[index] = (atEnd[index] ?? 0) + (1 - without) * eol * view.allOpen;
  }
  set(task, at.shorted, shortPattern(task, view));
  let loose = 1;
  let foreign = 1;
  for (let i = 0; i < taken.opened.length; i += 1) {
    const ohms = taken.opened[i] ?? Number.POSITIVE_INFINITY;
    const broad = Number.isFinite(ohms) ? logUniformDensity(Math.max(ohms, 0.05), 0.05, 8e6) : 0;
    loose *= Number.isFinite(ohms) ? 0.5 * broad + 0.15 * (view.unchanged[i] ?? 0) : 0.35;
    foreign *= Number.isFinite(ohms) ? 0.5 * broad : 0.5;
  }
  const shut = taken.closedOverRange ? figures.unexplainedOverRange : 1 - figures.unexplainedOverRange;
  const slips = figures.unitSlipShare;
  const read = (1 - slips) * closed.broad * loose + slips * closed.unitSlip * view.allOpen;
  const over = taken.closedOverRange ? loose : read;
  const free = Number.isNaN(taken.closed) ? 1 : shut;
  set(task, at.unexplained, free * (1 - figures.swappedShare) * over + figures.swappedShare * swappedPattern(task));
  const foreignShut = Number.isNaN(taken.closed) ? 1 : taken.closedOverRange ? 0.4 : 0.6 * closed.broad;
  set(task, at.foreignVoltage, foreignShut * foreign);
  none[at.lifeSafety] = 0;
}

/** Shut and opened reading swapped: shut over-range, opened what a sound shut loop reads. */
function swappedPattern({ taken, eolOhms, eolWeight, figures, base }: PatternTask): number {
  if (!taken.closedOverRange || taken.opened.length === 0) return 0;
  let density = 1;
  for (const ohms of taken.opened) {
    if (!Number.isFinite(ohms)) return 0;
    density *=
      0.7 * preferredDensity(ohms - base.ohms, 0, eolOhms, eolWeight, figures) +
      0.3 * logNormalDensity(Math.max(ohms, 0.05), base.ohms, base.spreadOhms);
  }
  return density;
}

function set({ atEnd, none, eolOhms }: PatternTask, condition: number, value: number): void {
  none[condition] = value;
  atEnd.fill(value, condition * eolOhms.length, (condition + 1) * eolOhms.length);
}

const shortPlaces = 8;

/** A short somewhere along the pair, 8-point quadrature over its place: openings beyond it change nothing. */
function shortPattern({ taken, base, figures }: PatternTask, view: OpenedView): number {
  if (taken.closedOverRange) return 0;
  let total = 0;
  const shut = Number.isNaN(taken.closed);
  const meter2 = taken.closedSpread ** 2;
  for (let place = 0; place < shortPlaces; place += 1) {
    const share = (place + 0.5) / shortPlaces;
    const before = Math.floor(share * (view.openings + 1));
    let density = 1;
    for (let i = 0; i < taken.opened.length; i += 1) {
      const finite = Number.isFinite(taken.opened[i]);
      if ((taken.openings[i] ?? 1) <= before) density *= finite ? (view.slip[i] ?? 0) : 1 - figures.misreadShare;
      else density *= finite ? (view.unchanged[i] ?? 0) + (view.slip[i] ?? 0) : (view.slip[i] ?? 0);
    }
    if (density === 0) continue;
    if (!shut) {
      const mean = base.leadOhms + share * (base.ohms - base.leadOhms);
      const spread = Math.sqrt((share * base.spreadOhms) ** 2 + meter2 + 0.01);
      const plain = logNormalDensity(taken.closed, mean, spread);
      const own = taken.closed > mean && taken.closed < 100 ? 1 / (taken.closed * Math.log(1000)) : 0;
      density *= (1 - figures.shortResistanceShare) * plain + figures.shortResistanceShare * own;
    }
    total += density * (before === 0 ? view.together.unchanged : view.together.open);
  }
  return total / shortPlaces;
}
