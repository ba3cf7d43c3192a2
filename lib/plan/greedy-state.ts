import type { Cents } from "../quantities/money.js";
import { type PermittedOffers, permittedOffers } from "./permitted-offers.js";
import type { PlanChoice, PlanDraft } from "./plan.js";
import { type ArticleSupply, defaultMaxOpenings, type KeepOffer, type PlanningProblem } from "./problem.js";
import { articleSupplies, cheapestPurchase, deviceArticleKey, moduleArticleKey } from "./purchase.js";

/** What a loop is at the moment; `input` is the number of a group of loops. */
export type Assignment =
  | { readonly as: "without"; readonly at: number }
  | { readonly as: "repair"; readonly at: number }
  | { readonly as: "keep"; readonly module: number; readonly input: number };

interface Input {
  readonly panel: number;
  readonly module: number;
  readonly loops: number[];
  cents: Cents;
  /** Ohms or openings above what the input takes, 0 when it is allowed. */
  excess: number;
}

interface LoopFacts {
  readonly offers: PermittedOffers;
  readonly panel: number;
  readonly joinClass: number;
  readonly ohms: number;
  readonly openings: number;
  /** Keep offers by module number. */
  readonly keep: readonly (KeepOffer | undefined)[];
  /** Devices of each offer as flat pairs: article number, count. */
  readonly withoutItems: readonly (readonly number[])[];
  readonly keepItems: readonly (readonly number[])[];
  readonly repairModules: readonly number[];
  /** Every way to stand alone; a kept loop's input is filled in when it is placed. */
  readonly alone: readonly Assignment[];
  readonly set: number;
}

/** A broken limit weighs more than any saving: the search first becomes feasible, then cheap. */
const brokenLimitCents = 1e9;

/**
 * A plan under construction with its cost kept up to date: changing one loop touches its panel and the articles only.
 * Module counts follow from the inputs in use.
 */
export class GreedyState {
  readonly problem: PlanningProblem;
  readonly loops: readonly LoopFacts[];
  readonly assignments: (Assignment | undefined)[];
  readonly inputs: Input[] = [];
  /** Numbers of the inputs by panel and module. */
  readonly inputsAt: readonly (readonly number[][])[];
  #workCents = 0;
  #excess = 0;
  readonly #articles: { key: string; supply: ArticleSupply; need: number }[];
  readonly #articleAt: ReadonlyMap<string, number>;
  readonly #moduleArticle: readonly number[];
  readonly #panelController: readonly number[];
  readonly #radio: number[];
  readonly #milliamps: number[];
  /** Inputs in use and conductor seats taken, by panel and module. */
  readonly #used: number[][];
  readonly #seats: number[][];
  readonly #setUse: number[][];
  readonly modules: number[][];
  readonly #panelCents: number[];
  readonly #panelBroken: number[];
  readonly #purchaseCents = new Map<number, Cents>();

  constructor(problem: PlanningProblem) {
    this.problem = problem;
    const panelAt = new Map(problem.panels.map((panel, at) => [panel.id, at]));
    const moduleAt = new Map(problem.modules.map((module, at) => [module.type, at]));
    const setOf = new Map<string, number>();
    (problem.together ?? []).forEach((set, at) => {
      for (const loop of set.loops) setOf.set(loop, at);
    });
    const classes = new Map<string, number>();
    this.#articles = [...articleSupplies(problem)].map(([key, supply]) => ({ key, supply, need: 0 }));
    this.#articleAt = new Map(this.#articles.map(({ key }, at) => [key, at]));
    const pairs = (items: Readonly<Record<string, number>> | undefined): number[] =>
      Object.entries(items ?? {}).flatMap(([code, count]) => [this.#articleAt.get(deviceArticleKey(code)) ?? 0, count]);
    this.loops = permittedOffers(problem).map((offers) => {
      const { loop } = offers;
      const keep = problem.modules.map(() => undefined as KeepOffer | undefined);
      for (const offer of offers.keep) keep[moduleAt.get(offer.module) ?? 0] = offer;
      const set = setOf.get(loop.id) ?? -1;
      const key = JSON.stringify([loop.panel, loop.joinKey]);
      if (loop.joinKey !== null && set < 0 && !classes.has(key)) classes.set(key, classes.size);
      return {
        offers,
        panel: panelAt.get(loop.panel) ?? 0,
        joinClass: loop.joinKey !== null && set < 0 ? (classes.get(key) ?? -1) : -1,
        ohms: typeof loop.ohms === "number" ? loop.ohms : Infinity,
        openings: loop.openings ?? 0,
        keep,
        withoutItems: offers.withoutInput.map(({ offer }) => pairs(offer.items)),
        keepItems: keep.map((offer) => pairs(offer?.items)),
        alone: [
          ...offers.withoutInput.map((_, at): Assignment => ({ as: "without", at })),
          ...offers.repair.map((_, at): Assignment => ({ as: "repair", at })),
          ...keep.flatMap((offer, module): Assignment[] => (offer ? [{ as: "keep", module, input: -1 }] : [])),
        ],
        repairModules: offers.repair.map((offer) => moduleAt.get(offer.module) ?? 0),
        set,
      };
    });
    this.assignments = this.loops.map(() => undefined);
    this.#moduleArticle = problem.modules.map(({ type }) => this.#articleAt.get(moduleArticleKey(problem, type)) ?? 0);
    this.#panelController = problem.panels.map((panel) =>
      problem.controllers.findIndex((controller) => controller.id === panel.controller),
    );
    this.#radio = problem.controllers.map(() => 0);
    this.#milliamps = problem.panels.map(() => 0);
    const table = () => problem.panels.map(() => problem.modules.map(() => 0));
    this.#used = table();
    this.#seats = table();
    this.modules = table();
    this.inputsAt = problem.panels.map(() => problem.modules.map(() => []));
    this.#setUse = (problem.together ?? []).map(() => problem.modules.map(() => 0));
    this.#panelCents = problem.panels.map(() => 0);
    this.#panelBroken = problem.panels.map(() => 0);
    problem.panels.forEach((_, panel) => {
      this.fitPanel(panel);
    });
  }

  /** Cost of the plan as it stands, broken limits weighed in. [cents] */
  cost(): Cents {
    let cents = this.#workCents;
    let broken = this.#excess;
    for (const one of this.#panelCents) cents += one;
    for (const one of this.#panelBroken) broken += one;
    this.#articles.forEach(({ supply, need }, at) => {
      if (need === 0) return;
      const key = at * 100_003 + need;
      let purchase = this.#purchaseCents.get(key);
      if (purchase === undefined) {
        purchase = cheapestPurchase(supply, need)?.cents ?? brokenLimitCents * (need - supply.stock);
        this.#purchaseCents.set(key, purchase);
      }
      cents += purchase;
    });
    this.problem.controllers.forEach((controller, at) => {
      broken += Math.max(0, (this.#radio[at] ?? 0) - controller.maxRadioDevices);
      let modules = 0;
      this.#panelController.forEach((owner, panel) => {
        if (owner === at) for (const count of this.modules[panel] ?? []) modules += count;
      });
      broken += Math.max(0, modules - controller.maxModules);
    });
    for (const set of this.#setUse.keys()) {
      if (!this.problem.together?.[set]?.sameModule) continue;
      broken += Math.max(0, (this.#setUse[set] ?? []).filter((count) => count > 0).length - 1);
    }
    return cents + broken * brokenLimitCents;
  }

  /** What one more piece costs at the moment, as a guide only. [cents] */
  guideCents(loop: number, assignment: Assignment, cheap: boolean): Cents {
    const facts = this.loops[loop];
    if (!facts) return 0;
    const price = (items: Readonly<Record<string, number>> | undefined) =>
      Object.entries(items ?? {}).reduce((sum, [code, count]) => {
        const supply = this.#articles[this.#articleAt.get(deviceArticleKey(code)) ?? -1]?.supply;
        const units = (supply?.tiers ?? []).map((tier) => tier.unitCents);
        if (supply && supply.stock > 0 && cheap) units.push(supply.stockUnitCents);
        return sum + count * (units.length === 0 ? brokenLimitCents : cheap ? Math.min(...units) : Math.max(...units));
      }, 0);
    if (assignment.as === "without") {
      const offer = facts.offers.withoutInput[assignment.at]?.offer;
      return (offer?.cents ?? 0) + price(offer?.items);
    }
    if (assignment.as === "repair") return facts.offers.repair[assignment.at]?.cents ?? 0;
    const offer = facts.keep[assignment.module];
    return (offer?.baseCents ?? 0) + (offer?.setCents ?? 0) + price(offer?.items);
  }

  /** An empty input; inputs are never deleted, so numbers stay valid for going back. */
  emptyInput(panel: number, module: number): number {
    const list = this.inputsAt[panel]?.[module] ?? [];
    for (const number of list) if (this.inputs[number]?.loops.length === 0) return number;
    list.push(this.inputs.length);
    return this.inputs.push({ panel, module, loops: [], cents: 0, excess: 0 }) - 1;
  }

  /** Gives a loop another treatment and counts the modules again. */
  assign(loop: number, assignment: Assignment): void {
    this.assignOnly(loop, assignment);
    this.fitPanel(this.loops[loop]?.panel ?? 0);
  }

  /** Gives a loop another treatment; {@link fitPanel} must follow before the cost is asked for. */
  assignOnly(loop: number, assignment: Assignment): void {
    this.#change(loop, -1);
    this.assignments[loop] = assignment;
    this.#change(loop, 1);
  }

  #change(loop: number, sign: 1 | -1): void {
    const facts = this.loops[loop];
    const assignment = this.assignments[loop];
    if (!facts || !assignment) return;
    const controller = this.#panelController[facts.panel] ?? 0;
    if (assignment.as === "without") {
      const offer = facts.offers.withoutInput[assignment.at]?.offer;
      this.#workCents += sign * (offer?.cents ?? 0);
      this.#addItems(facts.withoutItems[assignment.at], sign);
      this.#radio[controller] = (this.#radio[controller] ?? 0) + sign * (offer?.radioDevices ?? 0);
      return;
    }
    if (assignment.as === "repair") {
      const offer = facts.offers.repair[assignment.at];
      const module = facts.repairModules[assignment.at] ?? 0;
      this.#workCents += sign * (offer?.cents ?? 0);
      this.#radio[controller] = (this.#radio[controller] ?? 0) + sign * (offer?.radioDevices ?? 0);
      this.#takeInput(facts, module, sign);
      return;
    }
    const offer = facts.keep[assignment.module];
    this.#addItems(facts.keepItems[assignment.module], sign);
    this.#radio[controller] = (this.#radio[controller] ?? 0) + sign * (offer?.radioDevices ?? 0);
    this.#milliamps[facts.panel] = (this.#milliamps[facts.panel] ?? 0) + sign * (offer?.supplyMilliamps ?? 0);
    const input = this.inputs[assignment.input];
    if (!input) return;
    const before = input.loops.length;
    if (sign > 0) input.loops.push(loop);
    else input.loops.splice(input.loops.indexOf(loop), 1);
    if (before === 0 || input.loops.length === 0) this.#takeInput(facts, input.module, sign);
    this.#priceInput(input);
  }

  #takeInput(facts: LoopFacts, module: number, sign: 1 | -1): void {
    const used = this.#used[facts.panel];
    const seats = this.#seats[facts.panel];
    if (!used || !seats) return;
    used[module] = (used[module] ?? 0) + sign;
    if (facts.set < 0) {
      seats[module] = (seats[module] ?? 0) + sign;
      return;
    }
    const use = this.#setUse[facts.set];
    if (!use) return;
    use[module] = (use[module] ?? 0) + sign;
    const turned = sign > 0 ? use[module] === 1 : use[module] === 0;
    if (turned) seats[module] = (seats[module] ?? 0) + sign * (this.problem.together?.[facts.set]?.returnSeats ?? 1);
  }

  #priceInput(input: Input): void {
    this.#workCents -= input.cents;
    this.#excess -= input.excess;
    let cents = Math.max(0, input.loops.length - 1) * this.problem.join.cents;
    let carrier = Infinity;
    for (const loop of input.loops) {
      const offer = this.loops[loop]?.keep[input.module];
      if (!offer) continue;
      cents += offer.baseCents + offer.removeCents;
      carrier = Math.min(carrier, offer.setCents - offer.removeCents);
    }
    if (carrier !== Infinity) cents += carrier;
    input.cents = cents;
    input.excess = this.mayShare(input.loops, input.module) ? 0 : 1;
    this.#workCents += cents;
    this.#excess += input.excess;
  }

  /** Whether these loops may be on one input of that module. */
  mayShare(loops: readonly number[], module: number): boolean {
    let ohms = 0;
    let openings = 0;
    const joinClass = this.loops[loops[0] ?? -1]?.joinClass ?? -1;
    for (const loop of loops) {
      const facts = this.loops[loop];
      if (!facts?.keep[module]) return false;
      if (loops.length > 1 && (facts.joinClass < 0 || facts.joinClass !== joinClass)) return false;
      ohms += facts.ohms;
      openings += facts.openings;
    }
    if (ohms > (this.problem.modules[module]?.maxOhms ?? 0) + 1e-9) return loops.length === 0;
    if (loops.length < 2) return true;
    const { maxLoops, maxOpenings } = this.problem.join;
    return loops.length <= maxLoops && openings <= (maxOpenings ?? defaultMaxOpenings);
  }

  #addItems(pairs: readonly number[] | undefined, sign: 1 | -1): void {
    if (!pairs) return;
    for (let at = 0; at < pairs.length; at += 2) {
      const article = this.#articles[pairs[at] ?? 0];
      if (article) article.need += sign * (pairs[at + 1] ?? 0);
    }
  }

  /** Fewest modules that hold the inputs in use and the spare ones, one more where it saves more in conductors. */
  fitPanel(panel: number): void {
    const counts = this.modules[panel];
    if (!counts) return;
    const place = this.problem.panels[panel];
    let cents = 0;
    let free = 0;
    this.problem.modules.forEach((module, at) => {
      const used = this.#used[panel]?.[at] ?? 0;
      let count = Math.ceil(used / module.inputs);
      const conductors = this.#seats[panel]?.[at] ?? 0;
      const guide = module.fitCents + this.#guideModuleCents(at);
      const extraCents = (modules: number) =>
        Math.max(0, conductors - modules * module.conductorSeats) * this.problem.extraConductorCents;
      while (extraCents(count) - extraCents(count + 1) > guide) count += 1;
      this.#setModules(panel, at, count);
      cents += count * module.fitCents + extraCents(count);
      free += count * module.inputs - used;
    });
    const inUse = counts.some((count) => count > 0);
    const spare = Math.max(place?.spareInputs ?? 0, inUse ? (place?.spareInputsWhenUsed ?? 0) : 0);
    while (free < spare && this.problem.modules.length > 0) {
      const at = this.#moduleForSpare(spare - free);
      const module = this.problem.modules[at];
      this.#setModules(panel, at, (counts[at] ?? 0) + 1);
      cents += module?.fitCents ?? 0;
      free += module?.inputs ?? 1;
    }
    this.#panelCents[panel] = cents + (counts.some((count) => count > 0) ? (place?.openCents ?? 0) : 0);
    const limit = place?.supplyMilliamps ?? Infinity;
    this.#panelBroken[panel] = (this.#milliamps[panel] ?? 0) > limit + 1e-9 ? 1 : 0;
  }

  #guideModuleCents(module: number): Cents {
    return this.#articles[this.#moduleArticle[module] ?? 0]?.supply.tiers[0]?.unitCents ?? 0;
  }

  #moduleForSpare(wanted: number): number {
    let best = 0;
    let bestCents = Infinity;
    this.problem.modules.forEach((module, at) => {
      const cents = Math.ceil(wanted / module.inputs) * (module.fitCents + this.#guideModuleCents(at));
      if (cents < bestCents) {
        best = at;
        bestCents = cents;
      }
    });
    return best;
  }

  #setModules(panel: number, module: number, count: number): void {
    const counts = this.modules[panel];
    const article = this.#articles[this.#moduleArticle[module] ?? 0];
    if (!counts || !article) return;
    article.need += count - (counts[module] ?? 0);
    counts[module] = count;
  }

  /** Inputs in use at a panel, by module number. */
  usedInputs(panel: number): readonly number[] {
    return this.#used[panel] ?? [];
  }

  /** The plan as plain data. */
  draft(): PlanDraft {
    const choices = this.loops.flatMap(({ offers }, index): PlanChoice[] => {
      const assignment = this.assignments[index];
      const loop = offers.loop.id;
      if (!assignment) return [];
      if (assignment.as === "without") {
        const chosen = offers.withoutInput[assignment.at];
        return chosen ? [{ loop, kind: chosen.offer.kind, option: chosen.option }] : [];
      }
      if (assignment.as === "repair") {
        return [{ loop, kind: "repair", module: offers.repair[assignment.at]?.module ?? "" }];
      }
      const module = this.problem.modules[assignment.module]?.type ?? "";
      return [{ loop, kind: "keep", module, input: String(assignment.input) }];
    });
    const modules: Record<string, Record<string, number>> = {};
    this.problem.panels.forEach((panel, at) => {
      const fitted = this.problem.modules.flatMap(({ type }, module): [string, number][] => {
        const count = this.modules[at]?.[module] ?? 0;
        return count > 0 ? [[type, count]] : [];
      });
      if (fitted.length > 0) modules[panel.id] = Object.fromEntries(fitted);
    });
    return { choices, modules };
  }
}
