import type { PlannedLoop } from "../plan/planned-loop.js";
import { expectedLoopOhms, type OhmsBand } from "../readings/expected-loop-ohms.js";
import { partOhms } from "../reference/loop-part.js";
import type { SurveyLoop } from "../survey/survey.js";
import { isContact } from "../treatments/loop-devices.js";

/** Tolerance of a new end-of-line resistor from the price book. [%] */
const newEolPercent = 1;

/**
 * The band the loop should read in when the work is done, at the module's end of the pair: shut, all its resistors
 * counted; the output of each powered detector in the loop adds its own ohms. [Ω]
 */
export function expectedShutOhms({
  loop,
  eol,
  detectorsIn = true,
}: {
  readonly loop: SurveyLoop;
  readonly eol: PlannedLoop["eol"];
  /** False once a split has taken the powered detector out of the loop. */
  readonly detectorsIn?: boolean;
}): OhmsBand & { readonly assumptions: readonly string[] } {
  const { cable, run } = loop;
  const size =
    cable?.areaMm2 !== undefined
      ? { areaMm2: cable.areaMm2 }
      : cable?.gaugeAwg !== undefined
        ? { gaugeAwg: cable.gaugeAwg }
        : undefined;
  const conductor = size && {
    ...size,
    ...(cable?.metal === undefined ? {} : { metal: cable.metal }),
    ...(cable?.strands === undefined ? {} : { strands: cable.strands }),
  };
  const detectors = loop.devices.filter((device) => device.powered && !isContact(device));
  const outputs = detectorsIn ? detectors.reduce((sum, { count }) => sum + count, 0) : 0;
  const contacts = loop.devices.some(isContact) ? loop.openings.count : 0;
  const band = expectedLoopOhms({
    ...(conductor === undefined ? {} : { conductor }),
    ...(run === undefined ? {} : { runMeters: { low: run.lowMeters, likely: run.meters, high: run.highMeters } }),
    openings: outputs > 0 ? contacts : Math.max(1, loop.openings.count),
    ...(eol === null
      ? {}
      : { eol: { ohms: eol.ohms, aged: !eol.isNew, ...(eol.isNew ? { tolerancePercent: newEolPercent } : {}) } }),
  });
  const output = partOhms("detectorOutput");
  return {
    lowOhms: band.lowOhms + outputs * output.lowOhms,
    likelyOhms: band.likelyOhms + outputs * output.likelyOhms,
    highOhms: band.highOhms + outputs * output.highOhms,
    assumptions: band.assumptions,
  };
}
