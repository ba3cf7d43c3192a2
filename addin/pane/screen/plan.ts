import type { EstimatedLoop } from "../../loopwright-pane.js";
import { formatOhms, treatmentWords } from "../../loopwright-screen.js";
import type { LoopWish, PinKind } from "../engine/engine-state.js";
import { dataTable } from "./data-table.js";
import { button, type Child, choice, el, help, list } from "./elements.js";
import { applyWish, kindWords } from "./loop-wish.js";
import { rowsAtOnce } from "./loops.js";
import { type Estimated, isLeftAlone, nameOfLoop } from "./shown.js";

const none: LoopWish = { pin: null, forbid: [] };

/** What is done with each loop, what else could be, and the estimator's pins. */
export function plan(shown: Estimated): readonly Child[] {
  const { estimate, look, act } = shown;
  const { loops } = estimate;
  const most = look.printing ? loops.length : look.most;
  return [
    el("p", {}, statusWords(shown)),
    list(
      estimate.modules.map(
        ({ panel, type, count, eolOhms }) => `${panel}: ${count} × module "${type}" set to ${formatOhms(eolOhms)}`,
      ),
    ),
    help(
      "held fixed",
      "What do the two differences mean?",
      "Next choice: what the loop's next cheapest treatment costs more, at our cost, with every other loop as planned. Planned anew: the same with the rest of the job planned around it; where it says none, nothing else can be done.",
    ),
    dataTable({
      caption: "Treatments, and what the next choice would cost more",
      columns: [
        { words: "Loop" },
        { words: "Planned" },
        { words: "Next choice" },
        { words: "Costs more", figures: true },
        { words: "Planned anew", figures: true },
        { words: "It must" },
      ],
      rows: loops.slice(0, most).map((loop) => ({ cells: planCells(shown, loop) })),
    }),
    loops.length > most &&
      button({
        words: `Show ${Math.min(rowsAtOnce, loops.length - most)} more`,
        keep: "more plan",
        click: () => act.look({ most: most + rowsAtOnce }),
      }),
  ];
}

function statusWords({ estimate, formats }: Estimated): string {
  const { status, costCents, boundCents } = estimate.plan;
  if (status === "optimal") return "Lowest cost for the prices, hours, limits and wishes entered: proved.";
  if (costCents === null || boundCents === null) return "No plan meets every limit and wish.";
  return `Found, not proved: no plan can cost less than ${formats.money(boundCents)}, this one costs ${formats.money(costCents)}.`;
}

function planCells(shown: Estimated, loop: EstimatedLoop): readonly Child[] {
  const { estimate, formats, act } = shown;
  const why = estimate.whys?.find(({ key }) => key === loop.key);
  const { heldFixed = null, replanned = null } = why ?? {};
  const leftAlone = isLeftAlone(loop);
  return [
    button({
      words: nameOfLoop(loop),
      keep: `plan ${loop.key}`,
      kind: "quiet",
      label: `${nameOfLoop(loop)}: why`,
      click: () => act.goToLoop(loop.key),
    }),
    leftAlone ? "left alone" : treatmentWords[loop.treatment],
    leftAlone || heldFixed === null ? "none" : otherWords[heldFixed.kind],
    leftAlone || heldFixed === null ? "" : formats.moreMoney(heldFixed.moreCents),
    leftAlone || replanned === null ? "" : `${formats.moreMoney(replanned.moreCents)} ${otherWords[replanned.kind]}`,
    pinChoice(shown, loop),
  ];
}

const otherWords: Readonly<Record<PinKind | "excluded", string>> = {
  keep: "keep",
  split: "split",
  repair: "repair or read again",
  wireless: "wireless",
  retire: "retire",
  excluded: "leave alone",
};

function pinChoice({ state, act }: Estimated, loop: EstimatedLoop): Child {
  const kinds = state.choices[loop.key] ?? [];
  if (kinds.length === 0) return "no choice";
  const wish = state.wishes[loop.key] ?? none;
  const forbidden = wish.forbid.map((kind) => otherWords[kind]).join(", ");
  return el(
    "div",
    {},
    choice({
      label: `${nameOfLoop(loop)} must`,
      hideLabel: true,
      keep: `plan pin ${loop.key}`,
      value: wish.pin ?? "",
      values: [["", "as the plan finds"], ...kinds.map((kind) => [kind, kindWords[kind]] as const)],
      change: (pin) => {
        const chosen = pin === "" ? null : pin;
        applyWish(act.engine, loop.key, wish, {
          pin: chosen,
          forbid: wish.forbid.filter((kind) => kind !== chosen),
        });
        act.say(
          `${nameOfLoop(loop)}: ${chosen === null ? "as the plan finds" : `must ${kindWords[chosen]}`}. Work it out again to see the price.`,
        );
      },
    }),
    forbidden !== "" && el("p", { class: "small" }, `must not: ${forbidden}`),
  );
}
