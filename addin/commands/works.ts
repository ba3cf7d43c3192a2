import type { Solve } from "../loopwright.js";
import type { CommandName } from "./ribbon.js";
import { setUpSurvey } from "./set-up-survey.js";
import type { EstimateInWorkbook } from "./work-out-estimate.js";

/** What each command does in the page; the estimate's parts are loaded when first wanted. */
export function commandWorks(given: {
  /** The day on this machine's clock, YYYY-MM-DD. */
  readonly today: () => string;
  /** The exact solver, loaded when first wanted. */
  readonly loadSolve?: () => Promise<Solve>;
}): Readonly<Record<CommandName, (...from: Parameters<typeof estimateFrom>) => Promise<unknown>>> {
  const input = async (...[connection, onProgress]: Parameters<typeof estimateFrom>): Promise<EstimateInWorkbook> => {
    const { renderPictureInPage } = await import("../sheet/render-picture.js");
    const solve = await given.loadSolve?.();
    return {
      ...estimateFrom(connection, onProgress),
      date: given.today(),
      renderPicture: renderPictureInPage,
      ...(solve === undefined ? {} : { solve }),
    };
  };
  return {
    setUpSurvey: (connection, onProgress) => setUpSurvey({ connection, onProgress, date: given.today() }),
    workOutEstimate: async (...from) => (await import("./work-out-estimate.js")).workOutEstimate(await input(...from)),
    rebuildSheets: async (...from) => (await import("./work-out-estimate.js")).rebuildSheets(await input(...from)),
  };
}

const estimateFrom = (
  connection: EstimateInWorkbook["connection"],
  onProgress: NonNullable<EstimateInWorkbook["onProgress"]>,
) => ({ connection, onProgress });
