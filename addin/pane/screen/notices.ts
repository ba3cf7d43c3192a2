import { button, el } from "./elements.js";
import { nameOfLoop, type Shown } from "./shown.js";

/** What stands above everything: the hold, the demo's prices. */
export function notices({ state }: Shown): readonly HTMLElement[] {
  const { estimate } = state;
  if (estimate === null) return [];
  const { holds, loops } = estimate;
  const held = new Set(holds.flatMap((hold) => hold.loops));
  const names = loops.filter(({ key }) => held.has(key)).map(nameOfLoop);
  return [
    ...(holds.length === 0
      ? []
      : [
          el(
            "section",
            { class: "notice stop", "aria-label": "Life-safety hold" },
            el("p", {}, el("strong", {}, "DO NOT TOUCH "), names.join(", ")),
            el(
              "p",
              { class: "small" },
              "Hold: life safety on the old control. No power-down, strip-out or siren work before its written release.",
            ),
          ),
        ]),
    ...(estimate.demoPrices
      ? [
          el(
            "p",
            { class: "notice warn" },
            el("strong", {}, "DEMO PRICES: invented, not to be quoted"),
            " or ordered from.",
          ),
        ]
      : []),
  ];
}

/** What is going on, with a way to stop it. */
export function progressBar({ state, act }: Shown): HTMLElement | null {
  const { progress } = state;
  if (progress === null) return null;
  const { activity, words, share } = progress;
  return el(
    "div",
    { class: "progress" },
    el("span", { id: "progress-words" }, words),
    el("progress", {
      "aria-labelledby": "progress-words",
      max: 1,
      ...(share === null ? {} : { value: Math.round(share * 100) / 100 }),
    }),
    button({
      words: "Stop",
      keep: "stop",
      label: activity === "working out" ? "Stop and keep the plan found so far" : `Stop ${activity}`,
      click: () => act.engine.cancel(),
    }),
  );
}

/** What did not happen, and the mend. */
export function problemBox({ state, act }: Shown): HTMLElement | null {
  const { problem } = state;
  if (problem === null) return null;
  const title: Readonly<Record<typeof problem.activity, string>> = {
    opening: "Not opened",
    "working out": "Not worked out",
    exporting: "Not saved",
    writing: "Not written to the workbook",
    jumping: "Not found",
  };
  return el(
    "div",
    { class: "notice stop" },
    el("p", {}, el("strong", {}, title[problem.activity])),
    el("p", { class: "as-typed" }, problem.words),
    button({ words: "Close this message", keep: "dismiss", click: () => act.engine.dismissProblem() }),
  );
}
