import { InputError } from "../problems/input-error.js";
import { requireBetween } from "../problems/require-between.js";
import { ituP2040 } from "../reference/generated/itu-p2040.js";

/** A material's electrical properties at one frequency and what a wave loses in it. */
export interface MaterialAtFrequency {
  /** Relative permittivity. [1] */
  readonly permittivity: number;
  /** [S/m] */
  readonly siemensPerMeter: number;
  /** Loss inside the material, low-loss form 1636·σ/√ε. [dB/m] */
  readonly decibelsPerMeter: number;
}

/**
 * Properties of a building material: ε = a·f^b, σ = c·f^d with f in GHz, loss 1636·σ/√ε. [1, S/m, dB/m]
 * Steel is not among them: a steel door or foil-backed board is measured, not reckoned.
 * @throws {@link InputError} when the material is not in the table or the frequency is not 0.3 to 10 GHz.
 * @example materialAt({ material: "concrete", gigahertz: 0.868 }).decibelsPerMeter; // 20.64
 * @see ITU-R P.2040-1 table 3
 */
export function materialAt(asked: { readonly material: string; readonly gigahertz: number }): MaterialAtFrequency {
  const gigahertz = requireBetween({ field: "gigahertz", value: asked.gigahertz, unit: "GHz", from: 0.3, to: 10 });
  const row = ituP2040.find((one) => one.material === asked.material);
  if (row === undefined) {
    const expected = `one of ${ituP2040.map((one) => one.material).join(", ")}`;
    throw new InputError({ field: "material", got: asked.material, expected });
  }
  const permittivity = row.a * gigahertz ** row.b;
  const siemensPerMeter = row.c * gigahertz ** row.d;
  return { permittivity, siemensPerMeter, decibelsPerMeter: (1636 * siemensPerMeter) / Math.sqrt(permittivity) };
}

/**
 * Loss inside one wall, reflections at its faces left out. [dB]
 * @throws {@link InputError} when the thickness is not 0 to 3 m or the material is not in the table.
 * @example wallLossDb({ material: "brick", gigahertz: 0.868, thicknessMeters: 0.115 }); // 3.69
 */
export function wallLossDb(wall: {
  readonly material: string;
  readonly gigahertz: number;
  readonly thicknessMeters: number;
}): number {
  requireBetween({ field: "thicknessMeters", value: wall.thicknessMeters, unit: "m", from: 0, to: 3 });
  return materialAt(wall).decibelsPerMeter * wall.thicknessMeters;
}
