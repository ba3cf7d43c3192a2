import type { ArticleSupply, LoopOffers, PlanningProblem } from "../../lib/plan/problem.js";

/**
 * Least cost over every plan there is, or null when there is none; `mostZonesLost`: over those that join or retire no
 * more loops. Written without anything of the library.
 */
export function bruteForce(problem: PlanningProblem, mostZonesLost = Infinity): number | null {
  const search = new Search(problem, mostZonesLost);
  search.next(0);
  return search.best === Infinity ? null : search.best;
}

interface Line {
  readonly panel: string;
  readonly module: string;
  readonly repaired: boolean;
  readonly loops: LoopOffers[];
}

function purchase(supply: ArticleSupply, need: number): number {
  let best = need === 0 ? 0 : Infinity;
  for (let fromStock = 0; fromStock <= Math.min(supply.stock, need); fromStock += 1) {
    const rest = need - fromStock;
    if (rest === 0) best = Math.min(best, fromStock * supply.stockUnitCents);
    for (const { from, unitCents } of supply.tiers) {
      best = Math.min(best, fromStock * supply.stockUnitCents + Math.max(rest, from) * unitCents);
    }
  }
  return best;
}

class Search {
  best = Infinity;
  readonly problem: PlanningProblem;
  readonly lines: Line[] = [];
  readonly needs = new Map<string, number>();
  workCents = 0;
  radio = 0;
  readonly remaining: number[];

  readonly mostZonesLost: number;
  retired = 0;

  constructor(problem: PlanningProblem, mostZonesLost: number) {
    this.problem = problem;
    this.mostZonesLost = mostZonesLost;
    const least = problem.loops.map((loop) =>
      Math.min(
        ...loop.withoutInput.map((offer) => offer.cents),
        ...loop.keep.map((offer) => offer.baseCents),
        ...loop.repair.map((offer) => offer.cents),
      ),
    );
    this.remaining = least.map((_, at) => least.slice(at).reduce((sum, cents) => sum + cents, 0)).concat(0);
  }

  moduleOf(type: string) {
    const module = this.problem.modules.find((one) => one.type === type);
    if (!module) throw new Error(`no module ${type}`);
    return module;
  }

  may(loop: LoopOffers, kind: string): boolean {
    return (this.problem.pins ?? []).every(
      (pin) => pin.loop !== loop.id || (pin.kind === undefined ? pin.forbid !== kind : pin.kind === kind),
    );
  }

  use(items: Readonly<Record<string, number>> | undefined, sign: number): void {
    for (const [code, count] of Object.entries(items ?? {})) {
      this.needs.set(code, (this.needs.get(code) ?? 0) + sign * count);
    }
  }

  /** What keeping costs, without the purchases and modules. */
  linesCents(): number {
    let sum = 0;
    for (const { repaired, loops, module } of this.lines) {
      if (repaired) {
        sum += loops[0]?.repair.find((offer) => offer.module === module)?.cents ?? Infinity;
        continue;
      }
      const offers = loops.map((loop) => loop.keep.find((offer) => offer.module === module));
      let least = Infinity;
      offers.forEach((_, carrier) => {
        let cents = 0;
        offers.forEach((offer, at) => {
          cents += (offer?.baseCents ?? 0) + (at === carrier ? (offer?.setCents ?? 0) : (offer?.removeCents ?? 0));
        });
        least = Math.min(least, cents);
      });
      sum += least + (loops.length - 1) * this.problem.join.cents;
    }
    return sum;
  }

  bought(): number {
    return this.problem.items.reduce((sum, { code, supply }) => sum + purchase(supply, this.needs.get(code) ?? 0), 0);
  }

  next(at: number): void {
    const soFar = this.workCents + this.linesCents() + (this.remaining[at] ?? 0);
    // Every price is 0 or more, and a joined loop costs at least its base: nothing cheaper can follow.
    if (soFar >= this.best) return;
    const loop = this.problem.loops[at];
    if (!loop) {
      this.leaf();
      return;
    }
    for (const offer of loop.withoutInput) {
      if (!this.may(loop, offer.kind)) continue;
      this.workCents += offer.cents;
      this.radio += offer.radioDevices;
      this.retired += offer.kind === "retire" ? 1 : 0;
      this.use(offer.items, 1);
      this.next(at + 1);
      this.use(offer.items, -1);
      this.retired -= offer.kind === "retire" ? 1 : 0;
      this.radio -= offer.radioDevices;
      this.workCents -= offer.cents;
    }
    if (this.may(loop, "repair")) {
      for (const offer of loop.repair) {
        this.radio += offer.radioDevices;
        this.lines.push({ panel: loop.panel, module: offer.module, repaired: true, loops: [loop] });
        this.next(at + 1);
        this.lines.pop();
        this.radio -= offer.radioDevices;
      }
    }
    if (!this.may(loop, "keep")) return;
    for (const offer of loop.keep) {
      this.radio += offer.radioDevices ?? 0;
      this.use(offer.items, 1);
      for (const line of [...this.lines]) {
        if (line.panel !== loop.panel || line.module !== offer.module || !this.mayJoin(line, loop)) continue;
        line.loops.push(loop);
        this.next(at + 1);
        line.loops.pop();
      }
      const maxOhms = this.problem.modules.find((module) => module.type === offer.module)?.maxOhms ?? 0;
      if (typeof loop.ohms === "number" && loop.ohms <= maxOhms) {
        this.lines.push({ panel: loop.panel, module: offer.module, repaired: false, loops: [loop] });
        this.next(at + 1);
        this.lines.pop();
      }
      this.use(offer.items, -1);
      this.radio -= offer.radioDevices ?? 0;
    }
  }

  mayJoin(line: Line, loop: LoopOffers): boolean {
    const all = [...line.loops, loop];
    if (line.repaired || all.length > this.problem.join.maxLoops) return false;
    if (loop.joinKey === null || all.some((one) => one.joinKey !== loop.joinKey)) return false;
    if ((this.problem.together ?? []).some((set) => all.some((one) => set.loops.includes(one.id)))) return false;
    const maxOhms = this.problem.modules.find((module) => module.type === line.module)?.maxOhms ?? 0;
    if (all.reduce((sum, one) => sum + (one.ohms as number), 0) > maxOhms) return false;
    return all.reduce((sum, one) => sum + (one.openings ?? 0), 0) <= (this.problem.join.maxOpenings ?? 6);
  }

  leaf(): void {
    const { problem } = this;
    const controller = problem.controllers[0];
    const joined = this.lines.reduce((sum, line) => sum + line.loops.length - 1, 0);
    if (this.retired + joined > this.mostZonesLost) return;
    if (!controller || this.radio > controller.maxRadioDevices) return;
    for (const panel of problem.panels) {
      let milliamps = 0;
      for (const line of this.lines) {
        if (line.repaired || line.panel !== panel.id) continue;
        for (const loop of line.loops) {
          milliamps += loop.keep.find((offer) => offer.module === line.module)?.supplyMilliamps ?? 0;
        }
      }
      if (milliamps > (panel.supplyMilliamps ?? Infinity)) return;
    }
    for (const set of problem.together ?? []) {
      const types = new Set(
        this.lines.filter((one) => set.loops.includes(one.loops[0]?.id ?? "")).map((one) => one.module),
      );
      if (set.sameModule && types.size > 1) return;
    }
    const banks = problem.panels.flatMap((panel) =>
      problem.modules.map((module) => {
        const here = this.lines.filter((line) => line.panel === panel.id && line.module === module.type);
        const sets = (problem.together ?? [])
          .map((set) => ({ set, size: here.filter((line) => set.loops.includes(line.loops[0]?.id ?? "")).length }))
          .filter(({ size }) => size > 0);
        const seats = sets.reduce((sum, { set, size }) => sum - size + set.returnSeats, here.length);
        return { panel, module, used: here.length, seats, sets };
      }),
    );
    const fixed = this.workCents + this.linesCents() + this.bought();
    const counts: number[] = [];
    const count = (at: number): void => {
      if (counts.reduce((sum, one) => sum + one, 0) > controller.maxModules) return;
      const bank = banks[at];
      if (!bank) {
        this.modules(banks, counts, fixed);
        return;
      }
      for (let number = 0; number <= controller.maxModules; number += 1) {
        // At most one set of loops shares a return here: it fits as soon as one module takes it.
        if (bank.sets.some(({ set, size }) => set.sameModule && size > bank.module.inputs)) return;
        if (bank.used > number * bank.module.inputs) continue;
        counts.push(number);
        count(at + 1);
        counts.pop();
      }
    };
    count(0);
  }

  modules(
    banks: readonly { panel: { id: string }; module: { type: string }; used: number; seats: number }[],
    counts: readonly number[],
    fixed: number,
  ): void {
    const { problem } = this;
    let cents = fixed;
    const needs = new Map<string, number>();
    banks.forEach((bank, at) => {
      const module = this.moduleOf(bank.module.type);
      const number = counts[at] ?? 0;
      cents += number * module.fitCents;
      cents += Math.max(0, bank.seats - number * module.conductorSeats) * problem.extraConductorCents;
      const article = module.sharesSupplyWith ?? module.type;
      needs.set(article, (needs.get(article) ?? 0) + number);
    });
    for (const panel of problem.panels) {
      let free = 0;
      let fitted = 0;
      banks.forEach((bank, at) => {
        if (bank.panel.id !== panel.id) return;
        fitted += counts[at] ?? 0;
        free += (counts[at] ?? 0) * this.moduleOf(bank.module.type).inputs - bank.used;
      });
      if (fitted > 0) cents += panel.openCents ?? 0;
      if (free < (panel.spareInputs ?? 0) || (fitted > 0 && free < (panel.spareInputsWhenUsed ?? 0))) return;
    }
    for (const [type, need] of needs) {
      const { supply } = this.moduleOf(type);
      cents += supply ? purchase(supply, need) : Infinity;
    }
    this.best = Math.min(this.best, cents);
  }
}
