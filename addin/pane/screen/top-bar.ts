import { button, el } from "./elements.js";
import type { Shown } from "./shown.js";

/** Name, what is open, and the commands that are at hand everywhere. */
export function topBar({ state, act }: Shown): readonly HTMLElement[] {
  const { source, host, canUndo, canRedo, estimate, progress } = state;
  const busy = progress !== null;
  const commands = el(
    "div",
    { class: "commands", role: "group", "aria-label": "Commands" },
    host === "excel" &&
      button({ words: "Read the workbook", keep: "read workbook", disabled: busy, click: act.readWorkbook }),
    host === "browser" && button({ words: "Open files", keep: "open", disabled: busy, click: act.pickFiles }),
    button({
      words: "Undo",
      keep: "undo",
      disabled: !canUndo || busy,
      click: () => {
        act.engine.undo();
        act.say("One step back");
      },
    }),
    button({
      words: "Redo",
      keep: "redo",
      disabled: !canRedo || busy,
      click: () => {
        act.engine.redo();
        act.say("One step forward");
      },
    }),
    estimate !== null &&
      host === "excel" &&
      button({
        words: "Write into the workbook",
        keep: "write",
        kind: "main",
        disabled: busy,
        click: () => void act.engine.writeToWorkbook(),
      }),
    estimate !== null &&
      button({
        words: "Save as a workbook",
        keep: "save",
        kind: host === "excel" ? "plain" : "main",
        disabled: busy,
        click: () => act.save(() => act.engine.exportWorkbook()),
      }),
  );
  return [
    el("h1", {}, "Loopwright"),
    el("p", { class: "source" }, source === null ? "No survey open" : sourceWords(source, state.estimate?.site.name)),
    ...(source === null ? [] : [commands]),
  ];
}

const sourceWords = (source: string, site: string | null | undefined): string =>
  site === null || site === undefined ? source : `${site} · ${source}`;
