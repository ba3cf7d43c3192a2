import { InputError } from "../problems/input-error.js";
import { requireBetween } from "../problems/require-between.js";
import { awgAreaMm2, circleMm2 } from "./wire-gauge.js";

/** Metals the reference table holds. */
export type ConductorMetal = "copper" | "tinnedCopper" | "copperCladAluminium" | "aluminium" | "copperCladSteel";

/** What one conductor is. Its size comes from exactly one of gauge, area or strand diameter. */
export interface Conductor {
  /** Whole gauge number, 10 to 30. [AWG] */
  readonly gaugeAwg?: number;
  /** Cross-section of the metal, 0.05 to 6. [mm²] */
  readonly areaMm2?: number;
  /** Diameter of one bare strand, 0.08 to 2.8; the area is then that of all strands. [mm] */
  readonly strandDiameterMm?: number;
  /** Single wires in the conductor; absent or 1 = solid. [count] */
  readonly strands?: number;
  /** Absent = copper. */
  readonly metal?: ConductorMetal;
  /** Copper with a tin coat; the same as metal "tinnedCopper". */
  readonly tinned?: boolean;
}

/** A conductor with every size worked out. */
export interface ConductorSize {
  /** Metal cross-section over all strands. [mm²] */
  readonly areaMm2: number;
  readonly strands: number;
  readonly strandDiameterMm: number;
  readonly metal: ConductorMetal;
}

/**
 * Size of a conductor, worked out from whichever of gauge, area or strand diameter was given.
 * @throws {@link InputError} when none or more than one was given, or one is outside its range.
 * @example conductorSize({ strands: 7, strandDiameterMm: 0.2 }).areaMm2; // 0.2199…
 */
export function conductorSize(conductor: Conductor): ConductorSize {
  const strands = requireBetween({
    field: "strands",
    value: conductor.strands ?? 1,
    unit: "",
    from: 1,
    to: 1000,
    whole: true,
  });
  const areaMm2 = totalAreaMm2(conductor, strands);
  return {
    areaMm2,
    strands,
    strandDiameterMm: Math.sqrt((4 * areaMm2) / strands / Math.PI),
    metal: metalOf(conductor),
  };
}

function totalAreaMm2({ gaugeAwg, areaMm2, strandDiameterMm }: Conductor, strands: number): number {
  const given = Object.entries({ gaugeAwg, areaMm2, strandDiameterMm }).filter(([, value]) => value !== undefined);
  if (given.length !== 1) {
    const got = given.length === 0 ? "none of them" : given.map(([name]) => name).join(" and ");
    throw new InputError({ field: "conductor", got, expected: "one of gaugeAwg, areaMm2, strandDiameterMm" });
  }
  if (gaugeAwg !== undefined) {
    return awgAreaMm2(
      requireBetween({ field: "gaugeAwg", value: gaugeAwg, unit: "AWG", from: 10, to: 30, whole: true }),
    );
  }
  if (areaMm2 !== undefined) {
    return requireBetween({ field: "areaMm2", value: areaMm2, unit: "mm²", from: 0.05, to: 6 });
  }
  const diameterMm = requireBetween({
    field: "strandDiameterMm",
    value: strandDiameterMm ?? Number.NaN,
    unit: "mm",
    from: 0.08,
    to: 2.8,
  });
  return strands * circleMm2(diameterMm);
}

function metalOf({ metal, tinned }: Conductor): ConductorMetal {
  if (tinned !== true) return metal ?? "copper";
  if (metal === undefined || metal === "copper" || metal === "tinnedCopper") return "tinnedCopper";
  throw new InputError({ field: "tinned", got: `true with metal ${metal}`, expected: "tinned with copper only" });
}
