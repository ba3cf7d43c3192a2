import type { Cents } from "../quantities/money.js";
import { cheapestCarrier, countJoinGroups, joinableSets, joinGroups } from "./join-groups.js";
import { MilpBuilder, type MilpModel } from "./milp-model.js";
import { type PermittedOffers, permittedOffers } from "./permitted-offers.js";
import {
  type ArticleSupply,
  type DeviceCounts,
  defaultMaxOpenings,
  type KeepOffer,
  type PlanningProblem,
  type PriceTier,
} from "./problem.js";
import { articleSupplies, cheapestPurchase, deviceArticleKey, moduleArticleKey } from "./purchase.js";

/** What a column of the model stands for; loops are indices in loop order. */
export type ColumnMeaning =
  | { readonly is: "without"; readonly loop: number; readonly option: number }
  | { readonly is: "repair"; readonly loop: number; readonly module: string }
  | { readonly is: "group"; readonly loops: readonly number[]; readonly module: string }
  | { readonly is: "member"; readonly loop: number; readonly carrier: number; readonly module: string }
  | { readonly is: "modules"; readonly panel: string; readonly module: string }
  | { readonly is: "reckoning"; readonly panel?: string };

/** A row that holds one of the limits the user entered. */
export interface LimitRow {
  readonly row: number;
  readonly limit: "modules" | "radioDevices" | "milliamps" | "spareInputs" | "stock";
  /** Controller, panel or article. */
  readonly of: string;
  readonly value: number;
}

/** The planning problem as a model, with what is needed to read a solution back. */
export interface PlanModel {
  readonly model: MilpModel;
  readonly columns: readonly ColumnMeaning[];
  readonly limits: readonly LimitRow[];
  /** Rows of articles with stock or price steps: what is got less what is needed, 0 or more. */
  readonly articles: readonly ArticleRow[];
  /** Zones lost by setting each column to 1. */
  readonly zonesLost: readonly number[];
}

export interface ArticleRow {
  readonly article: string;
  readonly row: number;
  /** No plan of the model needs more. [pieces] */
  readonly mostNeeded: number;
}

export interface FormulateInput {
  readonly problem: PlanningProblem;
  /**
   * A: one column for each group of loops that may share an input. B: carrier and member columns, Σ ohms by row.
   * Absent: A unless it would take more than 60,000 columns.
   */
  readonly form?: "A" | "B" | undefined;
  /** Model each module by itself for loops that share a return, so that none of their sets is divided. */
  readonly eachModule?: boolean | undefined;
  /** Write columns and price steps so that the rows of the limits may be lifted afterwards. */
  readonly liftable?: boolean | undefined;
  /** Most pieces of an article that a plan worth finding needs, where that is known. */
  readonly mostNeeded?: ReadonlyMap<string, number> | undefined;
}

/** Largest number of group columns before the carrier and member form is used. */
const mostGroupColumns = 60_000;

/** Writes the planning problem as a linear model with whole-number columns; see docs/decisions/cheapest-plan.md. */
export function formulate({ problem, form, eachModule, liftable, mostNeeded }: FormulateInput): PlanModel {
  const offers = permittedOffers(problem);
  const usedForm = form ?? (countJoinGroups(problem, offers) > mostGroupColumns ? "B" : "A");
  const writer = new PlanModelWriter(problem, offers, liftable ?? false);
  writer.treatmentsAlone();
  if (usedForm === "A") writer.groupsByColumn();
  else writer.groupsByCarrier();
  writer.sharedReturns(eachModule ?? false);
  writer.purchases(mostNeeded ?? new Map());
  return writer.finish();
}

interface Bank {
  readonly panel: string;
  readonly module: string;
  readonly inputs: number;
  readonly capacityRow: number;
  readonly seatsRow: number;
  readonly modulesColumn: number;
  readonly mostModules: number;
}

/** Columns of one loop by module type, for loops that share a return. */
type OnInput = Map<string, number[]>;

class PlanModelWriter {
  readonly #problem: PlanningProblem;
  readonly #offers: readonly PermittedOffers[];
  readonly #milp = new MilpBuilder();
  readonly #columns: ColumnMeaning[] = [];
  readonly #zonesLost: number[] = [];
  readonly #limits: LimitRow[] = [];
  readonly #oneOf: number[];
  readonly #articleRows = new Map<string, number>();
  readonly #foldedCents = new Map<string, Cents>();
  readonly #mostNeeded = new Map<string, number>();
  readonly #radioRows = new Map<string, number>();
  readonly #milliampRows = new Map<string, number>();
  readonly #spareRows = new Map<string, number>();
  readonly #banks = new Map<string, Bank>();
  readonly #controllerOf: ReadonlyMap<string, string>;
  readonly #onInput: OnInput[];

  readonly #liftable: boolean;

  constructor(problem: PlanningProblem, offers: readonly PermittedOffers[], liftable: boolean) {
    this.#problem = problem;
    this.#liftable = liftable;
    this.#offers = offers;
    this.#controllerOf = new Map(problem.panels.map((panel) => [panel.id, panel.controller]));
    this.#oneOf = offers.map(() => this.#milp.row(1, 1));
    this.#onInput = offers.map(() => new Map());
    for (const [key, supply] of articleSupplies(problem)) {
      const [tier] = supply.tiers;
      if (supply.stock === 0 && supply.tiers.length === 1 && tier && tier.from <= 1) {
        this.#foldedCents.set(key, tier.unitCents);
      } else this.#articleRows.set(key, this.#milp.row(0, Infinity));
    }
    this.#limitRows();
    this.#openColumns();
    for (const panel of problem.panels) for (const { type } of problem.modules) this.#addBank(panel.id, type);
  }

  #limitRows(): void {
    const moduleRows = new Map<string, number>();
    for (const controller of this.#problem.controllers) {
      const modules = this.#milp.row(-Infinity, controller.maxModules);
      moduleRows.set(controller.id, modules);
      this.#limits.push({ row: modules, limit: "modules", of: controller.id, value: controller.maxModules });
      const radio = this.#milp.row(-Infinity, controller.maxRadioDevices);
      this.#radioRows.set(controller.id, radio);
      this.#limits.push({ row: radio, limit: "radioDevices", of: controller.id, value: controller.maxRadioDevices });
    }
    this.#moduleRows = moduleRows;
    for (const panel of this.#problem.panels) {
      if (panel.supplyMilliamps !== undefined) {
        const row = this.#milp.row(-Infinity, panel.supplyMilliamps);
        this.#milliampRows.set(panel.id, row);
        this.#limits.push({ row, limit: "milliamps", of: panel.id, value: panel.supplyMilliamps });
      }
      if ((panel.spareInputs ?? 0) > 0) {
        const row = this.#milp.row(panel.spareInputs ?? 0, Infinity);
        this.#spareRows.set(panel.id, row);
        this.#limits.push({ row, limit: "spareInputs", of: panel.id, value: panel.spareInputs ?? 0 });
      }
    }
  }
  #moduleRows: ReadonlyMap<string, number> = new Map();

  /** A place that costs something, or wants spare inputs, once it holds a module: a yes-or-no column for each. */
  #openColumns(): void {
    for (const { id, openCents = 0, spareInputsWhenUsed = 0, spareInputs = 0 } of this.#problem.panels) {
      if (openCents === 0 && spareInputsWhenUsed === 0) continue;
      const column = this.#column({ is: "reckoning", panel: id }, openCents, { upper: 1 });
      this.#opened.set(id, column);
      if (spareInputsWhenUsed <= spareInputs) continue;
      const row = this.#milp.row(0, Infinity);
      this.#milp.entry(row, column, -spareInputsWhenUsed);
      this.#usedSpareRows.set(id, row);
    }
  }
  readonly #opened = new Map<string, number>();
  readonly #usedSpareRows = new Map<string, number>();

  #column(
    meaning: ColumnMeaning,
    cost: Cents,
    options: { upper?: number; integer?: boolean; zonesLost?: number } = {},
  ) {
    const { upper, integer = true, zonesLost = 0 } = options;
    this.#columns.push(meaning);
    this.#zonesLost.push(zonesLost);
    return this.#milp.column({ cost, integer, ...(upper === undefined ? {} : { upper }) });
  }

  #addBank(panel: string, type: string): void {
    const module = this.#problem.modules.find((candidate) => candidate.type === type);
    const candidates = this.#offers.filter(
      ({ loop, keep, repair }) => loop.panel === panel && [...keep, ...repair].some((offer) => offer.module === type),
    ).length;
    const place = this.#problem.panels.find(({ id }) => id === panel);
    const spare = Math.max(place?.spareInputs ?? 0, place?.spareInputsWhenUsed ?? 0);
    const controller = this.#controllerOf.get(panel) ?? "";
    const entered = this.#problem.controllers.find((place) => place.id === controller)?.maxModules ?? 0;
    const limit = this.#liftable ? Infinity : entered;
    if (!module || (candidates === 0 && spare === 0)) return;
    const bySeats = module.conductorSeats > 0 ? Math.ceil(candidates / module.conductorSeats) : candidates;
    const byInputs = Math.ceil((candidates + spare) / module.inputs);
    const extraPays = this.#problem.extraConductorCents > 0;
    const mostModules = extraPays ? Math.max(byInputs, bySeats, this.#returnSeatModules(panel, module)) : byInputs;
    // Sets that may not be divided can leave inputs unused, so the count is bounded by one module for each loop.
    const most = Math.max(mostModules, (this.#problem.together ?? []).length > 0 ? candidates : 0);
    const column = this.#column({ is: "modules", panel, module: type }, module.fitCents, {
      upper: Math.min(most, limit),
    });
    const capacityRow = this.#milp.row(-Infinity, 0);
    this.#milp.entry(capacityRow, column, -module.inputs);
    const seatsRow = this.#milp.row(-Infinity, 0);
    this.#milp.entry(seatsRow, column, -module.conductorSeats);
    const extra = this.#column({ is: "reckoning", panel }, this.#problem.extraConductorCents, { integer: false });
    this.#milp.entry(seatsRow, extra, -1);
    this.#entryAt(this.#moduleRows.get(controller), column, 1);
    this.#entryAt(this.#spareRows.get(panel), column, module.inputs);
    this.#entryAt(this.#usedSpareRows.get(panel), column, module.inputs);
    const opened = this.#opened.get(panel);
    if (opened !== undefined) {
      const onlyWhenOpen = this.#milp.row(-Infinity, 0);
      this.#milp.entry(onlyWhenOpen, column, 1);
      this.#milp.entry(onlyWhenOpen, opened, -Math.min(most, limit));
    }
    this.#need(moduleArticleKey(this.#problem, type), column, 1);
    this.#raiseMostNeeded(moduleArticleKey(this.#problem, type), Math.min(most, limit));
    const bank = { panel, module: type, inputs: module.inputs, capacityRow, seatsRow, modulesColumn: column };
    this.#banks.set(JSON.stringify([panel, type]), { ...bank, mostModules: Math.min(most, limit) });
  }

  #returnSeatModules(panel: string, module: { conductorSeats: number }): number {
    const atPanel = new Set(this.#offers.filter(({ loop }) => loop.panel === panel).map(({ loop }) => loop.id));
    const seats = (this.#problem.together ?? [])
      .filter((set) => set.loops.some((loop) => atPanel.has(loop)))
      .reduce((sum, set) => sum + set.returnSeats, atPanel.size);
    return module.conductorSeats > 0 ? Math.ceil(seats / module.conductorSeats) : 0;
  }

  #entryAt(row: number | undefined, column: number, value: number): void {
    if (row !== undefined) this.#milp.entry(row, column, value);
  }

  #need(key: string, column: number, count: number): void {
    const folded = this.#foldedCents.get(key);
    if (folded !== undefined) this.#milp.addCost(column, folded * count);
    else this.#entryAt(this.#articleRows.get(key), column, -count);
  }

  #raiseMostNeeded(key: string, count: number): void {
    this.#mostNeeded.set(key, (this.#mostNeeded.get(key) ?? 0) + count);
  }

  #addNeeds(column: number, items: DeviceCounts | undefined): void {
    for (const [code, count] of Object.entries(items ?? {})) this.#need(deviceArticleKey(code), column, count);
  }

  #takeInput(panel: string, module: string, column: number, seats: number): void {
    const bank = this.#banks.get(JSON.stringify([panel, module]));
    if (!bank) return;
    this.#milp.entry(bank.capacityRow, column, 1);
    this.#milp.entry(bank.seatsRow, column, seats);
    this.#entryAt(this.#spareRows.get(panel), column, -1);
    this.#entryAt(this.#usedSpareRows.get(panel), column, -1);
  }

  /** Without input, repair, and kept alone on an input: the same in both forms. */
  treatmentsAlone(): void {
    const shared = new Set((this.#problem.together ?? []).flatMap((set) => set.loops));
    this.#offers.forEach(({ loop, withoutInput, repair, keep }, index) => {
      const radioRow = this.#radioRows.get(this.#controllerOf.get(loop.panel) ?? "");
      const oneOf = this.#oneOf[index] ?? 0;
      const seats = shared.has(loop.id) ? 0 : 1;
      for (const { option, offer } of withoutInput) {
        const zonesLost = offer.kind === "retire" ? 1 : 0;
        const column = this.#column({ is: "without", loop: index, option }, offer.cents, { upper: 1, zonesLost });
        this.#milp.entry(oneOf, column, 1);
        this.#addNeeds(column, offer.items);
        this.#entryAt(radioRow, column, offer.radioDevices);
      }
      for (const offer of repair) {
        const column = this.#column({ is: "repair", loop: index, module: offer.module }, offer.cents, { upper: 1 });
        this.#milp.entry(oneOf, column, 1);
        this.#takeInput(loop.panel, offer.module, column, seats);
        this.#entryAt(radioRow, column, offer.radioDevices);
        this.#noteOnInput(index, offer.module, column);
      }
      for (const offer of keep) {
        const column = this.#groupColumn([index], offer.module, [offer]);
        this.#takeInput(loop.panel, offer.module, column, seats);
        this.#noteOnInput(index, offer.module, column);
      }
      const most = new Map<string, number>();
      for (const items of [
        ...withoutInput.map(({ offer }) => offer.items),
        ...keep.map((offer) => offer.items ?? {}),
      ]) {
        for (const [code, count] of Object.entries(items)) most.set(code, Math.max(most.get(code) ?? 0, count));
      }
      for (const [code, count] of most) this.#raiseMostNeeded(deviceArticleKey(code), count);
    });
  }

  #noteOnInput(loop: number, module: string, column: number): void {
    const columns = this.#onInput[loop]?.get(module);
    if (columns) columns.push(column);
    else this.#onInput[loop]?.set(module, [column]);
  }

  #groupColumn(loops: readonly number[], module: string, keeps: readonly KeepOffer[]): number {
    const carrier = cheapestCarrier(keeps);
    const cents = keeps.reduce(
      (sum, offer, at) => sum + offer.baseCents + (at === carrier ? offer.setCents : offer.removeCents),
      (loops.length - 1) * this.#problem.join.cents,
    );
    const meaning = { is: "group", loops, module } as const;
    const column = this.#column(meaning, cents, { upper: 1, zonesLost: loops.length - 1 });
    for (const loop of loops) this.#milp.entry(this.#oneOf[loop] ?? 0, column, 1);
    this.#keepEntries(column, loops, keeps);
    return column;
  }

  /** Devices, radio places and current that keeping these loops takes. */
  #keepEntries(column: number, loops: readonly number[], keeps: readonly KeepOffer[]): void {
    const panel = this.#offers[loops[0] ?? 0]?.loop.panel ?? "";
    const items = new Map<string, number>();
    for (const offer of keeps) {
      for (const [code, count] of Object.entries(offer.items ?? {})) items.set(code, (items.get(code) ?? 0) + count);
    }
    this.#addNeeds(column, Object.fromEntries(items));
    const total = (of: (offer: KeepOffer) => number | undefined) =>
      keeps.reduce((sum, offer) => sum + (of(offer) ?? 0), 0);
    const radioRow = this.#radioRows.get(this.#controllerOf.get(panel) ?? "");
    this.#entryAt(
      radioRow,
      column,
      total((offer) => offer.radioDevices),
    );
    this.#entryAt(
      this.#milliampRows.get(panel),
      column,
      total((offer) => offer.supplyMilliamps),
    );
  }

  #keepOffer(loop: number, module: string): KeepOffer | undefined {
    return this.#offers[loop]?.keep.find((offer) => offer.module === module);
  }

  /** Form A: a column for every group of two or more. */
  groupsByColumn(): void {
    for (const { loops, module } of joinGroups(this.#problem, this.#offers)) {
      const column = this.#groupColumn(
        loops,
        module,
        loops.flatMap((loop) => this.#keepOffer(loop, module) ?? []),
      );
      this.#takeInput(this.#offers[loops[0] ?? 0]?.loop.panel ?? "", module, column, 1);
    }
  }

  /** Form B: a loop kept alone is a carrier; members join a carrier while ohms, openings and number allow. */
  groupsByCarrier(): void {
    const { join, modules } = this.#problem;
    if (join.maxLoops < 2) return;
    const carriers = new Map<string, number>();
    this.#columns.forEach((meaning, column) => {
      if (meaning.is === "group") carriers.set(JSON.stringify([meaning.loops[0], meaning.module]), column);
    });
    const maxOpenings = join.maxOpenings ?? defaultMaxOpenings;
    for (const { type, maxOhms } of modules) {
      for (const set of joinableSets(this.#problem, this.#offers)) {
        const able = set.filter((index) => this.#keepOffer(index, type));
        for (const carrier of able) {
          const carrierColumn = carriers.get(JSON.stringify([carrier, type]));
          const loop = this.#offers[carrier]?.loop;
          if (carrierColumn === undefined || !loop || typeof loop.ohms !== "number") continue;
          const ohmsRow = this.#milp.row(-Infinity, 0);
          this.#milp.entry(ohmsRow, carrierColumn, loop.ohms - maxOhms - 1e-9);
          const openingsRow = this.#milp.row(-Infinity, 0);
          this.#milp.entry(openingsRow, carrierColumn, Math.min(0, (loop.openings ?? 0) - maxOpenings));
          const numberRow = this.#milp.row(-Infinity, 0);
          this.#milp.entry(numberRow, carrierColumn, 1 - join.maxLoops);
          for (const member of able) {
            const offer = this.#keepOffer(member, type);
            const other = this.#offers[member]?.loop;
            if (member === carrier || !offer || !other || typeof other.ohms !== "number") continue;
            if (loop.ohms + other.ohms > maxOhms + 1e-9) continue;
            if ((loop.openings ?? 0) + (other.openings ?? 0) > maxOpenings) continue;
            const cost = offer.baseCents + offer.removeCents + join.cents;
            const meaning = { is: "member", loop: member, carrier, module: type } as const;
            const column = this.#column(meaning, cost, { upper: 1, zonesLost: 1 });
            this.#milp.entry(this.#oneOf[member] ?? 0, column, 1);
            this.#keepEntries(column, [member], [offer]);
            this.#milp.entry(ohmsRow, column, other.ohms);
            this.#milp.entry(openingsRow, column, other.openings ?? 0);
            this.#milp.entry(numberRow, column, 1);
            const onlyWithCarrier = this.#milp.row(-Infinity, 0);
            this.#milp.entry(onlyWithCarrier, column, 1);
            this.#milp.entry(onlyWithCarrier, carrierColumn, -1);
          }
        }
      }
    }
  }

  /** Loops that share a return: seats of the return, same type, and, where asked for, the same module. */
  sharedReturns(eachModule: boolean): void {
    const indexOf = new Map(this.#problem.loops.map((loop, index) => [loop.id, index]));
    const sets = (this.#problem.together ?? []).map((set) => ({
      ...set,
      members: set.loops.flatMap((loop) => indexOf.get(loop) ?? []),
    }));
    for (const set of sets) {
      const panel = this.#offers[set.members[0] ?? 0]?.loop.panel ?? "";
      const sameRow = set.sameModule ? this.#milp.row(-Infinity, 1) : undefined;
      for (const { type } of this.#problem.modules) {
        const bank = this.#banks.get(JSON.stringify([panel, type]));
        const members = set.members.filter((loop) => this.#onInput[loop]?.has(type));
        if (!bank || members.length === 0) continue;
        const any = this.#column({ is: "reckoning" }, 0, { upper: 1 });
        this.#milp.entry(bank.seatsRow, any, set.returnSeats);
        this.#entryAt(sameRow, any, 1);
        for (const loop of members) {
          const row = this.#milp.row(-Infinity, 0);
          for (const column of this.#onInput[loop]?.get(type) ?? []) this.#milp.entry(row, column, 1);
          this.#milp.entry(row, any, -1);
        }
      }
    }
    if (!eachModule) return;
    for (const bank of this.#banks.values()) {
      this.#eachModule(
        bank,
        sets.filter((set) => set.sameModule).map((set) => set.members),
      );
    }
  }

  #eachModule(bank: Bank, sets: readonly (readonly number[])[]): void {
    const columnsOf = sets
      .map((members) =>
        members
          .filter((loop) => this.#offers[loop]?.loop.panel === bank.panel)
          .flatMap((loop) => this.#onInput[loop]?.get(bank.module) ?? []),
      )
      .filter((columns) => columns.length > 0);
    if (columnsOf.length === 0) return;
    const fitted = this.#milp.row(-Infinity, 0);
    this.#milp.entry(fitted, bank.modulesColumn, -1);
    const rows = columnsOf.map((columns) => {
      const placed = this.#milp.row(0, 0);
      for (const column of columns) this.#milp.entry(placed, column, -1);
      return { placed, once: this.#milp.row(-Infinity, 1), size: columns.length };
    });
    for (let number = 0; number < Math.min(bank.mostModules, rows.length); number += 1) {
      const fits = this.#column({ is: "reckoning" }, 0, { upper: 1 });
      this.#milp.entry(fitted, fits, 1);
      const room = this.#milp.row(-Infinity, 0);
      this.#milp.entry(room, fits, -bank.inputs);
      for (const { placed, once, size } of rows) {
        const here = this.#column({ is: "reckoning" }, 0, { upper: 1 });
        const count = this.#column({ is: "reckoning" }, 0, { upper: size });
        this.#milp.entry(once, here, 1);
        this.#milp.entry(placed, count, 1);
        this.#milp.entry(room, count, 1);
        const only = this.#milp.row(-Infinity, 0);
        this.#milp.entry(only, count, 1);
        this.#milp.entry(only, here, -size);
      }
    }
  }

  /** Purchase of every article: from stock, and the rest in one price step. */
  purchases(known: ReadonlyMap<string, number>): void {
    for (const [key, supply] of articleSupplies(this.#problem)) {
      const row = this.#articleRows.get(key);
      const most = Math.min(this.#mostNeeded.get(key) ?? 0, known.get(key) ?? Infinity);
      if (row === undefined || most === 0) continue;
      this.#articles.push({ article: key, row, mostNeeded: most });
      this.#purchase(key, row, supply, most);
    }
  }
  readonly #articles: ArticleRow[] = [];

  #purchase(key: string, row: number, supply: ArticleSupply, most: number): void {
    if (supply.stock > 0 || supply.tiers.length === 0) {
      const hard = supply.tiers.length === 0;
      const stock = this.#column({ is: "reckoning" }, supply.stockUnitCents, {
        integer: false,
        ...(hard ? {} : { upper: supply.stock }),
      });
      this.#milp.entry(row, stock, 1);
      if (hard) {
        const limit = this.#milp.row(-Infinity, supply.stock);
        this.#milp.entry(limit, stock, 1);
        this.#limits.push({ row: limit, limit: "stock", of: key, value: supply.stock });
      }
    }
    const tiers = supply.tiers.filter((tier) => isWorthReaching(supply, tier, most)).sort((a, b) => a.from - b.from);
    const oneStep = this.#milp.row(-Infinity, 1);
    tiers.forEach((tier, at) => {
      const bought = this.#column({ is: "reckoning" }, tier.unitCents, { integer: false });
      this.#milp.entry(row, bought, 1);
      if (tiers.length === 1 && tier.from <= 1) return;
      const step = this.#column({ is: "reckoning" }, 0, { upper: 1 });
      this.#milp.entry(oneStep, step, 1);
      // Above a step that is cheaper a piece, nobody buys at this price.
      const cheaper = tiers.slice(at + 1).find((next) => next.unitCents <= tier.unitCents);
      const largest = Math.max(tier.from, Math.min(most, cheaper ? cheaper.from - 1 : most));
      const upper = this.#milp.row(-Infinity, 0);
      this.#milp.entry(upper, bought, 1);
      this.#milp.entry(upper, step, -largest);
      if (tier.from <= 1) return;
      const lower = this.#milp.row(0, Infinity);
      this.#milp.entry(lower, bought, 1);
      this.#milp.entry(lower, step, -tier.from);
    });
  }

  finish(): PlanModel {
    return {
      model: this.#milp.build(),
      columns: this.#columns,
      limits: this.#limits,
      articles: this.#articles,
      zonesLost: this.#zonesLost,
    };
  }
}

/** Whether buying up to a step above every need can ever cost less than getting the largest need without it. */
function isWorthReaching(supply: ArticleSupply, tier: PriceTier, most: number): boolean {
  if (tier.from <= most) return true;
  const others = supply.tiers.filter((other) => other !== tier && other.from <= most);
  const without = cheapestPurchase({ ...supply, tiers: others }, most);
  return without === undefined || tier.from * tier.unitCents < without.cents;
}
