import type { ClosedDensities, ClosedTask } from "./closed-densities.js";
import { at } from "./conditions.js";
import { logNormalDensity, logUniformDensity, normalDensity } from "./distributions.js";
import { eolRow } from "./eol-rows.js";
import type { Figures } from "./judge-options.js";
import { broadDensity, type OpenedView, openedView, repeatSpreadOhms } from "./opened-view.js";

/** What the opened readings are judged with; fills the likelihoods without notes. */
export interface PatternTask extends ClosedTask {
  readonly closed: ClosedDensities;
  /** Filled: with the part at the far end every condition is `alpha · row[eol] + beta`. */
  readonly alpha: number[];
  readonly beta: number[];
  /** Filled: the same circuit for no part and for one at the panel. */
  readonly none: number[];
}

/** Fills the likelihood of shut and opened readings together for every condition. */
export function openedPatterns(task: PatternTask): void {
  const view = openedView(task.record, task.taken, task.figures);
  fillSeries(task, view);
  fillWrongEol(task, view);
  fillLeak(task, view);
  fillDoubles(task, view);
  fillNormallyOpen(task, view);
  fillWithoutForm(task, view);
  fillUnexplained(task, view);
}

/** Conditions that open like a sound loop, and those where some or all openings change nothing. */
function fillSeries(
  { closed, alpha, beta, none, figures, taken, record, usualWeight }: PatternTask,
  view: OpenedView,
): void {
  const open = view.allOpen * view.togetherOpen;
  const read = 1 - figures.crossedReadsOpen;
  const crossedOpen = figures.crossedReadsOpen * closed.overRange * open;
  const bypassed = bypassPattern(taken.opened, figures, view);
  const parallel = record.openings < 2 ? 0 : parallelPattern(view);
  for (const c of opensLikeSound) {
    alpha[c] = open;
    none[c] = closed.base * open;
  }
  alpha[at.crossed] = read * open;
  beta[at.crossed] = crossedOpen;
  none[at.crossed] = read * closed.base * open + crossedOpen;
  alpha[at.bypassed] = bypassed;
  none[at.bypassed] = closed.base * bypassed;
  alpha[at.parallelContacts] = parallel;
  none[at.parallelContacts] = closed.base * parallel;
  alpha[at.highResistance] = open;
  none[at.highResistance] = closed.baseAndJoint * open;
  alpha[at.foil] = open;
  none[at.foil] = closed.baseAndFoil * open;
  // Fire loops carry their own values, whatever the job uses, and sometimes nothing changes when a door opens.
  let eol = 0;
  for (let e = 0; e < usualWeight.length; e += 1) eol += (usualWeight[e] ?? 0) * (closed.rows[e] ?? 0);
  let still = 1;
  for (let i = 0; i < view.slip.length; i += 1) still *= (view.unchanged[i] ?? 0) + (view.slip[i] ?? 0);
  beta[at.lifeSafety] = eol * (0.9 * open + 0.1 * still * view.togetherUnchanged);
}

const opensLikeSound = [at.soundEolAtEnd, at.soundNoEol, at.eolInPanel, at.tamperLoop, at.earthFault, at.sharedReturn];

/** A wrong part opens like a right one; of two legs in parallel an opened contact takes one off. */
function fillWrongEol(task: PatternTask, view: OpenedView): void {
  const { closed, eolOhms, eolWeight, figures, taken, alpha, none } = task;
  if (closed.noEol) return;
  const count = eolOhms.length;
  const open = view.allOpen * view.togetherOpen;
  const rows = closed.rows;
  const legs = taken.opened.some((ohms) => Number.isFinite(ohms) && ohms > taken.closed);
  // A part in the loop of a job that uses none there is a wrong one too.
  let without = 0;
  for (let e = 0; e < count; e += 1) {
    const row = eolRow.other * count + e;
    const plain = (rows[row] ?? 0) * open;
    without += (eolWeight[e] ?? 0) * (plain + 0.1 * (rows[e] ?? 0) * open);
    const half = legs ? (closed.half[e] ?? 0) : 0;
    rows[row] = plain + (half > 0 ? figures.wrongHalf * half * legOpens(eolOhms[e] ?? 1, task, view) : 0);
  }
  alpha[at.wrongEol] = 1;
  none[at.wrongEol] = without / 1.1;
}

function legOpens(ohms: number, { taken, figures }: PatternTask, view: OpenedView): number {
  let density = 1;
  for (let i = 0; i < taken.opened.length; i += 1) {
    const opened = taken.opened[i] ?? Number.POSITIVE_INFINITY;
    const finite = Number.isFinite(opened);
    density *= finite ? normalDensity(opened, ohms, 2 * figures.eolSpread * ohms + 3) : (view.slip[i] ?? 0);
  }
  return density;
}

/** One contact at random bypassed, each further one with its own chance; the others open. */
function bypassPattern(opened: readonly number[], figures: Figures, view: OpenedView): number {
  const q = figures.furtherBypassed;
  let unchanged = 0;
  let density = 1;
  for (let i = 0; i < opened.length; i += 1) {
    if (Number.isFinite(opened[i])) {
      const same = view.unchanged[i] ?? 0;
      const slip = view.slip[i] ?? 0;
      if (same > slip) unchanged += 1;
      density *= Math.max(same, slip);
    } else density *= 1 - figures.misreadShare;
  }
  const open = opened.length - unchanged;
  const unread = Math.max(0, view.openings - opened.length);
  const others = (1 - q) ** open;
  const pattern = (unchanged * q ** Math.max(0, unchanged - 1) + unread * q ** unchanged) * (others / view.openings);
  const all = unchanged === view.openings;
  return density * pattern * (all ? view.togetherUnchanged : 0.95 * view.togetherOpen + 0.05 * view.togetherUnchanged);
}

/** Nothing changes until all are open. */
function parallelPattern(view: OpenedView): number {
  let density = view.togetherOpen;
  for (let i = 0; i < view.slip.length; i += 1) density *= (view.unchanged[i] ?? 0) + (view.slip[i] ?? 0);
  return density;
}

/** A leak somewhere along the pair: openings beyond it show it, those before it read over-range. */
function fillLeak(task: PatternTask, view: OpenedView): void {
  const { taken, figures, closed, eolOhms, alpha, none, base } = task;
  let lastOpen = 0;
  let firstLeaky = view.openings + 1;
  let leakOhms = 0;
  let density = 1;
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
      leakOhms === 0
        ? logUniformDensity(ohms, figures.leakLowOhms, figures.leakHighOhms)
        : normalDensity(ohms, leakOhms, figures.repeatOhms + 0.01 * leakOhms);
    leakOhms = Math.max(ohms, 1e-3);
  }
  const places = Math.max(0, Math.min(view.openings, firstLeaky - 1) - lastOpen + 1);
  const place = places > 0 ? places / (view.openings + 1) : 0.002;
  const fits = place * density * (leakOhms > 0 ? 1 : view.togetherOpen);
  none[at.leakage] = closed.base * fits;
  alpha[at.leakage] = fits;
  if (leakOhms === 0 || closed.noEol || Number.isNaN(taken.closed)) return;
  // The opened reading pins the leak, so the shut one is the part and the leak together.
  const rest2 = base.spreadOhms ** 2 + taken.closedSpread ** 2;
  const start = eolRow.leak * eolOhms.length;
  for (let e = 0; e < eolOhms.length; e += 1) {
    const ohms = eolOhms[e] ?? 1;
    const both = (ohms * leakOhms) / (ohms + leakOhms);
    const sd = Math.sqrt(rest2 + (1.2 * figures.eolSpread * both) ** 2);
    closed.rows[start + e] = normalDensity(taken.closed, base.ohms + both, sd);
  }
}

/** A resistor across one contact or across each; and two zones on a pair, each contact with its own. */
function fillDoubles(task: PatternTask, view: OpenedView): void {
  const { taken, figures, closed, eolOhms, alpha, none } = task;
  const count = eolOhms.length;
  const measured = taken.opened.length;
  const rises: number[] = [];
  let opens = 1;
  for (const ohms of taken.opened) {
    if (Number.isFinite(ohms)) rises.push(ohms - taken.closed);
    else opens *= 1 - figures.misreadShare;
  }
  const share = figures.everyContactDoubled;
  const hidden = Math.max(0, view.openings - measured) / view.openings;
  const one = rises.length === 0 ? hidden : rises.length === 1 ? 1 / view.openings : 0;
  const pattern = (1 - share) * one + (rises.length === measured ? share : 0);
  const rise = rises.map((ohms) => preferredDensity(ohms, task));
  alpha[at.doubleEol] = pattern * opens * (rises.length === 0 ? view.togetherOpen : 1);
  const same = figures.sameResistorDoubled;
  const repeat = repeatSpreadOhms(taken.closed, figures);
  for (let e = 0; !closed.noEol && e < count; e += 1) {
    let density = closed.rows[e] ?? 0;
    const ohms = eolOhms[e] ?? 1;
    for (let i = 0; density > 0 && i < rises.length; i += 1) {
      const own = normalDensity(rises[i] ?? 0, ohms, figures.eolSpread * ohms + repeat);
      density *= same * own + (1 - same) * (rise[i] ?? 0);
    }
    closed.rows[eolRow.doubled * count + e] = density;
  }
  none[at.doubledPair] = closed.base * doubledPair(task, view, rises, rise) * opens;
}

function doubledPair(task: PatternTask, view: OpenedView, rises: readonly number[], rise: readonly number[]): number {
  const { taken, figures } = task;
  if (view.openings < 2) return 0;
  if (rises.length === 0) return taken.opened.length === 0 ? view.togetherOpen : 0;
  let density = 1;
  for (const [i, ohms] of rises.entries()) {
    const again = rises.slice(0, i).some((other) => Math.abs(other - ohms) < 0.1 * ohms);
    density *= (rise[i] ?? 0) * (again ? 0.1 : 1);
  }
  if (!Number.isFinite(taken.together)) return density * (Number.isNaN(taken.together) ? 1 : figures.misreadShare);
  const sum = rises.reduce((total, ohms) => total + ohms, 0);
  return density * normalDensity(taken.together - taken.closed, sum, 0.02 * sum + 3);
}

/** Density of ohms that are one of the end-of-line values, by their weights. [1/Ω] */
function preferredDensity(ohms: number, { taken, eolOhms, eolWeight, figures }: PatternTask): number {
  if (!(ohms > 0)) return 0;
  const repeat = repeatSpreadOhms(taken.closed, figures);
  let density = 0;
  for (let e = 0; e < eolOhms.length; e += 1) {
    const value = eolOhms[e] ?? 1;
    density += (eolWeight[e] ?? 0) * normalDensity(ohms, value, figures.eolSpread * value + repeat);
  }
  return density;
}

/** A device that closes when operated: the opened reading is the cable. */
function fillNormallyOpen({ taken, figures, closed, alpha, none, base }: PatternTask, view: OpenedView): void {
  let density = view.togetherOpen === 1 ? 1 : 0.5;
  let first = 0;
  for (let i = 0; i < taken.opened.length; i += 1) {
    const ohms = taken.opened[i] ?? Number.POSITIVE_INFINITY;
    if (!Number.isFinite(ohms)) {
      density *= figures.misreadShare;
      continue;
    }
    const share = 0.15 + (0.85 * (taken.openings[i] ?? 1)) / view.openings;
    const mean = first === 0 ? base.leadOhms + (base.ohms - base.leadOhms) * share : Math.max(first, 0.3);
    first = Math.max(ohms, 0.1);
    density *= logNormalDensity(first, mean, mean * figures.normallyOpenVariation + 0.2);
  }
  none[at.normallyOpen] = closed.overRange * density;
  alpha[at.normallyOpen] = density;
}

/** Conditions in which the end-of-line part plays no role; equal in every form. */
function fillWithoutForm(
  { taken, figures, closed, alpha, beta, none, base, record }: PatternTask,
  view: OpenedView,
): void {
  const open = view.allOpen * view.togetherOpen;
  const stray = Number.isNaN(taken.closed) ? 0 : 0.015 * closed.broad;
  beta[at.open] = (0.985 * closed.overRange + stray) * open;
  const without = figures.unpoweredReadsOpen * (record.powered === true ? 0.5 : 1);
  const through = 1 - figures.unpoweredReadsOpen;
  beta[at.poweredDevice] = (without * closed.overRange + through * closed.baseAndOutput) * open;
  beta[at.shorted] = shortPattern(taken, base.ohms, base.spreadOhms, base.leadOhms, figures, view);
  for (const c of [at.open, at.poweredDevice, at.shorted]) none[c] = beta[c] ?? 0;
  if (!taken.closedOverRange) alpha[at.poweredDevice] = through * open;
}

const shortPlaces = 8;

/** A short somewhere along the pair, 8-point quadrature over its place: openings beyond it change nothing. */
function shortPattern(
  taken: ClosedTask["taken"],
  baseOhms: number,
  baseSpread: number,
  leadOhms: number,
  figures: Figures,
  view: OpenedView,
): number {
  if (taken.closedOverRange) return 0;
  const y = taken.closed;
  const read = !Number.isNaN(y);
  if (read && y > 20 * baseOhms + 200) return 0;
  const meter2 = taken.closedSpread ** 2 + 0.01;
  const own = read && y < 100 ? 1 / (y * Math.log(1000)) : 0;
  let total = 0;
  for (let place = 0; place < shortPlaces; place += 1) {
    const share = (place + 0.5) / shortPlaces;
    const before = Math.floor(share * (view.openings + 1));
    let density = before === 0 ? view.togetherUnchanged : view.togetherOpen;
    for (let i = 0; i < view.slip.length; i += 1) {
      const finite = Number.isFinite(taken.opened[i]);
      const slip = view.slip[i] ?? 0;
      if ((taken.openings[i] ?? 1) <= before) density *= finite ? slip : 1 - figures.misreadShare;
      else density *= finite ? (view.unchanged[i] ?? 0) + slip : slip;
    }
    if (density < 1e-12) continue;
    if (read) {
      const mean = leadOhms + share * (baseOhms - leadOhms);
      const spread = Math.sqrt((share * baseSpread) ** 2 + meter2);
      const plain = logNormalDensity(y, mean, spread);
      density *= (1 - figures.shortResistanceShare) * plain + (y > mean ? figures.shortResistanceShare * own : 0);
    }
    total += density;
  }
  return total / shortPlaces;
}

/** Foreign volts, slips of units, swapped columns, and readings of no pattern at all. */
function fillUnexplained(task: PatternTask, view: OpenedView): void {
  const { taken, figures, closed, beta, none } = task;
  let loose = 1;
  let foreign = 1;
  for (let i = 0; i < taken.opened.length; i += 1) {
    const ohms = taken.opened[i] ?? Number.POSITIVE_INFINITY;
    const finite = Number.isFinite(ohms);
    loose *= finite ? 0.5 * broadDensity(ohms) + 0.15 * (view.unchanged[i] ?? 0) : 0.35;
    foreign *= finite ? 0.5 * broadDensity(ohms) : 0.5;
  }
  const missing = Number.isNaN(taken.closed);
  const over = figures.unexplainedOverRange;
  const slips = figures.unitSlipShare;
  const read = (1 - slips) * closed.broad * loose + slips * closed.unitSlip * view.allOpen;
  const shut = missing ? read : taken.closedOverRange ? over * loose : (1 - over) * read;
  const swapped = figures.swappedShare;
  const unexplained = (1 - swapped) * shut + swapped * swappedPattern(task);
  const foreignShut = missing ? 1 : taken.closedOverRange ? 0.4 : 0.6 * closed.broad;
  beta[at.unexplained] = unexplained;
  none[at.unexplained] = unexplained;
  beta[at.foreignVoltage] = foreignShut * foreign;
  none[at.foreignVoltage] = foreignShut * foreign;
}

/** Shut and opened reading swapped: shut over-range, opened what a sound shut loop reads. */
function swappedPattern(task: PatternTask): number {
  const { taken, base } = task;
  if (!taken.closedOverRange || taken.opened.length === 0) return 0;
  let density = 1;
  for (const ohms of taken.opened) {
    if (!Number.isFinite(ohms)) return 0;
    const plain = logNormalDensity(Math.max(ohms, 0.05), base.ohms, base.spreadOhms);
    density *= 0.7 * preferredDensity(ohms - base.ohms, task) + 0.3 * plain;
  }
  return density;
}
