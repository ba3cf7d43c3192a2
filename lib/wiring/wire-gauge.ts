import { requireBetween } from "../problems/require-between.js";

/** Gauges the diameter series is used for: 4/0 is −3. [AWG] */
const THICKEST_AWG = -3;
const THINNEST_AWG = 56;

/**
 * Diameter of a bare wire by its gauge number: 0.127 mm · 92^((36 − gauge)/39), not rounded. [mm]
 * Gauge −3 (4/0) to 56, fractions allowed. Tables that round the diameter first differ by up to 0.4 %.
 * @throws {@link InputError} when the gauge is outside its range.
 * @example awgDiameterMm(22); // 0.643803…
 * @see ASTM B258, geometric series; NBS Handbook 100 section 2.1
 */
export function awgDiameterMm(gaugeAwg: number): number {
  requireBetween({ field: "gaugeAwg", value: gaugeAwg, unit: "AWG", from: THICKEST_AWG, to: THINNEST_AWG });
  return 0.127 * 92 ** ((36 - gaugeAwg) / 39);
}

/**
 * Cross-section of a bare wire by its gauge number. [mm²]
 * @throws {@link InputError} when the gauge is outside −3 to 56.
 * @example awgAreaMm2(22); // 0.325534…
 * @see ASTM B258
 */
export function awgAreaMm2(gaugeAwg: number): number {
  return circleMm2(awgDiameterMm(gaugeAwg));
}

/** Area of a circle. [mm²] */
export function circleMm2(diameterMm: number): number {
  return (Math.PI / 4) * diameterMm ** 2;
}

/** The whole gauge number that lies nearest a metric cross-section. */
export interface NearestAwg {
  readonly gaugeAwg: number;
  /** Cross-section of that gauge. [mm²] */
  readonly gaugeAreaMm2: number;
  /** Cross-section asked for, divided by that of the gauge. */
  readonly areaRatio: number;
}

/**
 * Nearest whole gauge to a cross-section, nearest by ratio: the gauge scale is geometric.
 * @param areaMm2 0.00012 to 107.3 mm² (56 AWG to 4/0). [mm²]
 * @throws {@link InputError} when the area is outside its range.
 * @example nearestAwg(0.22).gaugeAwg; // 24
 * @see ASTM B258
 */
export function nearestAwg(areaMm2: number): NearestAwg {
  requireBetween({ field: "areaMm2", value: areaMm2, unit: "mm²", from: 0.00012, to: 107.3 });
  const diameterMm = Math.sqrt((4 * areaMm2) / Math.PI);
  const exact = 36 - 39 * (Math.log(diameterMm / 0.127) / Math.log(92));
  const gaugeAwg = Math.min(THINNEST_AWG, Math.max(THICKEST_AWG, Math.round(exact)));
  const gaugeAreaMm2 = awgAreaMm2(gaugeAwg);
  return { gaugeAwg, gaugeAreaMm2, areaRatio: areaMm2 / gaugeAreaMm2 };
}
