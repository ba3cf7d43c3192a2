import type { LoopJudgement } from "../findings/loop-record.js";
import type { JobSettings } from "../price-book/job-settings.js";
import type { InputModuleProfile, SurveyLoop } from "../survey/survey.js";
import { cableRange } from "../termination/loop-range.js";
import { mayJoin, zoneUse } from "../zones/zone-use.js";
import { extensionWork } from "./extension.js";
import { endingAt, landingWork } from "./keep-work.js";
import { doorSplitOff, holdsPoweredDetector, isContact, poweredAmongContacts } from "./loop-devices.js";
import { isLeftAlone, keepableProbability, type OddsTable, oddsOfRepair, recommendTreatment } from "./recommend.js";
import { terminatedLoop } from "./terminated-loop.js";
import {
  bothWorks,
  type KeepWork,
  type LoopRisk,
  type LoopTreatments,
  type ModuleSetting,
  noWork,
  type RepairWork,
  type WithoutInputWork,
  type Work,
} from "./treatment.js";
import { wirelessReplacement, wirelessWork } from "./wireless-work.js";
import type { WorkRates } from "./work-cents.js";

/** What the treatments of one loop depend on besides the loop. */
export interface TreatmentContext {
  readonly profiles: readonly InputModuleProfile[];
  readonly settings: readonly ModuleSetting[];
  readonly job: JobSettings;
  readonly rates: WorkRates;
  /** Absent = the reference table. */
  readonly repairOdds?: OddsTable;
}

/**
 * Everything one loop may get, each with its work, parts and the risk the readings leave. A life-safety loop gets
 * `excluded` and nothing else, whatever the other fields say.
 */
export function loopTreatments({
  loop,
  judgement,
  context,
}: {
  readonly loop: SurveyLoop;
  readonly judgement: LoopJudgement;
  readonly context: TreatmentContext;
}): LoopTreatments {
  const { book } = context.rates;
  const bare = terminatedLoop({ loop, judgement, eol: null });
  const conductorOhms = cableRange(bare).highOhms;
  const shared = { key: loop.key, panel: loop.panel, conductorOhms, openings: loop.openings.count };
  const { repairOdds } = context;
  const recommended = recommendTreatment({
    loop,
    judgement,
    settable: (ohms) => isSettable(ohms, context),
    repairOdds,
  });
  const head = {
    ...shared,
    recommended: recommended.treatment,
    needsSupply: recommended.needsSupply,
    reason: recommended.why,
  };
  if (isLeftAlone(judgement)) {
    const excluded: WithoutInputWork = {
      kind: "excluded",
      treatment: "excluded",
      work: noWork,
      items: {},
      radioDevices: 0,
      why: recommended.why,
    };
    return { ...head, keep: [], repair: [], withoutInput: [excluded], joinKey: null };
  }
  const wireless = wirelessWork({ loop, book });
  const fallback = "missing" in wireless ? undefined : wireless;
  return {
    ...head,
    keep: keepWorks({ loop, judgement, context, conductorOhms, fallback }),
    repair: fallback ? repairWorks({ loop, judgement, context, conductorOhms, fallback }) : [],
    withoutInput: [...readFirst({ loop, judgement, fallback }), ...(fallback ? [fallback] : [])],
    joinKey: joinKey(loop),
  };
}

/** Even odds that such a pair needs wireless devices after all; common practice, no source. */
const followsUp = 0.5;

/** A pair with volts from elsewhere, or of which nothing is known: read again first, no work on it before. */
function readFirst({
  loop,
  judgement,
  fallback,
}: Pick<Asked, "loop" | "judgement" | "fallback">): readonly WithoutInputWork[] {
  const live = judgement.condition === "foreignVoltage";
  const unread = loop.closed === undefined && judgement.action === "measureAgain";
  if ((!live && !unread) || loop.edits.pinTreatment === "wireless") return [];
  return [
    {
      kind: "wireless",
      treatment: "measureAgain",
      work: { tasks: [{ task: "measureAgain", count: 1 }], parts: [] },
      items: {},
      radioDevices: 0,
      risk: { probability: followsUp, repairs: 0, repair: noWork, fallback },
      why: live
        ? "nothing is done on this pair before its source is known and isolated by its owner"
        : "read first; no work is planned before",
    },
  ];
}

interface Asked {
  readonly loop: SurveyLoop;
  readonly judgement: LoopJudgement;
  readonly context: TreatmentContext;
  readonly conductorOhms: number;
  readonly fallback: WithoutInputWork | undefined;
}

function isSettable(ohms: number, { profiles }: TreatmentContext): boolean {
  return profiles.some(({ eolOhms, bandLow, bandHigh }) =>
    eolOhms.some((value) => ohms > value * bandLow && ohms < value * bandHigh),
  );
}

function endings({ loop, judgement, context, conductorOhms }: Asked) {
  const { book } = context.rates;
  return context.settings.flatMap((setting) => {
    const profile = context.profiles.find(({ type }) => type === setting.type);
    const ending = profile && endingAt({ loop, judgement, profile, setting, book });
    if (!profile || !ending) return [];
    const limit = { loop, conductorOhms, conductorLimitOhms: profile.maxConductorOhms, book, settings: context.job };
    return [{ setting, ending, landing: landingWork({ loop, extension: extensionWork(limit) }) }];
  });
}

function keepWorks(asked: Asked): readonly KeepWork[] {
  const { loop, judgement, context } = asked;
  if (!["keep", "fitEol", "changeEol", "landAsNormallyOpen"].includes(judgement.action)) return [];
  const powered = poweredAmongContacts(loop);
  const mixed = [...powered, ...doorSplitOff(loop)];
  const replaced = wirelessReplacement({ devices: mixed, book: context.rates.book });
  if (replaced.missing.length > 0) return [];
  const split: Work =
    mixed.length === 0
      ? noWork
      : bothWorks(replaced.work, {
          tasks: [
            { task: "split", count: 1 },
            { task: "bridgeOutDevice", count: mixed.reduce((sum, { count }) => sum + count, 0) },
            { task: "commissionZone", count: 1 },
          ],
          parts: [],
        });
  const risk = riskOf(asked);
  return endings(asked).map(({ setting, ending, landing }) => ({
    kind: "keep",
    treatment: mixed.length > 0 ? "split" : ending.treatment,
    module: setting.id,
    base: bothWorks(landing, split),
    setEol: ending.setEol,
    removeEol: ending.removeEol,
    eolAt: ending.eol.at,
    eolOhms: ending.eol.ohms,
    eolIsNew: ending.eol.isNew,
    items: replaced.items,
    radioDevices: replaced.radioDevices,
    supplyMilliamps: powered.length > 0 ? 0 : supplyOf(loop),
    risk,
    why: ending.fit.notes.join("; "),
  }));
}

/** Chance that the loop is not what keeping takes it for; then a repair is tried, and wireless devices after it. */
function riskOf({ judgement, context, fallback }: Asked): LoopRisk {
  return {
    probability: Math.max(0, 1 - keepableProbability(judgement)),
    repairs: context.job.repairSucceeds,
    repair: { tasks: [{ task: "repair", count: 1 }], parts: [] },
    fallback,
  };
}

function repairWorks(asked: Asked): readonly RepairWork[] {
  const { loop, judgement, context, fallback } = asked;
  if (!fallback) return [];
  const plan = repairPlan(judgement, context.repairOdds);
  if (!plan) return [];
  return endings(asked).map(({ setting, ending, landing }) => ({
    kind: "repair",
    treatment: plan.treatment,
    module: setting.id,
    work: bothWorks(bothWorks(landing, ending.setEol), plan.work),
    succeeds: plan.succeeds,
    fallback,
    eolAt: ending.eol.at,
    eolOhms: ending.eol.ohms,
    eolIsNew: ending.eol.isNew,
    supplyMilliamps: supplyOf(loop),
    why: plan.why,
  }));
}

function repairPlan(
  judgement: LoopJudgement,
  table: OddsTable | undefined,
): { treatment: RepairWork["treatment"]; work: Work; succeeds: number; why: string } | undefined {
  if (judgement.action === "measureAgain" || judgement.action === "powerAndRetest") {
    const succeeds = Math.min(0.95, keepableProbability(judgement) + poweredProbability(judgement));
    return {
      treatment: "measureAgain",
      work: { tasks: [{ task: "measureAgain", count: 1 }], parts: [] },
      succeeds,
      why: "measured again first",
    };
  }
  if (judgement.action !== "repair") return undefined;
  const odds = oddsOfRepair(judgement.condition, table);
  if (!odds) return undefined;
  return {
    treatment: odds.treatment,
    work: { tasks: [{ task: "repair", count: 1 }], parts: [] },
    succeeds: odds.succeeds,
    why: odds.work,
  };
}

/** A detector read without supply usually proves sound once powered; common practice, no source. */
const poweredUsuallySound = 0.85;

function poweredProbability(judgement: LoopJudgement): number {
  const powered = judgement.findings.find(({ condition }) => condition === "poweredDevice");
  return (powered?.probability ?? 0) * poweredUsuallySound;
}

function supplyOf(loop: SurveyLoop): number {
  return holdsPoweredDetector(loop) ? (loop.milliamps ?? 0) : 0;
}

/**
 * Perimeter loops of plain contacts in one area may share an input; a loop whose use nobody wrote never does, nor one
 * that shares its return: in series its return would be another loop's feed.
 */
function joinKey(loop: SurveyLoop): string | null {
  const use = zoneUse(loop.use);
  if (use === undefined || !mayJoin(use) || loop.contactForm === "NO" || loop.returnSharedWith !== undefined)
    return null;
  if (!loop.devices.every((device) => isContact(device) && !device.powered) || loop.openings.assumed) return null;
  return `${use}/${(loop.area ?? "").trim().toLowerCase()}`;
}
