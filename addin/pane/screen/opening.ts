import { button, el, help } from "./elements.js";
import type { Shown } from "./shown.js";

/** Before anything is open: how to begin. */
export function opening({ state, act }: Shown): HTMLElement {
  const inExcel = state.host === "excel";
  const busy = state.progress !== null;
  return el(
    "section",
    { class: "opening", "aria-labelledby": "opening-title" },
    el("h2", { id: "opening-title", tabindex: -1 }, inExcel ? "Begin with this workbook" : "Open a survey"),
    el(
      "p",
      {},
      "From the loops as they were metered: what stays on the wire, what the job costs and how sure that is, what to read next, what to order.",
    ),
    inExcel
      ? el(
          "div",
          { class: "commands stacked" },
          button({
            words: "Read the survey of this workbook",
            keep: "read workbook first",
            kind: "main",
            disabled: busy,
            click: act.readWorkbook,
          }),
          button({
            words: "Set up the survey tables",
            keep: "set up",
            disabled: busy,
            click: () => void act.engine.setUpSurvey(),
          }),
        )
      : el(
          "div",
          { class: "drop", "data-drop": true },
          el("p", {}, "Drop files here, or"),
          button({ words: "Choose files", keep: "choose", kind: "main", disabled: busy, click: act.pickFiles }),
          el(
            "p",
            { class: "small" },
            "A survey workbook (.xlsx), or loose sheets as they were typed (.csv, .xlsx): loops, site, radio tests, old zones, prices. Several at once make one survey.",
          ),
        ),
    el(
      "div",
      { class: "commands stacked" },
      button({ words: "Open the invented demo site", keep: "demo", disabled: busy, click: act.openDemo }),
      inExcel && button({ words: "Open files", keep: "choose", disabled: busy, click: act.pickFiles }),
      button({
        words: "Save a blank survey to fill in",
        keep: "blank",
        disabled: busy,
        click: () => act.save(() => act.engine.blankSurvey()),
      }),
    ),
    el("p", { class: "small" }, "Nothing leaves this machine: files are read and reckoned here."),
    help(
      "which readings",
      "Which readings does it need?",
      "For each loop: what it protects, how many openings, cable and run, ohms with everything shut, ohms with one opening open, and volts on the lifted pair. What was not measured stays empty; over-range is written OL.",
      "Volts before ohms on every pair, both conductors lifted. Life-safety circuits are not metered at all: red cable or the word fire means stop and ask.",
    ),
    help(
      "what it is not",
      "What can it not tell?",
      "Results are estimates from the readings given; a competent person decides. Local codes, licences, permits and insurer's terms come before this tool.",
    ),
  );
}
