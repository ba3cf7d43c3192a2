import type {
  KeepOffer,
  LoopOffers,
  OfferWithoutInput,
  PlanningProblem,
  RepairOffer,
  TreatmentKind,
} from "./problem.js";

/** What one loop may become after pins and limits of its own. */
export interface PermittedOffers {
  readonly loop: LoopOffers;
  readonly withoutInput: readonly { readonly option: number; readonly offer: OfferWithoutInput }[];
  readonly keep: readonly KeepOffer[];
  readonly repair: readonly RepairOffer[];
}

/** Offers of every loop, in loop order, less what its pins or the module's ohm limit rule out. */
export function permittedOffers(problem: PlanningProblem): readonly PermittedOffers[] {
  const maxOhms = new Map(problem.modules.map((module) => [module.type, module.maxOhms]));
  return problem.loops.map((loop) => {
    const pins = (problem.pins ?? []).filter((pin) => pin.loop === loop.id);
    const may = (kind: TreatmentKind) =>
      pins.every((pin) => pin.forbid !== kind && (pin.kind === undefined || pin.kind === kind));
    const ohms = typeof loop.ohms === "number" ? loop.ohms : Infinity;
    return {
      loop,
      withoutInput: loop.withoutInput
        .map((offer, option) => ({ option, offer }))
        .filter(({ offer }) => may(offer.kind)),
      keep: may("keep") ? loop.keep.filter((offer) => ohms <= (maxOhms.get(offer.module) ?? 0) + 1e-9) : [],
      repair: may("repair") ? loop.repair : [],
    };
  });
}
