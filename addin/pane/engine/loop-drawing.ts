import {
  formatLength,
  formatOhms,
  formatPercentOnPaper,
  type LoopPicture,
  loopSchematic,
  type SurveyLoop,
} from "../../loopwright-job.js";
import type { Estimate, EstimatedLoop } from "../../loopwright-pane.js";
import type { LoopDrawing } from "./engine-state.js";
import type { Jobs } from "./jobs.js";

type Fault = NonNullable<LoopPicture["faults"]>[number];

/** How a condition is flagged on the drawing. Conditions that are no fault of the wiring are absent. */
const faultKinds: Readonly<Partial<Record<EstimatedLoop["condition"], Fault["kind"]>>> = {
  open: "open",
  highResistance: "resistance",
  shorted: "short",
  leakage: "leak",
  earthFault: "earth",
  foreignVoltage: "foreignVoltage",
  crossed: "otherPair",
  bypassed: "bypass",
  unexplained: "other",
};

/** Less probable conditions are not drawn: the findings name them in words. */
const leastProbability = 0.1;

/** The loop as it was surveyed, with the faults that the readings allow. Nothing is drawn for a loop that is left alone. */
export function loopDrawing({ estimate, survey, key, unit }: Parameters<Jobs["drawing"]>[0]): LoopDrawing | null {
  const loop = estimate.loops.find((one) => one.key === key);
  const typed = survey.loops.find((one) => one.key === key);
  if (loop === undefined || typed === undefined) return null;
  if (loop.treatment === "excluded" || loop.recommended === "excluded") return null;
  const svg = loopSchematic(pictureOf({ estimate, loop, typed, unit }));
  const size = /<svg[^>]*?\bwidth="([\d.]+)"[^>]*?\bheight="([\d.]+)"/.exec(svg);
  return {
    svg,
    alt: `${loop.panel} loop ${loop.loop} as surveyed: ${typed.openings.count} openings, ${eolWords(typed)}.`,
    widthPixels: Number(size?.[1] ?? 760),
    heightPixels: Number(size?.[2] ?? 300),
  };
}

function pictureOf(given: {
  readonly estimate: Estimate;
  readonly loop: EstimatedLoop;
  readonly typed: SurveyLoop;
  readonly unit: "m" | "ft";
}): LoopPicture {
  const { loop, typed, unit } = given;
  const form = typed.contactForm === "NO" ? "NO" : "NC";
  const run = typed.run === undefined ? "length not written" : formatLength({ meters: typed.run.meters, unit });
  return {
    title: `${loop.panel} loop ${loop.loop}${loop.tag === null ? "" : ` ${loop.tag}`}, as surveyed`,
    panel: loop.panel,
    cable: `${typed.cable?.words ?? "size not written"}, ${run}`,
    openings: Array.from({ length: Math.max(1, typed.openings.count) }, (_, index) => ({
      label: `opening ${index + 1}`,
      form,
    })),
    eol: eolOf(typed, loop),
    faults: faultsOf(loop),
    notes: [`In wiring order, 1 nearest the panel${typed.openings.assumed ? "; their number is assumed" : ""}.`],
  };
}

function faultsOf(loop: EstimatedLoop): readonly Fault[] {
  return loop.findings.flatMap(({ condition, probability, words }): Fault[] => {
    const kind = faultKinds[condition];
    if (kind === undefined || probability < leastProbability) return [];
    return [{ kind, before: null, label: `${words} (${formatPercentOnPaper(probability)})` }];
  });
}

/** Where the end-of-line resistor was seen; else what the most probable condition says. */
function eolOf(typed: SurveyLoop, { condition }: EstimatedLoop): LoopPicture["eol"] {
  const label = typed.eolOhms === undefined ? "value not written" : formatOhms(typed.eolOhms);
  if (typed.eolPlace === "none") return null;
  if (typed.eolPlace === "device") return { at: "farEnd", label };
  if (typed.eolPlace === "panel") {
    const inSeries = typed.resistorAtPanel === "inSeries";
    return {
      at: inSeries ? "panelInSeries" : typed.resistorAtPanel === "acrossTerminals" ? "panelAcross" : "unknown",
      label,
    };
  }
  if (condition === "soundEolAtEnd" || condition === "wrongEol") return { at: "farEnd", label };
  return condition === "eolInPanel" || condition === "doubleEol" ? { at: "unknown", label } : null;
}

function eolWords({ eolPlace, eolOhms }: SurveyLoop): string {
  const value = eolOhms === undefined ? "a resistor" : formatOhms(eolOhms);
  if (eolPlace === "device") return `${value} at the far end`;
  if (eolPlace === "panel") return `${value} at the panel`;
  return eolPlace === "none" ? "no end-of-line resistor" : "end-of-line resistor not known";
}
