import type { Article } from "../price-book/article.js";
import type { JobSettings } from "../price-book/job-settings.js";
import { articleByCode, articlesOfClass } from "../price-book/look-up.js";
import { withSpares } from "../price-book/with-spares.js";
import { roundCents } from "../quantities/money.js";
import type { InputModuleProfile } from "../survey/survey.js";
import type { LoopTreatments, ModuleSetting, RepairWork, Work } from "../treatments/treatment.js";
import { itemsCents, riskCents, unitCentsOf, type WorkRates, workCents } from "../treatments/work-cents.js";
import type { ArticleSupply, LoopOffers, ModuleArticle, Pin, PlanningProblem, SharedReturn } from "./problem.js";

/** What the planning problem of one job is made from. */
export interface PlanningInputs {
  readonly treatments: readonly LoopTreatments[];
  readonly profiles: readonly InputModuleProfile[];
  readonly moduleSettings: readonly ModuleSetting[];
  readonly job: JobSettings;
  readonly rates: WorkRates;
  readonly pins: readonly Pin[];
  /** Keys of loops that come back on one return conductor, set by set. */
  readonly sharedReturns?: readonly (readonly string[])[];
  /** Work and parts that a panel's place costs once it holds a module. */
  readonly location: Work;
  /** Most current kept detectors may draw at each panel, where it is known. [mA] */
  readonly supplyMilliamps?: Readonly<Record<string, number>>;
}

/** The one control of a job; its limits are settings of the job. */
export const controlId = "control";

/** The planning problem of a job as plain data: every offer priced at our cost, mean hours. */
export function planningProblem(inputs: PlanningInputs): PlanningProblem {
  const { treatments, job, rates } = inputs;
  const codes = new Set<string>();
  for (const { keep, withoutInput } of treatments) {
    for (const { items } of [...keep, ...withoutInput]) for (const code of Object.keys(items)) codes.add(code);
  }
  const panels = [...new Set(treatments.map(({ panel }) => panel))];
  return {
    modules: moduleArticles(inputs),
    items: [...codes].flatMap((code) => {
      const article = articleByCode({ book: rates.book, code });
      return article ? [{ code, supply: supplyOf(article) }] : [];
    }),
    controllers: [{ id: controlId, maxModules: job.controllerModules, maxRadioDevices: job.controllerDevices }],
    panels: panels.map((id) => ({
      id,
      controller: controlId,
      spareInputsWhenUsed: spareInputs(inputs, id),
      openCents: roundCents(workCents({ work: inputs.location, rates })),
      ...(inputs.supplyMilliamps?.[id] === undefined ? {} : { supplyMilliamps: inputs.supplyMilliamps[id] }),
    })),
    join: {
      maxLoops: job.joinLoops,
      maxOpenings: job.joinOpenings,
      cents: roundCents((job.joinMinutes / 60) * rates.labourCentsPerHour),
    },
    extraConductorCents: extraConductorCents(rates),
    loops: treatments.map((loop) => loopOffers(loop, rates)),
    together: togetherOf(inputs),
    pins: inputs.pins,
  };
}

/** Loops on one return keep one module, whose return takes the one conductor; those never on the wire are left out. */
function togetherOf({ sharedReturns = [], treatments }: PlanningInputs): readonly SharedReturn[] {
  const wired = new Set(treatments.filter(({ keep, repair }) => keep.length + repair.length > 0).map(({ key }) => key));
  return sharedReturns
    .map((keys) => keys.filter((key) => wired.has(key)))
    .filter((loops) => loops.length > 1)
    .map((loops) => ({ loops, sameModule: true, returnSeats: 1 }));
}

/** Spare inputs of a place: a tenth of the loops that may stay on the wire there, at least 1; none where none may. */
function spareInputs({ treatments, job }: PlanningInputs, panel: string): number {
  const wired = treatments.filter((loop) => loop.panel === panel && loop.keep.length + loop.repair.length > 0).length;
  if (job.spareFraction === 0) return 0;
  return withSpares({ class: "spareInput", count: wired, fraction: job.spareFraction }).need - wired;
}

function moduleArticles({ moduleSettings, profiles, rates }: PlanningInputs): readonly ModuleArticle[] {
  const first = new Map<string, string>();
  return moduleSettings.flatMap(({ id, type }) => {
    const profile = profiles.find((candidate) => candidate.type === type);
    const article = profile && articleByCode({ book: rates.book, code: profile.priceCode });
    if (!profile || !article) return [];
    const twin = first.get(type);
    if (twin === undefined) first.set(type, id);
    const seats = profile.returns.reduce((sum, { holds }) => sum + holds, 0);
    return [
      {
        type: id,
        inputs: profile.inputs,
        conductorSeats: seats,
        maxOhms: profile.maxConductorOhms,
        fitCents: 0,
        ...(twin === undefined ? { supply: supplyOf(article, profile.stock) } : { sharesSupplyWith: twin }),
      },
    ];
  });
}

/** The cheapest supplier's price steps; stock is charged at the price it was bought at, which is the book's. */
function supplyOf(article: Article, moreStock = 0): ArticleSupply {
  const cheapest = [...article.offers].sort((a, b) => (a.tiers[0]?.unitCents ?? 0) - (b.tiers[0]?.unitCents ?? 0))[0];
  const tiers = (cheapest?.tiers ?? []).map(({ fromQuantity, unitCents }) => ({
    from: Math.max(1, Math.ceil(fromQuantity)),
    unitCents: roundCents(unitCents),
  }));
  return { stock: article.stock + moreStock, stockUnitCents: tiers[0]?.unitCents ?? 0, tiers };
}

/** One conductor that finds no return terminal: a way of a terminal strip and a splice. */
function extraConductorCents({ book }: WorkRates): number {
  const strip = articlesOfClass({ book, class: "terminalStrip" })[0];
  const splice = articlesOfClass({ book, class: "drySplice" })[0];
  const way = strip ? unitCentsOf({ book, code: strip.code }) / stripWays : 0;
  return roundCents(way + (splice ? unitCentsOf({ book, code: splice.code }) : 0));
}

/** Ways of the terminal strip in the price book; common practice, no source. */
export const stripWays = 12;

function loopOffers(loop: LoopTreatments, rates: WorkRates): LoopOffers {
  const cents = (work: Work): number => roundCents(workCents({ work, rates }));
  return {
    id: loop.key,
    panel: loop.panel,
    joinKey: loop.joinKey,
    ohms: loop.conductorOhms,
    openings: loop.openings,
    withoutInput: loop.withoutInput.map(({ kind, work, items, radioDevices, risk }) => ({
      kind,
      cents: cents(work) + (risk ? roundCents(riskCents({ risk, rates })) : 0),
      items,
      radioDevices,
    })),
    keep: loop.keep.map((keep) => ({
      module: keep.module,
      baseCents: cents(keep.base) + roundCents(riskCents({ risk: keep.risk, rates })),
      setCents: cents(keep.setEol),
      removeCents: cents(keep.removeEol),
      items: keep.items,
      radioDevices: keep.radioDevices,
      supplyMilliamps: keep.supplyMilliamps,
    })),
    repair: loop.repair.map((repair) => ({
      module: repair.module,
      cents: roundCents(repairCents(repair, rates)),
      radioDevices: repair.fallback.radioDevices,
    })),
  };
}

/** Expected cost of a repair: its work, and the fall-back for the share of loops that it does not cure. [cents] */
export function repairCents(repair: RepairWork, rates: WorkRates): number {
  const { fallback } = repair;
  const replace = workCents({ work: fallback.work, rates }) + itemsCents({ items: fallback.items, book: rates.book });
  return workCents({ work: repair.work, rates }) + (1 - repair.succeeds) * replace;
}
