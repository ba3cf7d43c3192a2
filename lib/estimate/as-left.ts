import type { PlannedLoop } from "../plan/planned-loop.js";
import { type ExpectedOhms, expectedLoopOhms } from "../readings/expected-loop-ohms.js";
import type { SurveyLoop } from "../survey/survey.js";
import { holdsPoweredDetector } from "../treatments/loop-devices.js";

/** Tolerance of a new end-of-line resistor from the price book. [%] */
const newEolPercent = 1;

/**
 * The band the loop should read in when the work is done, at the module's end of the pair: shut, all its resistors
 * counted. null when the run is unknown and there is no resistor to dominate it. [Ω]
 */
export function expectedShutOhms({
  loop,
  eol,
}: {
  readonly loop: SurveyLoop;
  readonly eol: PlannedLoop["eol"];
}): ExpectedOhms {
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
  return expectedLoopOhms({
    ...(conductor === undefined ? {} : { conductor }),
    ...(run === undefined ? {} : { runMeters: { low: run.lowMeters, likely: run.meters, high: run.highMeters } }),
    openings: Math.max(1, loop.openings.count),
    ...(eol === null
      ? {}
      : { eol: { ohms: eol.ohms, aged: !eol.isNew, ...(eol.isNew ? { tolerancePercent: newEolPercent } : {}) } }),
    ...(holdsPoweredDetector(loop) ? { contact: "detectorOutput" as const } : {}),
  });
}
