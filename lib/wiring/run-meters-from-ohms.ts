import { requireBetween } from "../problems/require-between.js";
import { conductorOhmsPerMeter, type WarmConductor } from "./conductor-ohms-per-meter.js";

/** A measured pair, shorted at its far end or through closed contacts without an end-of-line resistor. */
export interface MeasuredPair {
  readonly conductor: WarmConductor;
  /** Reading of the loop, 0 to 100 000. [Ω] */
  readonly ohms: number;
  /** The reading may be off by this much either way; absent = 0. [Ω] */
  readonly boundOhms?: number;
  /** What in the reading is not cable: contacts, joints, leads. Absent = nothing. [Ω] */
  readonly otherOhms?: { readonly lowOhms: number; readonly likelyOhms: number; readonly highOhms: number };
  /** The cable may be this much colder or warmer than stated; absent = 10. [°C] */
  readonly spreadCelsius?: number;
  /** Conductors twisted together to make one leg; absent = 1. [count] */
  readonly conductorsPerLeg?: number;
}

/** Length of a run with the interval that reading, other parts and temperature allow. */
export interface RunFromOhms {
  /** One-way length. [m] */
  readonly meters: number;
  readonly lowMeters: number;
  readonly highMeters: number;
  /** What was taken for granted, in words. */
  readonly assumptions: readonly string[];
}

/**
 * One-way length of a pair from its resistance: (ohms − other) · conductors per leg ÷ (2 · Ω/m), with the interval of
 * the worst corners. `null` when even the highest corner leaves nothing for cable: such a reading tells no length.
 * Not for a loop with an end-of-line resistor: its tolerance hides the cable.
 * @throws {@link InputError} when a value is outside its range.
 * @example runMetersFromOhms({ conductor: { gaugeAwg: 22 }, ohms: 3.18, spreadCelsius: 0 })?.meters; // 30.02…
 */
export function runMetersFromOhms(pair: MeasuredPair): RunFromOhms | null {
  const { ohms, boundOhms = 0, spreadCelsius = 10, conductorsPerLeg = 1, conductor } = pair;
  requireBetween({ field: "ohms", value: ohms, unit: "Ω", from: 0, to: 100_000 });
  requireBetween({ field: "boundOhms", value: boundOhms, unit: "Ω", from: 0, to: 100_000 });
  requireBetween({ field: "spreadCelsius", value: spreadCelsius, unit: "°C", from: 0, to: 50 });
  requireBetween({ field: "conductorsPerLeg", value: conductorsPerLeg, unit: "", from: 1, to: 50, whole: true });
  const other = pair.otherOhms ?? { lowOhms: 0, likelyOhms: 0, highOhms: 0 };
  const celsius = conductor.temperatureCelsius ?? 20;
  const metersAt = (cableOhms: number, temperatureCelsius: number): number =>
    (Math.max(0, cableOhms) * conductorsPerLeg) / (2 * conductorOhmsPerMeter({ ...conductor, temperatureCelsius }));
  const highMeters = metersAt(ohms + boundOhms - other.lowOhms, Math.max(-40, celsius - spreadCelsius));
  if (highMeters === 0) return null;
  return {
    meters: metersAt(ohms - other.likelyOhms, celsius),
    lowMeters: metersAt(ohms - boundOhms - other.highOhms, Math.min(90, celsius + spreadCelsius)),
    highMeters,
    assumptions: assumptionsOf(pair, celsius, spreadCelsius),
  };
}

function assumptionsOf(pair: MeasuredPair, celsius: number, spreadCelsius: number): string[] {
  const said: string[] = [];
  const { metal, temperatureCelsius, tinned } = pair.conductor;
  if (metal === undefined && tinned !== true) {
    said.push("conductors taken as copper; of copper-clad aluminium the run would be about 37 % shorter");
  }
  if (temperatureCelsius === undefined) said.push("cable taken as 20 °C");
  if (spreadCelsius > 0) said.push(`cable between ${celsius - spreadCelsius} and ${celsius + spreadCelsius} °C`);
  if (pair.otherOhms === undefined) said.push("nothing in the reading but cable");
  return said;
}
