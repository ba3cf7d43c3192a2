import type { OhmMeter } from "../reference/meter.js";
import { leadOhms } from "./lead-ohms.js";
import { meterBoundOhms } from "./meter-bound.js";
import { combinedUncertainty, standardUncertainty } from "./standard-uncertainty.js";

/** One displayed resistance and what it was read with. */
export interface ReadOhms {
  readonly ohms: number;
  /** Fields not given come from the common hand-held meter. */
  readonly meter?: Partial<OhmMeter>;
  readonly leadsZeroed: boolean;
  /** Shorted reading of the leads, where it was written down. [Ω] */
  readonly leadMeasuredOhms?: number;
}

/** The loop's resistance behind a reading, leads taken off, with its standard uncertainty. */
export interface LoopOhmsEstimate {
  /** Reading less what the leads usually add; never below 0. [Ω] */
  readonly ohms: number;
  readonly standardUncertaintyOhms: number;
}

/**
 * Resistance of the loop behind one reading: leads subtracted; accuracy bound/√3, half a count of rounding/√3 and the
 * spread of the leads combined. [Ω]
 * @throws {@link InputError} when the reading, the meter or the leads are outside their range.
 * @example loopOhmsFromReading({ ohms: 2200, leadsZeroed: true }).standardUncertaintyOhms; // 13.05…
 * @see JCGM 100:2008 4.3.7, 5.1.2, F.2.2.1
 */
export function loopOhmsFromReading({ ohms, meter = {}, leadsZeroed, leadMeasuredOhms }: ReadOhms): LoopOhmsEstimate {
  const { boundOhms, resolutionOhms } = meterBoundOhms({ ohms, meter });
  const leads = leadOhms({
    leadsZeroed,
    ...(leadMeasuredOhms === undefined ? {} : { measuredOhms: leadMeasuredOhms }),
  });
  const leadSpread = leads.standardDeviationOhms ?? (leads.highOhms - leads.lowOhms) / Math.sqrt(12);
  return {
    ohms: Math.max(0, ohms - leads.likelyOhms),
    standardUncertaintyOhms: combinedUncertainty([
      standardUncertainty({ shape: "rectangular", bound: boundOhms }),
      standardUncertainty({ shape: "rectangular", bound: resolutionOhms / 2 }),
      leadSpread,
    ]),
  };
}
