import { columnsOf, surveySheets } from "../../loopwright-screen.js";
import type { OpenedSheet } from "../engine/engine-state.js";
import { dataTable } from "./data-table.js";
import { button, type Child, choice, el } from "./elements.js";
import type { Acts, Shown } from "./shown.js";

const unused = "";

/** How the files were understood, with the means to correct it; units, paper, other files. */
export function files(shown: Shown): readonly Child[] {
  return [...settings(shown), ...sheets(shown), ...headings(shown)];
}

function settings({ state, act }: Shown): readonly Child[] {
  const { engine } = act;
  return [
    el(
      "div",
      { class: "sieve" },
      choice({
        label: "Lengths in",
        keep: "units",
        value: state.units,
        values: [
          ["metric", "metres"],
          ["imperial", "feet"],
        ],
        change: (units) => engine.setUnits(units),
      }),
      choice({
        label: "Paper of the workbook",
        keep: "paper",
        value: state.paper,
        values: [
          ["A4", "A4"],
          ["Letter", "Letter"],
        ],
        change: (paper) => engine.setPaper(paper),
      }),
    ),
    el(
      "div",
      { class: "commands" },
      button({ words: "Print all of this", keep: "print", click: () => window.print() }),
      button({
        words: "Save a blank survey",
        keep: "blank again",
        disabled: state.progress !== null,
        click: () => act.save(() => engine.blankSurvey()),
      }),
      button({
        words: "Open the invented demo site",
        keep: "demo again",
        disabled: state.progress !== null,
        click: act.openDemo,
      }),
      state.host === "excel" &&
        button({
          words: "Set up the survey tables",
          keep: "set up again",
          disabled: state.progress !== null,
          click: () => void engine.setUpSurvey(),
        }),
    ),
  ];
}

function sheets({ state, act }: Shown): readonly Child[] {
  if (state.sheets.length === 0) return [];
  return [
    el("h3", {}, "Sheets"),
    dataTable({
      caption: "What each sheet was taken for",
      columns: [{ words: "Sheet" }, { words: "Rows", figures: true }, { words: "Taken as" }],
      rows: state.sheets.map((sheet) => ({ cells: [sheet.name, sheet.rows, sheetChoice(act, sheet)] })),
    }),
  ];
}

function sheetChoice({ engine }: Acts, { name, as }: OpenedSheet): Child {
  return choice({
    label: `${name} is`,
    hideLabel: true,
    keep: `sheet ${name}`,
    value: as ?? unused,
    values: [[unused, "not used"], ...surveySheets.map((one) => [one, one] as const)],
    change: (one) => void engine.takeSheetAs(name, one === unused ? null : one),
  });
}

function headings({ state, act }: Shown): readonly Child[] {
  if (state.headings.length === 0) return [];
  const names = [...new Set(state.headings.map(({ sheet }) => sheet))];
  const tableOf = (name: string) => state.sheets.find((sheet) => sheet.name === name)?.as ?? null;
  return [
    el("h3", {}, "Headings"),
    el("p", {}, "How each heading was understood. What fits nothing is kept with the notes of its row."),
    ...names.map((name) => {
      const rows = state.headings.filter(({ sheet }) => sheet === name);
      const open = rows.filter(({ column }) => column === null).length;
      const table = tableOf(name);
      const columns = table === null ? [] : columnsOf(table);
      return el(
        "details",
        { "data-keep-open": `headings ${name}` },
        el(
          "summary",
          { "data-keep": `headings ${name}` },
          open === 0 ? `${name}: all ${rows.length} understood` : `${name}: ${open} of ${rows.length} fit nothing`,
        ),
        dataTable({
          caption: `Headings of ${name}`,
          hideCaption: true,
          columns: [{ words: "Typed heading" }, { words: "Understood as" }, { words: "How" }],
          rows: rows.map(({ heading, column, how }) => ({
            cells: [
              heading === "" ? "(empty)" : heading,
              columns.length === 0
                ? (column ?? "nothing")
                : choice({
                    label: `${heading} of ${name} is`,
                    hideLabel: true,
                    keep: `heading ${name} ${heading}`,
                    value: column ?? unused,
                    values: [
                      [unused, "nothing: leave it out"],
                      ...columns.map((one) => [one.column, one.heading] as const),
                    ],
                    change: (one) => void act.engine.takeHeadingAs(name, heading, one === unused ? null : one),
                  }),
              how,
            ],
          })),
        }),
      );
    }),
  ];
}
