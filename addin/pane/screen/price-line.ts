import { button, el } from "./elements.js";
import type { Shown } from "./shown.js";

/** The price and how wide its range is, in one line; what changed since; the way to work it out again. */
export function priceLine(shown: Shown): HTMLElement | null {
  const { state, formats, act } = shown;
  const { estimate, survey, stale, before, progress } = state;
  if (survey === null) return null;
  const again = (words: string) =>
    el(
      "div",
      { class: "commands" },
      button({
        words,
        keep: "work out",
        kind: "main",
        disabled: progress !== null,
        click: () => act.workOut(),
      }),
      button({
        words: "Quick plan",
        keep: "quick plan",
        disabled: progress !== null,
        label: "Quick plan: not proved, without options and reasons in money",
        click: () => act.workOut({ prove: false }),
      }),
    );
  if (estimate === null) {
    return el("div", { class: "price-line" }, el("p", {}, "Not worked out yet."), again("Work it out"));
  }
  const { totalCents, p10Cents, p90Cents } = estimate.price;
  const difference = before === null || stale ? null : totalCents - before.totalCents;
  return el(
    "div",
    { class: stale ? "price-line stale" : "price-line" },
    el(
      "p",
      {},
      el("strong", { class: "price" }, formats.money(totalCents)),
      " with tax",
      p10Cents !== null &&
        p90Cents !== null &&
        ` · 8 jobs of 10 end between ${formats.roundMoney(p10Cents)} and ${formats.roundMoney(p90Cents)}`,
    ),
    difference !== null &&
      el(
        "p",
        { class: "small" },
        difference === 0
          ? "The same as before the last change."
          : `Before the last change ${formats.money(before?.totalCents ?? 0)}: now ${formats.moreMoney(difference)}.`,
      ),
    stale &&
      el(
        "div",
        { class: "changed" },
        el("p", {}, "Changed since this was worked out: the figures shown are the old ones."),
        again("Work it out again"),
      ),
  );
}
