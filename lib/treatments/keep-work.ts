import type { LoopJudgement } from "../findings/loop-record.js";
import type { PriceBook } from "../price-book/article.js";
import { articlesOfClass } from "../price-book/look-up.js";
import type { InputModuleProfile, SurveyLoop } from "../survey/survey.js";
import { fitsInput, type InputFit } from "../termination/fits-input.js";
import { windowFromBand } from "../termination/input-window.js";
import { holdsPoweredDetector } from "./loop-devices.js";
import { type PlannedEol, terminatedLoop } from "./terminated-loop.js";
import { type ModuleSetting, noWork, type Work } from "./treatment.js";

/** How a loop ends when it carries the resistor of an input at this setting. */
export interface Ending {
  readonly treatment: "keep" | "fitEol" | "changeEol";
  readonly eol: PlannedEol;
  readonly setEol: Work;
  readonly removeEol: Work;
  readonly fit: InputFit;
}

/**
 * How the loop would end at a module setting: its own resistor stays where it fits the band over temperature and
 * tolerance, otherwise a new one goes in past the last contact. undefined when not even a new resistor fits (too much
 * conductor, too low a leak) or the price book sells none of that value.
 */
export function endingAt({
  loop,
  judgement,
  profile,
  setting,
  book,
}: {
  readonly loop: SurveyLoop;
  readonly judgement: LoopJudgement;
  readonly profile: InputModuleProfile;
  readonly setting: ModuleSetting;
  readonly book: PriceBook;
}): Ending | undefined {
  const input = windowFromBand({ ...profile, eolOhms: setting.eolOhms });
  const fitOf = (eol: PlannedEol): InputFit => fitsInput({ loop: terminatedLoop({ loop, judgement, eol }), input });
  const hasOwn = judgement.eol !== null;
  const remove = hasOwn ? { tasks: [{ task: "eolAtFarEnd", count: 1 }], parts: [] } : noWork;
  if (judgement.eol && judgement.action !== "changeEol") {
    const own: PlannedEol = { ohms: judgement.eol.nominal, at: "device", isNew: false };
    const fit = fitOf(own);
    if (fit.fits) return { treatment: "keep", eol: own, setEol: noWork, removeEol: remove, fit };
  }
  const resistor = articlesOfClass({ book, class: "eolResistor" }).find(({ eolOhms }) => eolOhms === setting.eolOhms);
  const fresh: PlannedEol = { ohms: setting.eolOhms, at: "device", isNew: true };
  const fit = fitOf(fresh);
  if (!resistor || !fit.fits) return undefined;
  const inDetector = holdsPoweredDetector(loop);
  const splice = articlesOfClass({ book, class: "gelSplice" })[0];
  const task = judgement.condition === "doubleEol" ? "restrapDoubleEol" : inDetector ? "detectorLinks" : "eolAtFarEnd";
  return {
    treatment: hasOwn ? "changeEol" : "fitEol",
    eol: fresh,
    setEol: {
      tasks: [{ task, count: 1 }],
      parts: [
        { code: resistor.code, quantity: 1, rule: "one at the far end" },
        ...(splice && !inDetector ? [{ code: splice.code, quantity: 2, rule: "2 for each EOL" }] : []),
      ],
    },
    removeEol: remove,
    fit,
  };
}

/** What keeping takes whatever stands at the far end: verify, land and label, commission, walk-test each opening. */
export function landingWork({ loop, extension }: { readonly loop: SurveyLoop; readonly extension: Work }): Work {
  const untagged = (loop.label ?? "").trim() === "" && (loop.protects ?? "").trim() === "";
  return {
    tasks: [
      { task: "verifyLoop", count: 1 },
      ...(untagged ? [{ task: "traceUntaggedPair", count: 1 }] : []),
      { task: "landLabelConfigure", count: 1 },
      { task: "commissionZone", count: 1 },
      { task: "walkTestOpening", count: loop.openings.count },
      ...extension.tasks,
    ],
    parts: extension.parts,
  };
}
