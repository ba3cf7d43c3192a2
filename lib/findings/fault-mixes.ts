import { at, conditionCount } from "./conditions.js";
import type { JudgeModel } from "./judge-model.js";
import type { Posterior } from "./posterior.js";
import { zeros } from "./zeros.js";

/** Shares of the unsound conditions among themselves by the table, 0 for sound ones; adds to 1. */
export function usualMix(model: JudgeModel): number[] {
  return model.prior.map((share, c) => (c <= at.eolInPanel ? 0 : share / model.faultRate));
}

/**
 * Fault mix for each loop of a job, from the job's other loops: Dirichlet about the table with the strength
 * `jobMixStrength`, expected counts (collapsed variational inference, zero order), so that a loop never speaks for
 * itself. Life safety never becomes less likely by what other loops show.
 */
export function faultMixes(
  posteriors: readonly Posterior[],
  usual: readonly number[],
  model: JudgeModel,
): readonly (readonly number[])[] {
  const strength = model.figures.jobMixStrength;
  const counted = zeros(conditionCount);
  for (const { condition } of posteriors) {
    for (let c = at.shorted; c < conditionCount; c += 1) counted[c] = (counted[c] ?? 0) + (condition[c] ?? 0);
  }
  return posteriors.map(({ condition }) => {
    const mix = zeros(conditionCount);
    let total = 0;
    for (let c = at.shorted; c < conditionCount; c += 1) {
      const share = strength * (usual[c] ?? 0) + Math.max(0, (counted[c] ?? 0) - (condition[c] ?? 0));
      mix[c] = share;
      total += share;
    }
    for (let c = at.shorted; c < conditionCount; c += 1) mix[c] = (mix[c] ?? 0) / total;
    mix[at.lifeSafety] = Math.max(mix[at.lifeSafety] ?? 0, usual[at.lifeSafety] ?? 0);
    return mix;
  });
}
