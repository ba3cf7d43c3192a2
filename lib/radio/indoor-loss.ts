import { InputError } from "../problems/input-error.js";
import { requireBetween } from "../problems/require-between.js";
import { ituP1238, ituP1238Sources } from "../reference/generated/itu-p1238.js";
import { ituP1238SiteGeneral } from "../reference/generated/itu-p1238-site-general.js";
import { onlyRow } from "../reference/rows.js";

/** Kind of building in the recommendation's tables. */
export type Building = "residential" | "office" | "commercial";

/** A path inside a building. */
export interface IndoorPath {
  /** 800 to 2500. [MHz] */
  readonly megahertz: number;
  /** 1 to 1000. [m] */
  readonly meters: number;
  /** Floors between the two ends; absent = 0. */
  readonly floors?: number;
  readonly building: Building;
}

/** Loss of an indoor path with what had to be borrowed for it. */
export interface IndoorLoss {
  readonly lossDb: number;
  readonly powerLossCoefficient: number;
  readonly floorLossDb: number;
  /** In words, what the table does not hold for this building and frequency and was taken from another row. */
  readonly borrowed: readonly string[];
  readonly source: string;
}

/** Frequencies each row is used for; the table gives single values or narrow spans. [MHz] */
const BANDS = [
  { row: 900, from: 800, to: 1000 },
  { row: 1200, from: 1000, to: 1500 },
  { row: 1800, from: 1500, to: 2200 },
  { row: 2400, from: 2200, to: 2500 },
];

/**
 * Site-general indoor loss: L = 20·log10(f/MHz) + N·log10(d/m) + Lf(n) − 28. [dB]
 * N includes ordinary inner walls. The table has no residential coefficient around 900 MHz: the office value is then
 * borrowed and said so.
 * @throws {@link InputError} when a field is outside its range or the floors are more than the table holds.
 * @example indoorLoss({ megahertz: 900, meters: 10, building: "office" }).lossDb; // 64.08
 * @see ITU-R P.1238-8
 */
export function indoorLoss(path: IndoorPath): IndoorLoss {
  const { megahertz, meters, building, floors = 0 } = path;
  requireBetween({ field: "megahertz", value: megahertz, unit: "MHz", from: 800, to: 2500 });
  requireBetween({ field: "meters", value: meters, unit: "m", from: 1, to: 1000 });
  requireBetween({ field: "floors", value: floors, unit: "", from: 0, to: 20, whole: true });
  const band = BANDS.find((one) => megahertz >= one.from && megahertz <= one.to)?.row ?? 900;
  const rows = ituP1238.filter((row) => row.lowMegahertz === band);
  const office = rows.find((row) => row.building === "office");
  const own = rows.find((row) => row.building === building) ?? office;
  if (own === undefined) throw new Error("itu-p1238: no office row");
  const borrowed: string[] = [];
  if (own.building !== building) borrowed.push(`no ${building} coefficient around ${band} MHz: the office value`);
  const floorList = own.floorLossDb ?? office?.floorLossDb;
  if (floors > 0 && own.floorLossDb === undefined) borrowed.push(`no ${building} floor loss: the office value`);
  const floorLossDb = floors === 0 ? 0 : floorList?.[floors - 1];
  if (floorLossDb === undefined) {
    throw new InputError({ field: "floors", got: String(floors), expected: `0 to ${floorList?.length ?? 0}` });
  }
  const lossDb = 20 * Math.log10(megahertz) + own.powerLossCoefficient * Math.log10(meters) + floorLossDb - 28;
  const source = ituP1238Sources[own.source] ?? "";
  return { lossDb, powerLossCoefficient: own.powerLossCoefficient, floorLossDb, borrowed, source };
}

/** Median loss of paths on one floor with how far single places scatter. */
export interface MedianLoss {
  readonly medianDb: number;
  readonly sigmaDb: number;
  /** Frequency and distance lie within what the row holds for. */
  readonly withinRange: boolean;
}

/**
 * Median loss within one floor: 10α·log10(d/m) + β + 10γ·log10(f/GHz). [dB]
 * @throws {@link InputError} when the frequency or distance is not over 0.
 * @example medianIndoorLoss({ environment: "office", sight: "blocked", gigahertz: 0.868, meters: 10 }).medianDb; // 52.67
 * @see ITU-R P.1238-11 table 2
 */
export function medianIndoorLoss(path: {
  readonly environment: "office" | "corridor" | "industrial";
  readonly sight: "clear" | "blocked";
  readonly gigahertz: number;
  readonly meters: number;
}): MedianLoss {
  const gigahertz = requireBetween({ field: "gigahertz", value: path.gigahertz, unit: "GHz", from: 0.1, to: 100 });
  const meters = requireBetween({ field: "meters", value: path.meters, unit: "m", from: 0.1, to: 10_000 });
  const row = onlyRow(
    "itu-p1238-site-general",
    ituP1238SiteGeneral,
    (one) => one.environment === path.environment && one.sight === path.sight,
  );
  const medianDb = 10 * row.alpha * Math.log10(meters) + row.betaDb + 10 * row.gamma * Math.log10(gigahertz);
  const withinRange =
    gigahertz >= row.lowGigahertz &&
    gigahertz <= row.highGigahertz &&
    meters >= row.lowMeters &&
    meters <= row.highMeters;
  return { medianDb, sigmaDb: row.sigmaDb, withinRange };
}
