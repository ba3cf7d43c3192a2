import type {
  KeepWork,
  LoopRisk,
  LoopTreatments,
  ModuleSetting,
  RepairWork,
  Treatment,
  Work,
} from "../treatments/treatment.js";
import { bothWorks, noWork } from "../treatments/treatment.js";
import { type WorkRates, workCents } from "../treatments/work-cents.js";
import type { Plan } from "./plan.js";

/** What the plan does with one loop, with the work and parts it stands for. */
export interface PlannedLoop {
  readonly key: string;
  readonly panel: string;
  readonly treatment: Treatment;
  readonly recommended: Treatment;
  readonly needsSupply: boolean;
  /** The input it lands on, shared with the loops of equal panel, module setting and input; null = none. */
  readonly input: { readonly setting: ModuleSetting; readonly input: string; readonly carrier: string } | null;
  readonly eol: { readonly ohms: number; readonly at: "device" | "panel"; readonly isNew: boolean } | null;
  readonly work: Work;
  readonly items: Readonly<Record<string, number>>;
  readonly supplyMilliamps: number;
  /** What may go wrong, and what then happens; null where nothing is left open. */
  readonly risk: LoopRisk | null;
  readonly why: string;
  /** The estimator's cure for its supply, in words; its parts and hours are in the work. */
  readonly supplyCure?: string;
}

/** Joins the plan's choices with the work behind them; the carrier of a shared input is the one that costs least. */
export function plannedLoops({
  plan,
  treatments,
  moduleSettings,
  rates,
}: {
  readonly plan: Plan;
  readonly treatments: readonly LoopTreatments[];
  readonly moduleSettings: readonly ModuleSetting[];
  readonly rates: WorkRates;
}): readonly PlannedLoop[] {
  const byKey = new Map(treatments.map((loop) => [loop.key, loop]));
  const choiceOf = new Map(plan.choices.map((choice) => [choice.loop, choice]));
  const inputName = (loop: string) => {
    const choice = choiceOf.get(loop);
    const panel = byKey.get(loop)?.panel;
    return choice?.input === undefined ? undefined : JSON.stringify([panel, choice.module, choice.input]);
  };
  return treatments.flatMap((loop) => {
    const choice = choiceOf.get(loop.key);
    if (!choice) return [];
    const { key, panel, recommended } = loop;
    if (choice.option !== undefined) {
      const offer = loop.withoutInput[choice.option];
      if (!offer) return [];
      const { treatment, work, items, why, risk = null } = offer;
      const rest = { needsSupply: false, input: null, eol: null, supplyMilliamps: 0, risk };
      return [{ key, panel, treatment, recommended, work, items, why, ...rest }];
    }
    const setting = moduleSettings.find(({ id }) => id === choice.module);
    if (!setting) return [];
    if (choice.kind === "repair") {
      const repair = loop.repair.find(({ module }) => module === choice.module);
      return repair ? [repaired(loop, repair, setting, `${key} alone`)] : [];
    }
    if (choice.input === undefined) return [];
    const members = treatments
      .filter((other) => inputName(other.key) === inputName(loop.key))
      .flatMap((other) => {
        const keep = other.keep.find(({ module }) => module === choice.module);
        return keep ? [{ key: other.key, keep }] : [];
      });
    const mine = members.find((member) => member.key === key)?.keep;
    return mine ? [kept(loop, mine, setting, choice.input, carrierOf(members, rates))] : [];
  });
}

function repaired(loop: LoopTreatments, repair: RepairWork, setting: ModuleSetting, input: string): PlannedLoop {
  return {
    key: loop.key,
    panel: loop.panel,
    treatment: repair.treatment,
    recommended: loop.recommended,
    needsSupply: loop.needsSupply,
    input: { setting, input, carrier: loop.key },
    eol: { ohms: repair.eolOhms, at: repair.eolAt, isNew: repair.eolIsNew },
    work: repair.work,
    items: {},
    supplyMilliamps: repair.supplyMilliamps,
    risk: { probability: 1 - repair.succeeds, repairs: 0, repair: noWork, fallback: repair.fallback },
    why: repair.why,
  };
}

function kept(
  loop: LoopTreatments,
  keep: KeepWork,
  setting: ModuleSetting,
  input: string,
  carrier: string,
): PlannedLoop {
  const carries = carrier === loop.key;
  return {
    key: loop.key,
    panel: loop.panel,
    treatment: keep.treatment,
    recommended: loop.recommended,
    needsSupply: loop.needsSupply,
    input: { setting, input, carrier },
    eol: carries ? { ohms: keep.eolOhms, at: keep.eolAt, isNew: keep.eolIsNew } : null,
    work: bothWorks(keep.base, carries ? keep.setEol : keep.removeEol),
    items: keep.items,
    supplyMilliamps: keep.supplyMilliamps,
    risk: keep.risk.probability > 0 ? keep.risk : null,
    why: keep.why,
  };
}

function carrierOf(members: readonly { readonly key: string; readonly keep: KeepWork }[], rates: WorkRates): string {
  const cost = (carrier: string): number =>
    members.reduce(
      (sum, { key, keep }) => sum + workCents({ work: key === carrier ? keep.setEol : keep.removeEol, rates }),
      0,
    );
  return [...members].sort((a, b) => cost(a.key) - cost(b.key))[0]?.key ?? "";
}
