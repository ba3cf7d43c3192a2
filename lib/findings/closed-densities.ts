import type { BaseLoop } from "./base-loop.js";
import { logNormalDensity, logUniformBelow, logUniformDensity, normalDensity } from "./distributions.js";
import { eolRow, eolRowCount } from "./eol-rows.js";
import type { Figures } from "./judge-options.js";
import type { LoopRecord } from "./loop-record.js";
import type { TakenReadings } from "./taken-readings.js";
import { zeros } from "./zeros.js";

const rootThree = Math.sqrt(3);

/** How likely the shut reading is by what is on the pair. 1 everywhere when it was not taken. [1/Ω, or 1 for over-range] */
export interface ClosedDensities {
  /** Over-range: 1 or 0; 1 when not taken. */
  readonly overRange: number;
  /** Anything at all, evenly over the decades. */
  readonly broad: number;
  /** Cable and contacts only; with a joint of unknown size; with foil; with the output of a supplied detector. */
  readonly base: number;
  readonly baseAndJoint: number;
  readonly baseAndFoil: number;
  readonly baseAndOutput: number;
  /** `[row * eols + eol]`, rows of {@link eolRow}; `doubled` is filled by the opened readings. */
  readonly rows: number[];
  /** No end-of-line value explains any of the reading: every row is 0. */
  readonly noEol: boolean;
  /** Half the value, per value: two legs in parallel. */
  readonly half: number[];
  /** Slips of a factor of ten or a thousand from a value that would have been expected. */
  readonly unitSlip: number;
}

/** What the shut reading is judged with. */
export interface ClosedTask {
  readonly taken: TakenReadings;
  readonly base: BaseLoop;
  readonly figures: Figures;
  readonly eolOhms: number[];
  readonly eolWeight: number[];
  /** Weights of the same places where the old panel's expectation says nothing. */
  readonly usualWeight: number[];
  readonly record: LoopRecord;
}

/** Densities of the shut reading, closed form: normals, log-normals and one-step convolutions with log-uniforms. */
export function closedDensities(task: ClosedTask): ClosedDensities {
  const { taken, eolOhms } = task;
  const count = eolOhms.length;
  const rows = zeros(eolRowCount * count);
  const half = zeros(count);
  if (!Number.isFinite(taken.closed)) {
    const value = taken.closedOverRange ? 0 : 1;
    if (value === 1) {
      rows.fill(1);
      half.fill(1);
    }
    const same = { broad: value, base: value, baseAndJoint: value, baseAndFoil: value, baseAndOutput: value };
    return { overRange: 1, ...same, rows, half, noEol: value === 0, unitSlip: value };
  }
  // Well under the smallest part there is nothing to work out: no part, and no leak that would hide one.
  const noEol = taken.closed + 8 * task.base.spreadOhms + 8 * taken.closedSpread < leastWithPart(task);
  if (!noEol) {
    fillEols(task, rows, half);
    fillOthers(task, rows, half);
  }
  return withoutEol(task, rows, half, noEol);
}

/** Least reading with a part on the pair: the smallest leak across the smallest, or half of the smallest. [Ω] */
function leastWithPart({ figures, eolOhms, base }: ClosedTask): number {
  let least = Number.POSITIVE_INFINITY;
  for (let e = 0; e < eolOhms.length; e += 1) least = Math.min(least, eolOhms[e] ?? least);
  const leaky = (least * figures.leakLowOhms) / (least + figures.leakLowOhms);
  return base.ohms + Math.min(leaky, 0.4 * least);
}

/** A part that is there, its half and double, and a part with a joint, foil or leak. */
function fillEols({ taken, base, figures, eolOhms }: ClosedTask, rows: number[], half: number[]): void {
  const count = eolOhms.length;
  const rest2 = base.spreadOhms ** 2 + taken.closedSpread ** 2;
  const z = taken.closed - base.ohms;
  const { eolSpread, agedShare, agedSpread, jointLowOhms, jointHighOhms, foilLowOhms, foilHighOhms } = figures;
  const { leakLowOhms, leakHighOhms } = figures;
  for (let e = 0; e < count; e += 1) {
    const ohms = eolOhms[e] ?? 1;
    const sd = Math.sqrt(rest2 + (eolSpread * ohms) ** 2);
    const x = z - ohms;
    const h = rootThree * sd;
    if (x < 8 * agedSpread * ohms + 8 * sd && x > -8 * agedSpread * ohms - 8 * sd) {
      const agedSd = Math.sqrt(rest2 + (agedSpread * ohms) ** 2);
      rows[e] = (1 - agedShare) * normalDensity(z, ohms, sd) + agedShare * normalDensity(z, ohms, agedSd);
    }
    half[e] = normalDensity(z, ohms / 2, Math.sqrt(rest2 + (0.36 * eolSpread * ohms) ** 2));
    if (x + h > foilLowOhms && x - h < jointHighOhms) {
      rows[eolRow.joint * count + e] = smeared(x, h, jointLowOhms, jointHighOhms);
      rows[eolRow.foil * count + e] = smeared(x, h, foilLowOhms, foilHighOhms);
    }
    if (x - h < 0) {
      const above = leakBelow(z + h, ohms, leakLowOhms, leakHighOhms);
      const below = leakBelow(z - h, ohms, leakLowOhms, leakHighOhms);
      rows[eolRow.leak * count + e] = (above - below) / (2 * h);
    }
  }
}

/** Density of a log-uniform addition smeared by ± h. [1/Ω] */
function smeared(x: number, h: number, low: number, high: number): number {
  if (x + h <= low || x - h >= high) return 0;
  return (logUniformBelow(x + h, low, high) - logUniformBelow(x - h, low, high)) / (2 * h);
}

/** Chance that a leak across the end-of-line part leaves less than these ohms of both. */
function leakBelow(ohms: number, eolOhms: number, low: number, high: number): number {
  if (ohms <= 0) return 0;
  return ohms >= eolOhms ? 1 : logUniformBelow((ohms * eolOhms) / (eolOhms - ohms), low, high);
}

/** A wrong part: two in parallel, two in series, or another value than the usual one. */
function fillOthers({ taken, base, figures, eolOhms, eolWeight }: ClosedTask, rows: number[], half: number[]): void {
  const count = eolOhms.length;
  const rest2 = base.spreadOhms ** 2 + taken.closedSpread ** 2;
  const z = taken.closed - base.ohms;
  const { wrongHalf, wrongDouble, eolSpread } = figures;
  let weighted = 0;
  for (let e = 0; e < count; e += 1) weighted += (eolWeight[e] ?? 0) * (rows[e] ?? 0);
  for (let e = 0; e < count; e += 1) {
    const own = eolWeight[e] ?? 0;
    const ohms = eolOhms[e] ?? 1;
    const others = own < 0.999 ? Math.max(0, (weighted - own * (rows[e] ?? 0)) / (1 - own)) : 0;
    const double = normalDensity(z, 2 * ohms, Math.sqrt(rest2 + (1.41 * eolSpread * ohms) ** 2));
    rows[eolRow.other * count + e] =
      wrongHalf * (half[e] ?? 0) + wrongDouble * double + (1 - wrongHalf - wrongDouble) * others;
  }
}

function withoutEol(task: ClosedTask, rows: number[], half: number[], noEol: boolean): ClosedDensities {
  const { taken, base, figures, record } = task;
  const y = taken.closed;
  const sd = Math.sqrt(base.spreadOhms ** 2 + taken.closedSpread ** 2);
  const h = rootThree * sd;
  const x = y - base.ohms;
  // Runs are guessed worse now and then: a tenth with twice the spread.
  const plain = 0.9 * logNormalDensity(y, base.ohms, sd) + 0.1 * logNormalDensity(y, base.ohms, 2 * sd);
  const output = smeared(x, h, figures.outputLowOhms, figures.outputHighOhms);
  const supplied = record.poweredDetector === true && record.powered !== false;
  return {
    overRange: 0,
    broad: logUniformDensity(Math.max(y, 0.05), 0.05, 8e6),
    base: supplied ? (1 - figures.outputShare) * plain + figures.outputShare * output : plain,
    baseAndJoint: smeared(x, h, figures.jointLowOhms, figures.jointHighOhms),
    baseAndFoil: smeared(x, h, figures.foilLowOhms, figures.foilHighOhms),
    baseAndOutput: output,
    rows,
    half,
    noEol,
    unitSlip: unitSlipDensity(task),
  };
}

const slipFactors = [1000, 10, 0.1, 0.001] as const;

/** The reading times 1000, 10, 1/10 or 1/1000 would have been expected; each a quarter. */
function unitSlipDensity({ taken, base, eolOhms, eolWeight }: ClosedTask): number {
  const y = taken.closed;
  let density = 0;
  for (const factor of slipFactors) {
    const part = y * factor - base.ohms;
    if (part < 100 || part > 1e5) continue;
    for (let e = 0; e < eolOhms.length; e += 1) {
      const ohms = eolOhms[e] ?? 1;
      if (part > 1.3 * ohms || part < 0.7 * ohms) continue;
      density += 0.25 * factor * (eolWeight[e] ?? 0) * normalDensity(part, ohms, 0.03 * ohms + base.spreadOhms);
    }
  }
  return 0.8 * density + 0.2 * 0.001 * logNormalDensity(y * 0.001, base.ohms, base.spreadOhms);
}
