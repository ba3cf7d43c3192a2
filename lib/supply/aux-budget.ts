import { requireBetween } from "../problems/require-between.js";

/** One kind of load on an auxiliary output. */
export interface AuxLoad {
  readonly name: string;
  /** Each. [mA] */
  readonly milliamps: number;
  readonly count: number;
}

/** What an auxiliary output carries and has left. */
export interface AuxBudget {
  readonly ratedMilliamps: number;
  readonly totalMilliamps: number;
  /** Negative when overloaded. [mA] */
  readonly leftMilliamps: number;
  readonly overloaded: boolean;
  readonly loads: readonly (AuxLoad & { readonly totalMilliamps: number })[];
  readonly words: string;
}

/**
 * Load of an auxiliary output: kept detectors, modules and whatever else hangs on it, against its rating. [mA]
 * @throws {@link InputError} when a load or the rating is negative or a count is not whole.
 * @example auxBudget({ ratedMilliamps: 500, loads: [{ name: "module", milliamps: 60, count: 4 }] }).leftMilliamps; // 260
 */
export function auxBudget(asked: { readonly ratedMilliamps: number; readonly loads: readonly AuxLoad[] }): AuxBudget {
  const { ratedMilliamps } = asked;
  requireBetween({ field: "ratedMilliamps", value: ratedMilliamps, unit: "mA", from: 0, to: 1e6 });
  const loads = asked.loads.map((load) => {
    requireBetween({ field: `${load.name}.milliamps`, value: load.milliamps, unit: "mA", from: 0, to: 1e6 });
    requireBetween({ field: `${load.name}.count`, value: load.count, unit: "", from: 0, to: 1e4, whole: true });
    return { ...load, totalMilliamps: load.milliamps * load.count };
  });
  const totalMilliamps = loads.reduce((sum, load) => sum + load.totalMilliamps, 0);
  const leftMilliamps = ratedMilliamps - totalMilliamps;
  const overloaded = leftMilliamps < 0;
  const words = overloaded
    ? `${totalMilliamps} mA asked of an output of ${ratedMilliamps} mA: ${-leftMilliamps} mA too much`
    : `${totalMilliamps} of ${ratedMilliamps} mA used, ${leftMilliamps} mA left`;
  return { ratedMilliamps, totalMilliamps, leftMilliamps, overloaded, loads, words };
}
