/// <reference types="office-js" />
import { currentExcel, type ExcelConnection, type OnProgress } from "../sheet/connection.js";

/** Names by which the manifest calls the commands. */
export const commandNames = ["setUpSurvey", "workOutEstimate", "rebuildSheets"] as const;
export type CommandName = (typeof commandNames)[number];

/** Where a command says how it goes: the pane, when it is open. */
export interface CommandReport {
  readonly onProgress: OnProgress;
  readonly onDone: (command: CommandName) => void;
  readonly onProblem: (command: CommandName, words: string) => void;
}

type Work = (connection: ExcelConnection, onProgress: OnProgress) => Promise<unknown>;

/** Ties the ribbon's buttons to the commands. Called once Office is ready. */
export function associateCommands(works: Readonly<Record<CommandName, Work>>, report: CommandReport): void {
  for (const name of commandNames) {
    Office.actions.associate(name, ribbonCommand({ name, work: works[name], report, connect: currentExcel }));
  }
}

/** One ribbon command: the button is given back whatever happens. */
export function ribbonCommand(given: {
  readonly name: CommandName;
  readonly work: Work;
  readonly report: CommandReport;
  readonly connect: () => ExcelConnection;
}): (event: { completed(): void }) => Promise<void> {
  const { name, work, report, connect } = given;
  return async (event) => {
    try {
      await work(connect(), report.onProgress);
      report.onDone(name);
    } catch (error) {
      report.onProblem(name, error instanceof Error ? error.message : String(error));
    } finally {
      event.completed();
    }
  };
}
