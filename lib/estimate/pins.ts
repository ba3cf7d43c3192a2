import type { Pin, TreatmentKind } from "../plan/problem.js";
import type { Query } from "../problems/query.js";
import type { Survey } from "../survey/survey.js";
import type { LoopTreatments, Treatment } from "../treatments/treatment.js";

/** What the estimator may write in the pin and forbid columns, and the kind of plan choice it means. */
export const planKindOf: Readonly<Record<Treatment, TreatmentKind>> = {
  keep: "keep",
  fitEol: "keep",
  changeEol: "keep",
  split: "keep",
  repair: "repair",
  rewire: "repair",
  measureAgain: "repair",
  wireless: "wireless",
  retire: "retire",
  excluded: "excluded",
};

/**
 * The estimator's wishes as pins of the plan. A wish that the loop does not offer is asked about and not applied:
 * nothing can pin a life-safety loop to anything, nor keep a loop that no input takes.
 */
export function pinsOf({
  survey,
  treatments,
}: {
  readonly survey: Survey;
  readonly treatments: readonly LoopTreatments[];
}): { readonly pins: readonly Pin[]; readonly queries: readonly Query[] } {
  const pins: Pin[] = [];
  const queries: Query[] = [];
  for (const loop of survey.loops) {
    const offers = treatments.find(({ key }) => key === loop.key);
    if (!offers) continue;
    const offered = new Set<TreatmentKind>([
      ...(offers.keep.length > 0 ? ["keep" as const] : []),
      ...(offers.repair.length > 0 ? ["repair" as const] : []),
      ...offers.withoutInput.map(({ kind }) => kind),
    ]);
    const ask = (column: string, typed: string, message: string) =>
      queries.push({ sheet: loop.sheet, row: loop.row, column, typed, message, key: loop.key });
    const { pinTreatment, forbid = [] } = loop.edits;
    if (pinTreatment !== undefined) {
      const kind = Object.hasOwn(planKindOf, pinTreatment) ? planKindOf[pinTreatment as Treatment] : undefined;
      if (kind === undefined)
        ask("pinTreatment", pinTreatment, `expected one of ${Object.keys(planKindOf).join(", ")}`);
      else if (offered.has(kind)) pins.push({ loop: loop.key, kind });
      else
        ask(
          "pinTreatment",
          pinTreatment,
          `not possible for this loop (${[...offered].join(", ")}): the pin is not applied`,
        );
    }
    for (const word of forbid) {
      // Records that the owner keeps the loop in one piece; only a loop that would be split loses anything by it.
      if (word === "split" && !offers.keep.some(({ treatment }) => treatment === "split")) continue;
      const kind = Object.hasOwn(planKindOf, word) ? planKindOf[word as Treatment] : undefined;
      if (kind === undefined) ask("forbid", word, `expected one of ${Object.keys(planKindOf).join(", ")}`);
      else if (offered.size > 1 && offered.has(kind)) {
        offered.delete(kind);
        pins.push({ loop: loop.key, forbid: kind });
      } else if (offered.has(kind))
        ask("forbid", word, "nothing else can be done with this loop: the wish is not applied");
    }
  }
  return { pins, queries };
}
