import type { ArticleSupply, DeviceCounts, LoopOffers, PlanningProblem } from "./problem.js";

/** One thing wrong with the planning problem's data. */
export interface PlanDataFault {
  /** JSON path, for example `problem.loops[3].keep[0].module`. */
  readonly path: string;
  /** What stands there. */
  readonly typed: string;
  /** What would have been accepted. */
  readonly expected: string;
  /** Path, value, expectation and how to mend it, as one sentence. */
  readonly message: string;
}

/**
 * Everything wrong with the problem's data that would let a plan cost less than it can, or make it meaningless:
 * negative prices, price steps from 0, modules without inputs, unknown names, names used twice. Empty when sound.
 */
export function checkPlanProblem(problem: PlanningProblem): readonly PlanDataFault[] {
  const check = new Checker();
  modulesFaults(check, problem);
  problem.items.forEach((item, at) => {
    check.supply(`items[${at}].supply`, item.supply);
  });
  check.unique(
    "items",
    "code",
    problem.items.map((item) => item.code),
  );
  check.unique(
    "controllers",
    "id",
    problem.controllers.map((controller) => controller.id),
  );
  problem.controllers.forEach((controller, at) => {
    check.count(`controllers[${at}].maxModules`, controller.maxModules, 0);
    check.count(`controllers[${at}].maxRadioDevices`, controller.maxRadioDevices, 0);
  });
  check.unique(
    "panels",
    "id",
    problem.panels.map((panel) => panel.id),
  );
  const controllers = new Set(problem.controllers.map((controller) => controller.id));
  problem.panels.forEach((panel, at) => {
    check.known(`panels[${at}].controller`, panel.controller, controllers, "controllers");
    check.count(`panels[${at}].spareInputs`, panel.spareInputs ?? 0, 0);
    check.count(`panels[${at}].spareInputsWhenUsed`, panel.spareInputsWhenUsed ?? 0, 0);
    check.cents(`panels[${at}].openCents`, panel.openCents ?? 0);
    check.amount(`panels[${at}].supplyMilliamps`, panel.supplyMilliamps ?? 0, "mA");
  });
  check.count("join.maxLoops", problem.join.maxLoops, 1);
  check.count("join.maxOpenings", problem.join.maxOpenings ?? 0, 0);
  check.cents("join.cents", problem.join.cents);
  check.cents("extraConductorCents", problem.extraConductorCents);
  check.unique(
    "loops",
    "id",
    problem.loops.map((loop) => loop.id),
  );
  problem.loops.forEach((loop, at) => {
    loopFaults(check, problem, loop, `loops[${at}]`);
  });
  togetherFaults(check, problem);
  pinFaults(check, problem);
  return check.faults;
}

class Checker {
  readonly faults: PlanDataFault[] = [];

  fault(path: string, typed: unknown, expected: string): void {
    const shown = typed === undefined ? "nothing" : typeof typed === "number" ? String(typed) : JSON.stringify(typed);
    this.faults.push({
      path: `problem.${path}`,
      typed: shown,
      expected,
      message: `problem.${path} is ${shown}; expected ${expected}`,
    });
  }

  /** A whole number not below the least. */
  count(path: string, value: number, least: number): void {
    if (!Number.isSafeInteger(value) || value < least) this.fault(path, value, `a whole number from ${least}`);
  }

  cents(path: string, value: number): void {
    if (!Number.isSafeInteger(value) || value < 0) this.fault(path, value, "whole cents, 0 or more");
  }

  amount(path: string, value: number, unit: string): void {
    if (!Number.isFinite(value) || value < 0) this.fault(path, value, `a number of ${unit}, 0 or more`);
  }

  known(path: string, name: string, names: ReadonlySet<string>, where: string): void {
    if (!names.has(name)) this.fault(path, name, `a name listed under ${where}`);
  }

  unique(list: string, field: string, names: readonly string[]): void {
    names.forEach((name, at) => {
      const first = names.indexOf(name);
      if (name === "") this.fault(`${list}[${at}].${field}`, name, "a name that is not empty");
      if (first < at) this.fault(`${list}[${at}].${field}`, name, `a name not used before; ${list}[${first}] has it`);
    });
  }

  supply(path: string, supply: ArticleSupply): void {
    this.count(`${path}.stock`, supply.stock, 0);
    this.cents(`${path}.stockUnitCents`, supply.stockUnitCents);
    supply.tiers.forEach((tier, at) => {
      this.count(`${path}.tiers[${at}].from`, tier.from, 1);
      this.cents(`${path}.tiers[${at}].unitCents`, tier.unitCents);
      if (supply.tiers.findIndex((other) => other.from === tier.from) < at) {
        this.fault(`${path}.tiers[${at}].from`, tier.from, "one price for each quantity");
      }
    });
  }
}

function modulesFaults(check: Checker, problem: PlanningProblem): void {
  check.unique(
    "modules",
    "type",
    problem.modules.map((module) => module.type),
  );
  problem.modules.forEach((module, at) => {
    const path = `modules[${at}]`;
    check.count(`${path}.inputs`, module.inputs, 1);
    check.count(`${path}.conductorSeats`, module.conductorSeats, 1);
    check.amount(`${path}.maxOhms`, module.maxOhms, "ohms");
    check.cents(`${path}.fitCents`, module.fitCents);
    if (module.supply) check.supply(`${path}.supply`, module.supply);
    if (module.sharesSupplyWith === undefined) {
      if (!module.supply) check.fault(`${path}.supply`, module.supply, "a supply, or sharesSupplyWith");
      return;
    }
    const owner = problem.modules.find((other) => other.type === module.sharesSupplyWith);
    if (!owner || owner.sharesSupplyWith !== undefined || owner === module) {
      check.fault(`${path}.sharesSupplyWith`, module.sharesSupplyWith, "another module type with a supply of its own");
    }
  });
}

function itemsFaults(check: Checker, problem: PlanningProblem, path: string, items: DeviceCounts | undefined): void {
  const codes = new Set(problem.items.map((item) => item.code));
  for (const [code, count] of Object.entries(items ?? {})) {
    check.known(`${path}.${code}`, code, codes, "items");
    check.count(`${path}.${code}`, count, 0);
  }
}

function loopFaults(check: Checker, problem: PlanningProblem, loop: LoopOffers, path: string): void {
  const types = new Set(problem.modules.map((module) => module.type));
  check.known(`${path}.panel`, loop.panel, new Set(problem.panels.map((panel) => panel.id)), "panels");
  if (typeof loop.ohms === "number") check.amount(`${path}.ohms`, loop.ohms, "ohms");
  else if (loop.keep.length > 0) check.fault(`${path}.ohms`, loop.ohms, "a number of ohms, since keep is offered");
  check.count(`${path}.openings`, loop.openings ?? 0, 0);
  loop.withoutInput.forEach((offer, at) => {
    check.cents(`${path}.withoutInput[${at}].cents`, offer.cents);
    check.count(`${path}.withoutInput[${at}].radioDevices`, offer.radioDevices, 0);
    itemsFaults(check, problem, `${path}.withoutInput[${at}].items`, offer.items);
    const others = loop.withoutInput.length + loop.keep.length + loop.repair.length - 1;
    if (offer.kind === "excluded" && others > 0) {
      check.fault(`${path}.withoutInput[${at}].kind`, offer.kind, "no other offer beside excluded (life safety)");
    }
  });
  for (const list of ["keep", "repair"] as const) {
    loop[list].forEach((offer, at) => {
      check.known(`${path}.${list}[${at}].module`, offer.module, types, "modules");
      const first = loop[list].findIndex((other) => other.module === offer.module);
      if (first < at) check.fault(`${path}.${list}[${at}].module`, offer.module, `one ${list} offer for each module`);
      check.count(`${path}.${list}[${at}].radioDevices`, offer.radioDevices ?? 0, 0);
    });
  }
  loop.keep.forEach((offer, at) => {
    for (const field of ["baseCents", "setCents", "removeCents"] as const) {
      check.cents(`${path}.keep[${at}].${field}`, offer[field]);
    }
    check.amount(`${path}.keep[${at}].supplyMilliamps`, offer.supplyMilliamps ?? 0, "mA");
    itemsFaults(check, problem, `${path}.keep[${at}].items`, offer.items);
  });
  loop.repair.forEach((offer, at) => {
    check.cents(`${path}.repair[${at}].cents`, offer.cents);
  });
}

function togetherFaults(check: Checker, problem: PlanningProblem): void {
  const panelOf = new Map(problem.loops.map((loop) => [loop.id, loop.panel]));
  const seen = new Map<string, number>();
  (problem.together ?? []).forEach((set, at) => {
    const path = `together[${at}]`;
    check.count(`${path}.returnSeats`, set.returnSeats, 0);
    set.loops.forEach((loop, member) => {
      check.known(`${path}.loops[${member}]`, loop, new Set(panelOf.keys()), "loops");
      const first = seen.get(loop);
      if (first !== undefined)
        check.fault(`${path}.loops[${member}]`, loop, `a loop in one set only; set ${first} has it`);
      seen.set(loop, at);
      if (panelOf.has(loop) && panelOf.get(loop) !== panelOf.get(set.loops[0] ?? "")) {
        check.fault(`${path}.loops[${member}]`, loop, "loops of one panel");
      }
    });
  });
}

function pinFaults(check: Checker, problem: PlanningProblem): void {
  const loops = new Set(problem.loops.map((loop) => loop.id));
  (problem.pins ?? []).forEach((pin, at) => {
    check.known(`pins[${at}].loop`, pin.loop, loops, "loops");
    if ((pin.kind === undefined) === (pin.forbid === undefined)) {
      check.fault(`pins[${at}]`, pin, "exactly one of kind and forbid");
    }
  });
}
