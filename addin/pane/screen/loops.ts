import type { EstimatedLoop } from "../../loopwright-pane.js";
import { formatPercentOnPaper, treatmentWords } from "../../loopwright-screen.js";
import { button, type Child, choice, el } from "./elements.js";
import { loopDetails } from "./loop-details.js";
import { type SieveInput, sieved, sievesFor } from "./loop-sieve.js";
import { spreadsOf } from "./ranked-readings.js";
import { type Estimated, isLeftAlone, type Look, nameOfLoop } from "./shown.js";

const orders: readonly (readonly [Look["order"], string])[] = [
  ["survey", "as in the survey"],
  ["unsure", "least sure first"],
  ["dear", "dearest first"],
  ["wide", "widest range first"],
];

/** More rows at each step. */
export const rowsAtOnce = 100;

/** Every loop with its verdict; found by text, sieved by state, opened for the rest. */
export function loops(shown: Estimated): readonly Child[] {
  const { look, act } = shown;
  const input = sieveInput(shown);
  const left = sieved(input, look);
  const sieves = sievesFor(input);
  const known = sieves.some(([sieve]) => sieve === look.sieve);
  const most = look.printing ? left.length : look.most;
  return [
    el(
      "div",
      { class: "sieve", role: "search", "aria-label": "Find loops" },
      el(
        "label",
        { class: "field" },
        "Find",
        el("input", {
          type: "search",
          "data-keep": "find",
          value: look.find,
          placeholder: "name, place, words",
          autocomplete: "off",
          spellcheck: "false",
          input: (event: Event) => {
            if (event.target instanceof HTMLInputElement) act.look({ find: event.target.value, most: rowsAtOnce });
          },
        }),
      ),
      choice({
        label: "Which",
        keep: "sieve",
        value: known ? look.sieve : "all",
        values: sieves.map(([sieve, words, count]) => [sieve, `${words} (${count})`] as const),
        change: (sieve) => act.look({ sieve, most: rowsAtOnce }),
      }),
      choice({
        label: "Order",
        keep: "order",
        value: look.order,
        values: orders,
        change: (order) => act.look({ order }),
      }),
    ),
    el("p", { class: "small", role: "status" }, `${left.length} of ${shown.estimate.loops.length} loops`),
    left.length === 0
      ? el("p", {}, "No loop fits. Clear the words or choose all loops.")
      : el("ul", { class: "cards loops" }, ...left.slice(0, most).map((loop) => loopCard(shown, loop))),
    left.length > most &&
      button({
        words: `Show ${Math.min(rowsAtOnce, left.length - most)} more`,
        keep: "more loops",
        click: () => act.look({ most: most + rowsAtOnce }),
      }),
  ];
}

export const sieveInput = ({ estimate, state }: Estimated): SieveInput => ({
  loops: estimate.loops,
  survey: state.survey?.loops ?? [],
  queries: state.queries,
  wishes: state.wishes,
  spreads: spreadsOf(estimate.price),
});

function loopCard(shown: Estimated, loop: EstimatedLoop): HTMLElement {
  const { look, act, formats, state } = shown;
  const open = look.open.includes(loop.key);
  const id = `loop-${loop.key}`;
  const leftAlone = isLeftAlone(loop);
  const asked = state.queries.filter(({ key }) => key === loop.key).length;
  const name = nameOfLoop(loop);
  return el(
    "li",
    { class: leftAlone ? "card left-alone" : "card" },
    el(
      "h3",
      {},
      button({
        words: el(
          "span",
          {},
          el("span", { class: "loop-name" }, name),
          loop.protects !== null && el("span", { class: "protects" }, ` ${loop.protects}`),
        ),
        keep: `loop ${loop.key}`,
        kind: "quiet",
        click: () => {
          act.look({ open: open ? look.open.filter((key) => key !== loop.key) : [...look.open, loop.key] });
          act.say(`${name} ${open ? "closed" : "opened"}`);
        },
        more: { "aria-expanded": open ? "true" : "false", "aria-controls": open ? id : undefined },
      }),
    ),
    el("p", { class: "verdict" }, verdictOf(loop)),
    el(
      "ul",
      { class: "marks" },
      el("li", { class: `mark ${leftAlone ? "stop" : ""}` }, treatmentWords[loop.treatment]),
      !leftAlone && el("li", {}, `sure to ${formatPercentOnPaper(loop.probability)}`),
      !leftAlone && el("li", {}, formats.money(loop.cost.costCents)),
      asked > 0 && el("li", {}, asked === 1 ? "1 query" : `${asked} queries`),
      loop.treatment !== loop.recommended && el("li", {}, `by itself: ${treatmentWords[loop.recommended]}`),
      state.wishes[loop.key] !== undefined && el("li", { class: "mark" }, "your wish"),
    ),
    open && el("div", { id, class: "details" }, ...loopDetails(shown, loop)),
  );
}

/** The verdict in one sentence; a loop that is left alone has none. */
export function verdictOf(loop: EstimatedLoop): string {
  if (isLeftAlone(loop)) return "Life safety: left as it is. No verdict, no reading.";
  const [first] = loop.findings;
  return first?.words ?? "No verdict.";
}
