import type { Query } from "../../loopwright-pane.js";
import { button, type Child, el } from "./elements.js";
import type { Shown } from "./shown.js";

/** Questions to the surveyor, sheet by sheet, each with the way to its cell. */
export function queries(shown: Shown): readonly Child[] {
  const { state } = shown;
  if (state.queries.length === 0) return [el("p", {}, "No query is open.")];
  const numbered = state.queries.map((query, number) => ({ query, number }));
  const sheets = [...new Set(state.queries.map(({ sheet }) => sheet))];
  return [
    el(
      "p",
      {},
      "Nothing was silently corrected: what the survey does not settle is asked here. Mend the cell, then work it out again.",
    ),
    ...sheets.map((sheet) =>
      el(
        "section",
        {},
        el("h3", {}, sheet),
        el(
          "ol",
          { class: "cards" },
          ...numbered
            .filter(({ query }) => query.sheet === sheet)
            .map(({ query, number }) => queryCard(shown, query, number)),
        ),
      ),
    ),
  ];
}

function queryCard(shown: Shown, query: Query, number: number): HTMLElement {
  const { state, look, act } = shown;
  const { row, column, typed, message, key } = query;
  const jumped = look.jumped?.query === number ? look.jumped.words : null;
  const place = placeWords(query);
  return el(
    "li",
    { class: "card" },
    el("p", { class: "place" }, place, query.asksOnSite === true && " · asks for a look on site"),
    typed !== "" && el("p", {}, "Typed: ", el("q", { class: "as-typed" }, typed)),
    el("p", { class: "as-typed" }, message),
    (row !== null || key !== undefined) &&
      button({
        words: state.host === "excel" ? "Go to the cell" : "Show the row",
        keep: `jump ${number}`,
        label: `${state.host === "excel" ? "Go to the cell" : "Show the row"}: ${place}`,
        click: () => act.jump({ sheet: query.sheet, row, column }, number, key),
      }),
    jumped !== null && el("p", { class: "small" }, jumped),
  );
}

/** "row 7, Ohms shut"; the whole sheet where no row is meant. */
export function placeWords({ row, column }: Pick<Query, "row" | "column">): string {
  const parts = [...(row === null ? [] : [`row ${row}`]), ...(column === null ? [] : [column])];
  return parts.length === 0 ? "the whole sheet" : parts.join(", ");
}
