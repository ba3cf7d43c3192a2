import type { EstimatedLoop } from "../../loopwright-pane.js";
import type { Engine, LoopWish, PinKind } from "../engine/engine-state.js";
import { button, type Child, el, help } from "./elements.js";
import { type Estimated, nameOfLoop } from "./shown.js";

/** What a loop can be wished to become. */
export const kindWords: Readonly<Record<PinKind, string>> = {
  keep: "stay on the wire",
  split: "be split: contacts on the wire, detector a zone of its own",
  repair: "be repaired or read again, then stay",
  wireless: "become wireless",
  retire: "be retired and tagged",
};

const none: LoopWish = { pin: null, forbid: [] };

/** The estimator's own wish for a loop: what it must become, what it must not. */
export function loopWish(shown: Estimated, loop: EstimatedLoop): readonly Child[] {
  const { state } = shown;
  const kinds = state.choices[loop.key] ?? [];
  if (kinds.length === 0) return [];
  const wish = state.wishes[loop.key] ?? none;
  const id = `wish-${loop.key}`;
  return [
    el("h4", { id }, "Your wish"),
    el("div", { class: "wish", role: "group", "aria-labelledby": id }, ...wishRows(shown, loop, kinds, wish)),
    help(
      "wish",
      "What does a wish do?",
      "The plan is worked out again with it held; every other loop is planned anew around it. Both wishes go into the pin and forbid columns of the survey, so that the workbook keeps them.",
      kinds.includes("retire") ? "Retiring a loop gives its openings up: only with the owner's signature." : null,
    ),
  ];
}

function wishRows(shown: Estimated, loop: EstimatedLoop, kinds: readonly PinKind[], wish: LoopWish): readonly Child[] {
  const { act } = shown;
  const name = nameOfLoop(loop);
  const set = (next: LoopWish, words: string) => {
    applyWish(act.engine, loop.key, wish, next);
    act.say(`${name}: ${words}. Work it out again to see the price.`);
  };
  return [
    el("p", { class: "wish-label" }, "It must"),
    el(
      "div",
      { class: "commands" },
      ...kinds.map((kind) => {
        const on = wish.pin === kind;
        return button({
          words: kindWords[kind],
          keep: `pin ${kind} ${loop.key}`,
          label: `It must ${kindWords[kind]}: ${name}`,
          click: () =>
            set(
              on ? { ...wish, pin: null } : { pin: kind, forbid: wish.forbid.filter((one) => one !== kind) },
              on ? "wish taken back" : `must ${kindWords[kind]}`,
            ),
          more: { "aria-pressed": on ? "true" : "false" },
        });
      }),
    ),
    el("p", { class: "wish-label" }, "It must not"),
    el(
      "div",
      { class: "commands" },
      ...kinds.map((kind) => {
        const on = wish.forbid.includes(kind);
        const forbid = on ? wish.forbid.filter((one) => one !== kind) : [...wish.forbid, kind];
        return button({
          words: kindWords[kind],
          keep: `forbid ${kind} ${loop.key}`,
          label: `It must not ${kindWords[kind]}: ${name}`,
          // Forbidding the last kind would leave nothing to do with the loop.
          disabled: !on && kinds.length - wish.forbid.length <= 1,
          click: () =>
            set(
              { pin: wish.pin === kind ? null : wish.pin, forbid },
              on ? "wish taken back" : `must not ${kindWords[kind]}`,
            ),
          more: { "aria-pressed": on ? "true" : "false" },
        });
      }),
    ),
  ];
}

/** Brings a wish about with as few steps as the engine allows. */
export function applyWish(
  engine: Pick<Engine, "pin" | "forbid" | "clearWish">,
  key: string,
  from: LoopWish,
  to: LoopWish,
): void {
  const takenBack = (from.pin !== null && to.pin === null) || from.forbid.some((kind) => !to.forbid.includes(kind));
  const base = takenBack ? none : from;
  if (takenBack) engine.clearWish(key);
  for (const kind of to.forbid) if (!base.forbid.includes(kind)) engine.forbid(key, kind);
  if (to.pin !== null && to.pin !== base.pin) engine.pin(key, to.pin);
}
