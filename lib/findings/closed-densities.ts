import type { BaseLoop } from "./base-loop.js";
import { logNormalDensity, logUniformBelow, logUniformDensity, normalDensity } from "./distributions.js";
import type { Figures } from "./judge-options.js";
import type { LoopRecord } from "./loop-record.js";
import type { TakenReadings } from "./taken-readings.js";

const rootThree = Math.sqrt(3);

/** How likely the shut reading is by what is on the pair. 1 everywhere when it was not taken. [1/Ω, or 1 for over-range] */
export interface ClosedDensities {
  /** Over-range: 1 or 0; 1 when not taken. */
  readonly overRange: number;
  /** Anything at all, evenly over the decades. */
  readonly broad: number;
  /** Cable and contacts only. */
  readonly base: number;
  /** Cable, contacts and a joint of unknown size. */
  readonly baseAndJoint: number;
  readonly baseAndFoil: number;
  /** Cable, contacts and the output of a supplied detector. */
  readonly baseAndOutput: number;
  /** Per end-of-line value. */
  readonly eol: Float64Array;
  readonly half: Float64Array;
  readonly double: Float64Array;
  readonly eolAndJoint: Float64Array;
  readonly eolAndFoil: Float64Array;
  readonly eolAndLeak: Float64Array;
  /** Two parts in parallel, two in series, or another value than the usual one. */
  readonly otherEol: Float64Array;
  /** Slips of a factor of ten or a thousand from a value that would have been expected. */
  readonly unitSlip: number;
}

interface Parts {
  readonly taken: TakenReadings;
  readonly base: BaseLoop;
  readonly figures: Figures;
  readonly eolOhms: Float64Array;
  readonly eolWeight: Float64Array;
  readonly record: LoopRecord;
}

/** Densities of the shut reading, closed form: normals, log-normals and one-step convolutions with log-uniforms. */
export function closedDensities(parts: Parts): ClosedDensities {
  const { taken, eolOhms } = parts;
  const count = eolOhms.length;
  const perEol = (): Float64Array => new Float64Array(count);
  if (!Number.isFinite(taken.closed)) return constant(count, Number.isNaN(taken.closed) ? 1 : 0, taken);
  const made = {
    eol: perEol(),
    half: perEol(),
    double: perEol(),
    eolAndJoint: perEol(),
    eolAndFoil: perEol(),
    eolAndLeak: perEol(),
    otherEol: perEol(),
  };
  fillPerEol(parts, made);
  return {
    overRange: 0,
    broad: logUniformDensity(Math.max(taken.closed, 0.05), 0.05, 8e6),
    ...made,
    ...withoutEol(parts),
  };
}

function constant(count: number, value: number, taken: TakenReadings): ClosedDensities {
  const filled = new Float64Array(count).fill(value);
  return {
    overRange: taken.closedOverRange || value === 1 ? 1 : 0,
    broad: value,
    base: value,
    baseAndJoint: value,
    baseAndFoil: value,
    baseAndOutput: value,
    eol: filled,
    half: filled,
    double: filled,
    eolAndJoint: filled,
    eolAndFoil: filled,
    eolAndLeak: filled,
    otherEol: filled,
    unitSlip: value,
  };
}

type PerEol = {
  -readonly [K in "eol" | "half" | "double" | "eolAndJoint" | "eolAndFoil" | "eolAndLeak" | "otherEol"]: Float64Array;
};

function fillPerEol({ taken, base, figures, eolOhms, eolWeight }: Parts, out: PerEol): void {
  const rest2 = base.spreadOhms ** 2 + taken.closedSpread ** 2;
  const z = taken.closed - base.ohms;
  const { eolSpread, agedShare, agedSpread, jointLowOhms, jointHighOhms, leakLowOhms, leakHighOhms } = figures;
  let weighted = 0;
  for (let e = 0; e < eolOhms.length; e += 1) {
    const ohms = eolOhms[e] ?? 1;
    const sd = Math.sqrt(rest2 + (eolSpread * ohms) ** 2);
    const agedSd = Math.sqrt(rest2 + (agedSpread * ohms) ** 2);
    const density = (1 - agedShare) * normalDensity(z, ohms, sd) + agedShare * normalDensity(z, ohms, agedSd);
    out.eol[e] = density;
    weighted += (eolWeight[e] ?? 0) * density;
    const halfSd = Math.sqrt(rest2 + (eolSpread * ohms * 0.36) ** 2);
    out.half[e] = normalDensity(z, ohms / 2, halfSd);
    out.double[e] = normalDensity(z, 2 * ohms, Math.sqrt(rest2 + (eolSpread * ohms * 1.41) ** 2));
    const h = rootThree * sd;
    const x = z - ohms;
    out.eolAndJoint[e] =
      x + h <= jointLowOhms
        ? 0
        : (logUniformBelow(x + h, jointLowOhms, jointHighOhms) - logUniformBelow(x - h, jointLowOhms, jointHighOhms)) /
          (2 * h);
    out.eolAndFoil[e] =
      x + h <= figures.foilLowOhms
        ? 0
        : (logUniformBelow(x + h, figures.foilLowOhms, figures.foilHighOhms) -
            logUniformBelow(x - h, figures.foilLowOhms, figures.foilHighOhms)) /
          (2 * h);
    out.eolAndLeak[e] =
      z - h >= ohms
        ? 0
        : (leakBelow(z + h, ohms, leakLowOhms, leakHighOhms) - leakBelow(z - h, ohms, leakLowOhms, leakHighOhms)) /
          (2 * h);
  }
  for (let e = 0; e < eolOhms.length; e += 1) {
    const own = eolWeight[e] ?? 0;
    const others = own < 0.999 ? (weighted - own * (out.eol[e] ?? 0)) / (1 - own) : 0;
    out.otherEol[e] =
      figures.wrongHalf * (out.half[e] ?? 0) +
      figures.wrongDouble * (out.double[e] ?? 0) +
      (1 - figures.wrongHalf - figures.wrongDouble) * Math.max(0, others);
  }
}

/** Chance that a leak across the end-of-line part leaves less than these ohms of both. */
function leakBelow(ohms: number, eolOhms: number, low: number, high: number): number {
  if (ohms <= 0) return 0;
  return ohms >= eolOhms ? 1 : logUniformBelow((ohms * eolOhms) / (eolOhms - ohms), low, high);
}

function withoutEol({ taken, base, figures, eolOhms, eolWeight, record }: Parts) {
  const y = taken.closed;
  const sd = Math.sqrt(base.spreadOhms ** 2 + taken.closedSpread ** 2);
  const h = rootThree * sd;
  const x = y - base.ohms;
  // Runs are guessed worse now and then: a tenth with twice the spread.
  const plain = 0.9 * logNormalDensity(y, base.ohms, sd) + 0.1 * logNormalDensity(y, base.ohms, 2 * sd);
  const joint = (low: number, high: number): number =>
    x + h <= low ? 0 : (logUniformBelow(x + h, low, high) - logUniformBelow(x - h, low, high)) / (2 * h);
  const output = joint(figures.outputLowOhms, figures.outputHighOhms);
  const supplied = record.poweredDetector === true && record.powered !== false;
  return {
    base: supplied ? (1 - figures.outputShare) * plain + figures.outputShare * output : plain,
    baseAndJoint: joint(figures.jointLowOhms, figures.jointHighOhms),
    baseAndFoil: joint(figures.foilLowOhms, figures.foilHighOhms),
    baseAndOutput: output,
    unitSlip: unitSlipDensity(y, base, eolOhms, eolWeight),
  };
}

/** The reading times 1000, 10, 1/10 or 1/1000 would have been expected; each a quarter. */
function unitSlipDensity(y: number, base: BaseLoop, eolOhms: Float64Array, eolWeight: Float64Array): number {
  let density = 0;
  for (let e = 0; e < eolOhms.length; e += 1) {
    const ohms = eolOhms[e] ?? 1;
    const sd = 0.03 * ohms + base.spreadOhms;
    const by = (factor: number): number => factor * normalDensity(y * factor, ohms + base.ohms, sd);
    density += (eolWeight[e] ?? 0) * 0.25 * (by(1000) + by(10) + by(0.1) + by(0.001));
  }
  return 0.8 * density + 0.2 * 0.001 * logNormalDensity(y * 0.001, base.ohms, base.spreadOhms);
}
