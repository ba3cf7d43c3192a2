import type { LoopJudgement } from "../findings/loop-record.js";
import type { SurveyLoop } from "../survey/survey.js";
import type { TerminatedLoop } from "../termination/loop-range.js";
import { holdsPoweredDetector } from "./loop-devices.js";

/** What is assumed of a loop where the survey is silent; common practice, no source. */
export const assumedLoop = {
  gaugeAwg: 22,
  /** One-way run where nobody wrote one. [m] */
  runMeters: { low: 8, high: 60 },
  /** One shut contact. [Ω] */
  contactOhms: { low: 0.1, high: 2 },
  /** Output of a powered detector at rest. [Ω] */
  detectorOhms: { low: 5, high: 50 },
  oldEol: { toleranceFraction: 0.05, ppmPerKelvin: 350 },
  newEol: { toleranceFraction: 0.01, ppmPerKelvin: 100 },
} as const;

/** The end-of-line resistor a loop will have, and where. */
export interface PlannedEol {
  readonly ohms: number;
  readonly at: "device" | "panel";
  readonly isNew: boolean;
}

/** A surveyed loop as an input would see it with this EOL, over its tolerances. */
export function terminatedLoop({
  loop,
  judgement,
  eol,
}: {
  readonly loop: SurveyLoop;
  readonly judgement: LoopJudgement;
  readonly eol: PlannedEol | null;
}): TerminatedLoop {
  const { cable, run } = loop;
  const size =
    cable?.areaMm2 !== undefined ? { areaMm2: cable.areaMm2 } : { gaugeAwg: cable?.gaugeAwg ?? assumedLoop.gaugeAwg };
  const metal = cable?.metal === undefined ? {} : { metal: cable.metal };
  const measured = judgement.run?.measured === true ? judgement.run : run;
  const runMeters = measured ? { low: measured.lowMeters, high: measured.highMeters } : assumedLoop.runMeters;
  const part = eol?.isNew === true ? assumedLoop.newEol : assumedLoop.oldEol;
  return {
    cable: { conductor: { ...size, ...metal }, runMeters },
    contacts: { count: Math.max(1, loop.openings.count), ohms: assumedLoop.contactOhms },
    ...(holdsPoweredDetector(loop) ? { extraOhms: assumedLoop.detectorOhms } : {}),
    eol: eol === null ? null : { ohms: eol.ohms, ...part, at: eol.at },
  };
}
