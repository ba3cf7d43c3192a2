import { InputError } from "../problems/input-error.js";
import { requireBetween } from "../problems/require-between.js";
import { type ConductorsRow, conductors } from "../reference/generated/conductors.js";
import { type Conductor, type ConductorMetal, conductorSize } from "./conductor.js";

/** Resistivity of annealed copper of 100 % IACS at 20 °C, IEC 60028. [Ω·mm²/m] */
const IACS_OHM_MM2_PER_METER = 1 / 58;

/** Strands lie in a helix and are longer than the conductor: 2 %, the standard increment of ASTM B496. */
export const LAY_FACTOR = 1.02;

/** A conductor and how warm it is. */
export interface WarmConductor extends Conductor {
  /** Conductor temperature, −40 to 90; absent = 20. [°C] */
  readonly temperatureCelsius?: number;
}

/**
 * DC resistance of one metre of one conductor. [Ω/m]
 * (1/58 ÷ conductivity) ÷ area · lay · (1 + α20·(T − 20)); lay is 1.02 for two strands and more, else 1. Gauge sizes
 * follow the exact diameter series (22 AWG solid copper: 16.14 Ω per 1000 ft), not the rounded diameters (16.20).
 * @throws {@link InputError} when a size or the temperature is outside its range, or the metal is not in the table.
 * @example conductorOhmsPerMeter({ gaugeAwg: 22 }); // 0.05296…
 * @example conductorOhmsPerMeter({ strands: 7, strandDiameterMm: 0.2, tinned: true, temperatureCelsius: 35 });
 * @see ASTM B258 (diameter), ASTM B496 (lay), ASTM B33 (tinned), reference-data/conductors.json
 */
export function conductorOhmsPerMeter(conductor: WarmConductor): number {
  const { areaMm2, strands, strandDiameterMm, metal } = conductorSize(conductor);
  const facts = metalFacts(metal, strandDiameterMm);
  const at20 = (IACS_OHM_MM2_PER_METER * 100) / facts.percentIacs / areaMm2;
  const lay = strands > 1 ? LAY_FACTOR : 1;
  return at20 * lay * temperatureFactor(facts.alpha20PerCelsius, conductor.temperatureCelsius ?? 20);
}

/**
 * Resistance at a temperature divided by resistance at 20 °C.
 * @param alpha20PerCelsius Temperature coefficient referred to 20 °C. [1/°C]
 * @param temperatureCelsius −40 to 90. [°C]
 * @throws {@link InputError} when the temperature is outside its range.
 * @example temperatureFactor(0.00393, 75); // 1.21615
 * @see NBS Handbook 100 section 1
 */
export function temperatureFactor(alpha20PerCelsius: number, temperatureCelsius: number): number {
  requireBetween({ field: "temperatureCelsius", value: temperatureCelsius, unit: "°C", from: -40, to: 90 });
  return 1 + alpha20PerCelsius * (temperatureCelsius - 20);
}

/** The table row of a metal; tinned copper is graded by strand diameter. */
export function metalFacts(metal: ConductorMetal, strandDiameterMm: number): ConductorsRow {
  const rows = conductors.filter((row) => row.metal === metal);
  const fits = rows.find(
    (row) => strandDiameterMm > (row.overDiameterMm ?? 0) && strandDiameterMm <= (row.toDiameterMm ?? Infinity),
  );
  if (fits !== undefined) return fits;
  const known = [...new Set(conductors.map((row) => row.metal))].join(", ");
  const expected = rows.length === 0 ? known : "strands 0.0762 to 7.366 mm thick for tinned copper";
  throw new InputError({ field: "metal", got: `${metal}, strands of ${strandDiameterMm.toFixed(4)} mm`, expected });
}
