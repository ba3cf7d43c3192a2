import type { Cents } from "../quantities/money.js";
import { packsIntoModules } from "./pack-modules.js";
import type { PlanChoice, PlanDraft } from "./plan.js";
import { defaultMaxOpenings, type KeepOffer, type LoopOffers, type PlanningProblem } from "./problem.js";
import { articleSupplies, cheapestPurchase, deviceArticleKey, moduleArticleKey, type Purchase } from "./purchase.js";

/** One line of a plan's bill. */
export interface PlanBillLine {
  /** What the money is for, unique within the bill. */
  readonly line: string;
  readonly quantity: number;
  readonly cents: Cents;
  /** Loops the line serves; empty for lines of the whole job. */
  readonly loops: readonly string[];
}

/** A plan reckoned again from the problem alone. */
export interface PricedPlan {
  readonly costCents: Cents;
  readonly lines: readonly PlanBillLine[];
  /** Rules that the plan breaks, in words; empty when it keeps them all. */
  readonly violations: readonly string[];
  readonly purchases: Readonly<Record<string, Purchase>>;
  /** Loops that lose their own zone: joined beyond the first of their input, or retired. */
  readonly zonesLost: number;
}

interface InputUse {
  readonly panel: string;
  readonly module: string;
  readonly input: string;
  readonly choices: PlanChoice[];
}

/**
 * Prices a plan from the problem and the choices alone and checks every rule. It shares no arithmetic with the
 * solver's model or with the quick plan, so a mistake there shows here.
 */
export function pricePlan(problem: PlanningProblem, plan: PlanDraft): PricedPlan {
  const violations: string[] = [];
  const lines: PlanBillLine[] = [];
  const needs = new Map<string, number>();
  const radio = new Map<string, number>();
  const milliamps = new Map<string, number>();
  const loops = new Map(problem.loops.map((loop) => [loop.id, loop]));
  const controllerOf = new Map(problem.panels.map((panel) => [panel.id, panel.controller]));
  const add = (map: Map<string, number>, key: string, amount: number) => map.set(key, (map.get(key) ?? 0) + amount);
  const addItems = (items: Readonly<Record<string, number>> | undefined) => {
    for (const [code, count] of Object.entries(items ?? {})) add(needs, deviceArticleKey(code), count);
  };

  const chosen = new Map<string, PlanChoice>();
  const inputs = new Map<string, InputUse>();
  let zonesLost = 0;
  for (const choice of plan.choices) {
    const loop = loops.get(choice.loop);
    if (!loop) {
      violations.push(`${choice.loop}: no such loop`);
      continue;
    }
    if (chosen.has(loop.id)) violations.push(`${loop.id}: chosen twice`);
    chosen.set(loop.id, choice);
    violations.push(...pinViolations(problem, choice));
    if (choice.kind === "keep" || choice.kind === "repair") {
      // A repaired loop holds an input by itself and need not name it.
      const input = choice.input ?? (choice.kind === "repair" ? `of ${loop.id}` : undefined);
      if (choice.module === undefined || input === undefined) {
        violations.push(`${loop.id}: ${choice.kind} needs a module${choice.kind === "keep" ? " and an input" : ""}`);
        continue;
      }
      const key = JSON.stringify([loop.panel, choice.module, input, choice.input === undefined]);
      const use = inputs.get(key) ?? { panel: loop.panel, module: choice.module, input, choices: [] };
      use.choices.push(choice);
      inputs.set(key, use);
      continue;
    }
    const offer = loop.withoutInput[choice.option ?? -1];
    if (!offer || offer.kind !== choice.kind) {
      violations.push(`${loop.id}: ${choice.kind} is not offered as option ${choice.option}`);
      continue;
    }
    lines.push({ line: `${offer.kind} ${loop.id}`, quantity: 1, cents: offer.cents, loops: [loop.id] });
    addItems(offer.items);
    add(radio, controllerOf.get(loop.panel) ?? "", offer.radioDevices);
    if (offer.kind === "retire") zonesLost += 1;
  }
  for (const loop of problem.loops) if (!chosen.has(loop.id)) violations.push(`${loop.id}: nothing chosen`);

  for (const use of inputs.values()) {
    const members = use.choices.flatMap((choice) => loops.get(choice.loop) ?? []);
    if (use.choices.some((choice) => choice.kind === "repair")) {
      const [loop] = members;
      const offer = loop?.repair.find((candidate) => candidate.module === use.module);
      if (!loop || members.length > 1) violations.push(`input ${use.input}: a repaired loop shares its input`);
      if (!loop || !offer) {
        violations.push(`${loop?.id}: repair on ${use.module} is not offered`);
        continue;
      }
      lines.push({ line: `repair ${loop.id}`, quantity: 1, cents: offer.cents, loops: [loop.id] });
      add(radio, controllerOf.get(loop.panel) ?? "", offer.radioDevices);
      continue;
    }
    const offers = members.flatMap((loop) => loop.keep.find((candidate) => candidate.module === use.module) ?? []);
    if (offers.length < members.length) {
      violations.push(`input ${use.input}: not every loop may be kept on ${use.module}`);
      continue;
    }
    violations.push(...joinViolations(problem, use.module, members));
    zonesLost += members.length - 1;
    const ids = members.map((loop) => loop.id);
    lines.push({
      line: `keep ${ids.join(" + ")}`,
      quantity: ids.length,
      cents: groupCents(offers, problem),
      loops: ids,
    });
    for (const offer of offers) {
      addItems(offer.items);
      add(radio, controllerOf.get(use.panel) ?? "", offer.radioDevices ?? 0);
      add(milliamps, use.panel, offer.supplyMilliamps ?? 0);
    }
  }

  const modulesAt = new Map<string, number>();
  for (const panel of problem.panels) {
    let free = 0;
    for (const module of problem.modules) {
      const uses = [...inputs.values()].filter((use) => use.panel === panel.id && use.module === module.type);
      const count = plan.modules[panel.id]?.[module.type] ?? 0;
      if (!Number.isInteger(count) || count < 0) violations.push(`${panel.id}: ${count} modules of ${module.type}`);
      free += count * module.inputs - uses.length;
      if (uses.length > count * module.inputs) {
        violations.push(`${panel.id}: ${uses.length} inputs used of ${count} × ${module.type}`);
      }
      const ids = uses.flatMap((use) => use.choices.map((choice) => choice.loop));
      const sets = (problem.together ?? []).map((set) => set.loops.filter((loop) => ids.includes(loop)));
      violations.push(...packViolations(problem, panel.id, module.type, module.inputs, count, uses.length, sets));
      const conductors = seatsTaken(problem, uses.length, sets);
      const extra = Math.max(0, conductors - count * module.conductorSeats);
      if (extra > 0) {
        const line = `extra conductors ${panel.id} ${module.type}`;
        lines.push({ line, quantity: extra, cents: extra * problem.extraConductorCents, loops: [] });
      }
      if (count === 0) continue;
      add(needs, moduleArticleKey(problem, module.type), count);
      add(modulesAt, panel.controller, count);
      const line = `fit ${module.type} at ${panel.id}`;
      lines.push({ line, quantity: count, cents: count * module.fitCents, loops: ids });
    }
    const inUse = Object.values(plan.modules[panel.id] ?? {}).some((count) => count > 0);
    if (inUse && (panel.openCents ?? 0) > 0) {
      lines.push({ line: `place ${panel.id}`, quantity: 1, cents: panel.openCents ?? 0, loops: [] });
    }
    const spare = Math.max(panel.spareInputs ?? 0, inUse ? (panel.spareInputsWhenUsed ?? 0) : 0);
    if (free < spare) violations.push(`${panel.id}: ${free} spare inputs, ${spare} asked for`);
    if (panel.supplyMilliamps !== undefined && (milliamps.get(panel.id) ?? 0) > panel.supplyMilliamps + 1e-9) {
      violations.push(`${panel.id}: ${milliamps.get(panel.id)} mA drawn, the supply gives ${panel.supplyMilliamps} mA`);
    }
  }
  violations.push(...countedTypesViolations(problem, plan), ...separatedViolations(problem, chosen));

  for (const controller of problem.controllers) {
    const modules = modulesAt.get(controller.id) ?? 0;
    const devices = radio.get(controller.id) ?? 0;
    if (modules > controller.maxModules) {
      violations.push(`${controller.id}: ${modules} modules, it takes ${controller.maxModules}`);
    }
    if (devices > controller.maxRadioDevices) {
      violations.push(`${controller.id}: ${devices} radio devices, it takes ${controller.maxRadioDevices}`);
    }
  }

  const purchases: Record<string, Purchase> = {};
  for (const [key, supply] of articleSupplies(problem)) {
    const need = needs.get(key) ?? 0;
    needs.delete(key);
    if (need === 0) continue;
    const purchase = cheapestPurchase(supply, need);
    if (!purchase) {
      violations.push(`${key}: ${need} needed, ${supply.stock} in stock and none for sale`);
      continue;
    }
    purchases[key] = purchase;
    lines.push({ line: `buy ${key}`, quantity: need, cents: purchase.cents, loops: [] });
  }
  for (const key of needs.keys()) violations.push(`${key}: no such article`);
  const costCents = lines.reduce((sum, line) => sum + line.cents, 0);
  return { costCents, lines, violations, purchases, zonesLost };
}

/** Work of the loops on one input: Σ base + least of (set of the carrier + remove of the others) + joins. [cents] */
function groupCents(offers: readonly KeepOffer[], problem: PlanningProblem): Cents {
  const base = offers.reduce((sum, offer) => sum + offer.baseCents, 0);
  const endings = offers.map((carrier) =>
    offers.reduce((sum, offer) => sum + (offer === carrier ? offer.setCents : offer.removeCents), 0),
  );
  return base + Math.min(...endings) + (offers.length - 1) * problem.join.cents;
}

function joinViolations(problem: PlanningProblem, type: string, members: readonly LoopOffers[]): string[] {
  const names = members.map((loop) => loop.id).join(" + ");
  const found: string[] = [];
  const ohms = members.reduce((sum, loop) => sum + (typeof loop.ohms === "number" ? loop.ohms : Infinity), 0);
  const maxOhms = problem.modules.find((module) => module.type === type)?.maxOhms ?? 0;
  if (ohms > maxOhms + 1e-9) found.push(`${names}: ${ohms} Ω on one input, ${type} takes ${maxOhms} Ω`);
  if (members.length < 2) return found;
  if (members.length > problem.join.maxLoops) found.push(`${names}: more than ${problem.join.maxLoops} loops joined`);
  if (members.some((loop) => loop.joinKey === null || loop.joinKey !== members[0]?.joinKey)) {
    found.push(`${names}: may not be joined`);
  }
  const openings = members.reduce((sum, loop) => sum + (loop.openings ?? 0), 0);
  const maxOpenings = problem.join.maxOpenings ?? defaultMaxOpenings;
  if (openings > maxOpenings) found.push(`${names}: ${openings} openings joined, ${maxOpenings} allowed`);
  if ((problem.together ?? []).some((set) => members.some((loop) => set.loops.includes(loop.id)))) {
    found.push(`${names}: loops that share a return may not be joined`);
  }
  return found;
}

function pinViolations(problem: PlanningProblem, choice: PlanChoice): string[] {
  return (problem.pins ?? [])
    .filter((pin) => pin.loop === choice.loop)
    .filter((pin) => (pin.kind !== undefined && pin.kind !== choice.kind) || pin.forbid === choice.kind)
    .map((pin) => `${choice.loop}: ${choice.kind} against the pin (${pin.kind ?? `not ${pin.forbid}`})`);
}

/** Conductor seats: one for each input, but the return's own number for loops that share one. */
function seatsTaken(problem: PlanningProblem, used: number, sets: readonly (readonly string[])[]): number {
  return sets.reduce((seats, members, index) => {
    const returnSeats = problem.together?.[index]?.returnSeats ?? 0;
    return members.length === 0 ? seats : seats - members.length + returnSeats;
  }, used);
}

function packViolations(
  problem: PlanningProblem,
  panel: string,
  type: string,
  inputs: number,
  count: number,
  used: number,
  sets: readonly (readonly string[])[],
): string[] {
  const sizes = sets.filter((_, index) => problem.together?.[index]?.sameModule).map((members) => members.length);
  const single = used - sizes.reduce((sum, size) => sum + size, 0);
  if (packsIntoModules({ sizes, singles: single, bins: count, capacity: inputs })) return [];
  return [`${panel}: loops that share a return do not fit onto the same module among ${count} × ${type}`];
}

function separatedViolations(problem: PlanningProblem, chosen: ReadonlyMap<string, PlanChoice>): string[] {
  return (problem.together ?? []).flatMap((set) => {
    const types = new Set(set.loops.flatMap((loop) => chosen.get(loop)?.module ?? []));
    return set.sameModule && types.size > 1 ? [`${set.loops.join(", ")}: share a return, on different modules`] : [];
  });
}

function countedTypesViolations(problem: PlanningProblem, plan: PlanDraft): string[] {
  return Object.entries(plan.modules).flatMap(([panel, counts]) =>
    Object.keys(counts)
      .filter((type) => !problem.modules.some((module) => module.type === type))
      .concat(problem.panels.some((known) => known.id === panel) ? [] : ["(no such panel)"])
      .map((type) => `${panel}: modules of ${type} are not in the problem`),
  );
}
