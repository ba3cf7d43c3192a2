import { type Child, el, list } from "./elements.js";
import type { Estimated } from "./shown.js";

/** The cut-over in its order, what to watch for, and the cautions. */
export function orderOfWork({ estimate }: Estimated): readonly Child[] {
  const { steps, held, readAgainFirst, hazards } = estimate.cutOver;
  const seen = [...new Map(hazards.map((one) => [`${one.hazard}\n${one.where}`, one])).values()];
  return [
    held &&
      el(
        "p",
        { class: "notice stop" },
        "On hold: no step takes the old control's power or siren away until its written release is entered.",
      ),
    readAgainFirst.length > 0 &&
      el("p", {}, `Nobody works on these before they were read again: ${readAgainFirst.join(", ")}.`),
    el(
      "ol",
      { class: "steps" },
      ...steps.map(({ words, who, darkMinutes, after }) =>
        el(
          "li",
          {},
          el("p", {}, words),
          el(
            "p",
            { class: "small" },
            [
              who,
              ...(darkMinutes === null ? [] : [`openings watch nothing for up to ${Math.round(darkMinutes)} min`]),
              ...(after.length === 0 ? [] : [`after step ${after.join(", ")}`]),
            ].join(" · "),
          ),
        ),
      ),
    ),
    ...(seen.length === 0
      ? []
      : [
          el("h3", {}, "Hazards written in the survey"),
          list(seen.map(({ words, where, caution }) => `${where}: ${words}. ${caution}`)),
        ]),
    el("h3", {}, "Cautions"),
    list(estimate.cautions.map(({ words }) => words)),
  ];
}
