import { requireBetween } from "../problems/require-between.js";
import { type LoopPart, type PartOhms, partOhms } from "../reference/loop-part.js";
import { conductorOhmsPerMeter, type WarmConductor } from "../wiring/conductor-ohms-per-meter.js";
import { type PairStretch, pairOhms } from "../wiring/pair-ohms.js";

/** What is known of a loop before it is metered. What is left out is assumed, and said. */
export interface ExpectedLoop {
  /** Absent = 22 AWG solid copper, assumed. */
  readonly conductor?: WarmConductor;
  /** One-way run with its spread; a bare number has none. Absent = 22 m with a wide spread, assumed. [m] */
  readonly runMeters?: number | { readonly low: number; readonly likely: number; readonly high: number };
  /** Further cable in series with the run: an extension, or another size added later. At the same temperatures. */
  readonly furtherStretches?: readonly PairStretch[];
  /** Contacts in series that are shut. [count] */
  readonly openings: number;
  /** Joints in the whole loop; absent = one more than the openings. [count] */
  readonly joints?: number;
  /** End-of-line resistor; absent = none fitted. */
  readonly eol?: {
    readonly ohms: number;
    /** Tolerance of the part; absent = 5. [%] */
    readonly tolerancePercent?: number;
    /** The part has been in the wall for years: 3 % more either way. Absent = true. */
    readonly aged?: boolean;
  };
  /** Coldest and warmest the cable may be; absent = the conductor's temperature ± 10. [°C] */
  readonly temperatureCelsius?: { readonly low: number; readonly high: number };
  /** What the leads add; absent = nothing (loop as such, not as metered). */
  readonly leads?: PartOhms;
  /** Kind of contact; absent = an ordinary closed contact. */
  readonly contact?: Extract<LoopPart, "contact" | "agedContact" | "newReed" | "detectorOutput">;
}

/** Low, likely and high of one part. [Ω] */
export interface OhmsBand {
  readonly lowOhms: number;
  readonly likelyOhms: number;
  readonly highOhms: number;
}

/** The band a sound loop would read in, with its parts. */
export interface ExpectedOhms extends OhmsBand {
  readonly parts: {
    readonly cable: OhmsBand;
    readonly contacts: OhmsBand;
    readonly joints: OhmsBand;
    readonly leads: OhmsBand;
    readonly eol: OhmsBand;
  };
  /** What was taken for granted, in words. */
  readonly assumptions: readonly string[];
}

/** Common practice, no source: what a run and a cable are taken as where nobody wrote them. */
const ASSUMED_GAUGE_AWG = 22;
const ASSUMED_RUN = { low: 6, likely: 22, high: 60 } as const;
/** Common practice, no source: drift of a resistor over the years, beyond its tolerance. [%] */
const AGED_PERCENT = 3;

/**
 * Resistance a sound loop would show with everything shut: 2·run·Ω/m + contacts + joints + leads + resistor. [Ω]
 * Low and high are the corners of all spreads together, so the band is wide on purpose: it is no probability. A fixed
 * limit would condemn a long thin cable and pass a bad joint on a short thick one.
 * @throws {@link InputError} when a value is outside its range.
 * @example expectedLoopOhms({ conductor: { gaugeAwg: 22 }, runMeters: 30, openings: 2 }).likelyOhms; // 3.602…
 */
export function expectedLoopOhms(loop: ExpectedLoop): ExpectedOhms {
  requireBetween({ field: "openings", value: loop.openings, unit: "", from: 0, to: 500, whole: true });
  const joints = loop.joints ?? loop.openings + 1;
  requireBetween({ field: "joints", value: joints, unit: "", from: 0, to: 2000, whole: true });
  const parts = {
    cable: cableBand(loop),
    contacts: times(loop.openings, partOhms(loop.contact ?? "contact")),
    joints: times(joints, partOhms("splice")),
    leads: loop.leads === undefined ? NOTHING : times(1, loop.leads),
    eol: eolBand(loop.eol),
  };
  return { ...addBands(Object.values(parts)), parts, assumptions: assumptionsOf(loop) };
}

const NOTHING: OhmsBand = { lowOhms: 0, likelyOhms: 0, highOhms: 0 };

function cableBand(loop: ExpectedLoop): OhmsBand {
  const conductor = loop.conductor ?? { gaugeAwg: ASSUMED_GAUGE_AWG };
  const run = runOf(loop.runMeters ?? ASSUMED_RUN);
  const celsius = conductor.temperatureCelsius ?? 20;
  const between = loop.temperatureCelsius ?? { low: Math.max(-40, celsius - 10), high: Math.min(90, celsius + 10) };
  const ohms = (meters: number, temperatureCelsius: number): number =>
    (loop.furtherStretches ?? []).reduce(
      (sum, stretch) => sum + pairOhms({ ...stretch, conductor: { ...stretch.conductor, temperatureCelsius } }),
      2 * meters * conductorOhmsPerMeter({ ...conductor, temperatureCelsius }),
    );
  requireBetween({ field: "temperatureCelsius.low", value: between.low, unit: "°C", from: -40, to: between.high });
  return {
    lowOhms: ohms(run.low, between.low),
    likelyOhms: ohms(run.likely, Math.min(between.high, Math.max(between.low, celsius))),
    highOhms: ohms(run.high, between.high),
  };
}

function runOf(run: NonNullable<ExpectedLoop["runMeters"]>): { low: number; likely: number; high: number } {
  const { low, likely, high } = typeof run === "number" ? { low: run, likely: run, high: run } : run;
  requireBetween({ field: "runMeters", value: high, unit: "m", from: 0, to: 10_000 });
  requireBetween({ field: "runMeters.likely", value: likely, unit: "m", from: 0, to: high });
  requireBetween({ field: "runMeters.low", value: low, unit: "m", from: 0, to: likely });
  return { low, likely, high };
}

function eolBand(eol: ExpectedLoop["eol"]): OhmsBand {
  if (eol === undefined) return NOTHING;
  const { ohms, tolerancePercent = 5, aged = true } = eol;
  requireBetween({ field: "eol.ohms", value: ohms, unit: "Ω", from: 1, to: 1e6 });
  requireBetween({ field: "eol.tolerancePercent", value: tolerancePercent, unit: "%", from: 0, to: 50 });
  const part = (tolerancePercent + (aged ? AGED_PERCENT : 0)) / 100;
  return { lowOhms: ohms * (1 - part), likelyOhms: ohms, highOhms: ohms * (1 + part) };
}

function times(count: number, { lowOhms, likelyOhms, highOhms }: OhmsBand): OhmsBand {
  return { lowOhms: count * lowOhms, likelyOhms: count * likelyOhms, highOhms: count * highOhms };
}

function addBands(bands: readonly OhmsBand[]): OhmsBand {
  const total = (pick: (band: OhmsBand) => number): number => bands.reduce((sum, band) => sum + pick(band), 0);
  return {
    lowOhms: total((band) => band.lowOhms),
    likelyOhms: total((band) => band.likelyOhms),
    highOhms: total((band) => band.highOhms),
  };
}

function assumptionsOf(loop: ExpectedLoop): string[] {
  const said: string[] = [];
  if (loop.conductor === undefined) said.push(`cable size not written: taken as ${ASSUMED_GAUGE_AWG} AWG solid copper`);
  else if (loop.conductor.metal === undefined && loop.conductor.tinned !== true)
    said.push("conductors taken as copper");
  if (loop.runMeters === undefined) {
    said.push(`run not written: taken as ${ASSUMED_RUN.likely} m, ${ASSUMED_RUN.low} to ${ASSUMED_RUN.high} m`);
  }
  if (loop.temperatureCelsius === undefined) said.push("cable within 10 °C of the temperature stated, or of 20 °C");
  if (loop.joints === undefined) said.push("one joint more than there are openings");
  if (loop.eol !== undefined && loop.eol.tolerancePercent === undefined) said.push("resistor taken as a 5 % part");
  if (loop.eol !== undefined && loop.eol.aged !== false) said.push("resistor taken as aged: 3 % more either way");
  return said;
}
