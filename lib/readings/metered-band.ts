import type { OhmMeter } from "../reference/meter.js";
import type { OhmsBand } from "./expected-loop-ohms.js";
import { meterBoundOhms } from "./meter-bound.js";

/**
 * Band a display may show for a loop whose true resistance lies in `band`: widened at each end by what the meter may
 * be off there. Never below 0. [Ω]
 * @throws {@link InputError} when the band or the meter is outside its range.
 * @example meteredBand({ band: { lowOhms: 2100, likelyOhms: 2200, highOhms: 2300 } }).lowOhms; // 2078.2
 */
export function meteredBand(task: { readonly band: OhmsBand; readonly meter?: Partial<OhmMeter> }): OhmsBand {
  const { band, meter = {} } = task;
  return {
    lowOhms: Math.max(0, band.lowOhms - meterBoundOhms({ ohms: band.lowOhms, meter }).boundOhms),
    likelyOhms: band.likelyOhms,
    highOhms: band.highOhms + meterBoundOhms({ ohms: band.highOhms, meter }).boundOhms,
  };
}
