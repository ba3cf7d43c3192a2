/// <reference lib="dom" />
import { associateCommands, type CommandName } from "../../commands/ribbon.js";
import { registerFunctions } from "../../functions/register.js";
import { today } from "../../loopwright-pane.js";
import { currentExcel } from "../../sheet/connection.js";
import { createEngine } from "./create-engine.js";
import { demoFiles } from "./demo-files.js";
import { drawInPage } from "./draw-in-page.js";
import type { Engine } from "./engine-state.js";
import { jobsInWorker } from "./jobs-in-worker.js";
import { findHost } from "./office.js";
import { solveInWorker } from "./solve-in-worker.js";
import type { WorkbookLink } from "./workbook-link.js";

/** The engine of this page: by itself in a browser; in Excel tied to the workbook, the functions and the ribbon. */
export async function startEngine(): Promise<Engine> {
  const host = await findHost();
  const imperial = /^en-(US|LR)\b|^my\b/i.test(navigator.language);
  const engine = createEngine({
    host,
    jobs: jobsInWorker({ draw: drawInPage }),
    demoFiles,
    today,
    units: imperial ? "imperial" : "metric",
    paper: /^(en-(US|CA)|es-MX|fr-CA)\b/i.test(navigator.language) ? "Letter" : "A4",
    ...(host === "excel" ? { workbook: linkLater() } : {}),
  });
  if (host === "excel") {
    registerFunctions();
    tieRibbon(engine);
  }
  return engine;
}

/** The link to Excel's workbook; its code is loaded when first wanted. */
function linkLater(): WorkbookLink {
  let link: Promise<WorkbookLink> | undefined;
  const loaded = () => {
    link ??= Promise.all([import("./excel-workbook.js"), import("../../sheet/render-picture.js")]).then(
      ([{ excelWorkbook }, { renderPictureInPage }]) =>
        excelWorkbook({ connection: currentExcel(), renderPicture: renderPictureInPage, today }),
    );
    return link;
  };
  return {
    read: async () => (await loaded()).read(),
    setUp: async (input) => (await loaded()).setUp(input),
    write: async (input) => (await loaded()).write(input),
    show: async (place) => (await loaded()).show(place),
  };
}

/** The ribbon's buttons do their work through the same code and show in the pane how it goes. */
function tieRibbon(engine: Engine): void {
  const works = import("../../commands/works.js").then(({ commandWorks }) =>
    commandWorks({ today, loadSolve: () => Promise.resolve(solveInWorker()) }),
  );
  const work =
    (name: CommandName): Parameters<typeof associateCommands>[0][CommandName] =>
    async (...from) =>
      (await works)[name](...from);
  associateCommands(
    {
      setUpSurvey: work("setUpSurvey"),
      workOutEstimate: work("workOutEstimate"),
      rebuildSheets: work("rebuildSheets"),
    },
    {
      onProgress: ({ words, done, total }) => {
        engine.tell({
          progress: { activity: "writing", words, share: total > 0 ? done / total : null },
          problem: null,
        });
      },
      onDone: () => {
        engine.tell({ progress: null });
        void engine.readFromWorkbook();
      },
      onProblem: (_, words) => engine.tell({ progress: null, problem: { activity: "writing", words } }),
    },
  );
}
