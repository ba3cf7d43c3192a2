import { button, choice, el } from "./elements.js";
import { type Part, parts, type Shown } from "./shown.js";

/** The way to each part: buttons where there is room, one choice where there is not. */
export function partsNav({ state, look, act }: Shown): HTMLElement {
  const counts: Partial<Record<Part, number>> = {
    queries: state.queries.length,
    ...(state.estimate === null ? {} : { loops: state.estimate.loops.length, orders: state.estimate.orders.length }),
  };
  const named = parts.map(([part, words]) => {
    const count = counts[part];
    return [part, count === undefined ? words : `${words} (${count})`] as const;
  });
  const current = look.part;
  return el(
    "div",
    {},
    el(
      "div",
      { class: "parts-narrow" },
      choice({
        label: "Show",
        keep: "part choice",
        value: current,
        values: named,
        change: (part) => {
          act.look({ part });
          act.say(`${parts.find(([one]) => one === part)?.[1] ?? ""} shown`);
        },
      }),
    ),
    el(
      "ul",
      { class: "parts-wide" },
      ...named.map(([part, words]) =>
        el(
          "li",
          { class: part === "answers" ? "only-narrow" : undefined },
          button({
            words,
            keep: `part ${part}`,
            kind: "quiet",
            click: () => act.go(part),
            more: {
              "aria-current": part === current || (part === "loops" && current === "answers") ? "page" : undefined,
            },
          }),
        ),
      ),
    ),
  );
}
